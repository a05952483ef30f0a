"""Brackets and stars: repeats, groups, and how the last pass ends."""

from __future__ import annotations

import pytest
from notation_shorthand import only_problem, short

REPEATS = [
    ("[dc in next st, ch 1] 3 times", "[dc@next st, ch1]x3"),
    ("[dc in next st, ch 1] twice", "[dc@next st, ch1]x2"),
    ("[dc in next st, ch 1] three times", "[dc@next st, ch1]x3"),
    ("[dc in next st, ch 1] x 3", "[dc@next st, ch1]x3"),
    ("[dc in next st, ch 1] x3", "[dc@next st, ch1]x3"),
    ("[dc in next st, ch 1] 3x", "[dc@next st, ch1]x3"),
    ("[dc in next st, ch 1] × 3", "[dc@next st, ch1]x3"),
    ("[dc in next st, ch 1] a total of 6 times", "[dc@next st, ch1]x6"),
    ("[dc in next st, ch 1] 2 more times", "[dc@next st, ch1]x3"),
    ("[dc in next st, ch 1] around", "[dc@next st, ch1]~around"),
    ("[dc in next st, ch 1] across", "[dc@next st, ch1]~across"),
    ("[dc in next st, ch 1] to end of rnd", "[dc@next st, ch1]~end"),
    ("[dc in next st, ch 1] to next ch-2 sp", "[dc@next st, ch1]~to next sp2"),
    ("[dc in next st, ch 1] to beg sp", "[dc@next st, ch1]~to beg sp"),
    ("[dc in next st, ch 1] to last 2 sts", "[dc@next st, ch1]~last 2 st"),
    ("[dc in next st, ch 1] across to last st", "[dc@next st, ch1]~last 1 st"),
    ("(sc, inc) x 6", "[sc, sc inc2]x6"),
    ("(sc in next st, 2 sc in next st) around", "[sc@next st, 2 sc@next st]~around"),
    ("(sc, inc) 6 times", "[sc, sc inc2]x6"),
    ("(3 dc, ch 2, 3 dc) in next ch-2 sp", "(3 dc, ch2, 3 dc)@next sp2"),
    ("(dc, ch 1, dc) all in next st", "(dc, ch1, dc)@next st"),
    ("(dc, ch 1, dc) in each ch-1 sp around", "(dc, ch1, dc)@each sp1~around"),
    ("[3 dc, ch 2, 3 dc] in next corner sp", "(3 dc, ch2, 3 dc)@next corner sp"),
    ("(dc, ch 1) twice in next st", "([dc, ch1]x2)@next st"),
    ("[sc in next st, (dc, ch 1, dc) in next st] 4 times", "[sc@next st, (dc, ch1, dc)@next st]x4"),
    ("[[dc in next st, ch 1] twice, ch 2] 4 times", "[[dc@next st, ch1]x2, ch2]x4"),
    ("*dc in next st, ch 1; rep from * around", "[dc@next st, ch1]~around"),
    ("*dc in next st, ch 1; repeat from * around", "[dc@next st, ch1]~around"),
    ("*dc in next st, ch 1; rep from *", "[dc@next st, ch1]~around"),
    ("*dc in next st, ch 1, rep from * 2 more times", "[dc@next st, ch1]x3"),
    ("*dc in next st, ch 1; rep from * twice more", "[dc@next st, ch1]x3"),
    ("*dc in next st, ch 1; rep from * once more", "[dc@next st, ch1]x2"),
    ("*dc in next st, ch 1; rep from * 5 times", "[dc@next st, ch1]x6"),
    ("*dc in next st, ch 1; rep from * for a total of 6 times", "[dc@next st, ch1]x6"),
    ("*dc in next st, ch 1. Rep from * to end.", "[dc@next st, ch1]~end"),
    ("*dc in next st, ch 1*; rep from * to * 3 more times", "[dc@next st, ch1]x4"),
    ("*dc in next st, ch 1*, rep between * and * around", "[dc@next st, ch1]~around"),
    ("*dc in next st, ch 1* 3 times", "[dc@next st, ch1]x3"),
    ("*dc in next st, ch 1* around", "[dc@next st, ch1]~around"),
    ("*dc in next st, ch 1, rep from * to last 3 sts, dc in last 3 sts", "[dc@next st, ch1]~last 3 st; dc@last 3* st"),
    ("*sc in next st, ch 1**, dc in next st; rep from * around, ending last rep at **", "[sc@next st, ch1, **, dc@next st]~around"),
    ("*sc in next st, ch 1**, dc in next st; rep from * around ending at **", "[sc@next st, ch1, **, dc@next st]~around"),
    ("*sc in next st, ch 1**, dc in next st; rep from * 3 more times, ending last repeat at **", "[sc@next st, ch1, **, dc@next st]x4"),
    ("*sc in next st, ch 1**, dc in next st; rep from * twice more, then from * to ** once", "[sc@next st, ch1, **, dc@next st]x4"),
    ("*dc in next st, ch 1; rep from * around, omitting last ch 1", "[dc@next st, ch1]~around omit1"),
    ("[dc in next st, ch 1] around, omitting last ch 1", "[dc@next st, ch1]~around omit1"),
    (
        "*sk 3, sc in next st, sk 3, 7 dc in next st; rep from * across, ending with 4 dc in last st",
        "[sk next 3* st, sc@next st, sk next 3* st, 7 dc@next st]~last 1 st omit1; 4 dc@last st",
    ),
    (
        "*ch 1, sk 1, sc in next st; rep from * across, ending with sc in last st",
        "[ch1, sk next st, sc@next st]~last 1 st omit1; sc@last st",
    ),
    ("*[dc in next st, ch 1] twice, ch 2; rep from * around", "[[dc@next st, ch1]x2, ch2]~around"),
    ("[*dc in next st, ch 1; rep from * twice more, ch 2] 4 times", "[[dc@next st, ch1]x3, ch2]x4"),
    ("*sc in next st, **dc in next st, ch 1; rep from ** twice, ch 2; rep from * around", "[sc@next st, [dc@next st, ch1]x3, ch2]~around"),
    ("†dc in next st, ch 1; rep from † around", "[dc@next st, ch1]~around"),
    ("sc in every other st around", "[sc@next st, sk next st]~around"),
]

