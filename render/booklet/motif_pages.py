"""A motif: its chart beside the rounds it shows, its key beside the chart.

Three arrangements are tried, and the one that prints the chart largest is taken: chart and rounds in facing columns, the chart above the
rounds, or, where one page is too small for both, chart and rounds on facing pages.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from motifold.render.booklet.blocks import Setting
from motifold.render.booklet.boxes import Box, Tags, height_of
from motifold.render.booklet.figures import caption_lines, figure_box, figure_grid, for_width, scale_within, size_of
from motifold.render.booklet.flow import Composer, balanced
from motifold.render.booklet.model import Figure
from motifold.render.booklet.sections import part_heading, section_boxes
from motifold.render.words.model import Section

_RATHER_THAN_NOTES = 0.8     # of what is comfortable: a chart may be this small before a page is left for notes
_WORTH_PARTING = 1.15        # how much larger a chart must come out for its key to move to the facing page
_CHART_SHARES = (0.5, 0.56, 0.62)
_LEAST_TEXT = 165.0          # points: a narrower column of text breaks in too many places


@dataclass(frozen=True, slots=True)
class _Arrangement:
    """Where things go below the heading: how large the chart comes out, and the boxes with their places."""

    scale: float
    placed: tuple[tuple[float, float, Box], ...]
    height: float


@dataclass(frozen=True, slots=True)
class _Part:
    section: Section
    chart: Figure
    key_figure: Figure | None
    setting: Setting
    tags: Tags
    key: str

    def boxes(self, width: float) -> list[Box]:
        return section_boxes(self.section, self.setting.narrowed(width), self.tags, self.key, titled=False)


def motif_pages(
    section: Section, figures: Sequence[Figure], composer: Composer, setting: Setting, tags: Tags, key: str, reserve: float = 0.0
) -> None:
    """Sets a motif's section with its figures, from the page in hand on; ``reserve`` is left free below, for what follows."""
    charts = [figure for figure in figures if figure.role == "chart"]
    keys = [figure for figure in figures if figure.role == "key"]
    whole = _Part(section, charts[0], keys[0] if keys else None, setting, tags, key)
    part = replace(whole, key_figure=None) if _oversized(whole) else whole
    head = part_heading(section.title, setting, tags, key)
    if not _try_here(part, head, composer):
        composer.turn()
        best = _best(part, setting.grid.text_height - head.height - reserve)
        enough = part.chart.comfortable * (1.0 if composer.number % 2 == 0 else _RATHER_THAN_NOTES)
        if best is not None and best.scale >= min(enough, _spread_scale(part, head) / 1.25):
            _place(best, head, composer)
        else:
            _facing_pages(part, head, composer)
    if part is not whole:
        _key_alone(whole, composer)
    figure_grid(charts[1:], composer, setting, tags, f"{key}/more")
    figure_grid([figure for figure in figures if figure.role == "growth"], composer, setting, tags, f"{key}/growth", across=4)


def _oversized(part: _Part) -> bool:
    """Whether the key is too high to share a page with the chart."""
    grid = part.setting.grid
    return not _key_fits(part, grid.text_width, grid.text_height * 0.4) and not _key_fits(part, grid.column_width, grid.text_height * 0.5)


def _key_alone(part: _Part, composer: Composer) -> None:
    """A key too high to stand beside the chart, across the page after the rounds."""
    key = _key_box(part, part.setting.grid.text_width, part.setting.grid.text_height)
    if key is not None:
        composer.space()
        composer.whole(key)


def _try_here(part: _Part, head: Box, composer: Composer) -> bool:
    """A small motif on what is left of the page, where its chart comes out comfortably."""
    room = composer.room - head.height - head.before
    if composer.fresh or room < composer.grid.text_height * 0.35:
        return False
    best = _best(part, room)
    if best is None or best.scale < part.chart.comfortable * 1.15:
        return False
    _place(best, head, composer)
    return True


def _place(arrangement: _Arrangement, head: Box, composer: Composer) -> None:
    composer.whole(head)
    top = composer.y
    for x, y, box in arrangement.placed:
        composer.place(box, x, top + y)
    composer.y = composer.grid.snapped(top + arrangement.height)


def _best(part: _Part, height: float) -> _Arrangement | None:
    tried = [_chart_above(part, height)]
    if part.setting.grid.columns > 1:
        tried += [_facing_columns(part, share, height) for share in _CHART_SHARES]
    legible = [one for one in tried if one is not None and one.scale >= part.chart.smallest]
    return max(legible, key=lambda one: one.scale) if legible else None


def _key_box(part: _Part, width: float, height: float) -> Box | None:
    if part.key_figure is None:
        return None
    return figure_box(for_width(part.key_figure, width), part.setting.narrowed(width), part.tags, f"{part.key}/key", height, centred=False)


def _key_fits(part: _Part, width: float, height: float) -> bool:
    return part.key_figure is None or scale_within(for_width(part.key_figure, width), width, height) >= part.key_figure.smallest


