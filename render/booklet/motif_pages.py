"""A motif's pages: the chart and the rounds that it shows, never out of each other's sight where paper allows it.

Every way of setting them from the page in hand on is tried on a copy of the pages so far; which is best depends on what follows, so that
the plan of the whole booklet chooses.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from motifold.render.booklet.arrange import Arrangement, Part, chart_alone, chart_and_key, on_one_page
from motifold.render.booklet.blocks import Setting
from motifold.render.booklet.boxes import Box, Tags, height_of
from motifold.render.booklet.figures import figure_grid, turned
from motifold.render.booklet.flow import Composer, balanced
from motifold.render.booklet.model import Figure
from motifold.render.booklet.paper import Grid
from motifold.render.booklet.sections import part_heading
from motifold.render.booklet.worth import FOR_NOTES, OVERLEAF, cost_of_break, cost_of_size
from motifold.render.drawing.numbers import number
from motifold.render.words.model import Section

_LEAST_ROOM = 0.2         # of a page: less is not worth beginning a motif in
_WORTH_TURNING = 1.15     # how much larger a chart must come out for the sheet to be turned
_LONG = 2.5               # pages of rounds from which on nothing is to be gained by trying more than the first ways


def motif_ways(
    section: Section, figures: Sequence[Figure], composer: Composer, setting: Setting, tags: Tags, key: str
) -> Iterator[Composer]:
    """The pages so far with the motif's section and its figures set after them, in one way after the other."""
    charts = [figure for figure in figures if figure.role == "chart"]
    keys = [figure for figure in figures if figure.role == "key"]
    growth = [figure for figure in figures if figure.role == "growth"]
    part = Part(section, charts[0], keys[0] if keys else None, setting, tags, key)
    head = part_heading(section.title, setting, tags, key)
    for way in _ways(part, head, composer):
        figure_grid(charts[1:], way, setting, tags, f"{key}/more")
        figure_grid(growth, way, setting, tags, f"{key}/growth", across=4)
        yield way


def _needed(part: Part, start: Composer) -> Part:
    """Without its key where the same one is in sight already."""
    key = part.key_figure
    return part if key is None or not start.shows(key.drawing.description) else part.without_key()


def _ways(whole_part: Part, head: Box, composer: Composer) -> Iterator[Composer]:
    grid, part = composer.grid, whole_part
    fresh = composer.copy()
    fresh.turn()
    starts = [fresh]
    if not composer.fresh and composer.room - head.height - head.before >= _LEAST_ROOM * grid.text_height:
        starts.append(composer)
    long = height_of(part.text(grid.column_width)) > _LONG * grid.columns * grid.text_height
    for start in starts:
        part = _needed(whole_part, start)
        room = start.room - head.height - (0.0 if start.fresh else head.before)
        if not long:
            for whole in _whole_ways(part, room):
                yield _placed(whole, part, head, start.copy())
        for above in _chart_pages(part, room, start.fresh):
            yield _over(above, part, head, start)
        if start.number % 2 == 0 and not long:
            yield from _rounds_first(part, head, start)
    if fresh.number % 2 == 1:
        notes = fresh.copy()
        notes.leave_for_notes()
        notes.cost += FOR_NOTES
        for above in _chart_pages(whole_part, notes.room - head.height, True):
            yield _over(above, whole_part, head, notes)


def _capped(part: Part) -> tuple[Part, ...]:
    """The part with its chart as large as may be, comfortable, and between the two."""
    chart = part.chart
    if chart.comfortable >= chart.largest:
        return (part,)
    return part, part.smaller((chart.comfortable * chart.largest) ** 0.5), part.smaller(chart.comfortable)


def _chart_pages(part: Part, room: float, fresh: bool) -> list[Arrangement]:
    """The ways of ``_ways_of_chart``, looked for once for each room: beginnings that are compared have the same ones."""
    known = (part.key, "chart first" if part.key_figure else "chart alone", round(room, 3), fresh)
    if known not in part.setting.arranged:
        part.setting.arranged[known] = _different(_ways_of_chart(part, room, fresh))
    return part.setting.arranged[known]


def _different(found: Iterable[Arrangement]) -> list[Arrangement]:
    """Each way once: a chart that is as wide as its room comes out the same however large it might be."""
    kept: dict[tuple[object, ...], Arrangement] = {}
    for one in found:
        places = tuple((round(x, 2), round(y, 2), round(box.height, 2)) for x, y, box in one.placed)
        kept.setdefault((round(one.scale, 4), one.keyed, places), one)
    return list(kept.values())


def _whole_ways(part: Part, room: float) -> list[Arrangement]:
    """Chart, key and all rounds within ``room``, looked for once for each room."""
    known = (part.key, "whole" if part.key_figure else "whole, without key", round(room, 3), True)
    if known not in part.setting.arranged:
        part.setting.arranged[known] = _different(whole for capped in _capped(part) for whole in on_one_page(capped, room))
    return part.setting.arranged[known]


