"""What single sizes have of their own, how edgings lie, colourways over the net, another ball and the other colour first."""

from __future__ import annotations

import re
from itertools import product

import pytest

from motifold.render.pattern import read_pattern
from motifold.render.pattern.quantity import parse_per_length
from motifold.render.sizing.bars import draw_yarn
from motifold.render.sizing.choices import other_ball
from motifold.render.sizing.colourways import batches_of, place_colourways
from motifold.render.sizing.curve import draw_growth
from motifold.render.sizing.model import YarnNeed
from motifold.render.sizing.own import pattern_of_size
from motifold.render.sizing.piece import edging_fits
from motifold.render.sizing.plan import draw_placing
from motifold.render.sizing.report import checkpoints, gauge_report
from motifold.render.worked import Worked, needs_by_size, size_orders, work_pattern

HEAD = """
[pattern]
title = "Moss Hat"
terms = "US"
[materials]
hook = "5.5 mm"
[yarn.A]
length = "200 m / 100 g"
[yarn.B]
length = "200 m / 100 g"
"""
GAUGE = """
[gauge]
motif = "square"
rounds = 5
width = "12.5 cm"
grams = 14
"""
SQUARE = '''
[motif.square]
shape = "square"
last_round = 5
rounds = """
Ring: With A, ch 4; join with sl st in first ch to form a ring.
Rnd 1 (RS): Ch 3 (counts as dc here and throughout), 2 dc in ring, ch 2, [3 dc in ring, ch 2] 3 times; join; change to B; turn.
Rnd 2: Sl st in next ch-2 sp, ch 3, 2 dc in same sp, ch 1, [(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1] 3 times, 3 dc in beg sp, ch 2; join; change to A; turn.
Rnd 3 and following: Sl st in next ch-2 sp, ch 3, 2 dc in same sp, ch 1, *[3 dc in next ch-1 sp, ch 1] to next ch-2 sp, (3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1; rep from * 2 more times, [3 dc in next ch-1 sp, ch 1] to beg sp, 3 dc in beg sp, ch 2; join; change to the other yarn; turn.
Finish: Fasten off.
"""
'''  # noqa: E501
NET = '''
[assembly]
motif = "square"
net = "a b c d"
join = ["d.right + a.left"]
'''
GROWS = SQUARE.replace("last_round = 5\n", "")
SIZES = """
[size]
measure = "head"
across = 4
ease = "-10 % to 0 %"
[size.bodies]
Child = "53 cm"
Adult = "58 cm"
"""


def worked(text: str) -> Worked:
    reading = read_pattern("x.toml", text.encode())
    assert reading.pattern is not None and not reading.problems, reading.problems
    return work_pattern(reading.pattern)


def codes(done: Worked) -> list[str]:
    return [problem.code for problem in done.problems]


def test_a_size_may_have_its_own_number_across_and_net() -> None:
    own = '[size.own.Adult]\nacross = 5\nrounds = 4\nnet = "a b c d e"\njoin = ["e.right + a.left"]\n'
    done = worked(HEAD + GAUGE + GROWS + NET + SIZES + own)
    child, adult = done.sizes
    assert child.assembly is not None and adult.assembly is not None
    assert (len(child.assembly.panels), len(adult.assembly.panels)) == (4, 5)
    assert adult.choice.rounds == {"square": 4}
    assert adult.assembly.openings[0].girth_cm == pytest.approx(5 * 10.0)
    assert done.table is not None
    assert next(fit.girth_cm for fit in done.table.bodies[1].fits if fit.rounds == 4) == pytest.approx(50.0)


def test_a_size_may_have_its_own_hook_and_swatch_and_its_yarn_follows() -> None:
    own = '[size.own.Adult]\nhook = "6 mm"\ngauge = { rounds = 5, width = "13.75 cm" }\n'
    done = worked(HEAD + GAUGE + GROWS + NET + SIZES + own)
    assert done.table is not None
    adult = done.table.bodies[1]
    assert adult.chosen is not None and adult.chosen.girth_cm == pytest.approx(55.0)
    mine = pattern_of_size(done.pattern, "Adult")
    assert mine.materials.hook is not None and float(mine.materials.hook.value) == 6
    needs = needs_by_size(done)
    child, larger = needs["Child"][0], needs["Adult"][0]  # both work 5 rounds, the second with stitches a tenth wider
    assert larger.parts["motifs"] == pytest.approx(1.1 * child.parts["motifs"], rel=0.03)  # the yarn itself is no thicker
    assert not larger.estimate


def test_a_size_may_work_more_rounds_of_an_edging() -> None:
    own = "[size.own.Adult]\nedgings = { brim = 3 }\n"
    brim = (
        '[edging.brim]\nopening = "a.top"\nrounds = """\nRnd 1: Join with sl st in any dc, ch 1, sc in each st around; join.\n'
        'Rnd 2 and following: Ch 1, sc in each st around; join.\nFinish: Fasten off."""\n'
    )
    done = worked(HEAD + GAUGE + GROWS + NET + SIZES + own + brim)
    rounds = [sum(r.number is not None for r in size.edgings["brim"].rounds) for size in done.sizes]
    assert rounds == [2, 3]


