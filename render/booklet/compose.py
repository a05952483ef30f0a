"""A booklet's bytes, from its content."""

from __future__ import annotations

from collections.abc import Sequence
from io import BytesIO

from motifold.render.booklet.boxes import Page
from motifold.render.booklet.contents import planned
from motifold.render.booklet.model import BookletContent
from motifold.render.booklet.paint import paint
from motifold.render.booklet.paper import grid_of
from motifold.render.booklet.sheet import sheet_pages
from motifold.render.booklet.structure import Metadata, tagged
from motifold.render.drawing.numbers import clean_words
from motifold.render.drawing.pdf import open_canvas


def make_booklet(content: BookletContent) -> bytes:
    """The booklet as a tagged PDF; the same content gives the same bytes (dates are the edition's, SOURCE_DATE_EPOCH's, or fixed)."""
    return written(content, planned(content).pages)


def make_sheet(content: BookletContent) -> bytes:
    """The words of ``content`` alone, without cover and figures, as a tagged PDF."""
    return written(content, sheet_pages(content))


def written(content: BookletContent, pages: Sequence[Page]) -> bytes:
    """Pages that were planned, as a tagged PDF."""
    grid = grid_of(content.style)
    buffer = BytesIO()
    document = content.document
    canvas = open_canvas(buffer, document.language, compress=False)  # compressed when the tree is written
    edition = content.edition
    metadata = Metadata(
        clean_words(document.title), clean_words(content.author), clean_words(content.cover.summary), document.language,
        clean_words(edition.version or ""), edition.date or "", clean_words(edition.copyright or ""), clean_words(edition.licence or ""),
        clean_words(edition.web or ""),
    )
    canvas.setTitle(metadata.title)
    canvas.setAuthor(metadata.author)
    canvas.setSubject(metadata.subject)
    painted = paint(pages, grid, canvas, content.style.mono)
    canvas.save()
    return tagged(buffer.getvalue(), painted, metadata)
