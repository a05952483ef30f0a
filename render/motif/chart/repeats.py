"""What of a chart repeats: the sector that a round repeats about the centre, or the stitches that rows repeat along."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from itertools import pairwise
from math import atan2, hypot, pi, tau

from motifold.render.fabric.model import Fabric
from motifold.render.motif.chart.look import Repeat
from motifold.render.motif.chart.scene import Symbol
from motifold.render.motif.chart.starts import Start
from motifold.render.motif.model import Layout
from motifold.symbols.record import dataclass

LEAST_WIDE = 2.6
"""A repeat narrower than this, in u, is one or two stitches: nobody needs to be shown it."""
_NEAR = 0.5
"""How far off its place, in u, a stitch may stand and still be the image of another."""
_LEAST_SHARE = 0.6
"""How much of a row's width must repeat."""


def round_repeat(layout: Layout, starts: dict[int, Start], left_handed: bool) -> Repeat | None:
    """The sector that the outermost round in ``starts`` repeats, with all that it stands on: a polygon's side, else from its start."""
    shape = next((shape for shape in reversed(layout.shapes) if shape.round in starts), None)
    if shape is None or shape.order < 2 or (shape.order == 2 and len(shape.corners) > 2):
        return None  # half a polygon is easier seen than bracketed
    start = starts[shape.round]
    (x, y), (ex, ey) = start.point, start.end
    if tau * hypot(x, y) / shape.order < LEAST_WIDE:
        return None
    first, last = atan2(y, x), atan2(ey, ex)
    onward = 1.0 if x * start.on[1] - y * start.on[0] > 0 else -1.0
    gap = (onward * (first - last)) % tau
    begin = first - onward * (gap / 2 if gap < pi else 0.0)
    if len(shape.corners) == shape.order:  # a side is what one looks for in a polygon, wherever on it the round begins
        flip = -1.0 if left_handed else 1.0
        begin = min((atan2(cy, flip * cx) for cx, cy in shape.corners), key=lambda a: abs((a - begin + pi) % tau - pi))
    end = begin + onward * tau / shape.order
    return Repeat(shape.order, min(begin, end), max(begin, end))


def row_repeat(fabric: Fabric, symbols: Sequence[Symbol]) -> Repeat | None:
    """The shortest width by which every row looks the same again, but for its ends: what its stitches are tells, and where they stand."""
    rows = _rows(fabric, symbols)
    cycles = [_cycle(row) for row in rows]
    every = [cycle for cycle in cycles if cycle is not None]
    if not every or len(every) < len(rows):
        return None
    found = [cycle for cycle in every if not cycle.plain] or every
    low, high = max(cycle.low for cycle in found), min(cycle.high for cycle in found)
    longest = max(cycle.step for cycle in found)
    for times in range(1, 13):
        step = times * longest
        if step > (high - low) / 2 + _NEAR:
            return None
        if all(abs(step / c.step - round(step / c.step)) * c.step <= _NEAR for c in found):
            begin = _between(rows[0], low)
            count = int((high - begin) / step + 0.1)
            return (_told(fabric, symbols, step) or Repeat(count, begin, begin + step)) if count > 1 and step >= LEAST_WIDE else None
    return None


def _told(fabric: Fabric, symbols: Sequence[Symbol], step: float) -> Repeat | None:
    """The repeat of so many u as the text has it: from the first pass of the brackets in the lowest row that is worked in such, as often
    as it says there.
    """
    passes: dict[int, dict[tuple[int, ...], list[float]]] = {}
    for symbol in symbols:
        stitch = fabric.stitches[symbol.number]
        if fabric.rounds[symbol.round_index].kind == "row" and stitch.origin.passes and stitch.role in ("stitch", "chain"):
            passes.setdefault(symbol.round_index, {}).setdefault(stitch.origin.passes[:1], []).append(symbol.place[0])
    for _, found in sorted(passes.items()):
        ends = sorted((min(places), max(places)) for places in found.values())
        gaps = [b[0] - a[1] for a, b in pairwise(ends)]
        if len(ends) > 1 and min(gaps) > 0 and all(abs(b[0] - a[0] - step) <= _NEAR for a, b in pairwise(ends)):
            begin = ends[0][0] - gaps[0] / 2
            return Repeat(len(ends), begin, begin + step)
    return None


Row = tuple[tuple[float, tuple[str, int]], ...]
"""Where each stitch of a row stands, from left to right, what it is, and how many are worked into one place with it."""


@dataclass(frozen=True, slots=True)
class _Cycle:
    """One row repeats every ``step`` u from x ``low`` to ``high``; ``plain``: of one stitch, which goes with any repeat."""

    step: float
    low: float
    high: float
    plain: bool


def _rows(fabric: Fabric, symbols: Sequence[Symbol]) -> list[Row]:
    found: dict[int, list[Symbol]] = {}
    for symbol in symbols:
        if fabric.rounds[symbol.round_index].kind == "row" and fabric.stitches[symbol.number].role in ("stitch", "chain"):
            found.setdefault(symbol.round_index, []).append(symbol)
    rows = []
    for index in sorted(found):
        together = Counter(symbol.into for symbol in found[index] if symbol.into)
        places = [(s.place[0], (s.stitch, together[s.into])) for s in found[index]]
        if len(places) > 3:
            rows.append(tuple(sorted(places)))
    return rows


def _cycle(row: Row) -> _Cycle | None:
    """The shortest cycle of a row's stitches that holds for most of it."""
    kinds = [kind for _, kind in row]
    width = row[-1][0] - row[0][0]
    for period in range(1, len(row) // 2 + 1):
        run = _longest([kinds[i] == kinds[i + period] for i in range(len(row) - period)])
        if run is None:
            continue
        first, last = run
        low, high = row[first][0], row[last + period][0]
        if last + 1 - first >= period and high - low >= _LEAST_SHARE * width:
            steps = sorted(row[i + period][0] - row[i][0] for i in range(first, last + 1))
            return _Cycle(steps[len(steps) // 2], low, high, period == 1)
    return None


def _longest(same: Sequence[bool]) -> tuple[int, int] | None:
    """The first and last place of the longest unbroken run."""
    best: tuple[int, int] | None = None
    begin = 0
    for i, is_same in enumerate(same):
        if not is_same:
            begin = i + 1
        elif best is None or i - begin > best[1] - best[0]:
            best = (begin, i)
    return best


def _between(row: Row, low: float) -> float:
    """The first middle between two neighbours of this row at or after ``low``, give or take a little."""
    middles = [(a + b) / 2 for (a, _), (b, _) in pairwise(row)]
    return next((middle for middle in middles if middle >= low - 0.6), low)
