"""The layout's measures, taken on final outlines with the stroke width included. Lengths in u."""

from __future__ import annotations

import itertools
from cmath import exp
from cmath import phase as argument
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import hypot, pi

from motifold.render.fabric.model import Fabric, Stitch
from motifold.render.motif.course import Course, course_of, picots_of, with_corners
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
        legs = legs or [LegAt(stitch.kind, placed.feet[0])]
        marks = stitch_marks(stitch.kind, legs, placed.head, placed.normal, stitch.gather, placed.bend, placed.bars)
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
        for leg, foot in zip(stitch.legs, placed.feet, strict=bool(stitch.legs)):
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


def heads(layout: Layout, course: Course) -> list[complex]:
    """The heads of a round's counted stitches, counter-clockwise."""
    at = {placed.stitch: complex(*placed.head) for placed in layout.placed}
    return [at[stem.stitch.id] for stem in course.stems]


def last_course(fabric: Fabric) -> Course:
    """The last round that has stitches, its corners found as the engine finds them."""
    picots = picots_of(fabric)
    found: Course | None = None
    for index, worked in enumerate(fabric.rounds):
        if worked.kind in ("round", "row"):
            course = with_corners(fabric, course_of(fabric, index, picots), found)
            found = course if course.size else found
    assert found is not None
    return found


@dataclass(frozen=True, slots=True)
class PolygonShape:
    """``bow``: the most that a head lies off its side's line, over the side; ``corner``: the worst corner's error in degrees; ``aspect``:
    the longest side over the shortest, less 1.
    """

    bow: float
    corner: float
    aspect: float


def polygon_shape(fabric: Fabric, layout: Layout) -> PolygonShape | None:
    """How straight the last round's sides are, from lines fitted to the heads of each side; None for a circle."""
    course = last_course(fabric)
    count = len(course.corners)
    if course.open or count < 3:
        return None
    points = heads(layout, course)
    lines = []
    for k, corner in enumerate(course.corners):
        following = course.corners[(k + 1) % count]
        first = corner.at if corner.on_stem else corner.at + 1
        length = (following.at - first) % course.size + 1
        side = [points[(first + j) % course.size] for j in range(length)]
        lines.append(_line(side))
    crossings = [_cross(lines[k - 1], lines[k]) for k in range(count)]
    lengths = [abs(crossings[(k + 1) % count] - crossings[k]) for k in range(count)]
    bow = max(line[2] / length for line, length in zip(lines, lengths, strict=True))
    turns = [abs(argument(lines[k][1] / lines[k - 1][1])) for k in range(count)]
    corner_error = max(abs(turn - 2 * pi / count) for turn in turns) * 180 / pi
    return PolygonShape(bow, corner_error, max(lengths) / min(lengths) - 1)


def _line(points: Sequence[complex]) -> tuple[complex, complex, float]:
    """A point of the fitted line, its direction, and the largest distance from it."""
    middle = sum(points) / len(points)
    moment = sum((p - middle) ** 2 for p in points)
    along = moment**0.5 / abs(moment**0.5) if abs(moment) > 1e-12 else 1 + 0j
    if ((points[-1] - points[0]) / along).real < 0:
        along = -along
    return middle, along, max(abs(((p - middle) / along).imag) for p in points)


def _cross(a: tuple[complex, complex, float], b: tuple[complex, complex, float]) -> complex:
    cross = (a[1].conjugate() * b[1]).imag
    t = ((b[0] - a[0]).conjugate() * b[1]).imag / cross
    return a[0] + t * a[1]


def radius_spread(fabric: Fabric, layout: Layout) -> float:
    """Largest over smallest radius of the last round's heads, less 1."""
    radii = [abs(head) for head in heads(layout, last_course(fabric))]
    return max(radii) / min(radii) - 1


def symmetry_error(layout: Layout, course: Course, order: int) -> float:
    """The most that a head or foot of a round lies off the image of its fellow under the rotation of this order."""
    at = {placed.stitch: placed for placed in layout.placed}
    step = course.size // order
    turn = exp(2j * pi / order)
    worst = 0.0
    for i, stem in enumerate(course.stems):
        one, other = at[stem.stitch.id], at[course.stems[(i + step) % course.size].stitch.id]
        for a, b in zip((one.head, *one.feet), (other.head, *other.feet), strict=True):
            worst = max(worst, abs(complex(*a) * turn - complex(*b)))
    return worst


def order_errors(layout: Layout, course: Course) -> int:
    """How many neighbours of a round stand in the wrong order about the centre."""
    points = heads(layout, course)
    turns = [argument(b / a) for a, b in zip(points, points[1:] + points[:1], strict=True)]
    return sum(1 for turn in turns if turn < -1e-9)


def ink_share(found: Sequence[Symbol]) -> float:
    """The area of all symbols (their filled outlines) over that of their hull."""
    from shapely import unary_union
    from shapely.geometry import Polygon

    shape = unary_union([Polygon(outline(mark)).buffer(0) for symbol in found for mark in symbol.marks])
    return float(shape.area / shape.convex_hull.area)


Pairs = list[tuple[str, str, float]]


def told_contacts(fabric: Fabric, layout: Layout, clearance: float = 0.03) -> tuple[Pairs, Pairs]:
    """The same as another program finds it from the chart's JSON: overlaps and near pairs of all symbols but those told to touch."""
    from shapely import STRtree, unary_union
    from shapely.geometry import Polygon

    from motifold.render.motif.chart.scene import symbols_of

    found = [symbol for symbol in symbols_of(fabric, layout, False, {}) if symbol.marks and not symbol.given]
    shapes = [unary_union([Polygon(outline(mark)).buffer(0) for mark in symbol.marks]) for symbol in found]
    overlaps, near = [], []
    for i, j in _pairs(STRtree(shapes), shapes, clearance):
        if found[j].id in found[i].touches:
            continue
        area = shapes[i].intersection(shapes[j]).area
        if area > 0.003:
            overlaps.append((found[i].id, found[j].id, area))
        else:
            near.append((found[i].id, found[j].id, shapes[i].distance(shapes[j])))
    return overlaps, near
