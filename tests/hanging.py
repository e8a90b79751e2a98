"""When something hangs, wherever the tests ask: on any machine, so that no test is one of speed."""

SECONDS = 8
"""Of a processor. What is honestly the slowest takes two on the slowest machine that we met."""
