"""What the contributor's guide shows is what the program takes."""

from __future__ import annotations

import re
from pathlib import Path

from sheetgen.parts.kind import Part

GUIDE = (Path(__file__).parent.parent / "DEVELOPERS.md").read_text("utf-8")
[SHOWN] = re.findall(r"```python\n(.*?)```", GUIDE, re.DOTALL)


def test_the_kind_in_the_guide_is_one() -> None:
    there: dict[str, object] = {"__name__": "shown"}
    exec(compile(SHOWN, "DEVELOPERS.md", "exec"), there)  # noqa: S102 - our own guide
    kind = there["Washer"]
    assert isinstance(kind, type)
    assert issubclass(kind, Part)
    assert kind.figures().keys() == {"wet_outside", "drill", "fired_opening", "clay_mass"}
    assert kind.with_role("made of") is not None
