"""What stands between the stitches: round numbers, where yarn is joined and cut, its letter, the direction of work.

Each thing looks for a white place near where it belongs, larger letters first, and takes it; nothing is ever put over ink.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise
from math import hypot
from typing import Literal

from motifold.render.drawing.display import Group, Operation, Text
from motifold.render.drawing.fonts import cap_height_mm, text_width_mm
from motifold.render.fabric.model import Fabric, Round
from motifold.render.motif.chart.ink import operations
from motifold.render.motif.chart.look import ChartLook
from motifold.render.motif.chart.scene import Symbol
from motifold.render.motif.chart.tones import GREY, TEXT_CONTRAST, readable, tone_of
from motifold.render.motif.chart.white import White
from motifold.render.motif.model import Layout, Point
from motifold.symbols import marks as working
from motifold.symbols.ink import Mark

NUMBER_SIZES_PT = (7.0, 6.0, 5.0, 4.5)
ItemKind = Literal["number", "attach", "fasten off", "arrow", "turn", "yarn"]


@dataclass(frozen=True, slots=True)
class Item:
    """One piece of furniture: its box is ``width`` by ``height`` u about ``center``; ``words`` set at ``size_pt``, or ``marks``."""

    kind: ItemKind
    round_index: int
    center: Point
    width: float
    height: float
    words: str = ""
    size_pt: float = 0.0
    marks: tuple[Mark, ...] = ()


@dataclass(frozen=True, slots=True)
class _Start:
    """Where a round begins: the point on its outline, outward and onward unit vectors, how tall its first stitch is, its end, and whether
    nothing lies outside it."""

    point: Point
    out: Point
    on: Point
    tall: float
    end: Point
    last: bool
    outline: tuple[Point, ...]
    gaps: tuple[Point, ...]


def furnish(fabric: Fabric, layout: Layout, symbols: tuple[Symbol, ...], white: White, look: ChartLook) -> tuple[Item, ...]:
    """All furniture of the rounds that are shown, in the order of the rounds; what finds no white place is left out."""
    starts = _starts(fabric, layout, symbols, look.left_handed)
    turning = any(r.turned or r.direction < 0 for r in fabric.rounds)
    several = len({yarn for r in fabric.rounds for yarn in r.yarns}) > 1
    items: list[Item] = []
    before: str | None = None
    for index in sorted(starts):
        this, start = fabric.rounds[index], starts[index]
        if this.number is not None:
            items += _number(index, this, start, white, look)
        if this.attached:
            items += _yarn_mark("attach", index, start, white)
        first = this.yarns[0] if this.yarns else None
        if several and first is not None and first != before:
            items += _letter(index, first, start, white, look)
        if (turning and this.number is not None) or this.number == 1:
            items += _arrow(index, start, items, white)
        if this.fastened:
            items += _yarn_mark("fasten off", index, start, white)
        before = this.yarns[-1] if this.yarns else before
    return tuple(items)


def draw_item(item: Item, fabric: Fabric, look: ChartLook) -> Operation:
    """One item as operations in mm, in its round's colour; letters upright."""
    this = fabric.rounds[item.round_index]
    tone = tone_of(item.round_index, fabric.rounds, look, this.yarns[0] if this.yarns else "")
    letters = tone.color if tone.color == GREY else readable(tone.color, least=TEXT_CONTRAST)
    children = list(operations(item.marks, tone.color, look.pitch_mm))
    if item.words:
        x, y = item.center[0] * look.pitch_mm, item.center[1] * look.pitch_mm - cap_height_mm("sans-bold", item.size_pt) / 2
        children.append(Text(x, y, item.words, "sans-bold", item.size_pt, letters, "middle"))
    return Group(tuple(children), css_class=f"mark {item.kind.replace(' ', '-')}", data=(("round", str(this.number or 0)),))


