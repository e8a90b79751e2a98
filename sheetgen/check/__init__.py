"""Third stage: whether it fits, survives the kiln, and comes in the right order."""
