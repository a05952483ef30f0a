"""The layout's measures, taken on final outlines with the stroke width included. Lengths in u."""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import hypot

from motifold.render.fabric.model import Fabric, Stitch
from motifold.render.motif.model import Layout, Placed, Point
from motifold.symbols.feet import space_ring
from motifold.symbols.footprint import footprint
from motifold.symbols.glyphs import LegAt, stitch_marks
from motifold.symbols.ink import Mark, outline


@dataclass(frozen=True, slots=True)
class Symbol:
    """One symbol's ink: of a stitch, or (``stitch`` None) the ring of a space."""

    stitch: int | None
    round: int
    marks: tuple[Mark, ...]
    bases: frozenset[int]


def symbols(fabric: Fabric, layout: Layout) -> list[Symbol]:
    """Everything that has ink, as the chart draws it."""
    found: list[Symbol] = []
    spaces: dict[tuple[int, int], list[tuple[Point, Point]]] = {}
    for placed in layout.placed:
        stitch = fabric.stitches[placed.stitch]
        for leg, foot in zip(stitch.legs, placed.feet, strict=False):
            if leg.base.foot == "space" and stitch.role in ("stitch", "standing"):
                spaces.setdefault((leg.base.id, stitch.round), []).append((foot, placed.head))
        if stitch.role in ("standing", "given"):
            continue
        legs = [LegAt(leg.kind, foot, leg.base.foot) for leg, foot in zip(stitch.legs, placed.feet, strict=False)]
        marks = stitch_marks(stitch.kind, legs or [LegAt(stitch.kind, placed.feet[0])], placed.head, placed.normal, stitch.gather, placed.bend)
        found.append(Symbol(stitch.id, stitch.round, tuple(marks), _bases(fabric, stitch)))
    for (run, number), points in spaces.items():
        ring = space_ring([foot for foot, _ in points], [head for _, head in points])
        found.append(Symbol(None, number, (ring,), frozenset(fabric.runs[run].stitches)))
    return found


def _bases(fabric: Fabric, stitch: Stitch) -> frozenset[int]:
    found: set[int] = set()
    for leg in stitch.legs:
        if leg.base.kind == "stitch":
            found.add(leg.base.id)
            found.update(fabric.stitches[leg.base.id].chains)
        elif leg.base.kind == "space":
            found.update(fabric.runs[leg.base.id].stitches)
    return frozenset(found)


@dataclass(frozen=True, slots=True)
class Contacts:
    """``overlaps``: pairs with their common area; ``share``: of all ink; ``nearest``: pairs closer than the clearance, with their
    distance.
    """

    overlaps: list[tuple[Symbol, Symbol, float]]
    share: float
    near: list[tuple[Symbol, Symbol, float]]


def contacts(found: Sequence[Symbol], clearance: float = 0.03) -> Contacts:
    """All pairs of symbols that overlap by more than 0.003 u2, or come nearer than ``clearance``."""
    from shapely import STRtree, unary_union
    from shapely.geometry import Polygon

    shapes = [unary_union([Polygon(outline(mark)).buffer(0) for mark in symbol.marks]) for symbol in found]
    tree = STRtree(shapes)
    overlaps, near = [], []
    for i, j in _pairs(tree, shapes, clearance):
        a, b = found[i], found[j]
        if _by_design(a, b):
            continue
        distance = shapes[i].distance(shapes[j])
        if distance > 0:
            near.append((a, b, distance))
            continue
        area = shapes[i].intersection(shapes[j]).area
        if area > 0.003:
            overlaps.append((a, b, area))
        else:
            near.append((a, b, 0.0))
    total = sum(shape.area for shape in shapes)
    return Contacts(overlaps, sum(area for _, _, area in overlaps) / total, near)


def _pairs(tree, shapes, clearance: float) -> Iterator[tuple[int, int]]:  # type: ignore[no-untyped-def]
    for i, j in tree.query(shapes, predicate="dwithin", distance=clearance).T:
        if i < j:
            yield int(i), int(j)


def _by_design(a: Symbol, b: Symbol) -> bool:
    """A foot on its base; the ring of a space on the feet about it; crossed stitches are judged by eye."""
    if a.stitch is not None and a.stitch in b.bases:
        return True
    if b.stitch is not None and b.stitch in a.bases:
        return True
    return (a.stitch is None) != (b.stitch is None) and a.round == b.round and bool(a.bases & b.bases)


def lengths(fabric: Fabric, layout: Layout) -> list[tuple[Placed, float]]:
    """Each stem's length over its nominal length."""
    found = []
    for placed in layout.placed:
        stitch = fabric.stitches[placed.stitch]
        if stitch.role not in ("stitch", "standing") or stitch.kind == "sl st" or stitch.run is not None:
            continue
        for leg, foot in zip(stitch.legs, placed.feet, strict=True):
            points = [foot, *placed.bend, placed.head]
            length = sum(hypot(b[0] - a[0], b[1] - a[1]) for a, b in itertools.pairwise(points))
            found.append((placed, length / footprint(leg.kind).stem))
    return found


def pitches(fabric: Fabric, layout: Layout) -> list[float]:
    """Distances between the middles of neighbouring ovals of one run."""
    middles = {p.stitch: ((p.feet[0][0] + p.head[0]) / 2, (p.feet[0][1] + p.head[1]) / 2) for p in layout.placed if p.feet}
    found = []
    for run in fabric.runs:
        chains = [s for s in run.stitches if fabric.stitches[s].kind == "ch" and s in middles]
        for a, b in itertools.pairwise(chains):
            found.append(hypot(middles[a][0] - middles[b][0], middles[a][1] - middles[b][1]))
    return found