ENDINGS = [
    (
        "[sc in next st, ch 3, sk next st] around, omit last ch 3, dc in first sc",
        "[sc@next st, **, ch3, sk next st]~around; sk next st; dc@first sc",
    ),
    ("*sc in next sp, ch 1; rep from * around, omitting ch 1 at end of last rep", "[sc@next sp, ch1]~around omit1"),
    ("*sc in next sp, ch 1; rep from * around but omit last ch 1", "[sc@next sp, ch1]~around omit1"),
    ("*sc in next sp, ch 1; rep from * around, do not work last ch 1", "[sc@next sp, ch1]~around omit1"),
    ("*sc in next sp, ch 1; rep from * around, skipping last ch 1", "[sc@next sp, ch1]~around omit1"),
    ("*3 dc in next sp, ch 1; rep from * around, ending last rep with 3 dc in next sp, join", "[3 dc@next sp, **, ch1]~around; JOIN usual"),
    (
        "*sc in next st, ch 1**, dc in next st; rep from * around, ending last rep at **, dc in each of last 8 dc",
        "[sc@next st, ch1, **, dc@next st]~around; dc@last 8* dc",
    ),
    (
        "[ch 1, sk next st, sc in next st] around, ending last rep with ch 1, sk next st",
        "[ch1, sk next st, **, sc@next st]~around",
    ),
    (
        "*ch 1, sk next st, sc in next st; rep from * around, ending last rep with ch 1, sk last st",
        "[ch1, sk next st, sc@next st]~last 1 st; ch1; sk last st",
    ),
    (
        "*sc in next st, ch 5, sk 3 sts; rep from * around, ending last rep with sc in next st, ch 2, join with hdc in first sc",
        "[sc@next st, **, ch5, sk next 3* st]~around; ch2; JOIN work(hdc@first sc)",
    ),
    (
        "*sc in next sp, ch 5; rep from * around, ending with ch 2, dc in first sc",
        "[sc@next sp, ch5]~around omit1; JOIN work(ch2, dc@first sc{=sp5})",
    ),
    (
        "*sc in next 3 sts, 3 sc in next ch; rep from * to end, omitting last sc",
        "[sc@next 3* st, 2 sc@next ch, **, sc@same ch]~end",
    ),
    (
        "*sc in next 3 sts, 3 sc in next ch; rep from * to end, omitting last 2 sc",
        "[sc@next 3* st, sc@next ch, **, 2 sc@same ch]~end",
    ),
    (
        "*sc in next 3 sts, 3 sc in next st; rep from * to end, ending with 2 sc in last st",
        "[sc@next 3* st, 3 sc@next st]~last 1 st omit1; 2 sc@last st",
    ),
    (
        "[sc in next 3 sts, 3 sc in next st] around, omitting last sc",
        "[sc@next 3* st, 2 sc@next st, **, sc@same st]~around",
    ),
    (
        "[sc in next 3 sts, (2 dc, ch 2, 2 dc) in next sp] around, omitting last 2 dc",
        "[sc@next 3* st, (2 dc, ch2)@next sp, **, 2 dc@same sp]~around",
    ),
    (
        "[sc in next 3 sts, (2 dc, ch 2, 2 dc) in next sp] around, omitting last dc",
        "[sc@next 3* st, (2 dc, ch2, dc)@next sp, **, dc@same sp]~around",
    ),
    (
        "[sc in next 3 sts, (2 dc, ch 2, 2 dc) in next sp] around, omitting last (2 dc, ch 2, 2 dc)",
        "[sc@next 3* st, (2 dc, ch2, 2 dc)@next sp]~around omit1",
    ),
    (
        "[sc in next 3 sts, (2 dc, ch 2, 2 dc) in next sp] around, omitting last (2 dc, ch 2, 2 dc) in next sp",
        "[sc@next 3* st, (2 dc, ch2, 2 dc)@next sp]~around omit1",
    ),
    (
        "*sc in next st, ch 3; rep from * around, omitting last ch-3 sp",
        "[sc@next st, ch3]~around omit1",
    ),
    (
        "*sc in next st, ch 3; rep from * around, omitting last ch",
        "[sc@next st, ch3]~around omit1",
    ),
    (
        "*sc in next st, ch 3; rep from * around, omitting ch 3 on last rep",
        "[sc@next st, ch3]~around omit1",
    ),
    (
        "*sc in next st, ch 3, sk next 2 sts; rep from * 5 times more, omitting last ch 3, sk next 2 sts",
        "[sc@next st, ch3, sk next 2* st]x6 omit2",
    ),
    (
        "*sc in next st, ch 3, dc in next st; rep from * around, omitting last (ch 3, dc)",
        "[sc@next st, ch3, dc@next st]~around omit2",
    ),
    (
        "[sc in next st, ch 3] 6 times, omitting last ch 3",
        "[sc@next st, ch3]x6 omit1",
    ),
    (
        "[sc in next st**, ch 3] around, ending last rep at **",
        "[sc@next st, **, ch3]~around",
    ),
    (
        "[sc in next st, [dc in next st**, ch 3] 3 times, ending last rep at **, sc in next st] around",
        "[sc@next st, [dc@next st, **, ch3]x3, sc@next st]~around",
    ),
    (
        "[sc in next st, ch 1**, sc in next st] 6 times, ending last rep at **",
        "[sc@next st, ch1, **, sc@next st]x6",
    ),
    (
        "*sc in next st, 5 dc in next st; rep from * across, ending last rep with sc in last st",
        "[sc@next st, 5 dc@next st]~last 1 st; sc@last st",
    ),
    (
        "*5 dc in next sc, sc in next dc; rep from * across, ending with 3 dc in last sc",
        "[5 dc@next sc, sc@next dc]~last 1 sc; 3 dc@last sc",
    ),
    (
        "*sc in next st, inc; rep from * around, omitting last inc",
        "[sc@next st, sc inc2]~around omit1",
    ),
]

