"""Which symbols meet by design: the pairs that nobody should take for an overlap."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from math import hypot

from motifold.render.fabric.model import Base, Fabric, Stitch
from motifold.render.motif.crossings import over_and_under
from motifold.render.motif.ink import Segment, apart
from motifold.render.motif.model import Placed, Point

_BESIDE = 8
"""How many stitches before and after may be met by a spike."""
_BODY = 0.5
"""Stems that come closer than this meet with their bars or heads, in u."""


def touches_of(
    fabric: Fabric, placed: Mapping[int, Placed], rings: Mapping[int, set[int]], crossed: Iterable[tuple[int, int]]
) -> dict[int, set[int]]:
    """For each stitch those that it may meet by design; ``rings``: what the ring of a space meets, by the stitch that it is drawn with;
    ``crossed``: what ``crossings`` found.

    A foot and its base, a space's ring and the feet in it, a picot and its stitch; stitches that change places with their neighbours, a
    spike and the rounds that it is worked over, and what is worked in front of or behind earlier work.
    """
    pairs: list[tuple[int, int]] = [(i, j) for i, others in rings.items() for j in others]
    crossed_in: dict[int, list[int]] = defaultdict(list)
    for number in placed:
        stitch = fabric.stitches[number]
        for leg in stitch.legs:
            if leg.base.kind == "space":
                pairs += [(number, chain) for chain in fabric.runs[leg.base.id].stitches]
            elif leg.base.kind == "stitch":
                pairs += [(number, leg.base.id), *((number, chain) for chain in fabric.stitches[leg.base.id].chains)]
        if stitch.gather == "crossed" and stitch.group is not None:
            crossed_in[stitch.group].append(number)
        if stitch.role == "picot" and stitch.run is not None:
            pairs += [(number, chain) for chain in fabric.runs[stitch.run].stitches]
    pairs += [*_passing_over(fabric, placed), *crossed]
    for members in crossed_in.values():
        pairs += [(a, b) for i, a in enumerate(members) for b in members[i + 1 :]]
    found: dict[int, set[int]] = defaultdict(set)
    for a, b in pairs:
        if a != b and a in placed and b in placed:
            found[a].add(b)
            found[b].add(a)
    return found


def crossings(fabric: Fabric, placed: Mapping[int, Placed]) -> tuple[tuple[int, int], ...]:
    """Pairs (front, back) of stitches of a round that change places, where they really meet on the chart."""
    by_round: dict[int, list[int]] = defaultdict(list)
    for number in placed:
        by_round[fabric.stitches[number].round].append(number)
    pairs = (pair for members in by_round.values() for pair in over_and_under(fabric, members))
    return tuple((i, j) for i, j in pairs if _meet(placed[i], placed[j]))


def _passing_over(fabric: Fabric, placed: Mapping[int, Placed]) -> Iterator[tuple[int, int]]:
    """Stems that pass over others because of what they are worked into, where they really meet on the chart."""
    by_round: dict[int, list[int]] = defaultdict(list)
    for number in placed:
        if fabric.stitches[number].role != "given":
            by_round[fabric.stitches[number].round].append(number)
    for number, place in placed.items():
        stitch = fabric.stitches[number]
        if not stitch.legs or not place.feet:
            continue
        lowest = min(_round_of(fabric, leg.base) for leg in stitch.legs)
        over = [i for between in range(lowest + 1, stitch.round) for i in by_round[between]]
        if stitch.behind:
            over += [i for between in range(lowest, stitch.round) for i in by_round[between]]
        if over:
            near = [*over, *_neighbours(fabric, stitch, placed, _BESIDE)]
            yield from ((number, i) for i in near if _meet(place, placed[i]))


def _neighbours(fabric: Fabric, stitch: Stitch, placed: Mapping[int, Placed], reach: int) -> list[int]:
    """Stitches of the same round made no more than ``reach`` stitches before or after this one."""
    low, high = max(stitch.id - reach, 0), min(stitch.id + reach + 1, len(fabric.stitches))
    return [i for i in range(low, high) if i != stitch.id and i in placed and fabric.stitches[i].round == stitch.round]


def _round_of(fabric: Fabric, base: Base) -> int:
    if base.kind == "space":
        return fabric.runs[base.id].round
    return 0 if base.kind == "ring" else fabric.stitches[base.id].round


def _meet(a: Placed, b: Placed) -> bool:
    """Whether any two of their stems come so close that bars or heads meet."""
    reach = max(hypot(p[0] - a.head[0], p[1] - a.head[1]) for p in a.feet)
    if hypot(a.head[0] - b.head[0], a.head[1] - b.head[1]) > 2 * reach + 4:
        return False
    return any(apart(_stem(p, a.head), _stem(q, b.head)) < _BODY for p in a.feet for q in (b.feet or (b.head,)))


def _stem(foot: Point, head: Point) -> Segment:
    return complex(*foot), complex(*head), 0.0
