"""The trade's arithmetic as pure functions of numbers: mm, g, min, °C."""
