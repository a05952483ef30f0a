"""Which rounds fit whom."""

from __future__ import annotations

from dataclasses import replace
from math import pi

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from sizing_by_hand import line, motif, pattern, strip

from motifold.render.pattern.instructions import Amount, Instructions, Label, Line, RepeatRounds
from motifold.render.pattern.model import AssemblySource, Gauge, GaugePoint, MotifSource, SeamSource
from motifold.render.pattern.problem import NOWHERE
from motifold.render.sizing import choose_sizes, size_table
from motifold.render.sizing.gauge import WidthLine
from motifold.render.sizing.hooks import HOOKS
from motifold.render.sizing.model import SizeTable
from motifold.render.sizing.ruler import Ruler, nearest_rounds


def table_of(*args: object, **kwargs: object) -> SizeTable:
    table, problems = size_table(pattern(*args, **kwargs))  # type: ignore[arg-type]
    assert not problems
    assert table is not None
    return table


def test_a_basket_of_four_squares_around_takes_seven_eight_and_nine_rounds() -> None:
    table = table_of()
    assert [body.chosen.rounds for body in table.bodies if body.chosen] == [7, 8, 9]
    assert [fit.rounds for fit in table.bodies[0].fits] == [5, 6, 7, 8, 9]
    small = table.bodies[0].chosen
    assert small is not None
    assert (small.width_cm, small.girth_cm, small.ease_cm, small.ease_pct) == (
        pytest.approx(11.2), pytest.approx(44.8), pytest.approx(2.8), pytest.approx(6.6667, abs=1e-3),
    )  # fmt: skip


def test_no_fit_has_less_than_one_round() -> None:
    fits = table_of(bodies=(("Tiny", 6.0),)).bodies[0].fits
    assert [fit.rounds for fit in fits] == [1, 2, 3]


def test_a_tie_goes_to_the_smaller() -> None:
    """At 1.6 cm a round 13.6 cm lies midway between 8 rounds and 9."""
    body = table_of(across=1, ease="-20 % to 20 %", bodies=(("Mid", 13.6),)).bodies[0]
    assert body.chosen is not None
    assert body.chosen.rounds == 8


def test_ease_may_be_written_as_lengths() -> None:
    body = table_of(ease="-5 cm to -2.5 cm", bodies=(("Head", 55.0),)).bodies[0]
    assert body.chosen is not None
    assert body.chosen.rounds == 8
    assert body.chosen.ease_cm == pytest.approx(-3.8)


def test_what_does_not_fit_says_what_would_and_is_worked_to_the_nearest() -> None:
    plan = pattern(ease="0 % to 1 %", bodies=(("Odd", 48.0),))
    table, _ = size_table(plan)
    assert table is not None
    body = table.bodies[0]
    assert body.chosen is None
    assert body.closer[0].within
    assert {c.change for c in body.closer} >= {"hook", "plain round"}
    aim = 48.0 * 1.005
    nearest = min(abs(f.girth_cm - aim) for f in body.fits)
    assert all(abs(c.girth_cm - aim) < nearest for c in body.closer)
    choices, problems = choose_sizes(plan, table)
    assert choices[0].rounds == {"square": 8}
    assert [p.code for p in problems] == ["size-fit"]
    assert problems[0].severity == "warning"


def test_half_a_motif_across_counts_as_half() -> None:
    assert table_of(across=3.5, bodies=(("One", 39.2),), ease="-1 % to 1 %").bodies[0].chosen is not None


def test_a_lone_motif_is_measured_by_its_width() -> None:
    body = table_of(across=None, measure="width", ease="-1 cm to 1 cm", bodies=(("Cushion", 40.0),)).bodies[0]
    assert body.chosen is not None
    assert body.chosen.girth_cm == body.chosen.width_cm == pytest.approx(40.0)


def test_the_edge_of_a_lone_circle_is_pi_times_its_width() -> None:
    table = table_of((motif("square", shape="circle"),), across=None, measure="circumference", bodies=(("Rim", 40.0),))
    fit = table.bodies[0].fits[0]
    assert fit.girth_cm == pytest.approx(pi * fit.width_cm)


