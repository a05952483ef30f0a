"""The last small contacts of a round, parted: real shapes pushed off each other, while all that the round keeps to still holds.

Position-based: every symbol hangs on two points (a stem on foot and head, an oval on its tips), and what touches moves the points that it
hangs on. Stems keep within their lengths, heads on their outline, feet on their base, ovals their size, chains their pitch and the run of
their bow. All images of a symbol under the round's rotation move as one, so that symmetry is exact.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from motifold.render.motif.bodies import bodies_of
from motifold.render.motif.course import Course
from motifold.render.motif.extents import of_one_height
from motifold.render.motif.ground import Ground
from motifold.render.motif.moved import write_back
from motifold.render.motif.pushed import State, ends, in_order, keep, push, smooth, state_of, tie
from motifold.symbols.record import dataclass

if TYPE_CHECKING:
    from motifold.render.motif.pushed import ComplexArray, FloatArray, IntArray

_ENOUGH, _WISH = 0.033, 0.06
"""White that is enough between two symbols, and what is made where there is less: shapes are measured a little coarsely here."""
_LEFT = 0.02
"""White lacking in all that is more than what pushing leaves over."""
_TIMES, _SMALL = 3, 0.05
"""So often is pushed anew; not where nothing was moved by more than a little."""
_ROUNDS, _GAIN = 160, 40
"""So often is pushed at the most, and no more where so many rounds did not help."""
_AGAIN = 8
"""After so many rounds of pushing it is looked again which symbols are near each other."""
_NEAR = 0.32
_TALL = 1.1
"""Chains between stitches taller than this, along the side of a polygon, have their room by construction."""
_SMOOTH = 0.12
"""How strongly the ovals of a run follow their neighbours in a round of pushing, so that the run keeps its bow."""


def relax(ground: Ground, course: Course, order: int, even: bool, corners: int) -> None:
    """Part what touches in a round just placed. ``even``: its heads stay on their outline, which has so many ``corners``."""
    if course.round in ground.lifted or not _worth(ground, course, even, corners):
        return
    for _ in range(_TIMES):
        # Symbols are drawn anew after each time: a cross keeps its place on a stem that has become longer.
        left = _parted(ground, course, order, even, corners)
        if left <= _LEFT:
            return
    ground.crowded[course.round] = left


def _parted(ground: Ground, course: Course, order: int, even: bool, corners: int) -> float:
    """Push once until it is enough or does not help; the white that is still lacking."""
    bodies = bodies_of(ground, course, order, even, corners)
    if not any(piece.looked for piece in bodies.pieces):
        return 0.0
    state = state_of(bodies)
    pairs = _near_pairs(state, _NEAR)
    before = best = _short(state, pairs)
    if before <= 0.0:
        return 0.0
    for number in range(_ROUNDS):
        if number and number % _AGAIN == 0:
            pairs = _near_pairs(state, _NEAR)
        if number and number % _GAIN == 0:
            now = _short(state, pairs)
            if now > 0.9 * best:
                break
            best = now
        if not _push(state, pairs):
            break
        smooth(state, _SMOOTH)
        for _ in range(2):
            tie(state)
            keep(state)
        in_order(state)
    after = _short(state, _near_pairs(state, _NEAR))
    if after < 0.98 * before:
        write_back(ground, course, state)
    return min(before, after) if after > 0.0 or float(abs(state.move).max()) < _SMALL else before


def _worth(ground: Ground, course: Course, even: bool, corners: int) -> bool:
    """Whether anything in a round may touch: a plain round of stitches of one height has its room by construction."""
    if course.size < 3 or course.open:
        return False
    heights = [stem.height for stem in course.stems]
    alike = even and of_one_height(heights)
    plain = all(stem.body_at < 0.7 and not stem.picots and len(stem.stitch.legs) == 1 for stem in course.stems)
    bent = any(stem.stitch.id in ground.bends for stem in course.stems)
    chained = any(gap.parts for gap in course.gaps) and not (corners and min(heights) > _TALL)
    return bent or chained or not (alike and plain) or (not corners and _tight(ground, course))


def _tight(ground: Ground, course: Course) -> bool:
    """Whether any two neighbours come too near to each other where they are broadest."""
    spots = [ground.heads[s.stitch.id] * s.body_at + ground.feet[s.stitch.id][0] * (1 - s.body_at) for s in course.stems]
    pairs = zip(spots, [*spots[1:], spots[0]], course.stems, [*course.stems[1:], course.stems[0]], strict=True)
    return any(abs(b - a) < one.body + other.body + _ENOUGH for a, b, one, other in pairs)


@dataclass(frozen=True, slots=True)
class _Pairs:
    """Pairs of pieces of strokes that may meet: ``a`` and ``b`` index pieces, ``pair`` the pair of symbols that they belong to."""

    a: IntArray
    b: IntArray
    pair: IntArray
    count: int


def _circles(state: State, start: ComplexArray, end: ComplexArray) -> tuple[ComplexArray, FloatArray]:
    """A circle round each symbol."""
    import numpy as np

    ink = state.ink
    centre = (np.add.reduceat(start + end, ink.first) / (2 * ink.count)).astype(complex)
    away: FloatArray = np.maximum(np.abs(start - centre[ink.owner]), np.abs(end - centre[ink.owner])) + ink.half
    radius: FloatArray = np.maximum.reduceat(away, ink.first)
    return centre, radius


def _near_pairs(state: State, reach: float) -> _Pairs:
    """All pieces of symbols that lie within reach of each other, at least one of the two in the part that is looked at."""
    import numpy as np

    start, end = ends(state)
    centre, radius = _circles(state, start, end)
    symbols, ink = state.given.pieces, state.ink
    seen = np.array([symbol.looked for symbol in symbols])
    looked = np.flatnonzero(seen)
    away = np.abs(centre[looked][:, None] - centre[None, :]) - radius[looked][:, None] - radius[None, :]
    rows, second = np.nonzero(away < reach)
    first = looked[rows]
    once = ~seen[second] | (first < second)
    met = zip(first[once].tolist(), second[once].tolist(), strict=True)
    kept = [(a, b) for a, b in met if symbols[a].body != symbols[b].body and (symbols[a].key, symbols[b].key) not in state.given.touching]
    if not kept:
        none = np.zeros(0, dtype=np.int64)
        return _Pairs(none, none, none, 0)
    first, second = np.array([a for a, _ in kept]), np.array([b for _, b in kept])
    counts = ink.count[first] * ink.count[second]
    pair = np.repeat(np.arange(len(first)), counts)
    place = np.arange(len(pair)) - np.repeat(np.cumsum(counts) - counts, counts)
    wide = ink.count[second][pair]
    a, b = ink.first[first][pair] + place // wide, ink.first[second][pair] + place % wide
    return _meeting(state, _Pairs(a, b, pair, len(first)), start, end, reach)


def _meeting(state: State, pairs: _Pairs, start: ComplexArray, end: ComplexArray, reach: float) -> _Pairs:
    """Those pairs of pieces of which the one lies within reach of the other's circle."""
    import numpy as np

    middle, half = (start + end) / 2, np.abs(end - start) / 2 + state.ink.half
    close = np.abs(middle[pairs.a] - middle[pairs.b]) < half[pairs.a] + half[pairs.b] + reach
    return _Pairs(pairs.a[close], pairs.b[close], pairs.pair[close], pairs.count)


