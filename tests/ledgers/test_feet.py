"""The foot of a page stands on one line, on both papers, with its fingerprint and whether it is changed."""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path
from typing import Any

from fontTools.ttLib import TTFont

from sheetgen.model.drawing import Drawings
from sheetgen.model.fingerprint import SIGNS
from sheetgen.render.handout import Sheets
from sheetgen.render.ordered import CONTENT
from sheetgen.render.pages import NAMES
from sheetgen.render.pdf import font_files

PAPER_CSS = Path(__file__).parents[2] / "themes/plain/paper.css"
POINT = 25.4 / 72  # mm


def test_the_longest_foot_of_the_demonstration_stands_on_one_line(demo: Any) -> None:
    [(share, size)] = re.findall(r"string\(foot\); width: (\d+)%.*?font: ([\d.]+)pt", PAPER_CSS.read_text("utf-8"))
    face = TTFont(font_files()["SourceSansPro-Regular.ttf"])
    widths, letters, em = face["hmtx"], face.getBestCmap(), face["head"].unitsPerEm
    broadest = max(SIGNS, key=lambda sign: widths[letters[ord(sign)]][0])

    def wide(text: str) -> float:
        units = sum(widths[letters[ord(sign)]][0] for sign in text)
        return float(units / em * float(size) * POINT)

    feet = []
    for worked in demo.check().worked:
        for version in worked.versions.values():
            changed = replace(version, changed=True)
            sheets = Sheets(worked, changed, Drawings({}, {}))
            feet.append(sheets.head(max(NAMES.values(), key=wide)).foot.replace(sheets.code, broadest * 6))
    assert len(feet) > 40
    assert all(", changed, 2026-" in foot for foot in feet)
    assert max(map(wide, feet)) < CONTENT[0] * int(share) / 100
