"""The kinds of part, one file each; a kind is found by being in this folder."""
