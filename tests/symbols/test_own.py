"""A pattern's own symbol is read as path data, scaled to its height, and refused in plain words when it is none."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from motifold.symbols.ink import bounds
from motifold.symbols.own import read_symbol


def test_a_symbol_stands_on_its_foot_as_tall_as_its_stitch() -> None:
    marks = read_symbol("M0,0 L10,0 L5,20 Z m0 0 h4").marks((1.0, 1.0), (1.0, 4.0))
    x0, y0, x1, y1 = bounds(marks)
    assert y1 - y0 == pytest.approx(3.0 + 0.1, abs=0.03)
    assert (x0 + x1) / 2 == pytest.approx(1.0, abs=0.05)


def test_y_runs_downwards_in_path_data() -> None:
    (mark,) = read_symbol("M0 10 L0 0 L3 0").marks((0.0, 0.0), (0.0, 1.0))
    assert mark.points[0][1] == pytest.approx(0.0)
    assert mark.points[-1][1] == pytest.approx(1.0)


@pytest.mark.parametrize("data", ["M0 0 q5 0 5 10 t5 10", "m0 0c0 5 5 5 5 10s5 5 5 10", "M0 0V5H3v-2h1z", "M1,1l.5.5-.5.5"])
def test_curves_of_every_kind_are_read(data: str) -> None:
    assert read_symbol(data).subpaths


@pytest.mark.parametrize(
    ("data", "match"),
    [
        ("", "must begin with M"), ("L0 0", "must begin with M"), ("M0 0 A1 1 0 0 1 5 5", "where a command"), ("M0 0 L5", "takes 2"),
        ("M0 0 L5 5; rm", "where a command"), ("M0 0 H9", "needs some height"), ("M0 0 L0 9e9", "too large"), ("M0 0", "draws nothing"),
        ("M0 0" + " L1 1" * 2000, "characters"),
    ],
)  # fmt: skip
def test_what_is_no_path_is_refused_in_plain_words(data: str, match: str) -> None:
    with pytest.raises(ValueError, match=match):
        read_symbol(data)


@given(st.text(alphabet="MmLlHhVvCcSsQqTtZz0123456789.,-+eE ", max_size=60))
def test_any_text_is_read_or_refused(data: str) -> None:
    try:
        symbol = read_symbol(data)
    except ValueError:
        return
    assert symbol.marks((0.0, 0.0), (0.0, 2.0))
