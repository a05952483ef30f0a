"""The furniture of rows: number, arrow and yarn letter outside the fabric, in columns at the side where each row starts."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from itertools import pairwise
from typing import Literal

from motifold.render.fabric.model import Fabric
from motifold.render.motif.chart.bracket import row_bracket
from motifold.render.motif.chart.items import (
    NUMBER_PT,
    SIDE_PT,
    Item,
    arrow_item,
    item_box,
    letter_item,
    letter_radius,
    number_item,
    text_size,
    triangle_item,
)
from motifold.render.motif.chart.look import ChartLook
from motifold.render.motif.chart.places import put, yarn_triangle
from motifold.render.motif.chart.repeats import row_repeat
from motifold.render.motif.chart.scene import Symbol
from motifold.render.motif.chart.starts import Start, yarn_changes
from motifold.render.motif.chart.white import White
from motifold.render.motif.hub import hub_of
from motifold.render.motif.model import Point
from motifold.symbols import marks as working
from motifold.symbols.record import dataclass

_BESIDE = 0.35
"""From the fabric to its numbers, in u; and between arrow, number and letter."""
_STRAIGHT = 2.5
"""A side that wanders no further is given one column for all its numbers; a slanted one has each number at its own row's end."""


@dataclass(frozen=True, slots=True)
class _Place:
    """A row's start: which side of the fabric (+1 right), at what height, and where the ink ends there."""

    side: float
    level: float
    edge: float


def furnish_rows(
    fabric: Fabric, starts: Mapping[int, Start], symbols: tuple[Symbol, ...], white: White, look: ChartLook
) -> tuple[Item, ...]:
    """All furniture of rows, in their order."""
    if hub_of(fabric) is not None or not any(this.kind == "foundation" for this in fabric.rounds):
        return _from_a_point(fabric, starts, white, look)
    rows = [index for index in sorted(starts) if fabric.rounds[index].number is not None]
    places = _places(fabric, rows, starts, symbols)
    every = _every(rows, places, look)
    letters = yarn_changes(fabric)
    wide = max((text_size(str(fabric.rounds[i].number), NUMBER_PT[0], look)[0] for i in rows), default=0.0)
    sides = max(text_size(word, SIDE_PT, look, "sans")[0] for word in ("RS", "WS"))
    items: list[Item] = []
    for count, index in enumerate(rows, 1):
        this, start, place = fabric.rounds[index], starts[index], places[index]
        x = place.edge + place.side * _BESIDE
        shown = count % every == 0 or count == len(rows) or every == 1
        if shown:
            items.append(arrow_item(index, (x + place.side * working.ARROW / 2, place.level), (-place.side, 0.0)))
        x += place.side * (working.ARROW + _BESIDE)
        if shown:
            width, _ = text_size(str(this.number), NUMBER_PT[0], look)
            items.append(number_item(index, str(this.number), (x + place.side * width / 2, place.level), NUMBER_PT[0], look))
        x += place.side * (wide + _BESIDE * 0.6)
        if shown:
            items.append(_side(index, this.side, x, place, look))
        x += place.side * (sides + _BESIDE)
        if index in letters:
            radius = letter_radius(letters[index], look)
            items.append(letter_item(index, letters[index], (x + place.side * radius, place.level), look))
            x += place.side * (2 * radius + _BESIDE / 2)
        if this.attached and not _goes_round(fabric, index):
            items.append(triangle_item("attach", index, (x + place.side * working.TRIANGLE / 2, place.level), (-place.side, 0.0)))
        if this.fastened and not _goes_round(fabric, index):
            items.append(_cut(index, start, place, symbols))
    for item in items:
        white.take(item_box(item))
    items += [mark for index in rows for mark in _marks_of_border(fabric, index, starts[index], symbols, white)]
    repeat = look.once or row_repeat(fabric, symbols)
    if repeat is not None and rows:
        low = min((p[1] for s in symbols for mark in s.marks for p in mark.points if repeat.start <= p[0] <= repeat.end), default=0.0)
        items.append(row_bracket(repeat, rows[0], low, look))
    return tuple(items)


def _from_a_point(fabric: Fabric, starts: Mapping[int, Start], white: White, look: ChartLook) -> tuple[Item, ...]:
    """The furniture of rows that grow from a point and start along one line: each row's in a line away from its start."""
    letters = yarn_changes(fabric)
    items: list[Item] = []
    for index in sorted(starts):
        this, start = fabric.rounds[index], starts[index]
        at = start.middle
        if this.number is None:
            continue
        wanted = [arrow_item(index, at, start.on), number_item(index, str(this.number), at, NUMBER_PT[0], look)]
        wanted.append(Item("side", index, at, *text_size(this.side, SIDE_PT, look, "sans"), this.side, SIDE_PT))
        if index in letters:
            wanted.append(letter_item(index, letters[index], at, look))
        if this.attached:
            wanted.append(triangle_item("attach", index, at, start.on))
        for item in wanted:
            ways = [(at[0] - k * 0.1 * start.on[0], at[1] - k * 0.1 * start.on[1]) for k in range(2, 45)]
            place = white.take_first(ways, item.width, item.height)
            leader = None
            if place is None:
                further = put(white, at, at, (item.width, item.height), (item.width, item.height))
                place, leader = (further.at, further.leader) if further is not None else (None, None)
            if place is not None:
                items.append(replace(_moved(item, place, start, look), target=at, leader=leader))
        if this.fastened:
            items += yarn_triangle("fasten off", index, start.end, start, white)
    return tuple(items)


