"""The studio as its file writes it: every word still a word, with its place."""

from __future__ import annotations

from pydantic import Field

from sheetgen.model.project import Class
from sheetgen.model.written import Text, Texts, Written, default


class WrittenShop(Written):
    """A shop: the least order, what delivery costs, and from which order on it is free."""

    least_order: Text | None = None
    delivery: Text | None = None
    free_from: Text | None = None


class WrittenLabels(Written):
    """A sheet of labels: how many across and down, width × height of one, where the first begins, and the gaps."""

    across: Text
    down: Text
    size: Text
    left: Text
    top: Text
    gap_across: Text = Field(default_factory=lambda: default("0 mm"))
    gap_down: Text = Field(default_factory=lambda: default("0 mm"))
    paper: Text | None = None


class WrittenLicence(Written):
    """What may be done with words and with pictures, each in a few words, and where all of it is told."""

    text: Text | None = None
    pictures: Text | None = None
    link: Text | None = None


class Studio(Written):
    """studio.yaml."""

    name: Text
    about: Text | None = None
    contact: Text | None = None
    note: Text | None = None
    language: Text = Field(default_factory=lambda: default("en"))
    currency: Text = Field(default_factory=lambda: default("EUR"))
    units: Text = Field(default_factory=lambda: default("mm"))
    pages_in: Texts = Field(default_factory=list)
    decimal_sign: Text = Field(default_factory=lambda: default("."))
    bench_step: Text = Field(default_factory=lambda: default("0.5 mm"))
    humidity: Text | None = None
    emergency: Text | None = None
    address: Text | None = None
    paper: Texts = Field(default_factory=lambda: [default("A4"), default("Letter")])
    slab_width: Text | None = None
    slab_length: Text | None = None
    slab_gap: Text = Field(default_factory=lambda: default("3 mm"))
    bed_depth: Text | None = None
    sheets: Texts = Field(default_factory=list)
    teachers_sheets: Text = Field(default_factory=lambda: default("for the studio"), alias="teacher's sheets")
    class_: Class | None = None
    shops: dict[Text, WrittenShop] = Field(default_factory=dict)
    labels: WrittenLabels | None = None
    licence: WrittenLicence | None = None
