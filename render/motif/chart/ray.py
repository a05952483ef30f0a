"""The numbers of rounds: all on one ray from the centre, before the rounds' start.

It is the nearest ray that has white for the most of them. A number that finds none on the ray stands close to it in its round's band, or on
the band's edge. Where the stitches leave no room at all the number stands outside the chart, with a light line in to its round. Where even
these would be too many, only every second, fifth or tenth of those rounds has one, and the last.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from itertools import chain
from math import atan2, cos, hypot, pi, sin
from typing import TYPE_CHECKING

from motifold.render.fabric.model import Fabric
from motifold.render.motif.chart.items import NUMBER_PT, Item, arrow_item, item_box, letter_item, letter_radius, number_item, text_size
from motifold.render.motif.chart.look import ChartLook, in_sector
from motifold.render.motif.chart.nearest import Nearest
from motifold.render.motif.chart.places import spots
from motifold.render.motif.chart.starts import Start
from motifold.render.motif.chart.white import White
from motifold.render.motif.model import Point
from motifold.symbols.marks import ARROW
from motifold.symbols.record import dataclass

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

WORD = "Rnd "
"""What stands before a number outside the chart."""
EVERY = (1, 2, 5, 10)
"""Which rounds are numbered, where not all can be."""
MOST_LEADERS = 12
"""More lines than these through a chart are a tangle."""
_CROSSING = 6.0
"""What it counts that such a line crosses another."""
_WAYS = 16
"""How many places, and on either side how many ends, are tried for such a line."""
_RAY_STEP = pi / 120
_RAYS = 70
"""How many rays are looked at before the start; half as many after it."""
_CLOSE = 7.0
"""Rays no further than this, in u, from the start on the last round are better than those that have white for more rounds."""
_NEAR = 4.0
"""How far from the ray a number may stand in its round's band, in u."""
_FURTHER = 10.0
"""And how far from its start where it finds none there."""
Wanted = Sequence[tuple[int, int]]
"""Index and number of each round that is to be numbered."""


def round_numbers(fabric: Fabric, starts: dict[int, Start], near: Nearest, white: White, look: ChartLook) -> tuple[Item, ...]:
    """The numbers of all rounds that have white for one, and of some of the others; their places are taken from ``white``."""
    numbered = [(index, number) for index in sorted(starts) if (number := fabric.rounds[index].number) is not None]
    spiral = any(this.end == "spiral" for this in fabric.rounds)
    found: tuple[Item, ...] = ()
    for close, size, tight in _TRIES:
        if spiral and not close:
            continue
        tried = _on_a_ray(numbered, starts, near, white, look, _Try(size, tight, close, spiral))
        found = tried if len(tried) > len(found) else found
        if len(found) == len(numbered):
            break
    for item in found:
        white.take(item_box(item))
    found += _further([pair for pair in numbered if pair[0] not in {item.round_index for item in found}], starts, near, white, look)
    placed = {item.round_index for item in found}
    for every in EVERY:
        missing = [pair for pair in numbered if pair[0] not in placed and (pair[1] % every == 0 or pair == numbered[-1])]
        if len(missing) <= MOST_LEADERS:
            break
    return (*found, *_outside(missing[:MOST_LEADERS], starts, white, look))


def _further(missing: Wanted, starts: dict[int, Start], near: Nearest, white: White, look: ChartLook) -> tuple[Item, ...]:
    """Numbers that stand in their own round, but further round from its start: better than a line across other rounds."""
    items: list[Item] = []
    for index, number in missing[:MOST_LEADERS]:
        start, measure = starts[index], text_size(str(number), NUMBER_PT[-1], look)
        found = spots(white, start.middle, _FURTHER, measure, True)
        place = next((way for way in near.first_own(found, index) if in_sector(way, look.sector)), None)
        if place is not None:
            items.append(number_item(index, str(number), place, NUMBER_PT[-1], look))
            white.take(item_box(items[-1]))
    return tuple(items)


@dataclass(frozen=True, slots=True)
class _Try:
    """``size_pt`` of the numbers, ``tight``: with less white around them, ``close``: only rays near the start, ``own``: no common ray."""

    size_pt: float
    tight: bool
    close: bool
    own: bool


