"""Sheets and the grid that every page is built on: margins, columns and one baseline for all text. Points, y down from the top edge."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from motifold.render.booklet.model import Look, PageStyle, PaperName
from motifold.render.drawing.numbers import MM_PER_PT
from motifold.render.drawing.papers import SHEETS_MM
from motifold.symbols.record import dataclass

PAPERS_MM: Mapping[PaperName, tuple[float, float]] = SHEETS_MM

LARGE_ZOOM = 1.85  # letters of 9 points in a drawing come out at 16.6
CLOSEST = 2  # lines: leading 1.33 instead of 1.38 times the size of the text on A4, 1.27 instead of 1.34 on A5


@dataclass(frozen=True, slots=True)
class Grid:
    """One sheet's grid, in points. ``leading``: from baseline to baseline of the text; every block is a whole number of them high.

    ``inner``: the margin at the fold, ``outer`` at the edge. ``body``: size of the text. ``scale``: for all larger and smaller type.
    ``zoom``: how much larger drawings are printed, with their words.
    """

    width: float
    height: float
    inner: float
    outer: float
    top: float
    lines: int
    leading: float
    columns: int
    gutter: float
    body: float
    scale: float
    zoom: float = 1.0

    @property
    def text_width(self) -> float:
        return self.width - self.inner - self.outer

    @property
    def text_height(self) -> float:
        return self.lines * self.leading

    @property
    def column_width(self) -> float:
        return self.width_of(self.columns)

    def width_of(self, across: int) -> float:
        """How wide each is of so many columns side by side."""
        return (self.text_width - (across - 1) * self.gutter) / across

    def drawn_mm(self, points: float) -> float:
        """How many mm a drawing may have for so many points of the page, before it is enlarged."""
        return points * MM_PER_PT / self.zoom

    def left(self, page: int) -> float:
        """The left edge of the text on page ``page`` (from 1; odd pages lie on the right)."""
        return self.inner if page % 2 else self.outer

    def snapped(self, height: float) -> float:
        """``height`` rounded up to whole lines of the grid."""
        lines = -(-(height - 1e-6) // self.leading)
        return max(lines, 0.0) * self.leading


def grid_of(style: Look | PageStyle, closer: int = 0) -> Grid:
    """The grid of the sheet and the print that are wanted; ``closer`` as in ``grid_for``."""
    return grid_for(style.paper, closer, style.large_print)


def grid_for(paper: PaperName, closer: int = 0, large: bool = False) -> Grid:
    """A4 and Letter: two columns of about fifty characters. A5 and half a Letter sheet: one column, its headings smaller.

    ``closer``: so many more lines on a page of the same height (0 to ``CLOSEST``). ``large``: large print, one column on any sheet.
    """
    grid = _large_grid(paper) if large else _loose_grid(paper)
    lines = grid.lines + min(closer, CLOSEST)
    return replace(grid, lines=lines, leading=grid.text_height / lines)


def _loose_grid(paper: PaperName) -> Grid:
    width, height = (side / MM_PER_PT for side in PAPERS_MM[paper])
    if paper in ("A5", "Half Letter"):
        leading, top, bottom = 13.4, 52.0, 46.0
        inner, outer = (52.0, 46.0) if paper == "A5" else (44.0, 38.0)
        return Grid(width, height, inner, outer, top, int((height - top - bottom) // leading), leading, 1, 16.0, 10.0, 0.88)
    leading, top, bottom = 13.5, 68.0, 62.0
    return Grid(width, height, 58.0, 52.0, top, int((height - top - bottom) // leading), leading, 2, 24.0, 9.8, 1.0)


def _large_grid(paper: PaperName) -> Grid:
    """Text of 18 points, as those who print for people with low vision ask for (16 to 18 at least); letters of drawings 16 or so."""
    small = _loose_grid(paper)
    leading, body = 25.0, 18.0
    top, bottom = 78.0, 66.0
    lines = int((small.height - top - bottom) // leading)
    return Grid(small.width, small.height, small.inner, small.outer, top, lines, leading, 1, 24.0, body, 1.7, LARGE_ZOOM)
