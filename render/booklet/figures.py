"""Drawings as boxes: scaled to their room within what is legible, the caption below and never on another page."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from motifold.render.booklet.blocks import Setting, baseline
from motifold.render.booklet.boxes import Box, Destination, LineOfWords, Picture, Tag, Tags, beside, moved
from motifold.render.booklet.flow import Composer
from motifold.render.booklet.inline import typeset
from motifold.render.booklet.linebreak import broken, line_width
from motifold.render.booklet.model import Anew, Figure
from motifold.render.drawing.display import Drawing, Group, Transform
from motifold.render.drawing.numbers import MM_PER_PT

_LEAST_SCALE = 1e-3


def size_of(figure: Figure) -> tuple[float, float]:
    """Width and height at scale 1, in points."""
    return max(figure.drawing.width_mm, 0.1) / MM_PER_PT, max(figure.drawing.height_mm, 0.1) / MM_PER_PT


def for_width(figure: Figure, width: float) -> Figure:
    """The figure with the widest of its variants that needs no shrinking to ``width`` (else the narrowest)."""
    if not figure.variants:
        return figure
    by_width = sorted((figure.drawing, *figure.variants), key=lambda drawing: drawing.width_mm)
    fitting = [drawing for drawing in by_width if drawing.width_mm / MM_PER_PT <= width + 0.5]
    return replace(figure, drawing=fitting[-1] if fitting else by_width[0], variants=())


def scale_within(figure: Figure, width: float, height: float) -> float:
    """The largest scale that fits both, at most ``figure.largest``; always some, where a long caption leaves no room at all."""
    own_width, own_height = size_of(figure)
    return max(min(width / own_width, height / own_height, figure.largest), _LEAST_SCALE)


def turned(figure: Figure) -> Figure:
    """The figure lying on its left side, its caption upright."""
    one = figure.redrawn
    again = None if one is None else Anew(lambda scale: _turned(one.draw(scale)), one.grows[::-1], one.keeps[::-1])
    return replace(figure, drawing=_turned(figure.drawing), redrawn=again)


def _turned(drawing: Drawing) -> Drawing:
    left, bottom, right, top = drawing.box
    group = Group(drawing.operations, Transform(0.0, 1.0, -1.0, 0.0))
    return replace(drawing, box=(-top, left, -bottom, right), operations=(group,))


def caption_lines(figure: Figure, setting: Setting) -> int:
    kind = setting.styles.caption
    return len(broken(((typeset(figure.caption), kind),), setting.width)) if figure.caption else 0


def figure_box(figure: Figure, setting: Setting, tags: Tags, key: str, height: float, centred: bool = True) -> Box:
    """The drawing as large as ``setting.width`` and ``height`` allow, its caption in it; a whole number of grid lines high."""
    leading, styles = setting.grid.leading, setting.styles
    together = (*tags, Tag("Div", key))
    alt = figure.drawing.description or figure.caption or figure.drawing.title
    caption_leading = leading * 0.86
    lines = broken(((typeset(figure.caption), styles.caption),), setting.width) if figure.caption else ()
    caption_height = len(lines) * caption_leading + (leading * 0.35 if lines else 0.0)
    scale = scale_within(figure, setting.width, height - caption_height)
    own_width, own_height = size_of(figure)
    x = (setting.width - own_width * scale) / 2 if centred else 0.0
    top = own_height * scale + (leading * 0.35 if lines else 0.0)
    picture = Picture(x, 0.0, figure.drawing, scale, (*together, Tag("Figure", key, alt=alt)), figure.redrawn)
    caption_tags = (*together, Tag("Caption", key))
    alone = len(lines) == 1  # a caption of one line begins below its drawing, a longer one takes the column
    indent = max(0.0, min(x, setting.width - line_width(lines[0]))) if alone else 0.0
    words = tuple(
        LineOfWords(indent, top + place * caption_leading + baseline(caption_leading), line, caption_tags, line is lines[-1])
        for place, line in enumerate(lines)
    )
    named = Destination(key, figure.drawing.title, None) if figure.role == "net" else None  # what words may lead to
    height = min(setting.grid.snapped(own_height * scale + caption_height), max(height, 0.0))
    return Box(height, (picture, *words), destination=named)


def figure_row(figures: Sequence[tuple[Figure, str]], setting: Setting, tags: Tags, height: float, across: int = 0) -> Box:
    """Figures side by side in ``across`` equal columns (0: one for each), their captions level below the tallest."""
    gutter = setting.grid.gutter
    across = across or len(figures)
    width = (setting.width - gutter * (across - 1)) / across
    narrow = setting.narrowed(width)
    lines = max(caption_lines(figure, narrow) for figure, _ in figures)
    room = height - lines * setting.grid.leading * 0.86 - setting.grid.leading * 0.35
    tallest = max(size_of(figure)[1] * scale_within(figure, width, room) for figure, _ in figures)
    parts = []
    for index, (figure, key) in enumerate(figures):
        box = figure_box(figure, narrow, tags, key, height, centred=figure.role != "photograph")
        drop = tallest - size_of(figure)[1] * box_scale(box)
        marks = tuple(moved(mark, 0.0, drop / 2 if isinstance(mark, Picture) else drop) for mark in box.marks)
        parts.append((index * (width + gutter), Box(setting.grid.snapped(box.height + drop), marks)))
    return beside(parts)


def figure_grid(figures: Sequence[Figure], composer: Composer, setting: Setting, tags: Tags, key: str, across: int = 0) -> None:
    """Figures in rows of equal columns, ``across`` in each (0: as many as the grid has columns); a row is not torn."""
    across = min(across or setting.grid.columns, len(figures))
    wide = setting.narrowed(setting.grid.text_width)
    for start in range(0, len(figures), across or 1):
        row = [(figure, f"{key}/{start + place}") for place, figure in enumerate(figures[start : start + across])]
        composer.space()
        composer.whole(figure_row(row, wide, tags, setting.grid.text_height * 0.6, across))


def box_scale(box: Box) -> float:
    return next(mark.scale for mark in box.marks if isinstance(mark, Picture))