def _starts(fabric: Fabric, layout: Layout, symbols: tuple[Symbol, ...], left_handed: bool) -> dict[int, _Start]:
    """Where each round begins and ends, from its outline and its first and last counted stitch."""
    by_round: dict[int, list[Symbol]] = {}
    for symbol in symbols:
        if fabric.stitches[int(symbol.id[1:])].role in ("stitch", "standing"):
            by_round.setdefault(symbol.round_index, []).append(symbol)
    flip = -1.0 if left_handed else 1.0
    outermost = max((shape.round for shape in layout.shapes), default=-1)
    starts: dict[int, _Start] = {}
    for shape in layout.shapes:
        members = by_round.get(shape.round)
        if not members:
            continue
        out = (flip * shape.start_normal[0], shape.start_normal[1])
        turn = flip * fabric.rounds[shape.round].direction
        first, last = members[0], members[-1]
        tall = hypot(first.head[0] - first.foot[0], first.head[1] - first.foot[1])
        on = (-out[1] * turn, out[0] * turn)
        ring = _filled(tuple((flip * x, y) for x, y in shape.outline))
        at = (flip * shape.start[0], shape.start[1])
        starts[shape.round] = _Start(at, out, on, max(tall, 1.0), last.head, shape.round == outermost, ring, _gaps(members))
    return starts


def _gaps(members: list[Symbol]) -> tuple[Point, ...]:
    """The middle of the white between two stems, at several heights, near where the round starts and ends."""
    near = [*members[-5:], *members[:5]] if len(members) > 10 else [*members, members[0]]
    out: list[Point] = []
    for a, b in pairwise(near):
        foot = ((a.foot[0] + b.foot[0]) / 2, (a.foot[1] + b.foot[1]) / 2)
        head = ((a.head[0] + b.head[0]) / 2, (a.head[1] + b.head[1]) / 2)
        out += [(foot[0] + (head[0] - foot[0]) * t, foot[1] + (head[1] - foot[1]) * t) for t in (0.45, 0.3, 0.6, 0.75, 0.15)]
    return tuple(out)


def _filled(ring: tuple[Point, ...]) -> tuple[Point, ...]:
    """The ring with points no further apart than a fifth of u, and no more than some thousands."""
    out: list[Point] = []
    for (ax, ay), (bx, by) in zip(ring, ring[1:] + ring[:1], strict=True):
        count = max(1, min(200, round(hypot(bx - ax, by - ay) / 0.2)))
        out += [(ax + (bx - ax) * i / count, ay + (by - ay) * i / count) for i in range(count)]
    return tuple(out)


@lru_cache(maxsize=1)
def _spiral() -> tuple[Point, ...]:
    """Offsets to try, nearest first, a seventh of u apart."""
    step, reach = 0.14, 22
    grid = [(i * step, j * step) for i in range(-reach, reach + 1) for j in range(-reach, reach + 1)]
    return tuple(sorted(grid, key=lambda p: (round(p[0] ** 2 + p[1] ** 2, 6), p)))


def _near(start: _Start, wish: Point, within: float, beyond: bool) -> list[Point]:
    """Places no further than ``within`` from ``wish``: gaps between stitches, then the round's own band, then (``beyond``) around it."""
    gaps = sorted((round(hypot(x - wish[0], y - wish[1]), 6), (x, y)) for x, y in start.gaps)
    inside = [place for far, place in gaps if far <= within]
    outside: list[Point] = []
    for dx, dy in _spiral():
        if dx * dx + dy * dy > within * within:
            break
        place = (wish[0] + dx, wish[1] + dy)
        up = (place[0] - start.point[0]) * start.out[0] + (place[1] - start.point[1]) * start.out[1]
        if -start.tall - 0.1 <= up <= 0.25:
            inside.append(place)
        elif beyond and -start.tall - 0.5 <= up <= 0.9:
            outside.append(place)
    return inside + outside


