"""What a plan of pages is worth: how full they are, how large the charts came out. The unit of all costs is one page of paper."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from motifold.render.booklet.boxes import Box, LineOfWords, Page, Picture, PlacedBox, height_of
from motifold.render.booklet.linebreak import line_width
from motifold.render.booklet.model import Figure
from motifold.render.booklet.paper import Grid

WHITE = 0.8           # a page left wholly white, besides the paper
NEARLY_EMPTY = 0.2    # a last page filled less than this looks like a mistake
_MISTAKE = 0.45
OVERLEAF = 1.6        # rounds that are read on the back of their chart
FOR_NOTES = 0.6       # a page of ruled lines that nobody asked for
_TORN = 0.45          # a table that goes on overleaf
_WITHIN = 0.06        # a page that ends within a part, not before the next one's heading
_STRAY = 0.15         # the last lines of something alone at the head of a page
_STRAY_LINES = 3.5
_ILLEGIBLE = 1.5
_SMALL = 2.0          # a chart that can just be read
_MODEST = 0.35         # a chart at its comfortable size


Inks = dict[tuple[int, float], tuple[Box, tuple[float, ...]]]
"""Boxes by their identity and place across the page: how far down each column they are inked, from their own top (0: not at all).

Plans that are compared place the same boxes again and again.
"""


def filled(page: Page, grid: Grid, inks: Inks | None = None) -> float:
    """How far down its columns a page is filled, 0 to 1."""
    return sum(depths(page.placed, grid, page.number, {} if inks is None else inks)) / grid.columns


def depths(placed: Iterable[PlacedBox], grid: Grid, number: int, inks: Inks) -> list[float]:
    """For each column the share of its height down to the lowest words or picture in it."""
    left, top, height = grid.left(number), grid.top, grid.text_height
    lowest = [0.0] * grid.columns
    for one in placed:
        start = one.x - left
        known = inks.get((id(one.box), start))
        if known is None:  # the box is kept, so that its identity stays its own
            known = inks[(id(one.box), start)] = (one.box, _ink(one.box, start, grid))
        for column, foot in enumerate(known[1]):
            if foot and one.y + foot > lowest[column]:
                lowest[column] = one.y + foot
    return [min(1.0, max(0.0, (y - top) / height)) for y in lowest]


def _ink(box: Box, start: float, grid: Grid) -> tuple[float, ...]:
    """For each column how far down the words and pictures of a box reach that begins ``start`` from the left edge of the text."""
    edges = [column * (grid.column_width + grid.gutter) for column in range(grid.columns)]
    feet = [0.0] * grid.columns
    for mark in box.marks:
        if isinstance(mark, LineOfWords):
            x, width, foot = start + mark.x, line_width(mark.words), mark.y
        elif isinstance(mark, Picture):
            x, width, foot = start + mark.x, mark.width, mark.y + mark.height
        else:
            continue
        for column, edge in enumerate(edges):
            if x + width > edge + 2 and x < edge + grid.column_width - 2:
                feet[column] = max(feet[column], foot)
    return tuple(feet)


def cost_of_white(page: Page, grid: Grid, inks: Inks | None = None) -> float:
    """By the square: two pages half filled are better than a full one before one with a line."""
    return WHITE * (1.0 - filled(page, grid, inks)) ** 2


def cost_of_break(rest: Sequence[Box], leading: float) -> float:
    """What the turning of a page tears: a table; a few last lines from all that they belong to."""
    if not rest:
        return 0.0
    torn = _TORN if rest[0].continued else _WITHIN if rest[0].destination is None else 0.0
    return torn + (_STRAY if height_of(rest) < _STRAY_LINES * leading else 0.0)


def cost_of_pages(pages: Sequence[Page], grid: Grid) -> float:
    """Paper and white of all pages behind the cover; white on the last is as it falls, unless hardly anything stands there."""
    inner = pages[1:]
    white = sum(cost_of_white(page, grid) for page in inner[:-1])
    last = filled(inner[-1], grid) if inner else 1.0
    return len(inner) + white + (_MISTAKE * (1.0 - last) if last < NEARLY_EMPTY and len(inner) > 1 else 0.0)


def cost_of_size(figure: Figure, scale: float) -> float:
    """How much paper a larger chart would be worth: much below what is legible, little above what is comfortable."""
    if scale < figure.smallest * 0.999:
        return _SMALL + _ILLEGIBLE * (figure.smallest / max(scale, 1e-3) - 0.8)
    comfortable, largest = max(figure.comfortable, figure.smallest), max(figure.largest, figure.comfortable)
    if scale < comfortable:
        return _MODEST + (_SMALL - _MODEST) * (comfortable - scale) / max(comfortable - figure.smallest, 1e-6)
    return _MODEST * (largest - scale) / max(largest - comfortable, 1e-6)
