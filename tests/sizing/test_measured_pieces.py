# ruff: noqa: E501 (texts keep their lines)
"""What `check` and `size` say a piece measures: halves along their cut, rows across and long."""

from __future__ import annotations

from math import sqrt

import pytest

from motifold.render.pattern import read_pattern
from motifold.render.proof import proof_json, proof_summary
from motifold.render.sizing.naming import measured_as
from motifold.render.sizing.tell import body_lines
from motifold.render.worked import Worked, needs_by_size, work_pattern

SQUARE = """
[motif.square]
shape = "square"
rounds = \"\"\"
Ring: Make a magic ring.
Rnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, [3 dc in ring, ch 2] 3 times; join with sl st in top of beg ch-3.
Rnd 2: Ch 3 (counts as dc), *dc in each dc to next ch-2 sp, (2 dc, ch 2, 2 dc) in next ch-2 sp; rep from * around; join with sl st in top of beg ch-3.
\"\"\"
"""
HALF = """
[motif.half]
shape = "half square"
rows = \"\"\"
Ring: Make a magic ring.
Row 1: Ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in ring; turn. (6 dc, 1 ch-2 sp)
Row 2: Ch 3 (counts as dc), 2 dc in same st, dc in each of next 2 dc, (2 dc, ch 2, 2 dc) in next ch-2 sp, dc in each of next 2 dc, 3 dc in top of tch.
\"\"\"
"""
STRIP = """
[motif.strip]
rows = \"\"\"
Chain: Ch 21.
Row 1: Sc in 2nd ch from hook and in each ch to end; turn. (20 sc)
Rows 2-30: Ch 1 (does not count as a st), sc in each st to end; turn.
\"\"\"
"""


def worked(gauge: str, *motifs: str) -> Worked:
    text = f'[pattern]\ntitle = "Pieces"\nterms = "US"\n[yarn.A]\nname = "Oat"\n[gauge]\n{gauge}\n{"".join(motifs)}'
    pattern = read_pattern("pieces.toml", text.encode()).pattern
    assert pattern is not None
    return work_pattern(pattern)


def test_half_a_square_is_cut_from_corner_to_corner_of_the_whole_one() -> None:
    """The square is 10 cm wide after 2 rounds: so is the half's leg after 2 rows, its cut the square root of 2 times that."""
    (size,) = worked('motif = "square"\nrounds = 2\nwidth = "10 cm"', SQUARE, HALF).sizes
    assert size.widths_cm["half"] == pytest.approx(10 * sqrt(2)) and size.heights_cm["half"] == pytest.approx(10 / sqrt(2))
    assert size.heights_cm["square"] is None


def test_half_a_square_measured_by_its_rows() -> None:
    (size,) = worked('motif = "half"\nstitches = 16\nwidth = "10 cm"\nrows = 8\nheight = "10 cm"', HALF).sizes
    assert size.widths_cm["half"] == pytest.approx(2 * 2.5 * sqrt(2)) and size.heights_cm["half"] == pytest.approx(2.5 * sqrt(2))


def test_a_swatch_of_the_half_itself_is_measured_along_its_cut() -> None:
    (size,) = worked('motif = "half"\nrounds = 2\nwidth = "14 cm"', HALF).sizes
    assert size.widths_cm["half"] == pytest.approx(14.0) and size.heights_cm["half"] == pytest.approx(7.0)


def test_check_tells_how_long_a_strip_is() -> None:
    pattern = worked('motif = "strip"\nstitches = 20\nwidth = "10 cm"\nrows = 24\nheight = "10 cm"', STRIP)
    assert "measures 10 cm across and 12.5 cm long" in proof_summary(pattern).replace("\N{NO-BREAK SPACE}", " ")
    strip = proof_json(pattern)["sizes"]["One size"]["motifs"]["strip"]
    assert (strip["width_cm"], strip["length_cm"]) == (10.0, 12.5)


def test_check_tells_a_half_along_its_cut_and_in_the_patterns_own_unit() -> None:
    said = proof_summary(worked('motif = "square"\nrounds = 2\nwidth = "4 in"', SQUARE, HALF)).replace("\N{NO-BREAK SPACE}", " ")
    assert "measures 4 in across" in said and "measures 5⅝ in along its cut and 2⅞ in deep" in said


HAT = """
[materials]
hook = "5 mm"
[size]
measure = "head circumference"
motif = "square"
across = 4
ease = "-8 % to 0 %"
[size.bodies]
Child = "50 cm"
Adult = "57 cm"
[size.own.Adult]
rounds = 2
hook = "5.5 mm"
"""