def test_what_is_not_a_size_or_an_edging_has_nothing_of_its_own() -> None:
    reading = read_pattern("x", (HEAD + GAUGE + GROWS + SIZES + "[size.own.Adlut]\nacross = 3\n").encode())
    assert [p.code for p in reading.problems] == ["reference"]
    assert reading.problems[0].hint == "did you mean Adult?"
    reading = read_pattern("x", (HEAD + GAUGE + GROWS + SIZES + "[size.own.Adult]\nedgings = { brim = 2 }\n").encode())
    assert [p.code for p in reading.problems] == ["reference"]


EDGING = '[edging.rim]\nrounds = """\nRnd 1: Join with sl st in any dc, ch 1, {}; join.\nFinish: Fasten off."""\n'
RIM_GAUGE = '[edging.rim.gauge]\nstitches = 20\nwidth = "10 cm"\n'


@pytest.mark.parametrize(("step", "lies"), [("sc in each st around", "draws in"), ("3 sc in each st around", "flares")])
def test_an_edging_flares_or_draws_in_by_its_own_gauge(step: str, lies: str) -> None:
    """A square of 60 dc, 12.5 cm wide: 50 cm round, a little more at the middle of a round of sc; 60 sc measure 30 cm, 180 sc 90."""
    done = worked(HEAD + GAUGE + SQUARE + EDGING.format(step) + RIM_GAUGE)
    size = done.sizes[0]
    (fit,) = edging_fits(done.pattern, size.fabrics, size.widths_cm, size.assembly, size.edgings)
    assert fit.lies == lies
    assert fit.girth_cm == pytest.approx(50 + 4 * 0.88 * 0.5)
    assert fit.flat == round(fit.girth_cm / 0.5)
    assert codes(done) == ["edging-fit"]
    assert str(fit.flat) in (done.problems[0].hint or "")


def test_an_edging_that_fits_is_not_told_of() -> None:
    done = worked(HEAD + GAUGE + SQUARE + EDGING.format("sc in each st and each ch-sp around") + RIM_GAUGE.replace("20", "15.5"))
    assert codes(done) == []


WAYS = '[motif.square.colourway]\ndawn = { A = "C" }\ndusk = { A = "D" }\nnoon = { A = "A" }\n[yarn.C]\n[yarn.D]\n'


def blanket(rows: int, columns: int, more: str = "") -> str:
    net = "\n".join(" ".join(f"{chr(97 + r)}{c}" for c in range(columns)) for r in range(rows))
    return HEAD + GAUGE + SQUARE + WAYS + f'[assembly]\nmotif = "square"\nnet = """\n{net}\n"""\n' + more


