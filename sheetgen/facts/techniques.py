"""What a design is looked for by that nobody need write: techniques that are plain from what its steps do."""

TECHNIQUES = {
    "fire": "firing clay",
    "solder": "soldering",
    "set": "setting stones",
    "string": "stringing",
    "harden": "hammering",
    "patinate": "patina",
    "tumble": "tumbling",
}
"""The technique of a deed, by its word in facts/bench.py."""
KILN, TORCH, BOTH, NEITHER = "kiln", "torch", "kiln and torch", "no kiln, no torch"