def test_a_motif_is_not_worked_past_the_end_of_its_text() -> None:
    plan = pattern((motif(rounds=6, following=False),))
    table, _ = size_table(plan)
    assert table is not None
    assert max(f.rounds for body in table.bodies for f in body.fits) == 6


def test_heads_come_from_a_table_with_its_source() -> None:
    body = table_of(bodies=(("Toddler", "table: head, 2 years"),), ease="-10 % to 0 %").bodies[0]
    assert body.body_cm == pytest.approx(47.75)
    assert body.source is not None
    assert body.source.startswith("WHO Child Growth Standards")


def test_an_unknown_table_is_a_problem_that_names_the_known_ones() -> None:
    table, problems = size_table(pattern(bodies=(("Cat", "table: tail, 2 years"), ("Small", 42.0))))
    assert [p.code for p in problems] == ["body-table"]
    assert problems[0].hint
    assert table is not None
    assert len(table.bodies) == 1


def test_without_a_gauge_there_is_no_table_and_it_says_why() -> None:
    table, problems = size_table(pattern(gauge=None))
    assert table is None
    assert [p.code for p in problems] == ["size-gauge"]


def test_a_swatch_that_shrinks_is_a_problem() -> None:
    table, problems = size_table(pattern(gauge=Gauge("square", (GaugePoint(3, 9.0), GaugePoint(5, 8.0)))))
    assert table is None
    assert "narrower" in problems[0].message


def test_other_motifs_follow_the_size_unless_they_say_where_they_end() -> None:
    plan = pattern((motif(), motif("half"), motif("flower", rounds=3, following=False), motif("leaf", last_round=2)))
    table, _ = size_table(plan)
    choices, _ = choose_sizes(plan, table)
    assert choices[2].rounds == {"square": 9, "half": 9, "flower": None, "leaf": 2}


def test_rounds_given_on_the_command_line_win() -> None:
    plan = pattern()
    choices, problems = choose_sizes(plan, size_table(plan)[0], 5, "Medium")
    assert not problems
    assert [(c.name, c.index, dict(c.rounds)) for c in choices] == [("Medium", 1, {"square": 5})]


def test_rounds_that_the_text_does_not_have_are_a_problem() -> None:
    plan = pattern((motif(rounds=4, following=False),), bodies=())
    choices, problems = choose_sizes(plan, None, 9)
    assert choices[0].rounds == {"square": 4}
    assert [p.code for p in problems] == ["size-rounds"]


def test_a_misspelt_size_gets_a_suggestion() -> None:
    choices, problems = choose_sizes(pattern(), None, None, "Meduim")
    assert choices == ()
    assert problems[0].hint == 'did you mean "Medium"?'


def test_a_pattern_without_sizes_has_one() -> None:
    choices, _ = choose_sizes(pattern((motif(last_round=6),), bodies=()), None)
    assert [(c.name, dict(c.rounds)) for c in choices] == [("One size", {"square": 6})]


def test_numbers_in_brackets_alone_make_sizes() -> None:
    choices, _ = choose_sizes(pattern((strip(Amount((80, 90, 100))),), bodies=()), None)
    assert [c.name for c in choices] == ["Size 1", "Size 2", "Size 3"]


def test_sizes_told_by_brackets_are_measured_by_their_stitches() -> None:
    gauge = Gauge(None, (), stitches=16, width_cm=10, rows=18, height_cm=10)
    plan = pattern((strip(Amount((64, 80))),), gauge, None, "-15 % to 0 %", (("S", 44.0), ("M", 54.0)), "head")
    table, problems = size_table(plan)
    assert not problems
    assert table is not None
    assert [body.fits[0].girth_cm for body in table.bodies] == [pytest.approx(40.0), pytest.approx(50.0)]
    assert choose_sizes(plan, table)[0][1].rounds == {"strip": None}


@settings(max_examples=60, deadline=None)
@given(st.floats(-3, 10), st.floats(0.2, 5), st.floats(1, 12), st.floats(1, 300))
def test_the_nearest_round_count_is_the_nearest_of_all(start: float, each: float, across: float, aim: float) -> None:
    ruler = Ruler(WidthLine(start, each, 0, 1), across, 0.0, 400)
    found = nearest_rounds(ruler, aim)
    best = min(range(1, 401), key=lambda r: (round(abs(ruler.girth(r) - aim), 9), r))
    assert found == best