@pytest.mark.parametrize(("rows", "columns"), list(product((1, 3, 5), (2, 4, 7))))
def test_spread_colourways_never_touch_their_like_and_are_used_alike(rows: int, columns: int) -> None:
    done = worked(blanket(rows, columns))
    placing = place_colourways(done.pattern, done.sizes[0].assembly)
    assert len(placing.ways) == rows * columns and not placing.alike
    for r, c in product(range(rows), range(columns)):
        here = placing.ways[f"{chr(97 + r)}{c}"]
        assert c + 1 == columns or placing.ways[f"{chr(97 + r)}{c + 1}"] != here
        assert r + 1 == rows or placing.ways[f"{chr(98 + r)}{c}"] != here
    (made,) = batches_of(done.pattern, done.sizes[0].fabrics, done.sizes[0].assembly).values()
    assert sum(way.made for way in made) == rows * columns
    assert max(way.made for way in made) - min(way.made for way in made) <= max(2, rows * columns // 6)


def test_a_plan_of_colourways_is_followed_and_counted() -> None:
    plan = 'colourways = """\ndawn dawn dusk\nnoon dusk dawn\n"""\n'
    done = worked(blanket(2, 3, plan))
    (made,) = batches_of(done.pattern, done.sizes[0].fabrics, done.sizes[0].assembly).values()
    assert {way.name: way.made for way in made} == {"dawn": 3, "dusk": 2, "noon": 1}
    needs = {need.yarn: need.parts["motifs"] for need in needs_by_size(done)["One size"]}
    assert needs["C"] == pytest.approx(3 * needs["A"])
    assert needs["D"] == pytest.approx(2 * needs["A"])


def test_a_plan_that_does_not_fit_the_net_is_a_problem_at_its_word() -> None:
    reading = read_pattern("x", blanket(1, 2, 'colourways = "dawn dsuk dusk"\n').encode())
    assert [problem.code for problem in reading.problems] == ["colourway", "colourway"]
    assert reading.problems[0].hint == "did you mean dusk?"


def test_two_alike_that_must_touch_are_told() -> None:
    alone = blanket(1, 3).replace('dusk = { A = "D" }\nnoon = { A = "A" }\n', "")
    assert codes(worked(alone.replace("[yarn.D]\n", ""))) == ["colourway"]


def test_another_ball_is_bought_by_length() -> None:
    """180 m are four balls of 50 m, of which 20 m stay; at 50 m to 25 g they weigh 90 g."""
    other = other_ball(YarnNeed("A", 180.0, None, None, False, {}), parse_per_length("50 m / 25 g"))
    assert (other.balls, other.grams, other.left_metres) == (4, pytest.approx(90), pytest.approx(20))


def test_the_other_colour_first_exchanges_what_the_motifs_take() -> None:
    done = worked(HEAD + GAUGE + SQUARE)
    needs = needs_by_size(done)["One size"]
    (order,) = size_orders(done, done.sizes[0], needs)
    assert (order.first, order.second, order.less) == ("A", "B", "B")  # rounds 1, 3 and 5 are A's
    assert order.swapped == pytest.approx(order.metres[::-1])


def test_what_is_left_and_what_is_needed_are_whole_balls() -> None:
    need = needs_by_size(worked(HEAD + GAUGE + SQUARE))["One size"][0]
    assert need.grams is not None and need.left_grams is not None and need.balls is not None
    assert need.grams + need.left_grams == pytest.approx(100 * need.balls)


def test_yarn_to_spare_is_the_patterns_own() -> None:
    lean = HEAD.replace('hook = "5.5 mm"\n', 'hook = "5.5 mm"\nmargin = "0 %"\n')
    with_ten, with_none = (needs_by_size(worked(head + GAUGE + SQUARE))["One size"][0] for head in (HEAD, lean))
    assert with_ten.metres == pytest.approx(1.1 * with_none.metres)


def test_a_swatch_of_stitches_by_rows_weighs_what_it_weighs() -> None:
    """6 g for 16 by 20 stitches at 2.4 m to a gram: 4.5 cm a stitch; a strip of 30 by 40 takes 54 m."""
    text = """
[pattern]
title = "Reed"
terms = "US"
[yarn.A]
length = "120 m / 50 g"
[gauge]
stitches = 16
width = "10 cm"
rows = 20
height = "10 cm"
grams = 6
[motif.strip]
rows = '''
Chain: Ch 31.
Row 1: Sc in 2nd ch from hook and in each ch across; turn. (30 sc)
Rows 2-40: Ch 1, sc in each st across; turn.
Finish: Fasten off.
'''
"""
    (need,) = needs_by_size(worked(text))["One size"]
    chains = (31 + 39) * 0.045 * 3.63 / 6.1  # a chain takes less than a single crochet
    assert need.parts["motifs"] == pytest.approx(1200 * 0.045 + chains, rel=0.03)


def test_widths_on_the_way_are_told_blocked_and_unblocked() -> None:
    washed = GAUGE + 'after_wash = "-4 %"\n'
    done = worked(HEAD + washed + SQUARE)
    (point,) = checkpoints(done.pattern, done.pattern.motifs[0], 5)
    assert (point.round, point.width_cm, point.unblocked_cm) == (3, pytest.approx(7.2), pytest.approx(7.5))


def test_measured_rounds_off_the_line_are_doubted() -> None:
    two, four, six = ('{{ rounds = 2, width = "5 cm" }}', '{{ rounds = 4, width = "{} cm" }}', '{{ rounds = 6, width = "15 cm" }}')
    points = f'[gauge]\nmotif = "square"\npoints = [{two}, {four}, {six}]\n'
    assert codes(worked(HEAD + points.format(10.1) + SQUARE)) == []
    done = worked(HEAD + points.format(12.5) + SQUARE)
    assert codes(done) == ["gauge-uneven"]
    report = gauge_report(done.pattern)
    assert report is not None and report.error_cm == pytest.approx(5 / 3)  # least squares by hand: 2.5 off the middle is 5/3 there


def test_the_pictures_say_in_words_what_they_show() -> None:
    done = worked(HEAD + GAUGE + GROWS + NET + SIZES)
    assert done.table is not None
    curve, bars = draw_growth(done.pattern, done.table), draw_yarn(done.pattern, needs_by_size(done))
    assert curve is not None and bars is not None
    assert re.search(r"Child, 53 cm \(20⅞ in\): 5 rounds", curve.description.replace("\u00a0", " "))
    assert "10 % to spare" in bars.description.replace("\u00a0", " ")
    plan = draw_placing(worked(blanket(2, 2)).pattern, worked(blanket(2, 2)).sizes[0].assembly)
    assert plan is not None and plan.description.count("times") == 3
    assert draw_placing(done.pattern, done.sizes[0].assembly) is None


def test_the_booklet_has_the_pictures_when_asked() -> None:
    from motifold.render.booklet import Look, booklet_content

    done = worked(HEAD + GAUGE + GROWS + NET + SIZES)
    pictures = [figure.subject for figure in booklet_content(done, Look(numbers=True)).figures if figure.role == "numbers"]
    assert pictures == ["sizes", "materials"]
    assert not [figure for figure in booklet_content(done, Look()).figures if figure.role == "numbers"]
