"""First stage: files to words that know their places, and words to studio, stock and projects."""
