"""The types of one booklet: which face, size and colour each part of the text is set in."""

from __future__ import annotations

from motifold.render.booklet.inline import Type
from motifold.render.booklet.model import PageStyle
from motifold.render.booklet.paper import Grid
from motifold.render.drawing.measure import contrast
from motifold.symbols.record import dataclass

INK = "#1a1a1a"
QUIET = "#595959"    # 7:1 on white
HAIR = "#b8b8b8"     # hairlines: nothing is read from them
WASH = "#f3f3f1"     # behind cautions


@dataclass(frozen=True, slots=True)
class Styles:
    """Serif to read, sans to find: headings, labels, numbers in tables."""

    body: Type
    strong: Type
    italic: Type
    label: Type
    counts: Type
    part: Type          # H2 that opens a page
    section: Type       # H2 within the columns
    small_section: Type
    caption: Type
    table: Type
    table_head: Type
    head: Type
    folio: Type
    accent: str
    wash: str


def accent_of(style: PageStyle) -> str:
    """The accent as it is printed: the ink itself in mono, and never lighter than reads at 4.5:1 (WCAG 2, 1.4.3)."""
    color = INK if style.mono else style.accent
    while contrast(color, "#ffffff") < 4.5:
        color = "#" + "".join(f"{int(int(color[i : i + 2], 16) * 0.9):02x}" for i in (1, 3, 5))
    return color


def styles_for(grid: Grid, style: PageStyle) -> Styles:
    accent = accent_of(style)
    size, scale = grid.body, grid.scale
    small = round(min(8.4 * max(scale, 0.95) * (1.1 if grid.zoom > 1 else 1.0), size), 2)
    return Styles(
        body=Type("serif", size, INK),
        strong=Type("serif-bold", size, INK),
        italic=Type("serif-italic", size, INK),
        label=Type("sans-bold", size, accent),
        counts=Type("sans", round(size - 0.7, 2), QUIET),
        part=Type("serif-bold", round(23 * scale, 2), INK),
        section=Type("sans-bold", round(12.2 * scale, 2), accent),
        small_section=Type("sans-bold", size, INK),
        caption=Type("sans-italic", small, QUIET),
        table=Type("sans", round(size - 0.7, 2), INK),
        table_head=Type("sans-bold", small, accent),
        head=Type("sans", round(8.0 * max(scale, 0.95), 2), QUIET),
        folio=Type("sans-bold", round(8.6 * max(scale, 0.95), 2), INK),
        accent=accent,
        wash=WASH,
    )