def test_a_hook_without_a_swatch_of_its_own_is_an_estimate_wherever_it_is_told() -> None:
    """A hook of 5.5 mm in place of 5 makes the 12 cm square about 13.2 cm wide, and says that nobody measured it."""
    pattern = worked('motif = "square"\nrounds = 2\nwidth = "12 cm"\ngrams = 9', SQUARE, HAT)
    child, adult = pattern.sizes
    assert (child.widths_cm["square"], adult.widths_cm["square"]) == (pytest.approx(12.0), pytest.approx(13.2))
    assert "Adult 13.2 cm across (estimated: no swatch with its hook)" in proof_summary(pattern).replace("\N{NO-BREAK SPACE}", " ")
    needs = needs_by_size(pattern)
    assert [need.estimate for name in ("Child", "Adult") for need in needs[name]] == [True, True]  # no label: metres are not weighed
    assert "An estimate, in proportion to the hook" in "\n".join(body_lines(pattern.pattern, pattern.table.bodies[1], False))


def test_check_says_which_sizes_lie_outside_the_ease() -> None:
    said = proof_summary(worked('motif = "square"\nrounds = 2\nwidth = "12 cm"', SQUARE, HAT.replace('"57 cm"', '"75 cm"')))
    assert "Child 2 rounds, Adult 2 rounds (outside the ease)" in said


@pytest.mark.parametrize(
    ("measure", "opens", "noun"),
    [("head circumference", True, "girth"), ("width", True, "width"), ("length from nape", False, "length"), ("side of the pad", False, "width")],
)
def test_a_measure_is_called_what_it_is(measure: str, opens: bool, noun: str) -> None:
    pattern = worked('motif = "square"\nrounds = 2\nwidth = "12 cm"', SQUARE, HAT).pattern
    assert measured_as(pattern, pattern.motifs[0], measure, opens) == noun


def test_a_back_that_nobody_measured_is_as_wide_as_the_front_it_is_sewn_to() -> None:
    back = SQUARE.replace("motif.square", "motif.back").replace("dc in each dc to", "hdc in each dc to")
    sewn = '[assembly]\nmotif = "square"\npanels = { B = "back" }\njoin = ["F.left + B.right", "F.right + B.left", "F.bottom + B.bottom"]\n'
    (size,) = worked('motif = "square"\nrounds = 2\nwidth = "12 cm"', SQUARE, back, sewn).sizes
    assert size.assembly is not None and size.widths_cm["back"] == pytest.approx(12.0)


MITERED = """
[motif.miter]
rows = \"\"\"
Chain: Ch 12.
Row 1: Sc in 2nd ch from hook and in each ch to end; turn. (11 sc)
Row 2: Ch 1 (does not count as a st), sc in each of next 4 sts, sc3tog over next 3 sts, sc in each of next 4 sts; turn.
Row 3: Ch 1 (does not count as a st), sc in each of next 3 sts, sc3tog over next 3 sts, sc in each of next 3 sts; turn.
Row 4: Ch 1 (does not count as a st), sc in each of next 2 sts, sc3tog over next 3 sts, sc in each of next 2 sts; turn.
Row 5: Ch 1 (does not count as a st), sc in next st, sc3tog over next 3 sts, sc in next st; turn.
Row 6: Ch 1 (does not count as a st), sc3tog over next 3 sts.
\"\"\"
"""
BALL = """
[motif.ball]
rounds = \"\"\"
Ring: Make a magic ring.
Rnd 1: 6 sc in ring; do not join. (6 sc)
Rnd 2: Inc in each st around. (12 sc)
Rnd 3: [Sc in next st, inc in next st] 6 times. (18 sc)
Rnds 4-6: Sc in each st around. (18 sc)
Rnd 7: [Sc in next st, inv dec] 6 times. (12 sc)
Rnd 8: Inv dec 6 times. (6 sc)
\"\"\"
"""


def test_a_mitered_square_is_as_wide_as_half_its_foundation() -> None:
    (size,) = worked('motif = "miter"\nstitches = 20\nwidth = "10 cm"\nrows = 22\nheight = "10 cm"', MITERED).sizes
    assert size.widths_cm["miter"] == size.heights_cm["miter"] == pytest.approx(11 * 0.5 / 2)


def test_a_miter_whose_rows_make_no_square_is_not_measured() -> None:
    (size,) = worked('motif = "miter"\nstitches = 20\nwidth = "10 cm"\nrows = 14\nheight = "10 cm"', MITERED).sizes
    assert size.widths_cm["miter"] is size.heights_cm["miter"] is None


def test_a_ball_is_as_wide_as_its_widest_round_not_as_all_of_its_rounds_laid_flat() -> None:
    (size,) = worked('motif = "ball"\nrounds = 3\nwidth = "6 cm"', BALL).sizes
    width = size.widths_cm["ball"]
    assert width is not None and width <= 6.0
