"""Structure trees put together: what is read aloud of several PDFs, as the parts of one document.

ISO 32000-1, 14.7: pages and links count their places in a tree of parents, and names of cells are known to one tree of
names, so both are told apart by document.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from pikepdf import Array, Dictionary, Name, NumberTree, Stream, String

if TYPE_CHECKING:
    from collections.abc import Iterator

    from pikepdf import Object, Pdf

ELEMENT = "/StructElem"
PLACES = ("/StructParents", "/StructParent")


class Tagged:
    """The structure tree of `pdf`: for each document first `apart`, then its pages are brought over, then `join`."""

    def __init__(self, pdf: Pdf) -> None:
        self.pdf = pdf
        self.next = self.documents = 0
        self.parts: list[Object] = []
        self.places: list[Object | int] = []
        self.named: dict[bytes, Object] = {}
        self.roles: dict[str, Object] = {}
        self.spaces: list[Object] = []

    def apart(self, source: Pdf) -> None:
        """Count the places of a document on from those before it, and tell its names from theirs."""
        self.documents += 1
        for one in _dictionaries(source):
            for key in PLACES:
                if key in one:
                    one[key] = int(one[key]) + self.next
        for element in (one for one in source.objects if isinstance(one, Dictionary) and one.get("/Type") == ELEMENT):
            if "/ID" in element:
                element.ID = self._own(element.ID)
            attributes = element.get("/A", Array())
            for one in attributes if isinstance(attributes, Array) else [attributes]:
                if isinstance(one, Dictionary) and "/Headers" in one:
                    one.Headers = Array([self._own(name) for name in one.Headers])

    def _own(self, name: Object) -> String:
        return String(f"{self.documents}-".encode() + bytes(name))

    def join(self, source: Pdf) -> None:
        """Bring the tree of a document over, its pages being here: what was its document is a part of this one."""
        tree = source.Root.StructTreeRoot
        places = dict(NumberTree(tree.ParentTree).items())
        # both in one array, so that an element which both name is brought over once
        tops = _children(tree)
        for top in tops:
            del top.P
        both = source.make_indirect(Array([Array(tops), Array(list(places.values()))]))
        brought, values = self.pdf.copy_foreign(both)
        for part in brought:
            if str(part.S) == "/Document":
                part.S = Name.Part
            if "/Lang" in source.Root:
                part.Lang = String(str(source.Root.Lang))
            self.parts.append(part)
        for place, value in zip(places, values, strict=True):
            self.places += [place + self.next, value]
        self.next += max(places, default=-1) + 1
        for key, role in tree.get("/RoleMap", Dictionary()).items():
            self.roles.setdefault(key, role)
        self.spaces += [self.pdf.copy_foreign(space) for space in tree.get("/Namespaces", Array())]

    def written(self) -> Object:
        """The tree as it goes into the catalogue."""
        root = self.pdf.make_indirect(Dictionary(Type=Name.StructTreeRoot))
        whole = self.pdf.make_indirect(Dictionary(Type=Name.StructElem, S=Name.Document, P=root, K=Array(self.parts)))
        for part in self.parts:
            part.P = whole
        root.K = Array([whole])
        root.ParentTree = self.pdf.make_indirect(Dictionary(Nums=Array(self.places)))
        root.ParentTreeNextKey = self.next
        names = {bytes(one.ID): one for one in _elements(root) if "/ID" in one}
        if names:
            pairs = [half for name in sorted(names) for half in (String(name), names[name])]
            root.IDTree = self.pdf.make_indirect(Dictionary(Names=Array(pairs)))
        if self.roles:
            root.RoleMap = Dictionary(self.roles)
        if self.spaces:
            root.Namespaces = Array(self.spaces)
        return root


def _dictionaries(source: Pdf) -> Iterator[Object]:
    """Whatever of a document may hold a place of its own: pages, pictures, links."""
    links = (link for page in source.pages for link in page.obj.get("/Annots", Array()))
    yield from (one for one in source.objects if isinstance(one, Dictionary | Stream))
    yield from (link for link in links if not link.is_indirect)


def _children(element: Object) -> list[Object]:
    """The elements right below one."""
    kids = element.get("/K", Array())
    return [kid for kid in (kids if isinstance(kids, Array) else [kids]) if isinstance(kid, Dictionary) and "/S" in kid]


def _elements(tree: Object) -> Iterator[Object]:
    """Every element of a tree."""
    waiting = _children(tree)
    while waiting:
        element = waiting.pop()
        yield element
        waiting += _children(element)