def _moved(item: Item, place: Point, start: Start, look: ChartLook) -> Item:
    """The same item about another centre."""
    if item.kind == "arrow":
        return arrow_item(item.round_index, place, start.on)
    if item.kind == "attach":
        return triangle_item("attach", item.round_index, place, start.on)
    if item.kind == "yarn":
        return letter_item(item.round_index, item.words, place, look)
    return replace(item, center=place)


def _side(index: int, words: str, x: float, place: _Place, look: ChartLook) -> Item:
    """Which side faces in a row, beside its number."""
    width, height = text_size(words, SIDE_PT, look, "sans")
    return Item("side", index, (x + place.side * width / 2, place.level), width, height, words, SIDE_PT)


def _goes_round(fabric: Fabric, index: int) -> bool:
    """Whether this is a round of a border, which is numbered beside its upper side."""
    return fabric.rounds[index].kind == "round" and any(this.kind == "row" for this in fabric.rounds[:index])


def _places(fabric: Fabric, rows: list[int], starts: Mapping[int, Start], symbols: tuple[Symbol, ...]) -> dict[int, _Place]:
    import numpy as np

    points = np.asarray([p for s in symbols for mark in s.marks for p in mark.points] or [(0.0, 0.0)])
    mirrored = any(starts[i].on[0] * fabric.rounds[i].direction > 0.5 for i in rows if fabric.rounds[i].kind == "row")
    found: dict[int, _Place] = {}
    for index in rows:
        start = starts[index]
        side = -1.0 if start.on[0] > 0 else 1.0
        level = start.point[1] - start.tall / 2 * max(start.out[1], 0.0)
        if _goes_round(fabric, index):
            side = 1.0 if (fabric.rounds[index].direction > 0) != mirrored else -1.0
            level = float(start.outline[:, 1].max()) - 0.5
        band = points[np.abs(points[:, 1] - level) <= max(start.tall / 2, 0.5)]
        band = band if len(band) else points
        found[index] = _Place(side, level, float((side * band[:, 0]).max()) * side)
    for side in (-1.0, 1.0):
        edges = [p.edge * side for p in found.values() if p.side == side]
        if edges and max(edges) - min(edges) <= _STRAIGHT:
            found |= {i: _Place(side, p.level, max(edges) * side) for i, p in found.items() if p.side == side}
    return found


def _marks_of_border(fabric: Fabric, index: int, start: Start, symbols: tuple[Symbol, ...], white: White) -> list[Item]:
    """Where the yarn of a border is joined and cut: outside the stitches that it begins and ends with."""
    worked = [s for s in symbols if s.round_index == index and s.into and fabric.stitches[s.number].role in ("stitch", "standing")]
    if not _goes_round(fabric, index) or not worked:
        return []
    this = fabric.rounds[index]
    wanted: list[tuple[Literal["attach", "fasten off"], Symbol]] = [("attach", worked[0])] if this.attached else []
    wanted += [("fasten off", worked[-1])] if this.fastened else []
    found: list[Item] = []
    for kind, symbol in wanted:
        (x, y), (nx, ny) = symbol.head, symbol.normal
        ways = [(x + k * 0.1 * nx + j * ny, y + k * 0.1 * ny - j * nx) for j in (0.0, 0.5, -0.5, 1.0, -1.0) for k in range(3, 25)]
        mark = triangle_item(kind, index, symbol.head, start.on)
        place = white.take_first(ways, mark.width, mark.height)
        found += [triangle_item(kind, index, place, start.on)] if place is not None else []
    return found


def _every(rows: list[int], places: Mapping[int, _Place], look: ChartLook) -> int:
    """1 where the numbers of each side have room one above the other, else 2, 5 or 10."""
    _, height = text_size("8", NUMBER_PT[0], look)
    for every in (1, 2, 5, 10):
        kept = [places[index] for count, index in enumerate(rows, 1) if count % every == 0]
        for side in (-1.0, 1.0):
            levels = sorted(p.level for p in kept if p.side == side)
            if any(b - a < max(height, 0.36) + 0.15 for a, b in pairwise(levels)):
                break
        else:
            return every
    return 10


def _cut(index: int, start: Start, place: _Place, symbols: tuple[Symbol, ...]) -> Item:
    """Yarn is cut: beyond the row's last stitch."""
    reach = [-place.side * p[0] for s in symbols if s.round_index == index for mark in s.marks for p in mark.points]
    edge = -place.side * max(reach, default=-place.side * start.end[0])
    center: Point = (edge - place.side * (_BESIDE + working.TRIANGLE / 2), start.end[1] - 0.3)
    return triangle_item("fasten off", index, center, (-place.side, 0.0))