def _short(state: State, pairs: _Pairs) -> float:
    """How much white all pairs together lack."""
    import numpy as np

    start, end = ends(state)
    pairs = _meeting(state, pairs, start, end, _WISH)
    white, _, _ = _white(state, pairs, start, end)
    least = np.full(max(pairs.count, 1), 9.0)
    np.minimum.at(least, pairs.pair, white)
    return float(np.maximum(_ENOUGH - least, 0.0).sum())


def _white(state: State, pairs: _Pairs, start: ComplexArray, end: ComplexArray) -> tuple[FloatArray, ComplexArray, ComplexArray]:
    """White between the pieces of each pair (less than nothing where they cross), and the places on both that are nearest to each other."""
    import numpy as np

    a, b, c, d = start[pairs.a], end[pairs.a], start[pairs.b], end[pairs.b]
    away, here, there = [], [], []
    for p, q, r, on_first in ((a, c, d, True), (b, c, d, True), (c, a, b, False), (d, a, b, False)):
        v, w = r - q, p - q
        t = np.clip((w.real * v.real + w.imag * v.imag) / np.maximum(v.real**2 + v.imag**2, 1e-18), 0.0, 1.0)
        foot = q + t * v
        away.append(np.abs(p - foot))
        here.append(p if on_first else foot)
        there.append(foot if on_first else p)
    best, column = np.stack(away).argmin(axis=0), np.arange(len(a))
    found = np.stack(away)[best, column]
    u, v, w = b - a, d - c, c - a
    cross = u.real * v.imag - u.imag * v.real
    safe = np.where(cross == 0, 1e-30, cross)
    t, s = (w.real * v.imag - w.imag * v.real) / safe, (w.real * u.imag - w.imag * u.real) / safe
    through = (cross != 0) & (t >= 0) & (t <= 1) & (s >= 0) & (s <= 1)
    # Strokes that cross must go as far as the shortest way out is long.
    found = np.where(through, -found, found)
    return found - state.ink.half[pairs.a] - state.ink.half[pairs.b], np.stack(here)[best, column], np.stack(there)[best, column]


def _push(state: State, pairs: _Pairs) -> bool:
    """One round of pushing; whether anything had to be."""
    import numpy as np

    start, end = ends(state)
    pairs = _meeting(state, pairs, start, end, _WISH)
    white, here, there = _white(state, pairs, start, end)
    tight = np.flatnonzero(white < _WISH)
    if not len(tight) or white.min() > _ENOUGH + 0.004:
        return False
    # The tightest place of each pair of symbols.
    ranked = tight[np.lexsort((tight, white[tight], pairs.pair[tight]))]
    at = ranked[np.concatenate(([True], np.diff(pairs.pair[ranked]) > 0))]
    one, other = pairs.a[at], pairs.b[at]
    centre, _ = _circles(state, start, end)
    apart = centre[state.ink.owner[one]] - centre[state.ink.owner[other]]
    crossed = white[at] + state.ink.half[one] + state.ink.half[other] <= 0
    way = np.where(crossed, there[at] - here[at], here[at] - there[at])
    # Strokes that cross give no way out at their very ends: the symbols' middles do.
    way = np.where(np.abs(way) < 1e-7, apart, way)
    unit = (way / np.maximum(np.abs(way), 1e-9)).astype(complex)
    push(state, one, here[at], other, there[at], unit, np.minimum(_WISH - white[at], 0.12))
    return True
