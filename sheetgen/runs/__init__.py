"""Runs of kits and what they cost: the stages in order, into a private folder."""
