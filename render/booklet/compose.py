"""A booklet's bytes, from its content."""

from __future__ import annotations

from io import BytesIO

from motifold.render.booklet.contents import planned
from motifold.render.booklet.model import BookletContent
from motifold.render.booklet.paint import paint
from motifold.render.booklet.paper import grid_for
from motifold.render.booklet.structure import Metadata, tagged
from motifold.render.drawing.numbers import clean_words
from motifold.render.drawing.pdf import open_canvas


def make_booklet(content: BookletContent) -> bytes:
    """The booklet as a tagged PDF; the same content gives the same bytes (dates are fixed, or SOURCE_DATE_EPOCH's)."""
    grid = grid_for(content.style.paper)
    buffer = BytesIO()
    document = content.document
    canvas = open_canvas(buffer, document.language, compress=False)  # compressed when the tree is written
    metadata = Metadata(clean_words(document.title), clean_words(content.author), clean_words(content.cover.summary), document.language)
    canvas.setTitle(metadata.title)
    canvas.setAuthor(metadata.author)
    canvas.setSubject(metadata.subject)
    marked = paint(planned(content).pages, grid, canvas, content.style.mono)
    canvas.save()
    return tagged(buffer.getvalue(), marked, metadata)
