"""What stands between the stitches of rounds: their numbers, where yarn is joined and cut, its letter, the direction of work.

Nothing is ever put over ink, and nothing is set smaller than it can be read.
"""

from __future__ import annotations

from functools import lru_cache
from math import hypot
from typing import TYPE_CHECKING, Literal

from motifold.render.fabric.model import Fabric
from motifold.render.motif.chart.bracket import round_bracket
from motifold.render.motif.chart.items import (
    Item,
    arrow_item,
    letter_item,
    letter_radius,
    triangle_item,
)
from motifold.render.motif.chart.look import ChartLook
from motifold.render.motif.chart.ray import edge_numbers, round_numbers
from motifold.render.motif.chart.repeats import round_repeat
from motifold.render.motif.chart.rowside import furnish_rows
from motifold.render.motif.chart.scene import Symbol
from motifold.render.motif.chart.starts import Start, starts_of, yarn_changes
from motifold.render.motif.chart.white import White
from motifold.render.motif.model import Layout, Point
from motifold.symbols import marks as working

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

def furnish(fabric: Fabric, layout: Layout, symbols: tuple[Symbol, ...], white: White, look: ChartLook) -> tuple[Item, ...]:
    """All furniture, in the order of the rounds. What finds no white place is left out."""
    starts = starts_of(fabric, layout, symbols, look.left_handed)
    if fabric.worked == "rows":
        return furnish_rows(fabric, starts, symbols, white, look)
    number_them = round_numbers if look.once is None else edge_numbers
    numbers = {item.round_index: item for item in number_them(fabric, starts, white, look)}
    turning = any(r.turned or r.direction < 0 for r in fabric.rounds)
    letters = yarn_changes(fabric)
    items: list[Item] = []
    for index in sorted(starts):
        this, start, number = fabric.rounds[index], starts[index], numbers.get(index)
        items += [number] if number else []
        if index in letters:
            items += _letter(index, letters[index], start, number, white, look)
        if this.attached:
            items += _yarn_mark("attach", index, start, white)
        if (turning and this.number is not None) or this.number == 1:
            items += _arrow(index, start, number, white)
        if this.fastened:
            items += _yarn_mark("fasten off", index, start, white)
    repeat = round_repeat(layout, starts, look.left_handed) if look.sector is None else None
    bracket = round_bracket(repeat, layout, starts, white, look) if repeat else None
    return (*items, bracket) if bracket else tuple(items)


@lru_cache(maxsize=1)
def _spiral() -> NDArray[np.float64]:
    """Offsets to try, nearest first, a seventh of u apart."""
    import numpy as np

    step, reach = 0.14, 22
    grid = [(i * step, j * step) for i in range(-reach, reach + 1) for j in range(-reach, reach + 1)]
    return np.asarray(sorted(grid, key=lambda p: (round(p[0] ** 2 + p[1] ** 2, 6), p)))


def _near(start: Start, wish: Point, within: float, beyond: bool) -> list[Point]:
    """Places no further than ``within`` from ``wish``: first in the round's own band, then (``beyond``) around it."""
    offsets = _spiral()
    offsets = offsets[offsets[:, 0] ** 2 + offsets[:, 1] ** 2 <= within * within]
    at = offsets + wish
    up = (at[:, 0] - start.point[0]) * start.out[0] + (at[:, 1] - start.point[1]) * start.out[1]
    inside = (up >= -start.tall - 0.1) & (up <= 0.25)
    found = [(float(x), float(y)) for x, y in at[inside]]
    if beyond:
        outside = ~inside & (up >= -start.tall - 0.5) & (up <= (2.0 if start.last else 0.9))
        found += [(float(x), float(y)) for x, y in at[outside]]
    return found


def _wish(start: Start, back: float, down: float) -> Point:
    """A point before the round's first stitch: ``back`` against the direction of work, ``down`` from its outline inwards."""
    return (
        start.point[0] - back * start.on[0] - down * start.out[0],
        start.point[1] - back * start.on[1] - down * start.out[1],
    )


def _yarn_mark(kind: Literal["attach", "fasten off"], index: int, start: Start, white: White) -> list[Item]:
    """A triangle: yarn joined before the first stitch, or cut after the last."""
    side = working.TRIANGLE + 0.1
    wish = _wish(start, 0.6, 0.3 * start.tall)
    if kind == "fasten off":
        wish = (start.end[0] + 0.5 * start.on[0], start.end[1] + 0.5 * start.on[1])
    place = white.take_first(_near(start, wish, 3.1, start.last), side, side)
    return [triangle_item(kind, index, place, start.on)] if place is not None else []


def _letter(index: int, yarn: str, start: Start, number: Item | None, white: White, look: ChartLook) -> list[Item]:
    """The yarn's letter beside the number, or near the start; the list of yarns below the chart has it where neither has white."""
    side = 2 * letter_radius(yarn, look)
    places: list[Point] = []
    if number is not None:
        places += [p for p in _near(start, number.center, 3.1, True) if hypot(p[0] - number.center[0], p[1] - number.center[1]) < 2.2]
    places += _near(start, _wish(start, 1.0, 0.5 * start.tall), 3.1, True)
    place = white.take_first(places, side, side)
    return [letter_item(index, yarn, place, look)] if place is not None else []


def _arrow(index: int, start: Start, number: Item | None, white: White) -> list[Item]:
    wish = _wish(start, -0.4, 0.5 * start.tall)
    if number is not None and hypot(number.center[0] - wish[0], number.center[1] - wish[1]) < 6:
        far = 0.35 + number.width / 2
        wish = (number.center[0] + far * start.on[0], number.center[1] + far * start.on[1])
    for length in (working.ARROW, 0.5, 0.4):
        item = arrow_item(index, wish, start.on, length)
        place = white.take_first(_near(start, wish, 1.8, True), item.width, item.height)
        if place is not None:
            return [arrow_item(index, place, start.on, length)]
    return []
