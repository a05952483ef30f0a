"""The cells of a handout: a label, what is written, a drawing and lines for notes; how many share a page, so that all can be read."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace

from motifold.render.booklet.blocks import Setting, heading, set_words
from motifold.render.booklet.boxes import Box, BoxMark, Picture, Tag, Tags, beside, moved, stacked
from motifold.render.booklet.inline import typeset, width_of
from motifold.render.booklet.paper import Grid
from motifold.render.drawing.display import Drawing
from motifold.render.drawing.numbers import MM_PER_PT
from motifold.render.handouts.lines import ruled
from motifold.symbols.record import dataclass

LEAST_NOTES = 2          # lines to write on in every cell
_SHARE = 0.5             # of a cell's width, for a drawing beside its words
MOST_ROWS = 4            # of those on a page
_NARROWEST = 50.0 / MM_PER_PT


@dataclass(frozen=True, slots=True)
class Line:
    """One written line: ``label`` in front of it ("" where the cell's own says it) and ``counts`` at its end."""

    label: str
    text: str
    counts: str = ""


@dataclass(frozen=True, slots=True)
class Cell:
    label: str
    lines: tuple[Line, ...]


Room = tuple[float, float]
"""Width and height in mm."""


@dataclass(frozen=True, slots=True)
class Fit:
    """``ease``: from 1 on all drawings are legible; ``legible``: how many are, from the first on.

    ``draw``: makes those of so many cells, in mm as they are printed (None: a cell has none).
    """

    ease: float
    legible: int
    draw: Callable[[int], tuple[Drawing | None, ...]]


@dataclass(frozen=True, slots=True)
class Piece:
    """A part of a handout: its cells, and how their drawings come out in a room for each.

    ``wide``: they are wider than high. ``charted``: they are charts, one for each cell.
    """

    title: str
    key: str
    intro: tuple[str, ...]
    cells: tuple[Cell, ...]
    fit: Callable[[Sequence[Room]], Fit]
    wide: bool = False
    charted: bool = False


@dataclass(frozen=True, slots=True)
class Parting:
    """A page's cells: ``across`` by ``down`` (0: rows as high as they need be, up to ``highest`` of a page).

    ``aside``: drawings stand on the left, words and notes on their right.
    """

    across: int
    down: int
    aside: bool = False
    highest: float = 0.55


PARTINGS = (
    Parting(2, 3), Parting(2, 2), Parting(2, 0), Parting(1, 4, True), Parting(1, 4), Parting(1, 0, True), Parting(1, 0),
    Parting(1, 0, highest=1.0),
)
"""The most cells to a page first."""


@dataclass(frozen=True, slots=True)
class Laid:
    """How one piece is set: the parting, how high a cell is at least, and its words and drawings, ready."""

    parting: Parting
    width: float
    height: float
    words: tuple[Box, ...]
    drawings: tuple[Drawing | None, ...]

    @property
    def left_out(self) -> int:
        """How many cells at the end have no drawing."""
        return len(self.drawings) - max((place for place, one in enumerate(self.drawings, 1) if one is not None), default=0)


def laid(piece: Piece, setting: Setting, page: float, tags: Tags) -> Laid | None:
    """The parting with most cells on a page ``page`` points high in which all drawings are legible.

    Where none is, the one in which most are; the others are left out. None where the words of a cell want more than a page.
    """
    best: tuple[Laid, Fit] | None = None
    for parting in PARTINGS:
        tried = _tried(piece, parting, setting, page, tags)
        if tried is not None and (best is None or tried[1].legible > best[1].legible):
            best = tried
        if best is not None and best[1].ease >= 1:
            break
    return None if best is None else replace(best[0], drawings=best[1].draw(best[1].legible))


def _tried(piece: Piece, parting: Parting, setting: Setting, page: float, tags: Tags) -> tuple[Laid, Fit] | None:
    """The cells in that parting, not yet drawn, and how legible they would be; None where words leave no room for a drawing."""
    grid, aside = setting.grid, parting.aside
    width = grid.width_of(parting.across)
    if (width < _NARROWEST and parting.across > 1) or (aside and (piece.wide or grid.columns == 1)):
        return None
    height = (page / parting.down if parting.down else parting.highest * page) // grid.leading * grid.leading
    narrow = setting.narrowed(width * (1 - _SHARE) - grid.gutter if aside else width)
    words = tuple(_words(cell, narrow, tags, f"{piece.key}/{place}") for place, cell in enumerate(piece.cells))
    notes = (LEAST_NOTES * 1.5 + 1.0) * grid.leading
    rooms: list[Room] = []
    for place in range(len(words)):
        first = place // parting.across * parting.across
        level = max(box.height for box in words[first : first + parting.across])
        room = height - head_height(grid) - (grid.leading if aside else level + notes + grid.leading)
        if room < 3 * grid.leading or level + notes + head_height(grid) > height:
            return None
        rooms.append(((width * _SHARE if aside else width) * MM_PER_PT, room * MM_PER_PT))
    return Laid(parting, width, height, words, ()), piece.fit(rooms)


def head_height(grid: Grid) -> float:
    """Above the words of a cell: its rule."""
    return 0.6 * grid.leading


def _words(cell: Cell, setting: Setting, tags: Tags, key: str) -> Box:
    return stacked(word_boxes(cell, setting, tags, key))


def word_boxes(cell: Cell, setting: Setting, tags: Tags, key: str) -> list[Box]:
    """The label as a heading and what is written below it, line by line."""
    styles = setting.styles
    boxes = heading(cell.label, 3, setting, (*tags, Tag("H3", key)))
    for place, line in enumerate(cell.lines):
        spans = [(typeset(f"{line.label}: "), styles.strong)] if line.label else []
        spans += [(typeset(line.text), styles.body)]
        spans += [(" ", styles.body), (typeset(line.counts), styles.counts)] if line.counts else []
        boxes += set_words(spans, setting, (*tags, Tag("P", f"{key}/{place}")))
    return boxes


@dataclass(frozen=True, slots=True)
class Row:
    """A row of cells: how high it is at least, and the row as a function of its height."""

    least: float
    made: Callable[[float], Box]


def rows_of(one: Laid, piece: Piece, setting: Setting, tags: Tags) -> list[Row]:
    """The rows of a piece from its first to its last."""
    across, grid = one.parting.across, setting.grid
    rows = []
    for start in range(0, len(piece.cells), across):
        places = range(start, min(start + across, len(piece.cells)))
        level = max(one.words[place].height for place in places)
        tallest = max((_height(one.drawings[place]) for place in places), default=0.0)
        notes_height = (LEAST_NOTES * 1.5 + 2.0) * grid.leading
        needed = head_height(grid) + (max(level + notes_height, tallest) if one.parting.aside else level + tallest + notes_height)
        least = one.height if one.parting.down else grid.snapped(needed)

        def made(height: float, places: Sequence[int] = places, level: float = level, tallest: float = tallest) -> Box:
            boxes = [_cell(one, place, height, level, tallest, setting, tags, f"{piece.key}/{place}") for place in places]
            return replace(beside([(index * (one.width + grid.gutter), box) for index, box in enumerate(boxes)]), height=height)

        rows.append(Row(least, made))
    return rows


def _height(drawing: Drawing | None) -> float:
    return drawing.height_mm / MM_PER_PT if drawing is not None else 0.0


def _cell(
    one: Laid, place: int, height: float, level: float, tallest: float, setting: Setting, tags: Tags, key: str
) -> Box:
    """One cell ``height`` points high; ``level``: below the words of its row, ``tallest``: the highest drawing of its row."""
    grid, aside = setting.grid, one.parting.aside
    top = head_height(grid)
    left = one.width * _SHARE + grid.gutter if aside else 0.0
    marks: list[BoxMark] = [replace(ruled(one.width, 0.0, 0.0)[0], color=setting.styles.accent, height=0.6)]
    marks += [moved(mark, left, top) for mark in one.words[place].marks]
    drawing = one.drawings[place]
    if drawing is not None:
        room = one.width * _SHARE if aside else one.width
        figure = (*tags, Tag("Figure", key, alt=drawing.description or drawing.title))
        y = top if aside else top + level + grid.leading * 0.5 + (tallest - _height(drawing)) / 2
        marks.append(Picture((room - drawing.width_mm / MM_PER_PT) / 2, y, drawing, 1.0, figure))
    begin = top + level + (grid.leading * 0.5 if aside or not tallest else grid.leading + tallest)
    marks += [moved(mark, left, begin) for mark in notes(one.width - left, height - begin - grid.leading, setting)]
    return Box(height, tuple(marks))


def notes(width: float, height: float, setting: Setting) -> list[BoxMark]:
    """"Notes", and lines to write on, filling the room. (All artifacts: there is nothing to read yet.)"""
    from motifold.render.booklet.boxes import words_line

    kind, step = setting.styles.caption, 1.5 * setting.grid.leading
    lines = ruled(width, step, height)
    if not lines:
        return []
    label = words_line("Notes", kind, 0.0, lines[0].y - 1.5)
    indent = width_of("Notes ", kind)
    return [label, replace(lines[0], x=indent, width=width - indent), *lines[1:]]