def test_the_width_of_an_unmeasured_motif_goes_by_the_height_of_its_stitches() -> None:
    from motifold.render.sizing.width import motif_line

    plan = pattern((motif(), motif("plain", "sc")))
    line = motif_line(plan, plan.motifs[1])
    assert line is not None
    assert line.at(8) == pytest.approx(12.8 * 0.88 / 1.6)


def test_rows_that_go_on_until_a_measure_are_not_counted_by_the_size() -> None:
    first = line("row", 1, "sc")
    until = Line(0, NOWHERE, Label("row", 2), (RepeatRounds(0, NOWHERE, (1,), until_cm=20.0, until_sizes=(20.0, 30.0)),))
    scarf = MotifSource("scarf", "strip", 4, "rows", Instructions((first, until)))
    gauge = Gauge(None, (), stitches=16, width_cm=10, rows=20, height_cm=10)
    plan = pattern((scarf,), gauge, None, None, (("Short", 20.0), ("Long", 30.0)), "length")
    table, _ = size_table(plan)
    assert table is not None
    assert [body.chosen.rounds for body in table.bodies if body.chosen] == [40, 60]
    assert [dict(choice.rounds) for choice in choose_sizes(plan, table)[0]] == [{"scarf": None}, {"scarf": None}]


SCARF = """
[pattern]
title = "Birch Scarf"
terms = "US"
[gauge]
motif = "scarf"
stitches = 16
width = "10 cm"
rows = 10
height = "13 cm"
[stitch.V-st]
means = "(dc, ch 1, dc) in same st"
[size]
measure = "width"
ease = "-10 % to 10 %"
[size.bodies]
S = "20 cm"
M = "25 cm"
[motif.scarf]
rows = '''
Chain: Ch 36 (45).
Row 1 (RS): Dc in 4th ch from hook (missed 3 ch count as dc), [sk next ch, V-st in next ch, sk next ch] 10 (13) times, dc in each of last 2 ch; turn. (4 dc, 10 (13) V-sts)
Row 2 (WS): Ch 3 (counts as dc), dc in next dc, [V-st in ch-1 sp of next V-st] 10 (13) times, dc in next dc, dc in tch; turn. (4 dc, 10 (13) V-sts)
Finish: Fasten off.
'''
"""  # noqa: E501


def test_a_v_stitch_is_as_wide_as_its_three_stitches() -> None:
    from motifold.render.pattern import read_pattern
    from motifold.render.worked import work_pattern

    reading = read_pattern("scarf.toml", SCARF.encode())
    assert reading.pattern is not None
    done = work_pattern(reading.pattern)
    assert not done.problems
    assert done.table is not None
    # 34 stitches at 16 to 10 cm, by hand; 43 in the second size
    assert [body.fits[0].girth_cm for body in done.table.bodies] == pytest.approx([21.25, 26.875])
    assert [size.widths_cm["scarf"] for size in done.sizes] == pytest.approx([21.25, 26.875])


def test_only_hooks_near_the_swatchs_are_offered() -> None:
    table, _ = size_table(pattern(ease="-2 % to 0 %", hook="5 mm", bodies=tuple((str(cm), float(cm)) for cm in range(30, 70, 3))))
    assert table is not None
    hooks = [float(c.detail["nearest_hook_mm"]) for body in table.bodies for c in body.closer if "nearest_hook_mm" in c.detail]
    assert hooks
    assert all(4.25 <= hook <= 5.75 for hook in hooks)
    assert all(any(abs(hook - real) < 1e-9 for real in HOOKS) for hook in hooks)


def test_a_net_has_as_many_motifs_as_it_has() -> None:
    lone = pattern(ease="-2 % to 0 %", bodies=tuple((str(cm), float(cm)) for cm in range(30, 70, 3)))
    netted = replace(lone, assembly=AssemblySource("square", {}, (), (), None, SeamSource()))
    changes = []
    for plan in (lone, netted):
        table, _ = size_table(plan)
        assert table is not None
        changes.append({c.change for body in table.bodies for c in body.closer})
    assert "across" in changes[0]
    assert "across" not in changes[1]
