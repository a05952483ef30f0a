"""What stands between the stitches of rounds: their numbers, where yarn is joined and cut, its letter, the direction of work.

Nothing is ever put over ink, nothing is set smaller than it can be read, and no mark is left out: what finds no white beside what it marks
stands further off, with a light line to it.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from itertools import product

from motifold.render.fabric.model import Fabric
from motifold.render.motif.chart.bracket import round_bracket
from motifold.render.motif.chart.items import Item, arrow_item, item_box, letter_item, letter_radius
from motifold.render.motif.chart.look import ChartLook, in_sector
from motifold.render.motif.chart.nearest import Nearest, nearest_of
from motifold.render.motif.chart.places import NEAR, put, spots, yarn_triangle
from motifold.render.motif.chart.ray import edge_numbers, round_numbers
from motifold.render.motif.chart.repeats import round_repeat
from motifold.render.motif.chart.rowside import furnish_rows
from motifold.render.motif.chart.scene import Symbol
from motifold.render.motif.chart.starts import Start, anchors_of, starts_of, yarn_changes
from motifold.render.motif.chart.white import White
from motifold.render.motif.model import Layout, Point
from motifold.symbols import marks as working

_AMONG = 6.0
"""How far from its start, in u, a letter may stand among the stitches of its round."""
_ARROWS = (working.ARROW, 0.5, 0.4)


def furnish(fabric: Fabric, layout: Layout, symbols: tuple[Symbol, ...], white: White, look: ChartLook) -> tuple[Item, ...]:
    """All furniture, in the order of the rounds."""
    starts = starts_of(fabric, layout, symbols, look.left_handed)
    if fabric.worked == "rows":
        return furnish_rows(fabric, starts, symbols, white, look)
    if look.once is not None:
        return edge_numbers(fabric, starts, yarn_changes(fabric), white, look)
    near = nearest_of(symbols)
    numbers = {item.round_index: item for item in round_numbers(fabric, starts, near, white, look)}
    items = list(numbers.values())
    turning = any(r.turned or r.direction < 0 for r in fabric.rounds)
    first = min((i for i in starts if fabric.rounds[i].number is not None), default=-1)
    for i, item in sorted(numbers.items()):
        items += _arrow(i, starts[i], item, white) if turning or i == first else []
    items += _yarn_marks(fabric, starts, symbols, white, look)
    joined = {item.round_index: item for item in items if item.kind == "attach"}
    for index, yarn in yarn_changes(fabric).items():
        if index in starts and in_sector(starts[index].point, look.sector):
            letter = _letter(index, yarn, starts[index], joined.get(index), numbers.get(index), (near, white), look)
            items += [letter] if letter and (letter.leader is None or index != first) else []  # work begins with a yarn: that is no change
    repeat = round_repeat(layout, starts, look.left_handed) if look.sector is None else None
    bracket = round_bracket(repeat, layout, starts, white, look) if repeat else None
    items += [bracket] if bracket else []
    return tuple(sorted(items, key=lambda item: item.round_index))


def _yarn_marks(
    fabric: Fabric, starts: Mapping[int, Start], symbols: tuple[Symbol, ...], white: White, look: ChartLook
) -> list[Item]:
    """A triangle for each time that yarn is joined or cut, at the stitch where that is done."""
    anchors = anchors_of(fabric, symbols)
    items: list[Item] = []
    for index, this in enumerate(fabric.rounds):
        if not (this.attached or this.fastened) or index not in anchors or not starts:
            continue
        start = starts.get(index) or starts[max((i for i in starts if i < index), default=min(starts))]
        first, last = anchors[index]
        if this.attached and in_sector(first, look.sector):
            items += yarn_triangle("attach", index, first, start, white)
        if this.fastened and in_sector(last, look.sector):
            items += yarn_triangle("fasten off", index, last, start, white)
    return items


def _letter(
    index: int, yarn: str, start: Start, joined: Item | None, number: Item | None, on: tuple[Nearest, White], look: ChartLook
) -> Item | None:
    """The yarn's letter beside the triangle where it is joined, else beside the number, else among the round's own stitches."""
    (near, white), radius = on, letter_radius(yarn, look)
    for beside in (joined, number):
        if beside is None or beside.leader is not None:
            continue
        for tight in (False, True):
            found = spots(white, beside.center, radius + beside.width / 2 + 0.9, (2 * radius, 2 * radius), tight)
            if len(found):
                return _lettered(index, yarn, tuple(found[0].tolist()), beside.center, white, look)
    for tight in (False, True):
        found = spots(white, start.middle, _AMONG, (2 * radius, 2 * radius), tight)
        own = next(near.first_own(found, index), None)
        if own is not None:
            return _lettered(index, yarn, own, start.middle, white, look)
    target = joined.target if joined is not None and joined.target is not None else start.middle
    place = put(white, target, target, (2 * radius, 2 * radius), (2 * radius, 2 * radius))
    return replace(letter_item(index, yarn, place.at, look), target=target, leader=place.leader) if place is not None else None


def _lettered(index: int, yarn: str, at: Point, target: Point, white: White, look: ChartLook) -> Item:
    item = letter_item(index, yarn, at, look)
    white.take(item_box(item))
    return replace(item, target=target)


def _arrow(index: int, start: Start, number: Item, white: White) -> list[Item]:
    """Which way a round is worked, beside its number."""
    way = start.way_at(number.center)
    far = 0.35 + number.width / 2
    for within, length, tight, sign in product((0.9, NEAR, 3.0, 6.0), _ARROWS, (False, True), (1.0, -1.0)):
        item = arrow_item(index, number.center, way, length)
        wish = (number.center[0] + sign * far * way[0], number.center[1] + sign * far * way[1])
        found = spots(white, wish, within, (item.width, item.height), tight)
        if len(found):
            item = arrow_item(index, (float(found[0][0]), float(found[0][1])), way, length)
            white.take(item_box(item))
            return [replace(item, target=number.center)]
    item = arrow_item(index, number.center, way, _ARROWS[-1])
    place = put(white, number.center, number.center, (item.width, item.height), (item.width, item.height))
    return [replace(arrow_item(index, place.at, way, _ARROWS[-1]), target=number.center)] if place is not None else []
