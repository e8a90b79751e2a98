"""Pure vocabulary that everything else is written in: no trade, no files."""
