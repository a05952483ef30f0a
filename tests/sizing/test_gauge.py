"""What a swatch measures."""

from __future__ import annotations

import pytest

from motifold.render.pattern.model import Gauge, GaugePoint
from motifold.render.sizing import row_height_cm, width_after
from motifold.render.sizing.gauge import stitch_width, width_line


def test_one_measured_round_scales_in_proportion() -> None:
    assert width_after(Gauge("m", (GaugePoint(8, 12.8),)), 9) == pytest.approx(14.4)


def test_two_measured_rounds_fit_a_line_through_both() -> None:
    gauge = Gauge("m", (GaugePoint(2, 4.0), GaugePoint(6, 10.0)))
    line = width_line(gauge)
    assert line is not None
    assert (line.at(2), line.at(6), line.at(8)) == (pytest.approx(4.0), pytest.approx(10.0), pytest.approx(13.0))
    assert line.error_cm == pytest.approx(0, abs=1e-9)


def test_three_measured_rounds_show_how_far_they_are_from_one_line() -> None:
    line = width_line(Gauge("m", (GaugePoint(1, 2.0), GaugePoint(2, 4.3), GaugePoint(3, 6.0))))
    assert line is not None
    assert line.per_round_cm == pytest.approx(2.0)
    assert line.at(0) == pytest.approx(0.1)
    assert line.error_cm == pytest.approx(0.2)


def test_the_wash_changes_every_width() -> None:
    assert width_after(Gauge("m", (GaugePoint(5, 10.0),), after_wash=0.97), 10) == pytest.approx(19.4)


def test_a_round_adds_a_row_at_either_side() -> None:
    gauge = Gauge(None, (), stitches=16, width_cm=10, rows=8, height_cm=10)
    assert stitch_width(gauge) == 0.625
    assert row_height_cm(gauge) == 1.25
    assert width_after(gauge, 4) == pytest.approx(10.0)


def test_nothing_measured_is_nothing_known() -> None:
    assert width_after(Gauge("m"), 3) is None
    assert row_height_cm(None) is None
