"""How much yarn a size takes."""

from __future__ import annotations

import re
from dataclasses import replace
from math import pi

import pytest
from sizing_by_hand import SWATCH, pattern

from motifold.render.assembly.model import Assembly, Panel, Seam, SeamPass
from motifold.render.fabric.model import Base, Fabric, Leg, Origin, Round, Stitch
from motifold.render.pattern.model import Gauge, GaugePoint, SidePiece
from motifold.render.pattern.problem import NOWHERE
from motifold.render.sizing import yarn_needs
from motifold.render.sizing.amounts import printed_amounts
from motifold.render.sizing.loops import height_in_widths, stitch_length, yarn_diameter_cm
from motifold.render.sizing.model import YarnNeed
from motifold.render.sizing.yarn import ends_by_yarn

ORIGIN = Origin(0, (), NOWHERE)


def fabric(rounds: tuple[tuple[str, int, str, bool], ...], fasten: bool = True) -> Fabric:
    """Rounds of (kind, stitches, yarn, attached); the last one is fastened off."""
    stitches: list[Stitch] = []
    made: list[Round] = []
    for number, (kind, count, yarn, attached) in enumerate(rounds):
        ids = tuple(range(len(stitches), len(stitches) + count))
        legs = (Leg(kind, Base("ring", 0, "ring")),)
        stitches += [Stitch(i, kind, "stitch", number, n + 1, yarn, ORIGIN, legs) for n, i in enumerate(ids)]
        last = fasten and number == len(rounds) - 1
        label = f"Rnd {number + 1}"
        made.append(Round(number + 1, label, "round", "RS", 1, number, ids, (), "joined", False, last, attached, (yarn,), {}, {}, count))
    return Fabric("square", "square", 4, "rounds", tuple(stitches), (), (), tuple(made), ())


TWO_YARNS = fabric((("dc", 12, "A", True), ("dc", 24, "B", False), ("dc", 36, "A", False)))


def test_taller_stitches_take_more_yarn() -> None:
    lengths = [stitch_length(name) for name in ("ch", "sl st", "sc", "hdc", "dc", "tr", "dtr")]
    assert lengths == sorted(lengths)
    assert len(set(lengths)) == len(lengths)


@pytest.mark.parametrize(("stitch", "increase"), [("sc", 6), ("hdc", 8), ("dc", 12), ("tr", 15.5)])
def test_heights_agree_with_the_rule_for_flat_circles(stitch: str, increase: float) -> None:
    """So many stitches more a round lie flat (common practice): increase = 2 pi height / width, known to about a sixth."""
    assert 2 * pi * height_in_widths(stitch) == pytest.approx(increase, rel=1 / 6)


def test_a_light_yarn_is_about_a_millimetre_thick() -> None:
    assert yarn_diameter_cm(50 / 110) == pytest.approx(0.108, abs=0.001)


def test_what_weighed_so_much_as_a_swatch_weighs_so_much_as_a_motif() -> None:
    (a, b) = yarn_needs(pattern(), {"square": TWO_YARNS}, None, {}, swatch=TWO_YARNS, margin=0.0)
    motifs = a.parts["motifs"] + b.parts["motifs"]
    assert motifs / 110 * 50 == pytest.approx(11.5)
    assert a.parts["motifs"] / b.parts["motifs"] == pytest.approx(48 / 24)
    assert not a.estimate


def test_the_margin_is_in_the_metres_and_not_in_the_parts() -> None:
    (a, _) = yarn_needs(pattern(), {"square": TWO_YARNS}, None, {}, swatch=TWO_YARNS)
    assert a.metres == pytest.approx(1.1 * sum(a.parts.values()))
    assert a.grams == pytest.approx(a.metres / 110 * 50)
    assert a.balls == 1


def test_without_a_weight_it_is_an_estimate() -> None:
    light = replace(SWATCH, grams=None, grams_rounds=None)
    needs = yarn_needs(pattern(gauge=light), {"square": TWO_YARNS}, None, {})
    assert all(need.estimate for need in needs)
    assert 1.5 < needs[0].parts["motifs"] < 4  # 3 to 8 cm for a dc in a light yarn


def test_nothing_measured_gives_no_amount() -> None:
    assert yarn_needs(pattern(gauge=None), {"square": TWO_YARNS}, None, {}) == ()
    assert yarn_needs(pattern(gauge=Gauge("square")), {"square": TWO_YARNS}, None, {}) == ()


