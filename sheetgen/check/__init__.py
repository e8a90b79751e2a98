"""Third stage: does it fit, does it survive the kiln, and does it come in the right order?"""
