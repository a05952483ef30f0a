"""Pages for a booklet that is printed on both sides, folded and stapled: two on each side of a sheet, in the order that folding needs."""

from __future__ import annotations

from collections.abc import Mapping
from io import BytesIO

from motifold.render.booklet.boxes import Page, words_line
from motifold.render.booklet.contents import planned
from motifold.render.booklet.inline import Type
from motifold.render.booklet.model import BookletContent, PaperName
from motifold.render.booklet.paint import paint_flat
from motifold.render.booklet.paper import grid_of
from motifold.render.booklet.styles import QUIET
from motifold.render.drawing.numbers import clean_words
from motifold.render.drawing.pdf import open_canvas

SHEETS: Mapping[PaperName, PaperName] = {"A4": "A5", "Letter": "Half Letter"}
"""The sheet in the printer, and the page that half of it makes."""

HOW_TO_PRINT = "Print on both sides, flipped on the short edge, at 100 %; fold in the middle and staple along the fold."
_LEFT_OUT = "Laid out for folding: contents, links and the structure for screen readers are in the booklet that is not."

Spread = tuple[int | None, int | None]


def imposed(pages: int) -> list[Spread]:
    """The pages on the left and on the right of each side of each sheet, front and back in turn; None where nothing is printed.

    Sheet k of n / 4 has n - 2k + 2 and 2k - 1 on its front, 2k and n - 2k + 1 on its back, for n pages rounded up to a multiple of four
    (the usual rule of printers: the numbers of a pair come to n + 1, odd pages lie on the right). White pages come at the end, where they
    interrupt nothing.

    >>> imposed(8)
    [(8, 1), (2, 7), (6, 3), (4, 5)]
    >>> imposed(3)
    [(None, 1), (2, 3)]
    """
    if pages == 0:
        return []
    full = -(-pages // 4) * 4
    sides: list[Spread] = []
    for sheet in range(1, full // 4 + 1):
        for left, right in ((full - 2 * sheet + 2, 2 * sheet - 1), (2 * sheet, full - 2 * sheet + 1)):
            sides.append((left if left <= pages else None, right if right <= pages else None))
    return sides


def make_folded(content: BookletContent) -> bytes:
    """The booklet as sheets for folding. ``content`` is set on half of the sheet (a value of ``SHEETS``)."""
    grid = grid_of(content.style)
    pages = planned(content).pages
    buffer = BytesIO()
    canvas = open_canvas(buffer, content.document.language)
    canvas.setTitle(clean_words(content.document.title))
    canvas.setAuthor(clean_words(content.author))
    canvas.setSubject(f"{_LEFT_OUT} {HOW_TO_PRINT}")
    told = len(pages) % 4 == 0  # no white page to say how to print on
    for side in imposed(len(pages)):
        canvas.setPageSize((2 * grid.width, grid.height))
        for slot, number in enumerate(side):
            canvas.saveState()
            canvas.translate(slot * grid.width, 0)
            if number is not None:
                paint_flat(pages[number - 1], grid, canvas, content.style.mono)
            elif not told:
                paint_flat(_note(content, len(pages) + 1), grid, canvas, content.style.mono)
                told = True
            canvas.restoreState()
        canvas.showPage()
    canvas.save()
    return buffer.getvalue()


def _note(content: BookletContent, number: int) -> Page:
    """A page that is white but for how it is printed, small at its foot."""
    grid = grid_of(content.style)
    kind = Type("sans", 7.0, QUIET)
    lines = HOW_TO_PRINT.split("; ")
    top = grid.top + grid.text_height - 10 * (len(lines) - 1)
    marks = tuple(words_line(line, kind, grid.left(number), top + 10 * place) for place, line in enumerate(lines))
    return Page(number, (), None, marks)