def test_an_estimate_that_was_asked_for_comes_from_the_yarns_weight() -> None:
    needs = yarn_needs(pattern(gauge=Gauge("square", estimate=True)), {"square": TWO_YARNS}, None, {})
    assert len(needs) == 2
    assert all(need.estimate for need in needs)


def test_grams_follow_the_swatch_where_the_label_says_nothing() -> None:
    bare = replace(pattern(), yarns=tuple(replace(y, length=None, ball=None) for y in pattern().yarns))
    (a, b) = yarn_needs(bare, {"square": TWO_YARNS}, None, {}, swatch=TWO_YARNS, margin=0.0)
    assert a.grams is not None
    assert b.grams is not None
    tails = sum(n.parts["tails"] / n.metres * (n.grams or 0) for n in (a, b))
    assert a.grams + b.grams - tails == pytest.approx(11.5)
    assert a.balls is None
    assert a.estimate


def test_every_start_and_every_end_of_a_yarn_is_woven_in() -> None:
    assert ends_by_yarn(TWO_YARNS) == {"A": 2, "B": 2}
    again = fabric((("sc", 6, "A", True), ("sc", 6, "A", True)))
    assert ends_by_yarn(again) == {"A": 4}


def test_seams_take_three_times_their_length_in_slip_stitch_and_two_tails_a_pass() -> None:
    panels = tuple(Panel(n, "square", ("top",), None, (), (10.0,)) for n in ("one", "two"))
    seam = Seam("1", SidePiece("one", "top"), SidePiece("two", "top"), False, "flat", 20, NOWHERE)
    passes = (SeamPass(1, (), 20, False),)
    assembly = Assembly(panels, (seam,), 1, True, (), (), passes, (), 10.0, yarn="B")
    (a, b) = yarn_needs(pattern(), {"square": TWO_YARNS}, assembly, {}, swatch=TWO_YARNS)
    assert b.parts["seams"] == pytest.approx(0.3)
    assert b.parts["tails"] == pytest.approx(0.15 * (2 * 2 + 2))
    assert a.parts["seams"] == 0
    one = yarn_needs(pattern(), {"square": TWO_YARNS}, None, {}, swatch=TWO_YARNS)[0]
    assert a.parts["motifs"] == pytest.approx(2 * one.parts["motifs"])


def test_two_swatches_of_different_size_agree() -> None:
    """Twice the stitches at twice the weight say the same about a stitch."""
    big = fabric((("dc", 24, "A", True), ("dc", 48, "B", False), ("dc", 72, "A", False)))
    heavy = replace(SWATCH, grams=23.0)
    ours = yarn_needs(pattern(gauge=heavy), {"square": TWO_YARNS}, None, {}, swatch=big)
    theirs = yarn_needs(pattern(), {"square": TWO_YARNS}, None, {}, swatch=TWO_YARNS)
    assert [n.metres for n in ours] == pytest.approx([n.metres for n in theirs])


def test_points_measured_twice_do_not_confuse_the_weight() -> None:
    two = replace(SWATCH, points=(GaugePoint(4, 6.5), GaugePoint(8, 12.8)))
    assert yarn_needs(pattern(gauge=two), {"square": TWO_YARNS}, None, {}, swatch=TWO_YARNS)[0].grams


def test_amounts_are_printed_up_and_alike_in_both_units() -> None:
    found = printed_amounts(YarnNeed("A", 9.05, 3.2, 1, False, {}))
    assert (found.metres, found.yards, found.grams, found.ounces) == (10, 11, 4, 0.2)
    assert printed_amounts(YarnNeed("A", 182.0, None, None, False, {})).yards == 200  # 199.04 yd


def test_the_written_pattern_and_the_yarn_table_give_the_same_amounts() -> None:
    from importlib import resources

    from motifold.cli.yarn import yarn_text
    from motifold.render.pattern import read_pattern
    from motifold.render.words import WordsLook, to_text, write_document
    from motifold.render.worked import needs_by_size, work_pattern

    reading = read_pattern("b.toml", resources.files("motifold.samples").joinpath("lighthouse-basket.toml").read_bytes())
    assert reading.pattern is not None
    done = work_pattern(reading.pattern)
    words = to_text(write_document(done, needs_by_size(done), WordsLook("US"))).replace("\u00a0", " ")
    rows = re.findall(r"(\d+) m +(\d+) yd +(\d+) g +([\d.]+) oz", yarn_text(done))
    assert len(rows) >= 3
    for metres, yards, grams, ounces in rows:
        assert f"{metres} m ({yards} yd), {grams} g ({ounces} oz)" in words