def _facing_columns(part: _Part, share: float, height: float) -> _Arrangement | None:
    """Chart and key in the left column, the rounds in the right."""
    grid = part.setting.grid
    left = share * grid.text_width - grid.gutter / 2
    right = grid.text_width - left - grid.gutter
    text = part.boxes(right)
    if right < _LEAST_TEXT or height_of(text) > height or not _key_fits(part, left, height * 0.5):
        return None
    key = _key_box(part, left, height * 0.5)
    room = height - (key.height + grid.leading if key else 0.0)
    chart = figure_box(part.chart, part.setting.narrowed(left), part.tags, f"{part.key}/chart", room)
    placed = [(0.0, 0.0, chart)]
    if key:
        placed.append((0.0, chart.height + grid.leading, key))
    placed += _stacked_at(text, left + grid.gutter, 0.0)
    tallest = max(height_of(text), chart.height + (key.height + grid.leading if key else 0.0))
    return _Arrangement(_chart_scale(part, left, room), tuple(placed), tallest)


def _chart_above(part: _Part, height: float) -> _Arrangement | None:
    """The chart across the page, the key beside it where there is room (else below it), the rounds in columns under both."""
    grid = part.setting.grid
    text = part.boxes(grid.column_width)
    filled, taken = balanced(text, grid.columns, height, grid.leading)
    text_height = max((height_of(column) for column in filled), default=0.0)
    room = grid.snapped(height - text_height - grid.leading) - grid.leading
    if taken < len(text) or room < grid.leading * 8:
        return None
    placed, scale, chart_height = _chart_and_key(part, room)
    text_top = chart_height + grid.leading
    for index, column in enumerate(filled):
        placed += _stacked_at(column, index * (grid.column_width + grid.gutter), text_top)
    return _Arrangement(scale, tuple(placed), text_top + text_height)


def _chart_and_key(part: _Part, room: float) -> tuple[list[tuple[float, float, Box]], float, float]:
    """Chart and key within ``room``, whichever way prints the chart larger: their places, the chart's scale, the height of both."""
    grid = part.setting.grid
    full = part.setting.narrowed(grid.text_width)
    if part.key_figure is None:
        chart = figure_box(part.chart, full, part.tags, f"{part.key}/chart", room)
        return [(0.0, 0.0, chart)], _chart_scale(part, grid.text_width, room), chart.height
    side = min(size_of(for_width(part.key_figure, grid.text_width * 0.36))[0], grid.text_width * 0.36)
    chart_width = grid.text_width - side - grid.gutter
    key_below = _key_box(part, grid.text_width, room * 0.4)
    below_room = room - (key_below.height if key_below else 0.0) - grid.leading
    beside_scale = _chart_scale(part, chart_width, room) if _key_fits(part, side, room) else 0.0
    below_scale = _chart_scale(part, grid.text_width, below_room) if _key_fits(part, grid.text_width, room * 0.4) else 0.0
    if beside_scale >= below_scale:
        chart = figure_box(part.chart, part.setting.narrowed(chart_width), part.tags, f"{part.key}/chart", room)
        key = _key_box(part, side, room) or Box(0.0)
        return [(0.0, 0.0, chart), (chart_width + grid.gutter, 0.0, key)], beside_scale, max(chart.height, key.height)
    chart = figure_box(part.chart, full, part.tags, f"{part.key}/chart", below_room)
    placed = [(0.0, 0.0, chart)]
    if key_below:
        placed.append((0.0, chart.height + grid.leading, key_below))
    return placed, below_scale, chart.height + grid.leading + (key_below.height if key_below else 0.0)


def _chart_scale(part: _Part, width: float, height: float) -> float:
    leading = part.setting.grid.leading
    lines = caption_lines(part.chart, part.setting.narrowed(width))
    return scale_within(part.chart, width, height - lines * leading * 0.86 - (leading * 0.35 if lines else 0.0))


def _spread_scale(part: _Part, head: Box) -> float:
    _, scale, _ = _chart_and_key(part, part.setting.grid.text_height - head.height)
    return scale


def _facing_pages(part: _Part, head: Box, composer: Composer) -> None:
    """The chart on a left page, the rounds on the right one that faces it. Where that leaves a page empty, it is for notes.

    The key stands below the chart, or after the rounds where the chart gains by it.
    """
    grid = part.setting.grid
    if composer.number % 2 == 1:
        composer.leave_for_notes()
    composer.whole(head)
    alone = replace(part, key_figure=None)
    key = _key_box(part, grid.column_width, grid.text_height * 0.6)
    text = [*part.boxes(grid.column_width), *([replace(key, before=grid.leading)] if key else [])]
    gains = _spread_scale(alone, head) > _WORTH_PARTING * _spread_scale(part, head)
    apart = gains and balanced(text, grid.columns, grid.text_height, grid.leading)[1] == len(text)
    placed, _, height = _chart_and_key(alone if apart else part, grid.text_height - head.height)
    spare = grid.text_height - head.height - height
    for x, y, box in placed:
        composer.place(box, x, head.height + y + min(spare / 3, grid.leading * 3))
    composer.leave()
    composer.flow(text if apart else part.boxes(grid.column_width))


def _stacked_at(boxes: Sequence[Box], x: float, y: float) -> list[tuple[float, float, Box]]:
    placed = []
    for index, box in enumerate(boxes):
        y += box.before if index else 0.0
        placed.append((x, y, box))
        y += box.height
    return placed


