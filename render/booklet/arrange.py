"""A motif's chart, key and rounds below a heading: the ways in which they share a page."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from motifold.render.booklet.blocks import Setting
from motifold.render.booklet.boxes import Box, Tags, height_of
from motifold.render.booklet.figures import caption_lines, figure_box, for_width, scale_within, size_of
from motifold.render.booklet.flow import balanced, stacked_at
from motifold.render.booklet.model import Figure
from motifold.render.booklet.sections import section_boxes
from motifold.render.words.model import Section
from motifold.symbols.record import dataclass

_CHART_SHARES = (0.5, 0.56, 0.62)
_LEAST_TEXT = 165.0          # points: a narrower column of text breaks in too many places
_LEAST_CHART = 8             # lines of the grid
_WORTH_MOVING = 1.02         # how much larger a chart must come out for its key to stand away from it

Placed = tuple[float, float, Box]


@dataclass(frozen=True, slots=True)
class Arrangement:
    """Boxes with their places below a heading; how large the chart comes out; whether the key is among them."""

    scale: float
    placed: tuple[Placed, ...]
    height: float
    keyed: bool


@dataclass(frozen=True, slots=True)
class Part:
    """One motif: its rounds, its chart, its key (None: it has none, or the key stands elsewhere)."""

    section: Section
    chart: Figure
    key_figure: Figure | None
    setting: Setting
    tags: Tags
    key: str

    def text(self, width: float) -> list[Box]:
        return section_boxes(self.section, self.setting.narrowed(width), self.tags, self.key, titled=False)

    def smaller(self, largest: float) -> Part:
        """The same with its chart no larger than ``largest`` times its own size."""
        return replace(self, chart=replace(self.chart, largest=min(self.chart.largest, largest)))

    def without_key(self) -> Part:
        return replace(self, key_figure=None)

    def key_box(self, width: float, height: float) -> Box | None:
        if self.key_figure is None:
            return None
        figure = for_width(self.key_figure, width)
        return figure_box(figure, self.setting.narrowed(width), self.tags, f"{self.key}/key", height, centred=False)

    def key_fits(self, width: float, height: float) -> bool:
        return self.key_figure is None or scale_within(for_width(self.key_figure, width), width, height) >= self.key_figure.smallest * 0.999

    def chart_box(self, width: float, height: float) -> Box:
        return figure_box(self.chart, self.setting.narrowed(width), self.tags, f"{self.key}/chart", height)

    def chart_scale(self, width: float, height: float) -> float:
        leading = self.setting.grid.leading
        lines = caption_lines(self.chart, self.setting.narrowed(width))
        return scale_within(self.chart, width, height - lines * leading * 0.86 - (leading * 0.35 if lines else 0.0))


def on_one_page(part: Part, height: float) -> Iterator[Arrangement]:
    """Chart, key and all rounds within ``height``, everything legible."""
    grid = part.setting.grid
    found = [_chart_above(part, height)]
    if grid.columns > 1:
        area = height_of(part.text(grid.column_width)) * grid.column_width
        for share in _CHART_SHARES:
            right = (1.0 - share) * grid.text_width - grid.gutter / 2
            if right >= _LEAST_TEXT and area <= right * height * 1.15:  # else not worth breaking all its lines anew
                found.append(_facing_columns(part, share, height))
    for one in found:
        if one is not None and one.scale >= part.chart.smallest * 0.999:
            yield one


def _facing_columns(part: Part, share: float, height: float) -> Arrangement | None:
    """Chart and key in the left column, the rounds in the right."""
    grid = part.setting.grid
    left = share * grid.text_width - grid.gutter / 2
    right = grid.text_width - left - grid.gutter
    text = part.text(right)
    if height_of(text) > height:
        return None
    below_text = _under_the_rounds(part, left, right, height - height_of(text), height)
    if below_text is None and not part.key_fits(left, height * 0.5):
        return None
    key = None if below_text else part.key_box(left, height * 0.5)
    room = height - (key.height + grid.leading if key else 0.0)
    chart = part.chart_box(left, room)
    placed = [(0.0, 0.0, chart)]
    if key:
        placed.append((0.0, chart.height + grid.leading, key))
    placed += stacked_at(text, left + grid.gutter, 0.0)
    right_height = height_of(text)
    if below_text:
        placed.append((left + grid.gutter, right_height + grid.leading, below_text))
        right_height += grid.leading + below_text.height
    tallest = max(right_height, chart.height + (key.height + grid.leading if key else 0.0))
    return Arrangement(part.chart_scale(left, room), tuple(placed), tallest, True)


def _under_the_rounds(part: Part, left: float, right: float, room: float, height: float) -> Box | None:
    """The key for the column of the rounds, where there is ``room`` below them and the chart gains by it: one that is high and narrow."""
    leading = part.setting.grid.leading
    if part.key_figure is None or not part.key_fits(right, room - leading):
        return None
    aside = part.key_box(left, height * 0.5)
    if aside is not None and part.key_fits(left, height * 0.5):
        gain = part.chart_scale(left, height) / part.chart_scale(left, height - aside.height - leading)
        if gain < _WORTH_MOVING:
            return None
    return part.key_box(right, room - leading)


def _chart_above(part: Part, height: float) -> Arrangement | None:
    """The chart across the page, the key beside it or below it, the rounds in columns under both."""
    grid = part.setting.grid
    text = part.text(grid.column_width)
    filled, taken = balanced(text, grid.columns, height, grid.leading)
    text_height = max((height_of(column) for column in filled), default=0.0)
    room = grid.snapped(height - text_height - grid.leading) - grid.leading
    if taken < len(text) or room < grid.leading * _LEAST_CHART:
        return None
    above = chart_and_key(part, room)
    if above is None:
        return None
    placed = list(above.placed)
    top = above.height + grid.leading
    for index, column in enumerate(filled):
        placed += stacked_at(column, index * (grid.column_width + grid.gutter), top)
    return Arrangement(above.scale, tuple(placed), top + text_height, True)


def chart_and_key(part: Part, room: float) -> Arrangement | None:
    """Chart and key within ``room``, whichever way prints the chart larger; None if no way prints the key legibly."""
    if part.key_figure is None:
        return chart_alone(part, room)
    ways = [way for way in (_key_beside(part, room), _key_below(part, room)) if way is not None]
    return max(ways, key=lambda way: way.scale, default=None)


def chart_alone(part: Part, room: float) -> Arrangement:
    width = part.setting.grid.text_width
    chart = part.chart_box(width, room)
    return Arrangement(part.chart_scale(width, room), ((0.0, 0.0, chart),), chart.height, False)


def _key_beside(part: Part, room: float) -> Arrangement | None:
    grid = part.setting.grid
    if part.key_figure is None:
        return None
    own = size_of(for_width(part.key_figure, grid.text_width * 0.36))[0]
    side = grid.text_width * min(max(own / grid.text_width, 0.15), 0.36)
    width = grid.text_width - side - grid.gutter
    key = part.key_box(side, room)
    if key is None or not part.key_fits(side, room):
        return None
    chart = part.chart_box(width, room)
    placed = ((0.0, 0.0, chart), (width + grid.gutter, 0.0, key))
    return Arrangement(part.chart_scale(width, room), placed, max(chart.height, key.height), True)


def _key_below(part: Part, room: float) -> Arrangement | None:
    grid = part.setting.grid
    key = part.key_box(grid.text_width, room * 0.5)
    if key is None or not part.key_fits(grid.text_width, room * 0.5):
        return None
    rest = room - key.height - grid.leading
    if rest < grid.leading * _LEAST_CHART:
        return None
    chart = part.chart_box(grid.text_width, rest)
    placed = ((0.0, 0.0, chart), (0.0, chart.height + grid.leading, key))
    return Arrangement(part.chart_scale(grid.text_width, rest), placed, chart.height + grid.leading + key.height, True)