SIZES = [
    ("ch 80 (90, 100)", "ch80/90/100"),
    ("[dc in next st, ch 1] 5 (6, 7) times", "[dc@next st, ch1]x5/6/7"),
    ("dc in next 2 (3, 4) sts", "dc@next 2/3/4* st"),
    ("10 (12, 14) sc", "10/12/14 sc"),
]


@pytest.mark.parametrize(("written", "meant"), REPEATS)
def test_a_repeat_is_read_however_it_is_marked(written: str, meant: str) -> None:
    assert short(written) == meant


@pytest.mark.parametrize(("written", "meant"), SIZES)
def test_numbers_for_several_sizes_stay_together(written: str, meant: str) -> None:
    assert short(written, sizes=3) == meant


@pytest.mark.parametrize(("written", "meant"), ENDINGS)
def test_the_last_pass_ends_as_it_is_said_to(written: str, meant: str) -> None:
    assert short(written) == meant


@pytest.mark.parametrize(
    "written",
    [
        "*sc in next st, ch 3; rep from * around, omitting last hdc",
        "*sc in next st, ch 3; rep from * around, omitting last sc and ch 3",
        "*sc in next 2 sts, inc in next st; rep from * around, omitting last sc",
        "[sc in each of next 3 sts] around, omitting last 3 sc",
    ],
)
def test_what_the_repeat_does_not_end_in_cannot_be_omitted(written: str) -> None:
    problem = only_problem(f"Rnd 1: {written}; join")
    assert problem.code == "star"
    assert "leave out" in problem.message
