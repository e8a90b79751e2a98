"""The bench: every part followed through the steps, with what is attached to it, and the rules that it must keep."""