def _wish(start: _Start, back: float, down: float) -> Point:
    """A point before the round's first stitch: ``back`` against the direction of work, ``down`` from its outline inwards."""
    return (
        start.point[0] - back * start.on[0] - down * start.out[0],
        start.point[1] - back * start.on[1] - down * start.out[1],
    )


def _number(index: int, this: Round, start: _Start, white: White, look: ChartLook) -> list[Item]:
    words = str(this.number)
    wish = _wish(start, 0.5, 0.5 * start.tall)
    tries = [(size, _near(start, wish, within, within > 2)) for within in (1.6, 3.1) for size in NUMBER_SIZES_PT]
    tries.append((NUMBER_SIZES_PT[-1], _around(start)))
    for size, places in tries:
        width = text_width_mm(words, "sans-bold", size) / look.pitch_mm
        height = cap_height_mm("sans-bold", size) / look.pitch_mm
        place = white.take_first(places, width, height)
        if place is not None:
            return [Item("number", index, place, width, height, words, size)]
    return []


def _around(start: _Start) -> list[Point]:
    """Places anywhere in the round's band, nearest its start first: where it is worked too closely, its corners have room."""
    ring = sorted(start.outline, key=lambda p: (round((p[0] - start.point[0]) ** 2 + (p[1] - start.point[1]) ** 2, 6), p))
    places: list[Point] = []
    for x, y in ring:
        far = hypot(x, y) or 1.0
        for down in (0.3, 0.5, 0.7, 0.9):
            shrink = 1 - min(down * start.tall / far, 1.0)
            places.append((x * shrink, y * shrink))
    return places


def _yarn_mark(kind: Literal["attach", "fasten off"], index: int, start: _Start, white: White) -> list[Item]:
    """A triangle: yarn joined before the first stitch, or cut after the last."""
    side = working.TRIANGLE + 0.1
    wish = _wish(start, 0.6, 0.3 * start.tall)
    if kind == "fasten off":
        wish = (start.end[0] + 0.5 * start.on[0], start.end[1] + 0.5 * start.on[1])
    place = white.take_first(_near(start, wish, 3.1, start.last), side, side)
    if place is None:
        return []
    tip = (place[0] + 0.19 * start.on[0], place[1] + 0.19 * start.on[1])
    marks = working.attach(tip, start.on) if kind == "attach" else working.fasten_off(tip, start.on)
    return [Item(kind, index, place, side, side, marks=marks)]


def _letter(index: int, yarn: str, start: _Start, white: White, look: ChartLook) -> list[Item]:
    for size in (6.5, 5.5, 4.5):
        height = cap_height_mm("sans-bold", size) / look.pitch_mm
        width = text_width_mm(yarn, "sans-bold", size) / look.pitch_mm
        radius = max(hypot(width, height) / 2 + 0.08, 0.2)
        place = white.take_first(_near(start, _wish(start, 1.4, 0.5 * start.tall), 3.1, True), 2 * radius, 2 * radius)
        if place is not None:
            return [Item("yarn", index, place, 2 * radius, 2 * radius, yarn, size, working.tag(place, radius))]
    return []


def _arrow(index: int, start: _Start, items: list[Item], white: White) -> list[Item]:
    number = next((item for item in reversed(items) if item.kind == "number" and item.round_index == index), None)
    wish = _wish(start, -0.4, 0.5 * start.tall) if number is None else _beside(number.center, start.on, 0.35 + number.width / 2)
    for length in (working.ARROW, 0.5, 0.4):
        width, height = abs(start.on[0]) * length + 0.16, abs(start.on[1]) * length + 0.16
        width, height = max(width, 0.34), max(height, 0.34)
        place = white.take_first(_near(start, wish, 1.8, True), width, height)
        if place is not None:
            return [Item("arrow", index, place, width, height, marks=working.arrow(place, start.on, length))]
    return []


def _beside(point: Point, on: Point, far: float) -> Point:
    return (point[0] + far * on[0], point[1] + far * on[1])