def _ways_of_chart(part: Part, room: float, fresh: bool) -> Iterator[Arrangement]:
    """The chart with its key or without it, as large as ``room`` allows or comfortably; on a page of its own it may lie on its side."""
    for capped in _capped(part):
        together = chart_and_key(capped, room)
        if together is not None and (fresh or together.scale >= part.chart.smallest):
            yield together
    alone = chart_alone(part, room)
    if part.key_figure is not None and (fresh or alone.scale >= part.chart.smallest):
        yield alone
    if fresh:
        lying = chart_alone(replace(part, chart=turned(part.chart)), room)
        if alone.scale < part.chart.comfortable and lying.scale > _WORTH_TURNING * alone.scale:
            alone = lying
            yield lying
        if alone.scale < part.chart.smallest * 0.999:
            yield _explained(part, alone, room)


def _explained(part: Part, found: Arrangement, room: float) -> Arrangement:
    """A chart that no page holds legibly says so, and as what it may be had larger."""
    share = number(round(100 * found.scale / part.chart.smallest))
    words = f"{part.chart.caption} The sheet makes it small: {share} % of what reads easily; as a drawing of its own it prints larger."
    said = replace(part, chart=replace(part.chart, caption=words.strip()))
    ways = [chart_alone(said, room), chart_alone(replace(said, chart=turned(said.chart)), room)]
    return max(ways, key=lambda way: way.scale)


def _put(arrangement: Arrangement, composer: Composer) -> None:
    composer.place_all(arrangement.placed, composer.y)
    composer.y = composer.grid.snapped(composer.y + arrangement.height)


def _placed(arrangement: Arrangement, part: Part, head: Box, composer: Composer) -> Composer:
    composer.whole(head)
    _put(arrangement, composer)
    composer.cost += cost_of_size(part.chart, arrangement.scale)
    return composer


def _over(above: Arrangement, part: Part, head: Box, start: Composer) -> Composer:
    """The chart first, the rounds below it and on; read overleaf only where the chart's page faces no page that follows."""
    composer = start.copy()
    seen = composer.number + (1 if composer.number % 2 == 0 else 0)
    _placed(above, part, head, composer)
    composer.space()
    _rounds(part if not above.keyed else part.without_key(), composer)
    if composer.number > seen and not composer.fresh:
        composer.cost += OVERLEAF
    return composer


def _rounds(part: Part, composer: Composer, done: int = 0) -> None:
    """The rounds in columns, from the box ``done`` on; the key after them, if it is not with the chart."""
    grid = composer.grid
    text = part.text(grid.column_width)[done:]
    if part.key_figure is not None and part.key_fits(grid.column_width, grid.text_height * 0.9):
        key = part.key_box(grid.column_width, grid.text_height * 0.9)
        composer.flow([*text, *([replace(key, before=grid.leading)] if key else [])])
        return
    composer.flow(text)
    key = part.key_box(grid.text_width, grid.text_height)
    if key is not None:
        composer.space()
        composer.whole(key)


def _height_of_rest(boxes: Sequence[Box], grid: Grid) -> float:
    """How high boxes stand in balanced columns, in whole lines; 0 where there are none."""
    filled, _ = balanced(boxes, grid.columns, grid.text_height, grid.leading) if boxes else ([], 0)
    return grid.snapped(max((height_of(column) for column in filled), default=0.0))


def _rounds_first(part: Part, head: Box, start: Composer) -> Iterator[Composer]:
    """The rounds on what is left of a left page, the chart on the right page that faces it, and below it the rounds that had no room."""
    grid = start.grid
    room = start.room - head.height - (0.0 if start.fresh else head.before)
    text = part.text(grid.column_width)
    filled, taken = balanced(text, grid.columns, room, grid.leading)
    if any(height_of(column) > room for column in filled):
        return
    ways = _chart_pages(part, grid.text_height, True)
    under = _height_of_rest(text[taken:], grid)
    if under and under < grid.text_height / 2:  # small enough for all that is left to find room below it
        ways = [*ways, *_chart_pages(part, grid.text_height - under - grid.leading, False)]
    for above in ways:
        composer = start.copy()
        composer.whole(head)
        if taken == len(text):
            _rounds(part if not above.keyed else part.without_key(), composer)
        else:
            for index, column in enumerate(filled):
                composer.stack(column, index * (grid.column_width + grid.gutter), composer.y)
        if composer.number != start.number:
            continue
        composer.turn()
        _put(above, composer)
        composer.cost += cost_of_size(part.chart, above.scale)
        if taken < len(text):
            composer.space()
            composer.cost += cost_of_break(text[taken:], grid.leading)
            _rounds(part if not above.keyed else part.without_key(), composer, taken)
            composer.cost += OVERLEAF if composer.number > start.number + 1 else 0.0
        yield composer
