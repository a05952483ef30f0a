"""Heads that do not stand on one outline: parted by leaning their stems, each about its own foot, until neighbours have their room.

A few rounds of pushing apart, the same for every image of a pair, so that symmetry is kept: position-based, over all at once.
"""

from __future__ import annotations

from collections.abc import Sequence, Set

from motifold.render.motif.extents import CLEAR, LENGTH_LEAST, LENGTH_MOST
from motifold.render.motif.parts import Stem

_ROUNDS = 60
_REACH = 5
"""So many stems apart two may still meet, where they stand in a hollow."""
_TOGETHER = 0.5
"""Of what two stems lack, the part that they are pushed in one round."""


def parted(
    stems: Sequence[Stem], middles: Sequence[complex], heads: Sequence[complex], least: Sequence[float], fixed: Set[int]
) -> list[complex]:
    """The heads of a closed round, moved no more than needed. ``least``: to the next head, for each; ``fixed``: those that stay."""
    at = list(heads)
    count = len(at)
    for _ in range(_ROUNDS):
        moves, pushes = [0j] * count, [0] * count
        for i in range(count):
            for step in range(1, min(_REACH, count // 2) + 1):
                j = (i + step) % count
                push = _push(stems, middles, at, i, j, least[i] if step == 1 else 0.0)
                if push:
                    moves[i] -= push
                    moves[j] += push
                    pushes[i] += 1
                    pushes[j] += 1
        if not any(pushes):
            break
        for i in range(count):
            if pushes[i] and i not in fixed:
                at[i] = _in_reach(stems[i], middles[i], at[i] + moves[i] / pushes[i])
    return at


def lack(heads: Sequence[complex], least: Sequence[float]) -> float:
    """How much the worst pair of neighbours lacks of its room, as a part of it."""
    count = len(heads)
    gaps = (abs(heads[(i + 1) % count] - heads[i]) for i in range(count))
    return max(1.0 - gap / room for gap, room in zip(gaps, least, strict=True))


def hollow(stems: Sequence[Stem], heads: Sequence[complex]) -> float:
    """How much the worst pair of heads that are not neighbours lacks of its room, as a part of it."""
    count = len(heads)
    worst = 0.0
    for i in range(count):
        for step in range(2, min(_REACH, count // 2) + 1):
            j = (i + step) % count
            worst = max(worst, 1.0 - abs(heads[j] - heads[i]) / _wide(stems[i], stems[j]))
    return worst


def _wide(a: Stem, b: Stem) -> float:
    return max(a.half, a.body) + max(b.half, b.body) + CLEAR


def _push(stems: Sequence[Stem], middles: Sequence[complex], at: Sequence[complex], i: int, j: int, least: float) -> complex:
    """How far the second of two heads must move, and the first the other way."""
    between = at[j] - at[i]
    apart = abs(between) or 1e-9
    if apart < least:
        return between / apart * (least - apart) * _TOGETHER
    if least or apart > 1.2:
        return 0j
    need = _wide(stems[i], stems[j])
    return between / apart * (need - apart) * _TOGETHER if apart < need else 0j


def _in_reach(stem: Stem, foot: complex, head: complex) -> complex:
    way = head - foot
    length = abs(way) or 1.0
    return foot + way / length * min(max(length, LENGTH_LEAST * stem.height), LENGTH_MOST * stem.height)
