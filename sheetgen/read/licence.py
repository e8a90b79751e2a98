"""What the studio says of copying: in few words, for it is printed in the foot of each sheet, and where all is told."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from sheetgen.base.trouble import Troubles
    from sheetgen.model.studio import WrittenLicence

LONGEST = 60  # letters that a line has room for beside a studio's name
_LINK = re.compile(r"https?://[^\s<>\"'\\]+")


def look_at_licence(said: WrittenLicence | None, troubles: Troubles) -> None:
    """Whatever is wrong with it, told at its word."""
    if said is None:
        return
    for word in (said.text, said.pictures):
        if word is None:
            continue
        if not word.strip():
            troubles.add("this has nothing in it", word.place, "fill it in or take it out")
        elif len(word) > LONGEST or "\n" in word.strip():
            told = f"this has {len(word)} letters, and stands in one line of a sheet"
            troubles.add(told, word.place, f"at most {LONGEST}; put the rest on a page, and its address after link:")
    if said.link is not None and not _LINK.fullmatch(said.link.strip()):
        troubles.add(
            f"'{said.link}' is not the address of a page", said.link.place, "https://quillmarsh.example/copying"
        )
