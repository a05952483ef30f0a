"""Pages drawn on a canvas, every mark inside marked content (ISO 32000-1, 14.6): tagged with its structure element, or an artifact."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from typing import Any

from motifold.render.booklet.boxes import BoxMark, Destination, LineOfWords, Page, Picture, Rectangle, Tags, moved
from motifold.render.booklet.inline import Type, Word, has_fraction, spelled
from motifold.render.booklet.links import Link, linked_parts, links_of
from motifold.render.booklet.paper import Grid
from motifold.render.booklet.shared import Finals, draw_picture, finals_of
from motifold.render.drawing.fonts import UNITS_PER_EM, Glyph, shape
from motifold.render.drawing.numbers import number
from motifold.render.drawing.pdf import color_operator, text_operators
from motifold.symbols.record import dataclass

_ABOVE = 12.0                # points of white above what one is led to


@dataclass(frozen=True, slots=True)
class Marked:
    """One piece of marked content: on page ``page`` (from 0), with the id ``mcid`` there; ``tags`` from the outermost inwards."""

    page: int
    mcid: int
    tags: Tags


@dataclass(frozen=True, slots=True)
class Painted:
    """What the pages hold: marked content in reading order, links, and destinations as (key, page from 0, points from its foot)."""

    marked: tuple[Marked, ...]
    links: tuple[Link, ...]
    destinations: tuple[tuple[str, int, float], ...]


def paint(pages: Sequence[Page], grid: Grid, canvas: Any, mono: bool) -> Painted:
    """Draws all pages. Destinations with a level get an outline entry."""
    marked: list[Marked] = []
    known = {placed.box.destination.key for page in pages for placed in page.placed if placed.box.destination}
    links: list[Link] = []
    destinations = []
    finals = finals_of(pages, canvas, mono)
    for index, page in enumerate(pages):
        canvas.setPageSize((grid.width, grid.height))
        for placed in page.placed:
            if placed.box.destination:
                top = min(grid.height - placed.y + _ABOVE, grid.height)
                _outline(placed.box.destination, canvas, top)
                destinations.append((placed.box.destination.key, index, top))
        marks = [part for mark in _marks_of(page) for part in linked_parts(mark, known)]
        links += links_of(marks, index, grid)
        marked += _paint_page(marks, page, index, grid, canvas, mono, finals)
        canvas.showPage()
    return Painted(tuple(marked), tuple(links), tuple(destinations))


def paint_flat(page: Page, grid: Grid, canvas: Any, mono: bool) -> None:
    """One page without tags, links and destinations, where the canvas stands: for sheets that are folded, not read on a screen."""
    _paint_run([*_marks_of(page), *page.furniture], grid, canvas, mono, finals_of([page], canvas, mono))


def _marks_of(page: Page) -> list[BoxMark]:
    return [moved(mark, placed.x, placed.y) for placed in page.placed for mark in placed.box.marks]


def _outline(destination: Destination, canvas: Any, top: float) -> None:
    canvas.bookmarkHorizontal(destination.key, 0, top)
    if destination.level is not None:
        canvas.addOutlineEntry(destination.title, destination.key, destination.level, closed=0)


def _paint_page(
    marks: Sequence[BoxMark], page: Page, index: int, grid: Grid, canvas: Any, mono: bool, finals: Finals
) -> list[Marked]:
    marked: list[Marked] = []
    for tags, run in _runs(marks):
        if tags:
            canvas.addLiteral(f"/{tags[-1].name} <</MCID {len(marked)}>> BDC")
            marked.append(Marked(index, len(marked), tags))
        else:
            canvas.addLiteral("/Artifact <</Type /Layout>> BDC")
        _paint_run(run, grid, canvas, mono, finals)
        canvas.addLiteral("EMC")
    if page.furniture:
        canvas.addLiteral("/Artifact <</Type /Pagination>> BDC")
        _paint_run(page.furniture, grid, canvas, mono, finals)
        canvas.addLiteral("EMC")
    return marked


def _tags_of(mark: BoxMark) -> Tags:
    return () if isinstance(mark, Rectangle) else mark.tags


def _runs(marks: Iterable[BoxMark]) -> Iterable[tuple[Tags, list[BoxMark]]]:
    """Neighbouring marks of one element together."""
    run: list[BoxMark] = []
    for mark in marks:
        if run and _tags_of(mark) != _tags_of(run[0]):
            yield _tags_of(run[0]), run
            run = []
        run.append(mark)
    if run:
        yield _tags_of(run[0]), run


def _paint_run(marks: Iterable[BoxMark], grid: Grid, canvas: Any, mono: bool, finals: Finals) -> None:
    lines: list[str] = []
    for mark in marks:
        match mark:
            case LineOfWords():
                lines += _line(mark, grid.height, canvas)
            case Rectangle():
                lines += _rectangle(mark, grid.height, mono)
            case Picture():
                draw_picture(mark, grid.height, finals, canvas, mono)
    if lines:
        canvas.addLiteral("\n".join(lines))


def _rectangle(mark: Rectangle, page_height: float, mono: bool) -> list[str]:
    from motifold.render.drawing.measure import grey_of

    fill, outline = (grey_of(color) if mono and color else color for color in (mark.color, mark.outline))
    box = " ".join(number(value) for value in (mark.x, page_height - mark.y - mark.height, mark.width, mark.height))
    painted = [color_operator(fill or "#ffffff", stroke=False), f"{box} re f"]
    if outline:
        painted += [color_operator(outline, stroke=True), f"0.4 w {box} re S"]
    return painted


def _pieces(words: Sequence[Word], ends: bool) -> list[tuple[str, Type]]:
    """The line as stretches of one type, spaces in them; a line that goes on ends with a space, as reading it aloud needs."""
    pieces: list[tuple[str, Type]] = []
    for position, word in enumerate(words):
        for text, kind in word.pieces:
            if pieces and pieces[-1][1] == kind:
                pieces[-1] = (pieces[-1][0] + text, kind)
            else:
                pieces.append((text, kind))
        if not word.glued and (position < len(words) - 1 or not ends):
            pieces[-1] = (pieces[-1][0] + " ", pieces[-1][1])
    return pieces


def _stretches(words: Sequence[Word], ends: bool) -> list[tuple[list[tuple[str, Type]], str]]:
    """The line's pieces, with what is to be read for them where that differs: a composed fraction's figures mean little by themselves."""
    runs: list[list[Word]] = []
    for word in words:
        if not runs or has_fraction(word) or has_fraction(runs[-1][-1]):
            runs.append([])
        runs[-1].append(word)
    stretches = []
    for place, run in enumerate(runs):
        pieces = _pieces(run, ends and place == len(runs) - 1)
        read = spelled("".join(text for text, _ in pieces)) if has_fraction(run[0]) else ""
        stretches.append((pieces, read))
    return stretches


def _line(mark: LineOfWords, page_height: float, canvas: Any) -> list[str]:
    operators = []
    x = mark.x
    for pieces, read in _stretches(mark.words, mark.ends):
        shown, x = _shown(pieces, x, mark, page_height, canvas)
        if read and shown:
            code = (chr(0xFEFF) + read).encode("utf-16-be").hex().upper()
            shown = [f"/Span <</ActualText <{code}>>> BDC", *shown, "EMC"]
        operators += shown
    return operators


def _shown(
    pieces: Sequence[tuple[str, Type]], x: float, mark: LineOfWords, page_height: float, canvas: Any
) -> tuple[list[str], float]:
    """Operators for pieces from ``x`` on, and where the next one stands."""
    operators = []
    for text, kind in pieces:
        glyphs = _tracked(shape(text, kind.face), kind.tracking)
        if not glyphs:
            continue
        shown = text_operators(glyphs, kind.size, canvas)
        y = page_height - mark.y + kind.rise * kind.size / 1000
        operators.append(f"{color_operator(kind.color, stroke=False)} BT 1 0 0 1 {number(x)} {number(y)} Tm {shown} ET")
        x += (glyphs[-1].x + glyphs[-1].advance) / UNITS_PER_EM * kind.size
    return operators, x


def _tracked(glyphs: tuple[Glyph, ...], tracking: float) -> tuple[Glyph, ...]:
    if not tracking:
        return glyphs
    return tuple(replace(glyph, x=glyph.x + place * tracking, advance=glyph.advance + tracking) for place, glyph in enumerate(glyphs))
