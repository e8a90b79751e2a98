"""Who sees a design: everybody, or the studio alone."""

from __future__ import annotations

PUBLIC, DRAFT, RETIRED, OF_CLASS = "public", "draft", "retired", "class only"
STATUS = (PUBLIC, DRAFT, OF_CLASS, RETIRED)
SEEN = frozenset({PUBLIC, RETIRED})
"""Those that have a page for everybody."""
STUDIOS, ALL = "for the studio", "public"
TEACHERS = (STUDIOS, ALL)
"""What a studio may say of its teacher's sheets."""
