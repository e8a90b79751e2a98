"""The usual cautions of the bench, built in; a studio may add its own.

Signal words: ANSI Z535.4 as quoted by a label maker (DANGER: will kill or maim; WARNING: could; CAUTION: minor or
moderate injury; NOTICE: no injury). Which word stands on which hazard is our judgement; the advice is common practice.
Local rules, the maker's directions and qualified practice come first.
"""

from __future__ import annotations

SOURCE = "common practice; signal words by ANSI Z535.4 as quoted by a label maker"
LADDER = ("DANGER", "WARNING", "CAUTION", "NOTICE")

# id: signal word, hazard, what it does, how to avoid it
CAUTIONS: dict[str, tuple[str, str, str, str]] = {
    "kiln": (
        "WARNING", "Hot kiln.",
        "Burns skin deeply and at once, through thin gloves too; glare tires the eyes.",
        "Eye protection, dry heat-proof gloves, long sleeves of cotton or wool. Do not open it hot; unload below 50 °C. "
        "Someone stays near. The kiln maker's directions and local fire rules come first.",
    ),
    "carbon box": (
        "WARNING", "Firing in carbon gives off carbon monoxide.",
        "It has no smell and can kill.",
        "Fire only in a kiln vented to the open air or outdoors, with an alarm for carbon monoxide in the room. "
        "The kiln maker's directions and local rules come first.",
    ),
    "torch": (
        "WARNING", "Open flame and a gas cartridge.",
        "Burns, fire and explosion.",
        "Work on a heat-proof board away from anything that burns; tie hair back, eye protection on, water and "
        "extinguisher at hand. Close the valve before you set it down. Local fire rules come first.",
    ),
    "damp clay": (
        "CAUTION", "Damp clay in the kiln.",
        "Steam bursts the piece and throws bits of it.",
        "Fire only what has passed the drying test; load a cold kiln.",
    ),
    "blade": (
        "CAUTION", "Tissue blade or craft knife.",
        "Cuts skin before you feel it.",
        "Fingers behind the edge, the cut down or away from you; cap it when you set it down.",
    ),
    "cut metal": (
        "CAUTION", "Sheet metal, shears and saw blades.",
        "Edges and burrs slice skin, and a blade that snaps flies.",
        "Eye protection; fingers beside the line and not in front of the blade; file every edge as soon as it is cut.",
    ),
    "pin": (
        "CAUTION", "Sharp pin or needle tool.",
        "Pricks deeply, and a prick can fester.",
        "Point it away from the hand that holds the work; close it, or cork its point, when you set it down.",
    ),
    "hammering": (
        "CAUTION", "Hammer blows and flying chips.",
        "Crushes fingers, hurts eyes and ears.",
        "Eye and ear protection; hold small work with pliers or tape it down; check that the hammer's head is fast.",
    ),
    "wire ends": (
        "CAUTION", "Flying ends of cut wire.",
        "They can hit an eye.",
        "Eye protection for all at the table; hold both sides of the cut, and cut downwards into the cupped hand.",
    ),
    "drilling": (
        "CAUTION", "Turning drill.",
        "Pierces the hand behind the work when it breaks through.",
        "Back the work with a block or its former, never with a finger; turn by hand and lightly.",
    ),
    "rotary tool": (
        "WARNING", "Motor tool, polishing wheel, tumbler.",
        "Catches hair, sleeves, chains and gloves; throws what it catches.",
        "Eye protection, hair and sleeves tied back, no gloves, work held low on the wheel.",
    ),
    "sanding dust": (
        "WARNING", "Fine dust of clay, metal, kiln fibre or firing bed.",
        "Harms the lungs over the years.",
        "Sand over a damp cloth or under water, wear a dust mask fit for it, wipe up and wash hands; do not blow or sweep.",
    ),
    "epoxy": (
        "WARNING", "Uncured two-part adhesive.",
        "Irritates skin and eyes, and can make you allergic to it for good.",
        "Gloves that the maker names, moving air, nothing on bare skin; wash with soap, not with solvent. "
        "The maker's safety sheet comes first.",
    ),
    "pickle": (
        "WARNING", "Pickling acid, warm.",
        "Burns eyes and skin; its vapour the lungs.",
        "Eye protection and gloves, moving air, acid into water and never the other way; copper or plastic tongs. "
        "The maker's safety sheet comes first.",
    ),
    "patina": (
        "WARNING", "Patina solution.",
        "Its vapour harms; it stains and burns skin.",
        "Outdoors or under extraction, gloves and eye protection, never near acid. The maker's safety sheet comes first.",
    ),
    "hot plate": (
        "CAUTION", "Hot plate or dryer.",
        "Burns without showing that it is hot.",
        "Use tweezers; let the piece cool before you touch it.",
    ),
    "fumes": (
        "WARNING", "Solvent or binder fumes.",
        "Make dizzy, and can catch fire.",
        "Open the window, no flame near, cap the bottle. The maker's safety sheet comes first.",
    ),
    "small parts": (
        "WARNING", "Small parts and stones.",
        "A small child can choke on them.",
        "Keep them away from children under three.",
    ),
}  # fmt: skip

# What a caution tells to wear or to have at hand, so that it stands on the list of tools too.
EYES = "Eye protection"
WEAR: dict[str, tuple[str, ...]] = {
    "kiln": ("Heat-proof gloves, dry", EYES),
    "carbon box": ("Alarm for carbon monoxide",),
    "torch": (EYES, "Fire extinguisher, or water"),
    "cut metal": (EYES,),
    "hammering": (EYES, "Ear protection"),
    "wire ends": (EYES,),
    "rotary tool": (EYES,),
    "epoxy": ("Nitrile gloves, or those that the adhesive's maker names",),
    "sanding dust": ("Dust mask",),
    "pickle": (EYES, "Gloves for acid"),
    "patina": (EYES, "Gloves for chemicals"),
    "hot plate": ("Tweezers",),
}
