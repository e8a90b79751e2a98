"""What a theme gets of each sheet: words, numbers and lists, frozen, and nothing that does anything.

`Html` is text that is HTML already, made and washed by us; every other text is plain words. Each field says what it is:
`sheetgen theme` prints this as the page that a theme's author reads.
"""

from sheetgen.model.view.bench import (
    BenchCard,
    Clock,
    Figure,
    Handout,
    Matrix,
    MatrixRow,
    Row,
    Slab,
    TemplatePage,
    Templates,
    TemplateSheet,
)
from sheetgen.model.view.catalogue import CatalogueSheet, Fitted, IndexLine, Listed, ProgrammeSheet, ToFind, Written
from sheetgen.model.view.facts import ConstantRow, Constants, Facts, FormulaRow, Formulas, RuleRow, Rules
from sheetgen.model.view.first_side import (
    Aid,
    Bag,
    Need,
    Picture,
    Pointer,
    Safety,
    Session,
    Size,
    Sized,
    Told,
    Tools,
    Wear,
)
from sheetgen.model.view.head import Head, Html, Studio
from sheetgen.model.view.library import (
    Card,
    CardPicture,
    Chip,
    Contents,
    DesignLink,
    InClay,
    Index,
    ListedDesign,
    Listing,
    Neighbours,
    PageLink,
    Term,
    Terms,
)
from sheetgen.model.view.screen import (
    CodePage,
    CutterLink,
    MovedNumber,
    NotFound,
    Offline,
    OfStudio,
    OursDesign,
    Renamed,
    Retired,
    Screen,
    SheetLink,
    UnitLink,
    VersionLink,
)
from sheetgen.model.view.teacher import (
    AllSizes,
    Homework,
    LaidTable,
    Lying,
    Mend,
    Risk,
    Seat,
    TablesSheet,
    TeacherSheet,
    VersionTable,
    Working,
    Workings,
)

__all__ = (  # noqa: RUF022 - in the order in which a theme's author reads of them
    "Html", "Studio", "Head", "Picture", "Size", "Session", "Need", "Sized", "Bag", "Tools", "Told", "Wear", "Pointer",
    "Aid", "Safety", "Figure", "MatrixRow", "Matrix", "Clock", "Row", "TemplatePage", "Slab", "Templates", "Handout",
    "BenchCard", "TemplateSheet", "AllSizes", "VersionTable", "Working", "Workings", "Risk", "Mend",
    "Homework", "TeacherSheet", "Seat", "Lying", "LaidTable", "TablesSheet",
    "SheetLink", "VersionLink", "UnitLink", "CutterLink", "Offline", "Retired", "Screen", "MovedNumber", "CodePage",
    "Renamed", "NotFound", "CardPicture", "Chip", "Card", "PageLink", "Index", "ListedDesign",
    "Listing", "Term", "Terms", "Contents", "DesignLink", "InClay", "Neighbours", "OursDesign", "OfStudio",
    "Fitted", "Listed", "Written", "IndexLine", "ToFind", "CatalogueSheet", "ProgrammeSheet",
    "FormulaRow", "RuleRow", "ConstantRow", "Formulas", "Rules", "Constants", "Facts",
)  # fmt: skip