_TRIES = ((True, NUMBER_PT[0], False), (True, NUMBER_PT[1], True), (False, NUMBER_PT[0], False), (False, NUMBER_PT[1], True))


def edge_numbers(
    fabric: Fabric, starts: dict[int, Start], letters: Mapping[int, str], white: White, look: ChartLook
) -> tuple[Item, ...]:
    """The furniture of a sector that is drawn by itself, beside the edge where its rounds begin, each at the middle of its round's band.

    The number, the letter of a yarn that is changed to, and the direction of work beside the first number.
    """
    if look.once is None:
        return ()
    numbered = [(index, number) for index in sorted(starts) if (number := fabric.rounds[index].number) is not None]
    onward = sum(_turning(starts[index]) for index, _ in numbered) > 0
    for every in EVERY:
        wanted = [pair for pair in numbered if pair[1] % every == 0 or pair == numbered[-1]]
        items = [number_item(index, str(number), (0.0, 0.0), NUMBER_PT[0], look) for index, number in wanted]
        items = [replace(item, center=_at_edge(item, starts[item.round_index], onward, white, look)) for item in items]
        if not any(_meet(b.center, (b.width, b.height), a) for i, b in enumerate(items) for a in items[:i]):
            break
    beside: list[Item] = []
    for k, item in enumerate(items):
        angle = atan2(item.center[1], item.center[0])
        out = (sin(angle), -cos(angle)) if onward else (-sin(angle), cos(angle))
        far = item.width / 2 + 0.35
        if item.round_index in letters:
            radius = letter_radius(letters[item.round_index], look)
            at = (item.center[0] + (far + radius) * out[0], item.center[1] + (far + radius) * out[1])
            beside.append(letter_item(item.round_index, letters[item.round_index], at, look))
            far += 2 * radius + 0.25
        if k == 0 or fabric.rounds[item.round_index].direction < 0:
            at = (item.center[0] + (far + ARROW / 2) * out[0], item.center[1] + (far + ARROW / 2) * out[1])
            sign = -1.0 if (_turning(starts[item.round_index]) > 0) == onward else 1.0
            beside.append(arrow_item(item.round_index, at, (sign * out[0], sign * out[1])))
    return (*items, *beside)


def _at_edge(item: Item, start: Start, onward: bool, white: White, look: ChartLook) -> Point:
    """The place of a number outside the edge of a sector: at the middle of its round's band, where nothing stands out over the edge."""
    import numpy as np

    assert look.once is not None
    angle = look.once.start if onward else look.once.end
    far = max(float(_reach(start, np.asarray([angle]))[0]) - start.tall / 2, 0.0)
    if look.once.cut:
        fars = [hypot(*p) for p in look.once.cut]
        turn = 0.0 if onward else look.once.end - look.once.start
        angle = float(np.interp(far, fars, [atan2(p[1], p[0]) for p in look.once.cut])) + turn
    c, s, aside = cos(angle), sin(angle), -1.0 if onward else 1.0
    off = 0.6 + abs(s) * item.width / 2 + abs(c) * item.height / 2
    ways = [(far * c - aside * away * s, far * s + aside * away * c) for away in (off + 0.15 * k for k in range(12))]
    return white.first_free(ways, item.width, item.height) or ways[0]


def _on_a_ray(
    wanted: Wanted, starts: dict[int, Start], near: Nearest, white: White, look: ChartLook, how: _Try
) -> tuple[Item, ...]:
    """Numbers on the ray that has white for the most rounds, and near it for the others; those that find none are left out."""
    import numpy as np

    angles = _angles(wanted, starts, look, how.close)
    if not wanted or not len(angles):
        return ()
    sizes = [text_size(str(number), how.size_pt, look) for _, number in wanted]
    bands = [_band(starts[index], angles, high) for (index, _), (_, high) in zip(wanted, sizes, strict=True)]
    masks = []
    for (index, _), band, measure in zip(wanted, bands, sizes, strict=True):
        flat = band.reshape(-1, 2)
        free = white.free(flat, *measure, how.tight)
        free[free] = near.own(flat[free], index)
        masks.append(free.reshape(band.shape[:2]))
    ray = int(np.argmax(sum(mask.any(axis=1).astype(int) for mask in masks)))
    items: list[Item] = []
    for (index, number), band, mask, measure in zip(wanted, bands, masks, sizes, strict=True):
        (x, y), start = band[ray][0].tolist(), starts[index]
        on_it: list[Point] = [] if how.own else [(float(p[0]), float(p[1])) for p in band[ray][mask[ray]]]
        if how.own:
            x, y = (start.middle[i] - 0.5 * start.on[i] for i in (0, 1))
        ways = chain(on_it, (p for p in _around(index, (x, y), near, white, measure, how.tight) if in_sector(p, look.sector)))
        place = next((way for way in ways if not any(_meet(way, measure, other) for other in items)), None)
        if place is not None:
            items.append(number_item(index, str(number), place, how.size_pt, look))
    return tuple(items)


