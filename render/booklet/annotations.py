"""Links as annotations that belong to the structure tree (ISO 32000-1, 12.5.6.5 and 14.7.4.3; ISO 14289-1, 7.18)."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from motifold.render.booklet.boxes import Tags
from motifold.render.booklet.links import Link

if TYPE_CHECKING:
    import pikepdf

_PRINTED = 4   # annotation flag bit 3


class Touched:
    """The links of a document while its tree is written: each is put on its page, and handed to the element that holds its words."""

    def __init__(self, pdf: pikepdf.Pdf, pages: Sequence[Any], links: Sequence[Link]) -> None:
        self._pdf = pdf
        self._pages = pages
        self._waiting: dict[Tags, list[Link]] = {}
        for link in links:
            self._waiting.setdefault(link.tags, []).append(link)
        self._elements: list[Any] = []

    def references(self, path: Tags, element: Any) -> list[Any]:
        """The annotations of the element at ``path``, as its children."""
        from pikepdf import Array, Dictionary, Name

        found = []
        for link in self._waiting.pop(path, ()):
            page = self._pages[link.page]
            annotation = self._pdf.make_indirect(self._annotation(link, len(self._pages) + len(self._elements)))
            if "/Annots" not in page:
                page.Annots = self._pdf.make_indirect(Array())
            page.Annots.append(annotation)
            self._elements.append(element)
            found.append(Dictionary(Type=Name.OBJR, Pg=page, Obj=annotation))
        return found

    def _annotation(self, link: Link, number: int) -> Any:
        import pikepdf
        from pikepdf import Array, Dictionary, Name

        annotation = Dictionary(
            Type=Name.Annot,
            Subtype=Name.Link,
            Rect=Array([round(value, 3) for value in link.rectangle]),
            Border=Array([0, 0, 0]),
            F=_PRINTED,
            Contents=pikepdf.String(link.words),
            StructParent=number,
        )
        if link.target.startswith("#"):
            annotation.Dest = pikepdf.String(link.target[1:])
        else:
            annotation.A = Dictionary(S=Name.URI, URI=pikepdf.String(link.target))
        return annotation

    def numbers(self) -> list[Any]:
        """Entries of the parent tree: which element each annotation belongs to, numbered after the pages."""
        entries: list[Any] = []
        for place, element in enumerate(self._elements):
            entries += [len(self._pages) + place, element]
        return entries


def write_destinations(pdf: pikepdf.Pdf, destinations: Sequence[tuple[str, int, float]]) -> None:
    """Every place by its name (ISO 32000-1, 12.3.2.3), so that links from here and from outside find it; the first of a name counts."""
    import pikepdf
    from pikepdf import Array, Dictionary, Name

    places: dict[str, Any] = {}
    for key, page, top in destinations:
        places.setdefault(key, Array([pdf.pages[page].obj, Name.XYZ, 0, round(top, 3), None]))
    if places:
        names = [part for key in sorted(places) for part in (pikepdf.String(key), places[key])]
        pdf.Root.Names = Dictionary(Dests=pdf.make_indirect(Dictionary(Names=Array(names))))
