"""Constants of the trade; none can be made without its source."""
