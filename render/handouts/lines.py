"""Lines to write on."""

from __future__ import annotations

from collections.abc import Sequence

from motifold.render.booklet.blocks import Setting, baseline
from motifold.render.booklet.boxes import Box, BoxMark, Rectangle, Tag, Tags, words_line
from motifold.render.booklet.inline import typeset, width_of

PENCIL = "#8c8c8c"  # to write on: lighter than what is read
_THIN = 0.4
_BETWEEN = 1.8  # lines of the grid from one field to the next


def ruled(width: float, step: float, height: float) -> list[Rectangle]:
    """Thin lines ``step`` points apart, the first one step down, as many as ``height`` holds; one at the top where ``step`` is 0."""
    if not step:
        return [Rectangle(0.0, 0.0, width, _THIN, PENCIL)]
    return [Rectangle(0.0, step * number, width, _THIN, PENCIL) for number in range(1, int((height + 0.01) // step) + 1)]


def fields(labels: Sequence[str], width: float, setting: Setting, tags: Tags, key: str) -> Box:
    """"Name ________ Date ________": labels side by side, each with a line to the next."""
    grid, kind = setting.grid, setting.styles.strong
    height = _BETWEEN * grid.leading
    each = (width - grid.gutter * (len(labels) - 1)) / len(labels)
    marks: list[BoxMark] = []
    for place, label in enumerate(labels):
        x, y = place * (each + grid.gutter), height - grid.leading + baseline(grid.leading)
        words = typeset(label)
        marks.append(words_line(words, kind, x, y, (*tags, Tag("P", f"{key}/{place}"))))
        indent = width_of(words, kind) + 6.0
        marks.append(Rectangle(x + indent, y + 1.5, each - indent, _THIN, PENCIL))
    return Box(grid.snapped(height), tuple(marks))
