"""The grammar: what a stitch is made of can be counted in its symbol, its ink stays in its footprint, and its outlines cover its ink."""

from __future__ import annotations

from math import hypot

import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from motifold.symbols import sizes
from motifold.symbols.footprint import footprint
from motifold.symbols.glyphs import LegAt, stitch_marks
from motifold.symbols.ink import Fill, Mark, Stroke, flatten, outline, outlines
from motifold.symbols.specimens import specimen
from motifold.symbols.stitches import kind, stitch_name

KINDS = [
    *["sc", "hdc", "dc", "tr", "dtr", "trtr", "quadtr", "edc", "esc", "ldc", "ltr", "fsc", "fdc", "FPdc", "BPdc", "FPsc", "BPtr"],
    *["cl", "bobble", "pc", "puff", "5-tr cl", "7-dc bobble", "4-tr pc", "rev sc"],
]


def bars(marks: tuple[Mark, ...]) -> int:
    straight = [mark.points for mark in marks if isinstance(mark, Stroke) and len(mark.points) == 2]
    return sum(hypot(a[0] - b[0], a[1] - b[1]) == pytest.approx(sizes.BAR_SPAN) for a, b in straight)


def shape(marks: tuple[Mark, ...]) -> shapely.Geometry:
    return shapely.union_all([shapely.Polygon(ring).buffer(0) for ring in outlines(marks)])


@pytest.mark.parametrize("yarn_overs", range(1, 9))
def test_one_slanted_bar_for_each_yarn_over(yarn_overs: int) -> None:
    assert bars(specimen(stitch_name(yarn_overs))) == yarn_overs


@pytest.mark.parametrize(
    ("name", "ovals", "dots", "bars_of", "heads"),
    [
        ("ch", 1, 0, 0, 0), ("sl st", 0, 1, 0, 0), ("sc", 0, 0, 0, 0), ("hdc", 0, 0, 0, 1), ("dc", 0, 0, 1, 1), ("tr", 0, 0, 2, 1),
        ("dtr", 0, 0, 3, 1), ("dc2tog", 0, 0, 2, 1), ("dc3tog", 0, 0, 3, 1), ("sc2tog", 0, 0, 0, 0), ("shell", 0, 0, 5, 5),
        ("V-st", 1, 0, 2, 2), ("picot", 3, 1, 0, 0), ("FPdc", 0, 0, 1, 1), ("crossed dc", 0, 0, 2, 2),
    ],
)  # fmt: skip
def test_symbols_have_the_features_that_the_trade_s_descriptions_name(name: str, ovals: int, dots: int, bars_of: int, heads: int) -> None:
    """Open oval, filled dot, cross, T, T with slashes, legs joined at the top, picot of three ovals: as chart keys describe them."""
    marks = specimen(name)
    assert sum(isinstance(m, Stroke) and m.closed for m in marks) == ovals
    assert sum(isinstance(m, Fill) for m in marks) == dots
    assert bars(marks) == bars_of
    assert sum(isinstance(m, Stroke) and m.smooth and m.width == sizes.HEAD_WIDTH for m in marks) == heads


def test_a_single_crochet_is_a_cross_of_two_strokes_at_right_angles() -> None:
    stem, arm = specimen("sc")
    (ax, ay), (bx, by) = stem.points
    (cx, cy), (dx, dy) = arm.points
    assert (bx - ax) * (dx - cx) + (by - ay) * (dy - cy) == pytest.approx(0)
    assert shapely.LineString(stem.points).crosses(shapely.LineString(arm.points))


@pytest.mark.parametrize("name", ["cl", "bobble", "puff"])
def test_gathered_stitches_are_closed_outlines(name: str) -> None:
    assert any(isinstance(mark, Stroke) and mark.closed for mark in specimen(name))


@pytest.mark.parametrize("name", KINDS)
def test_ink_stays_in_the_room_that_the_layout_keeps_for_it(name: str) -> None:
    found, room = kind(name), footprint(name)
    x0, y0, x1, y1 = shape(specimen(name)).bounds
    half = max(room.head_half, room.body_half, room.foot_half) + 1e-6
    assert -half - 0.03 <= x0
    assert x1 <= half + 0.03
    assert y0 >= -room.foot_depth - 0.02
    assert y1 <= found.height + room.head_rise + (0.2 if found.reverse else 0.02)


@given(
    yarn_overs=st.integers(0, 8),
    head=st.tuples(st.floats(-3, 3), st.floats(0.5, 6)),
    bend=st.lists(st.tuples(st.floats(-1, 1), st.floats(0.5, 3)), max_size=2),
    into=st.sampled_from(["loops", "back loop", "front loop", "front post", "back post", "space"]),
)
def test_outlines_cover_the_ink_and_are_closed_polygons(
    yarn_overs: int, head: tuple[float, float], bend: list[tuple[float, float]], into: str
) -> None:
    name = stitch_name(yarn_overs)
    for mark in stitch_marks(name, [LegAt(name, (0.0, 0.0), into)], head, (0.0, 1.0), bend=bend):  # type: ignore[arg-type]
        ring = outline(mark)
        assert len(ring) >= 6
        polygon = shapely.Polygon(ring).buffer(0)
        line = shapely.LineString(flatten(mark.points, mark.smooth))
        assert polygon.buffer(0.02).covers(line)


def test_the_table_keeps_its_promises() -> None:
    """Stems, ovals, heads and strokes as wide and tall as a printed chart needs."""
    assert [kind(n).height for n in ("sc", "hdc", "dc", "tr", "dtr")] == [1.0, 1.5, 2.2, 3.0, 3.8]
    assert sizes.OVAL_LENGTH >= 0.75
    assert sizes.OVAL_BREADTH >= 0.30
    assert sizes.HEAD_SPAN >= 0.5
    widths = {m.width for name in [*KINDS, "ch", "sc2tog", "picot"] for m in specimen(name) if isinstance(m, Stroke)}
    assert min(widths) >= 0.06


def test_ten_thousand_symbols_are_drawn_in_seconds_not_minutes() -> None:
    import time

    start = time.perf_counter()
    for _ in range(2000):
        outlines(stitch_marks("dc", [LegAt("dc", (0.0, 0.0))], (0.0, 2.2), (0.0, 1.0)))
    assert time.perf_counter() - start < 2.0
