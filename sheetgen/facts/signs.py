"""Safety signs by the numbers of ISO 7010, as a published list names them; the standard itself was not read.

The list is generated from the free pictures of the signs (an open repository, seen). Other lists are wrong: one calls
W021 slippery and M018 gloves; slippery is W011, gloves are M009. What is drawn under a number is our own drawing.
"""

from __future__ import annotations

SOURCE = "numbers by a list generated from free pictures of ISO 7010 signs, seen; the standard was not read"

SIGNS = {
    "W001": "general warning",
    "W016": "toxic material",
    "W017": "hot surface",
    "W021": "flammable material",
    "W022": "sharp element",
    "W023": "corrosive substance",
    "W024": "crushing of hands",
    "W041": "asphyxiating atmosphere",
    "M003": "wear ear protection",
    "M004": "wear eye protection",
    "M009": "wear protective gloves",
    "M016": "wear a mask",
}
"""W warns, in a triangle; M tells what must be done or worn, in a disc."""

GENERAL = "W001"
"""The sign of a caution that names none."""
