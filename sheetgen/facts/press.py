"""Printing: what a sheet may take of time and memory before it is given up."""

from __future__ import annotations

from sheetgen.facts.fact import Fact

SHEET_SECONDS = Fact(
    60, "printing a sheet, time of a processor, at least", unit="s",
    source="own judgement; a sheet of the demonstration takes 1 s, and a slow machine ten times as long",
    grade="own judgement",
)  # fmt: skip
LETTERS_SECONDS = Fact(
    20, "printing a sheet, time of a processor for each 100,000 letters more", unit="s",
    source="own judgement; 1 s as measured on handouts and on lists of a thousand orders", grade="own judgement",
)  # fmt: skip
MOST_SECONDS = Fact(
    600, "printing a sheet, time of a processor, most", unit="s",
    source="own judgement; longer than any honest list, and shorter than anybody waits", grade="own judgement",
)  # fmt: skip
CLOCK = Fact(
    3, "printing a sheet, time by the clock over that of a processor, most", unit="ratio",
    source="own judgement; other programs want the processor too", grade="own judgement",
)  # fmt: skip
MEMORY_MOST = Fact(
    2048, "printing a sheet, memory, most", unit="MiB",
    source="own judgement; 340 MiB as measured on the demonstration, and two processes fit into a small machine",
    grade="own judgement",
)  # fmt: skip
MEMORY_KEPT = Fact(
    350, "process that prints, memory with which it is renewed", unit="MiB",
    source="own judgement; twice what one takes that has printed a design of ten versions", grade="own judgement",
)  # fmt: skip
