"""Gauges, yarn counts and common practice against the models that sizes and yarn are reckoned with."""

from __future__ import annotations

from math import pi

import pytest

from motifold.render.pattern.model import Gauge, GaugePoint
from motifold.render.pattern.quantity import parse_per_length
from motifold.render.sizing import row_height_cm, width_after
from motifold.render.sizing.gauge import stitch_width
from motifold.render.sizing.loops import height_in_widths, stitch_length, yarn_diameter_cm
from motifold.render.sizing.ruler import read_ease

FOUR_INCHES = 10.16


@pytest.mark.parametrize(
    ("stitch", "stitches", "rows"),
    [("sc", 13, 14), ("sc", 10, 11), ("sc", 7, 8), ("sc", 14, 16), ("sc", 16, 20), ("hdc", 13, 10), ("dc", 8, 5)],
)
def test_heights_of_stitches_are_those_of_published_gauge_lines(stitch: str, stitches: int, rows: int) -> None:
    """Stitches and rows over 4 in, leaflets of yarn makers, 2020 to 2023 (seen second-hand): height over width is their quotient.

    They scatter by about a tenth among themselves.
    """
    gauge = Gauge(stitches=stitches, width_cm=FOUR_INCHES, rows=rows, height_cm=FOUR_INCHES)
    width, height = stitch_width(gauge), row_height_cm(gauge)
    assert width is not None and height is not None
    assert height / width == pytest.approx(stitches / rows)
    assert height_in_widths(stitch) == pytest.approx(stitches / rows, rel=0.12)


@pytest.mark.parametrize(("stitch", "increase"), [("sc", 6), ("hdc", 8), ("dc", 12), ("tr", 15.5)])
def test_flat_circles_grow_by_the_rule_of_the_trade(stitch: str, increase: float) -> None:
    """Common practice as makers' pages repeat it: 6, 8, 12 (15 to 16) more in every round. A ring h wider has 2 pi h more edge, so
    2 pi h / w more stitches; published gauges lie up to a fifth below the rule."""
    assert 2 * pi * height_in_widths(stitch) == pytest.approx(increase, rel=0.2)


def test_counts_of_yarn_are_those_of_the_textbooks() -> None:
    """tex is grams to 1000 m, the metric count metres to a gram, so tex = 1000 / Nm (ISO 1144; textbooks). 240 g of 369 m: 650 tex."""
    label = parse_per_length("369 m / 240 g")
    metric_count = float(label.metres_per_gram)
    tex = 1000 / metric_count
    assert metric_count == pytest.approx(1.5375)
    assert tex == pytest.approx(650.4, abs=0.1)
    # a round yarn of half a gram to the cubic centimetre: area = tex / (10^5 density) in square cm
    assert pi / 4 * yarn_diameter_cm(tex / 1000) ** 2 == pytest.approx(tex / 1e5 / 0.5)


def test_yards_on_a_label_are_metres() -> None:
    """404 yd are 369.4 m: 1 yd = 0.9144 m exactly (agreement of 1959)."""
    assert float(parse_per_length("404 yd / 240 g").metres_per_gram) == pytest.approx(404 * 0.9144 / 240)


def test_five_rounds_of_open_square_go_four_times_round_a_head_of_53_cm_and_six_do_not() -> None:
    """Common practice, no source: 5 rounds in medium yarn with a 5.5 mm hook come to about 12.5 cm, a little under a quarter of a head."""
    swatch = Gauge("square", (GaugePoint(5, 12.5),))
    five, six = (4 * (width_after(swatch, rounds) or 0) for rounds in (5, 6))
    assert 0.9 * 53 / 4 < five / 4 < 53 / 4
    from motifold.render.pattern.quantity import parse_range

    ease = read_ease(parse_range("-10 % to 0 %"))
    assert ease.allows(five, 53.0)
    assert not ease.allows(six, 53.0)
    assert abs(five - ease.aim(53.0)) < abs(six - ease.aim(53.0))


def test_taller_stitches_take_more_yarn() -> None:
    """Every maker knows the order; the ratios are the model's own."""
    lengths = [stitch_length(name) for name in ("ch", "sc", "hdc", "dc", "tr", "dtr")]
    assert lengths == sorted(lengths)
