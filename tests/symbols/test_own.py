"""A pattern's own symbol is read as path data, scaled to its height, and refused in plain words when it is none."""

from __future__ import annotations

from itertools import pairwise
from math import hypot, pi

import pytest
from hypothesis import given
from hypothesis import strategies as st

from motifold.symbols.ink import bounds, flatten
from motifold.symbols.own import read_symbol
from motifold.symbols.svg_arc import arc_cubics
from motifold.symbols.svg_file import svg_path_data


def test_a_symbol_stands_on_its_foot_as_tall_as_its_stitch() -> None:
    marks = read_symbol("M0,0 L10,0 L5,20 Z m0 0 h4").marks((1.0, 1.0), (1.0, 4.0))
    x0, y0, x1, y1 = bounds(marks)
    assert y1 - y0 == pytest.approx(3.0 + 0.1, abs=0.03)
    assert (x0 + x1) / 2 == pytest.approx(1.0, abs=0.05)


def test_y_runs_downwards_in_path_data() -> None:
    (mark,) = read_symbol("M0 10 L0 0 L3 0").marks((0.0, 0.0), (0.0, 1.0))
    assert mark.points[0][1] == pytest.approx(0.0)
    assert mark.points[-1][1] == pytest.approx(1.0)


@pytest.mark.parametrize(
    "data",
    ["M0 0 q5 0 5 10 t5 10", "m0 0c0 5 5 5 5 10s5 5 5 10", "M0 0V5H3v-2h1z", "M1,1l.5.5-.5.5", "M0 0a5 5 0 01.5 9.5A3,4,30,1,0 0 0z"],
)
def test_curves_of_every_kind_are_read(data: str) -> None:
    assert read_symbol(data).subpaths


@pytest.mark.parametrize(
    ("data", "match"),
    [
        ("", "must begin with M"), ("L0 0", "must begin with M"), ("M0 0 A1 1 0 2 1 5 5", "flag of an arc"),
        ("M0 0 A1 1 0 0 1 5", "takes 7"), ("M0 0 L5", "takes 2"),
        ("M0 0 L5 5; rm", "where a command"), ("M0 0 H9", "needs some height"), ("M0 0 L0 9e9", "too large"), ("M0 0", "draws nothing"),
        ("M0 0" + " L1 1" * 2000, "characters"),
    ],
)  # fmt: skip
def test_what_is_no_path_is_refused_in_plain_words(data: str, match: str) -> None:
    with pytest.raises(ValueError, match=match):
        read_symbol(data)


@given(st.text(alphabet="MmLlHhVvCcSsQqTtAaZz0123456789.,-+eE ", max_size=60))
def test_any_text_is_read_or_refused(data: str) -> None:
    try:
        symbol = read_symbol(data)
    except ValueError:
        return
    assert symbol.marks((0.0, 0.0), (0.0, 2.0))


@pytest.mark.parametrize("flags", ["0 0", "0 1", "1 0", "1 1"])
def test_an_arc_keeps_its_distance_from_its_centre(flags: str) -> None:
    """Quarters and three quarters of a circle of radius 5 about the corner that the flags choose."""
    large, sweep = flags.split()
    points = arc_cubics((0.0, 0.0), (5.0, 5.0), 17.0, large == "1", sweep == "1", (5.0, 5.0))
    flat = flatten([(0.0, 0.0), *points], True)
    centre = (5.0, 0.0) if large == sweep else (0.0, 5.0)
    radii = [hypot(x - centre[0], y - centre[1]) for x, y in flat]
    assert max(radii) - min(radii) < 0.01
    assert max(radii) == pytest.approx(5.0, abs=0.01)
    turned = sum(hypot(b[0] - a[0], b[1] - a[1]) for a, b in pairwise(flat))
    assert turned == pytest.approx(5.0 * pi * (1.5 if large == "1" else 0.5), rel=0.01)


def test_radii_that_are_too_small_are_made_to_reach() -> None:
    flat = flatten([(0.0, 0.0), *arc_cubics((0.0, 0.0), (1.0, 1.0), 0.0, False, True, (10.0, 0.0))], True)
    assert min(y for _, y in flat) == pytest.approx(-5.0, abs=0.01)


SVG = '<svg xmlns="http://www.w3.org/2000/svg" xmlns:other="http://example.org/other"><title>t</title><other:x/><g>{}</g></svg>'


def test_a_small_svg_file_is_its_paths() -> None:
    data = svg_path_data(SVG.format('<path d="m5 20 v-4 c-6-2-6-12 0-16"/><!-- c --><line x1="5" y1="16" x2="5" y2="6"/>').encode())
    symbol = read_symbol(data)
    assert len(symbol.subpaths) == 2
    _, y0, _, y1 = bounds(symbol.marks((0.0, 0.0), (0.0, 2.0)))
    assert (y0, y1) == (pytest.approx(0.0, abs=0.06), pytest.approx(2.0, abs=0.06))


@pytest.mark.parametrize(
    ("data", "match"),
    [
        (b"<svg", "no XML"), (b"<html/>", "no SVG"), (b"<svg/>", "no path"), (b"\xff\xfe<\0s\0", "UTF-8"),
        (b'<!DOCTYPE svg [<!ENTITY a "b">]><svg/>', "document type"), (SVG.format('<image href="http://x/y"/>').encode(), "elsewhere"),
        (SVG.format('<use xmlns:x="http://www.w3.org/1999/xlink" x:href="#a"/>').encode(), "elsewhere"),
        (SVG.format("<circle r='1'/>").encode(), "paths and lines"),
        (SVG.format("<path transform='scale(2)' d='M0 0'/>").encode(), "transform"),
        (b"<svg>" + b"<g>" * 9000, "no XML"), (SVG.format("<script>x</script>").encode(), "paths and lines"),
    ],
)  # fmt: skip
def test_an_svg_file_that_is_no_plain_drawing_is_refused_in_plain_words(data: bytes, match: str) -> None:
    with pytest.raises(ValueError, match=match):
        svg_path_data(data)


def test_groups_in_groups_without_end_cost_no_more_than_they_are_long() -> None:
    deep = 6000
    data = b"<svg>" + b"<g>" * deep + b'<path d="M0 0L1 1"/>' + b"</g>" * deep + b"</svg>"
    assert svg_path_data(data) == "M0 0L1 1"
