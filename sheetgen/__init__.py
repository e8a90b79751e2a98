"""Works backwards from what a finished piece measures to printable project sheets."""
