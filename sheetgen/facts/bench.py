"""The words of the bench: what an item acts as, what it bears, what a step does, who wears the piece and where."""

from __future__ import annotations

ACTS = {
    "torch": "a flame that heats the work",
    "flame": "any other open flame",
    "kiln": "a kiln",
    "firing box": "the closed box that carbon goes into",
    "carbon": "what a piece is fired in to keep air away",
    "hot plate": "a plate or dryer that heats",
    "water": "water to cool or to rinse in",
    "solvent": "a liquid whose vapour burns, such as alcohol or acetone",
    "aerosol": "a spray whose gas burns",
    "acid": "an acid",
    "pickle": "the bath that takes oxide off, an acid too",
    "sulphide": "what darkens metal, such as liver of sulphur",
    "bleach": "a bleach with chlorine",
    "ammonia": "ammonia, or what smells of it",
    "slip": "clay thinned with water, to join and to mend with",
    "paste for fired metal": "what joins wet clay to metal that is fired",
    "solder": "a solder",
    "flux": "a flux",
    "wheel": "a mop, brush or flexible shaft that a motor turns",
    "tumbler": "a tumbler with its shot",
    "gloves": "gloves of any sort",
    "cloth": "a cloth that is held in the hand",
    "dry test": "a mirror or scales, by which clay is known to be dry",
    "wax": "wax, resin, enamel or paint that stays in the piece",
    "drill": "a drill",
    "abrasive": "a pad or paper that grinds to dust",
    "plug": "what holds the inside of a ring in the fire",
    "support": "a bed or blanket that holds a piece in the fire",
    "fibre": "kiln fibre, that is cut to lie under a piece in the fire",
    "protection": "worn, to keep a person whole",
}
"""What an item may do at the bench: for tools and what is used up. What stays in the piece is asked what it bears."""

TOOL_GROUPS = ("clay bench", "wire", "kiln", "finishing", "safety")
"""Where a list of tools has each: in the order in which a bench is laid out."""

NEVER_AT_HOME = (
    "torch", "flame", "kiln", "hot plate", "acid", "pickle", "sulphide", "bleach", "ammonia", "aerosol", "solder",
    "wheel", "slip", "paste for fired metal",
)  # fmt: skip
"""What goes home with no pupil: a step that uses what acts as any of these is done at the studio. Slip is raw clay."""

WORKS_RAW_CLAY = ("shape", "join", "close", "fill", "refine", "drill")
"""What a hand does to clay that no fire has met: it takes slip or gives dust, and is done at the studio."""

BEARS = {
    "kiln": "the kiln",
    "torch": "a flame",
    "quench": "to be quenched",
    "tumbler": "the tumbler",
    "pickle": "the pickle",
    "solvent": "solvent",
    "water": "water",
}
"""What an item may bear: yes, no, or for heat up to a temperature."""

DOES = {
    "join": "the parts named become one, wet where they are clay",
    "close": "the parts named become one, and a hollow is shut",
    "fill": "cracks are mended with slip",
    "dry": "clay dries right through",
    "test": "clay is tested for damp",
    "refine": "sanded or filed, clay or metal",
    "drill": "drilled",
    "fire": "fired, in a kiln or with a torch",
    "heat": "heated with a flame, to soften it or to draw it to a ball",
    "solder": "soldered",
    "quench": "hot into water",
    "cool": "left until it is cold",
    "pickle": "pickled",
    "rinse": "rinsed or washed",
    "tumble": "tumbled",
    "polish": "polished",
    "harden": "hammered or worked until it is hard",
    "stretch": "stretched or bent after the fire",
    "pull": "pulled at, as it will be when it is worn",
    "patinate": "darkened or coloured",
    "degrease": "wiped free of grease",
    "set": "a stone is set",
    "glue": "glued",
    "cure": "adhesive cures",
    "string": "strung on thread or wire",
    "hang": "hung: what is named in the step meets, ring through hole and loop",
    "try": "what is used is put to the work and taken off again",
    "take off": "what is used or named is taken off the piece",
    "open": "a kiln or a box is opened",
}
"""What a step does, in the words of the trade; a step may do several things, in their order."""

HEATS = ("fire", "heat", "solder")
"""What brings fire to the work."""

WAITS = ("drying", "curing")
"""What a step waits for, where it does not wait for a time of its own."""

WORN_BY = ("adult", "child", "small child")
WORN_AT = ("neck", "wrist", "ear", "finger", "ankle", "hair", "clothes", "nowhere")