def _angles(wanted: Wanted, starts: dict[int, Start], look: ChartLook, close: bool = False) -> NDArray[np.float64]:
    """The rays in the order of liking: just before the start, then further away from it on either side."""
    import numpy as np

    ways = [_direction(starts[index]) for index, _ in wanted]
    base = atan2(sum(y for _, y in ways), sum(x for x, _ in ways)) if ways else 0.0
    back = -1.0 if sum(_turning(starts[index]) for index, _ in wanted) > 0 else 1.0
    reach = max((hypot(*starts[index].point) for index, _ in wanted), default=1.0)
    step = min(_RAY_STEP, 1.5 / max(reach, 1.0))
    most = min(_RAYS, int(_CLOSE / max(reach, 1.0) / step)) if close else _RAYS
    steps = sorted(range(-most // 2, most), key=lambda k: (k if k >= 0 else -2.0 * k, k))
    angles = [base + back * (k + 1) * step for k in steps]
    return np.asarray([angle for angle in angles if in_sector((cos(angle), sin(angle)), look.sector)])


def _meet(place: Point, measure: tuple[float, float], other: Item) -> bool:
    wide, high = (measure[0] + other.width) / 2 + 0.1, (measure[1] + other.height) / 2 + 0.1
    return abs(place[0] - other.center[0]) < wide and abs(place[1] - other.center[1]) < high


def _direction(start: Start) -> Point:
    far = hypot(*start.point) or 1.0
    return (start.point[0] / far, start.point[1] / far)


def _turning(start: Start) -> float:
    """Above 0 where the round runs counter-clockwise."""
    return start.point[0] * start.on[1] - start.point[1] * start.on[0]


def _reach(start: Start, angles: NDArray[np.float64]) -> NDArray[np.float64]:
    """How far the round's outline is from the centre in these directions."""
    import numpy as np

    found: NDArray[np.float64] = np.interp(angles, start.ways, start.reaches, period=2 * pi)
    return found


def _band(start: Start, angles: NDArray[np.float64], height: float) -> NDArray[np.float64]:
    """Places for a number where each ray crosses a round's band: its middle first, a little to either side; outside, for the last.

    The result has one row of points (x, y) for each angle.
    """
    import numpy as np

    reach = _reach(start, angles)[:, None]
    depths = [start.tall * part for part in (0.5, 0.4, 0.6, 0.3, 0.7)]
    places = [(-down, aside) for aside in (0.0, 0.25, -0.25) for down in depths]
    if start.last:
        places = [(0.3 + height / 2 + more, 0.0) for more in (0.0, 0.15, 0.3, 0.45)] + places
    offsets = np.asarray(places)
    far, aside = reach + offsets[None, :, 0], np.broadcast_to(offsets[None, :, 1], (len(angles), len(places)))
    c, s = np.cos(angles)[:, None], np.sin(angles)[:, None]
    return np.stack([far * c - aside * s, far * s + aside * c], axis=2)


def _around(
    index: int, wish: Point, near: Nearest, white: White, measure: tuple[float, float], tight: bool
) -> Iterator[Point]:
    """White places close to ``wish`` that are clearly nearer to this round than to any other, the nearest first."""
    yield from near.first_own(spots(white, wish, _NEAR, measure, tight), index)


def _outside(missing: Wanted, starts: dict[int, Start], white: White, look: ChartLook) -> list[Item]:
    """Numbers outside the chart, in order from the start backwards, each with a line in to the middle of its round's band.

    Each line is the one, of those that begin and end near the start, that meets the least ink.
    """
    outer = next((start for start in starts.values() if start.last), None)
    if outer is None or not missing:
        return []
    around = _angles([(index, 0) for index, start in starts.items() if start.last], starts, look)
    back = -1.0 if _turning(outer) > 0 else 1.0
    angle = float(around[0]) if len(around) else 0.0
    reach = max((hypot(*start.point) for start in starts.values()), default=1.0)
    items: list[Item] = []
    for index, number in sorted(missing, key=lambda pair: -pair[1]):
        # At the rim a bare number would be taken for the last round's.
        words = f"{WORD}{number}"
        measure = text_size(words, NUMBER_PT[-1], look)
        places = _places_outside(outer, angle, back, measure, white, look)
        if not places:
            continue
        _, line, at, place = min((*_leader(point, measure, starts[index], way, white), way, point) for way, point in places)
        items.append(replace(number_item(index, words, place, NUMBER_PT[-1], look), leader=line))
        white.take(item_box(items[-1]))
        white.take_line(line)
        angle = at + back * (max(measure) + 0.4) / max(reach, 1.0)
    return items


def _places_outside(
    outer: Start, angle: float, back: float, measure: tuple[float, float], white: White, look: ChartLook
) -> list[tuple[float, Point]]:
    """White places outside the last round, from ``angle`` backwards, each with its own angle."""
    import numpy as np

    far = max(hypot(*outer.point), 1.0)
    found: list[tuple[float, Point]] = []
    for step in range(240):
        way = angle + back * step * 0.2 / far
        c, s = cos(way), sin(way)
        if not in_sector((c, s), look.sector):
            continue
        reach = float(_reach(outer, np.asarray([way]))[0]) + 0.3 + abs(c) * measure[0] / 2 + abs(s) * measure[1] / 2
        place = white.first_free([((reach + more) * c, (reach + more) * s) for more in (0.0, 0.4, 0.8, 1.2)], *measure)
        if place is not None:
            found.append((way, place))
            if len(found) == _WAYS:
                break
    return found


def _leader(
    place: Point, measure: tuple[float, float], start: Start, angle: float, white: White
) -> tuple[tuple[float, float], tuple[Point, Point]]:
    """The line from a number to the middle of a round's band that meets the least ink, and how much that is, the shorter the better."""
    import numpy as np

    ways = angle + np.linspace(-1.0, 1.0, 2 * _WAYS + 1) * min(0.5, 4.0 / max(hypot(*start.point), 1.0))
    inner = np.maximum(_reach(start, ways) - start.tall / 2, 0.0)
    ends = np.stack([inner * np.cos(ways), inner * np.sin(ways)], axis=1)
    along = ends - np.asarray(place)
    long = np.hypot(along[:, 0], along[:, 1])
    along = along / np.maximum(long, 1e-9)[:, None]
    gone = np.minimum(measure[0] / 2 / np.maximum(np.abs(along[:, 0]), 1e-9), measure[1] / 2 / np.maximum(np.abs(along[:, 1]), 1e-9)) + 0.15
    begins = np.asarray(place) + along * gone[:, None]
    parts = np.linspace(0.0, 1.0, max(2, int(float(long.max()) / 0.12)))[None, :, None]
    line = begins[:, None, :] + (ends - begins)[:, None, :] * parts
    inked = white.inked(line.reshape(-1, 2)).reshape(line.shape[:2])
    met = (inked.sum(axis=1) + 20.0 * np.asarray([white.labelled(one).sum() for one in line])) * long / line.shape[1]
    met = met + [_CROSSING * white.crossed((tuple(a), tuple(b))) for a, b in zip(begins.tolist(), ends.tolist(), strict=True)]
    best = int(np.argmin(met + 0.02 * long + 1e-6 * np.abs(ways - angle)))
    (bx, by), (ex, ey) = begins[best].tolist(), ends[best].tolist()
    return (float(met[best]), float(long[best])), ((bx, by), (ex, ey))
