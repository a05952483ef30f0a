"""What the symbols show is what published chart keys describe in words; measured on the ink itself, the drawing is ours.

Sources. Basics (an open oval, a small filled dot, a cross, a plain T, a T with a slash for each yarn over): as described by
dailyhandmade.com, dailygamebonus.com and beautybady.com, which agree. The rest (legs joined at the top, closed at top and bottom, a
popcorn's small oval, legs fanned from one base, three ovals in a loop, stems that end in a hook curling right or left, small arcs beneath)
is what the chart symbols of the Craft Yarn Council's "Standards & Guidelines" show, from memory, not seen again for this test.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from math import hypot
from statistics import mode

import pytest
import shapely

from motifold.symbols.footprint import Foot
from motifold.symbols.ink import Fill, Mark, flatten
from motifold.symbols.specimens import specimen
from motifold.symbols.stitches import kind

SIDE = 0.15
"""Beside a stem of 0.1 u, and within a bar that is not half a u long."""


def ink_of(marks: tuple[Mark, ...]) -> shapely.Geometry:
    """The ink on the paper: strokes as wide as they are, fills, and nothing where an outline is open."""
    parts: list[shapely.Geometry] = []
    for mark in marks:
        points = flatten(mark.points, mark.smooth)
        if isinstance(mark, Fill):
            parts.append(shapely.Polygon(points))
            continue
        line = shapely.LinearRing(points) if mark.closed else shapely.LineString(points)
        parts.append(line.buffer(mark.width / 2))
    return shapely.union_all(parts)


def pieces(shape: shapely.Geometry) -> list[shapely.Geometry]:
    return [part for part in getattr(shape, "geoms", [shape]) if not part.is_empty]


def across(ink: shapely.Geometry, y: float, x0: float = -9.0, x1: float = 9.0) -> list[float]:
    """Where a level line meets ink: the middles of what it meets, from the left."""
    met = ink.intersection(shapely.LineString([(x0, y), (x1, y)]))
    return sorted(part.centroid.x for part in pieces(met))


def upward(ink: shapely.Geometry, x: float, y0: float, y1: float) -> list[float]:
    """Where an upright line meets ink between two heights: the middles, from below."""
    met = ink.intersection(shapely.LineString([(x, y0), (x, y1)]))
    return sorted(part.centroid.y for part in pieces(met))


def holes(ink: shapely.Geometry) -> list[shapely.Polygon]:
    """What is closed in by ink."""
    return [shapely.Polygon(ring) for part in pieces(ink) for ring in part.interiors]


def is_oval(hole: shapely.Polygon) -> bool:
    box = hole.minimum_rotated_rectangle.exterior.coords
    sides = sorted(hypot(b[0] - a[0], b[1] - a[1]) for a, b in pairwise(box[:3]))
    return sides[1] > 1.5 * sides[0] and hole.area > 0.95 * hole.convex_hull.area


def dots(ink: shapely.Geometry) -> int:
    """Pieces of ink that are solid and round."""
    solid = [part for part in pieces(ink) if not part.interiors]
    return sum(part.area > 0.9 * 3.1416 / 4 * (part.bounds[2] - part.bounds[0]) * (part.bounds[3] - part.bounds[1]) for part in solid)


@dataclass(frozen=True)
class Read:
    """What can be read off one upright stem: what crosses it level, what crosses it on a slant, and whether it ends in a bar."""

    level: int
    slanted: int
    head: bool


def read_stem(ink: shapely.Geometry, height: float) -> Read:
    """Compares what lies to the left and to the right of the stem, from above its foot to below its head."""
    left, right = (upward(ink, x, 0.3 * height, height - 0.18) for x in (-SIDE, SIDE))
    assert len(left) == len(right)
    slanted = sum(b - a > 0.05 for a, b in zip(left, right, strict=True))
    top = ink.intersection(shapely.box(-2, height - 0.12, 2, height + 0.2))
    return Read(len(left) - slanted, slanted, top.bounds[2] - top.bounds[0] >= 0.5)


STEMS = [
    ("sc", Read(1, 0, False)), ("hdc", Read(0, 0, True)), ("dc", Read(0, 1, True)), ("tr", Read(0, 2, True)), ("dtr", Read(0, 3, True)),
    ("trtr", Read(0, 4, True)), ("quadtr", Read(0, 5, True)), ("edc", Read(0, 1, True)), ("fdc", Read(0, 1, True)),
    ("esc", Read(1, 0, False)),
]  # fmt: skip


@pytest.mark.parametrize(("name", "described"), STEMS, ids=[name for name, _ in STEMS])
def test_a_cross_or_a_t_with_a_slash_for_each_yarn_over(name: str, described: Read) -> None:
    assert read_stem(ink_of(specimen(name)), kind(name).height) == described


@pytest.mark.parametrize("into", ["back loop", "front loop", "space"])
@pytest.mark.parametrize(("name", "described"), STEMS[:4], ids=[name for name, _ in STEMS[:4]])
def test_what_it_is_worked_into_changes_nothing_above_the_foot(name: str, described: Read, into: Foot) -> None:
    assert read_stem(ink_of(specimen(name, into)), kind(name).height) == described


def test_a_chain_is_an_open_oval_and_a_slip_stitch_a_filled_dot() -> None:
    chain, slip = ink_of(specimen("ch")), ink_of(specimen("sl st"))
    assert [is_oval(hole) for hole in holes(chain)] == [True]
    assert (dots(chain), holes(slip), dots(slip)) == (0, [], 1)


@pytest.mark.parametrize(
    ("name", "legs", "bars"), [("sc2tog", 2, 0), ("sc3tog", 3, 0), ("hdc2tog", 2, 0), ("dc2tog", 2, 1), ("dc3tog", 3, 1), ("tr4tog", 4, 2)]
)
def test_stitches_worked_together_are_legs_that_join_at_the_top(name: str, legs: int, bars: int) -> None:
    ink, height = ink_of(specimen(name)), kind(name).height
    feet = across(ink, 0.03)
    assert len(feet) == legs
    assert len(pieces(ink)) == 1
    at_top = ink.intersection(shapely.box(-3, height - 0.05, 3, height + 0.05)).bounds
    assert at_top[2] - at_top[0] < 0.8 < feet[-1] - feet[0] + 0.1
    if bars:  # beside the first leg, along it: as many slashes as its yarn overs
        x = feet[0]
        lean = shapely.LineString([(x + 0.04, 0.25), (x - (x / height) * (height - 0.35), height - 0.35)])
        beside = lean.parallel_offset(SIDE, "left")
        assert len(pieces(ink.intersection(beside))) == bars


@pytest.mark.parametrize(
    ("name", "legs", "bars"),
    [("3-dc cl", 3, 1), ("4-tr cl", 4, 2), ("5-dc bobble", 5, 1), ("3-dc bobble", 3, 1), ("3-hdc puff", 3, 0), ("4-hdc puff", 4, 0)],
)
def test_clusters_bobbles_and_puffs_are_legs_closed_at_top_and_bottom(name: str, legs: int, bars: int) -> None:
    ink, height = ink_of(specimen(name)), kind(name).height
    assert mode(len(across(ink, part * height)) for part in (0.2, 0.25, 0.3, 0.7, 0.75, 0.8)) == legs
    assert len(pieces(ink)) == 1
    assert len(across(ink, 0.02)) == len(across(ink, height)) == 1
    assert len(holes(ink)) == (legs - 1) * (bars + 1)  # bars across all legs cut the white between them


@pytest.mark.parametrize(("name", "legs"), [("pc", 5), ("4-dc pc", 4), ("3-tr pc", 3)])
def test_a_popcorn_s_legs_fan_from_one_foot_and_are_closed_by_an_oval(name: str, legs: int) -> None:
    ink, height = ink_of(specimen(name)), kind(name).height
    assert len(across(ink, 0.02)) == 1
    assert max(len(across(ink, part * height)) for part in (0.65, 0.72, 0.8, 0.85)) == legs
    lying = [hole for hole in holes(ink) if abs(hole.centroid.y - height) < 0.1]
    spans = [hole.bounds[2] - hole.bounds[0] for hole in lying]
    assert sum(spans) > 0.5  # the oval's white, which the legs may cut


@pytest.mark.parametrize(("name", "legs", "height"), [("shell", 5, 2.2), ("7-dc shell", 7, 2.2), ("4-tr shell", 4, 3.0)])
def test_a_shell_s_legs_fan_from_one_base(name: str, legs: int, height: float) -> None:
    ink = ink_of(specimen(name))
    base = across(ink, 0.02)
    assert base[-1] - base[0] < 1.1
    arc = shapely.Point(0, 0).buffer(0.62 * height, quad_segs=64).exterior.intersection(shapely.box(-9, 0.05, 9, 9))
    near = pieces(ink.intersection(arc))
    assert legs <= len(near) <= 2 * legs  # a bar may be met beside its stem
    tops = [part for part in pieces(ink) if part.distance(shapely.Point(0, 0)) < 1]
    assert len(tops) <= legs


def test_a_picot_is_three_ovals_in_a_loop_on_a_dot() -> None:
    for name, chains in (("picot", 3), ("ch-4 picot", 4), ("ch-5 picot", 5)):
        ink = ink_of(specimen(name))
        ovals = [hole for hole in holes(ink) if is_oval(hole)]
        assert (len(ovals), dots(ink)) == (chains, 1)
        x, y = (sum(c) / chains for c in zip(*((hole.centroid.x, hole.centroid.y) for hole in ovals), strict=True))
        assert x == pytest.approx(0.0, abs=1e-6)
        assert all(hypot(hole.centroid.x - x, hole.centroid.y - y) > 0.3 for hole in ovals)


@pytest.mark.parametrize(("name", "side"), [("FPdc", 1), ("FPtr", 1), ("FPsc", 1), ("BPdc", -1), ("BPtr", -1), ("BPhdc", -1)])
def test_a_post_stitch_s_stem_ends_in_a_hook_that_curls_right_in_front_and_left_behind(name: str, side: int) -> None:
    ink = ink_of(specimen(name))
    assert len(pieces(ink)) == 1
    low = ink.bounds[1]
    assert low < -0.15
    [bottom] = across(ink, low + 0.04)
    hook = across(ink, 0.02)
    assert len(hook) == 2
    [stem] = across(ink, 0.32)
    free = max(hook, key=lambda x: abs(x - stem))
    assert (free - stem) * side > 0.2
    assert min(hook) < bottom < max(hook)


@pytest.mark.parametrize("name", ["sc", "hdc", "dc", "tr"])
def test_a_small_arc_at_the_foot_says_which_loop(name: str) -> None:
    back, front, plain = (ink_of(specimen(name, into)) for into in ("back loop", "front loop", "loops"))  # type: ignore[arg-type]
    assert [len(across(ink, 0.19)) for ink in (back, front, plain)] == [3, 1, 1]
    assert [len(across(ink, -0.19)) for ink in (back, front, plain)] == [0, 2, 0]


@pytest.mark.parametrize("name", ["dc", "tr"])
def test_a_ring_at_the_foot_is_a_space(name: str) -> None:
    [ring] = holes(ink_of(specimen(name, "space")))
    assert ring.centroid.y < 0 < ring.area
    assert not is_oval(ring)


def test_crossed_stitches_cross_and_foundation_stitches_stand_on_a_chain_of_their_own() -> None:
    ink = ink_of(specimen("crossed dc"))
    assert (len(across(ink, 0.1)), len(across(ink, 2.0)), len(pieces(ink))) == (2, 2, 1)
    for name in ("fsc", "fhdc", "fdc"):
        ovals = [hole for hole in holes(ink_of(specimen(name))) if is_oval(hole)]
        assert len(ovals) == 1
        assert ovals[0].bounds[2] - ovals[0].bounds[0] > 0.5 > -ovals[0].bounds[3]


def test_a_linked_stitch_has_a_loop_at_its_side_for_each_yarn_over_and_no_bars() -> None:
    for name, loops in (("lhdc", 1), ("ldc", 1), ("ltr", 2)):
        ink = ink_of(specimen(name))
        beside = [hole for hole in holes(ink) if hole.centroid.x > 0.2]
        assert len(beside) == loops
        assert upward(ink, -SIDE, 0.2, kind(name).height - 0.2) == []
