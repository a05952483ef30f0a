# ruff: noqa: E501 (texts keep their lines)
"""What is told of several mistakes, and how."""

import pytest
from make import made

CIRCLE = """Ring: Magic ring.
Rnd 1: Ch 3 (counts as dc here and throughout), 11 dc in ring; join with sl st in top of beg ch-3. ({0} dc)
Rnd 2: Ch 3, dc in same st, 2 dc in each st around; join with sl st in top of beg ch-3. ({1} dc)
Rnd 3: Ch 3, 2 dc in next st, [dc in next st, 2 dc in next st] around; join with sl st in top of beg ch-3. ({2} dc)
Rnd 4: Ch 3, dc in next st, 2 dc in next st, [dc in next 2 sts, 2 dc in next st] around; join with sl st in top of beg ch-3. ({3} dc)
"""
RIGHT = (12, 24, 36, 48)


@pytest.mark.parametrize("wrong", [{0}, {1}, {2}, {3}, {0, 2}, {1, 3}, {0, 3}, {1, 2}, {2, 3}])
@pytest.mark.parametrize("by", [1, -1])
def test_every_number_that_is_wrong_is_told_and_nothing_else(wrong: set[int], by: int) -> None:
    stated = [count + by * (number in wrong) for number, count in enumerate(RIGHT)]
    worked = made(CIRCLE.format(*stated))
    assert {p.span.line - 2 for p in worked.problems if p.span} == wrong
    assert worked.codes == ["count"] * len(wrong)
    assert all(p.hint == f"if the work is right, the count is {RIGHT[p.span.line - 2]}" for p in worked.problems if p.span)


@pytest.mark.parametrize("stated, wrong", [((7, 12), {2}), ((7, 13), {2, 3}), ((5, 11), {2, 3}), ((6, 14), {3})])
def test_two_wrong_numbers_one_after_another_are_both_told_in_a_spiral(stated: tuple[int, int], wrong: set[int]) -> None:
    worked = made(
        f"""Ring: Magic ring.
Rnd 1: 6 sc in ring. ({stated[0]} sc)
Rnd 2: 2 sc in each st around. ({stated[1]} sc)
Rnd 3: [Sc in next st, 2 sc in next st] 6 times. (18 sc)
"""
    )
    assert {p.span.line for p in worked.problems if p.span} == wrong
    assert worked.codes == ["count"] * len(wrong)


def test_a_stitch_that_the_round_has_nowhere_is_named_with_what_there_is() -> None:
    worked = made(
        """Ring: Magic ring.
Rnd 1: 12 sc in ring; join with sl st in first sc. (12 sc)
Rnd 2: Ch 1, sc in same st, [sk next 2 sts, 5 dc in next dc, sk next 2 sts, sc in next st] around; join with sl st in first sc.
"""
    )
    assert [(p.code, p.message, p.hint) for p in worked.problems] == [("place", "Rnd 1 has no dc to work into", "its stitches are sc")]


def test_what_was_passed_is_listed_by_kind() -> None:
    worked = made(
        """Ring: Magic ring.
Rnd 1: Ch 1, [sc in ring, hdc in ring, 2 dc in ring, tr in ring] 3 times; join with sl st in first sc. (3 sc, 3 hdc, 6 dc, 3 tr)
Rnd 2: Ch 1, sc in same st, [ch 5, sc in next tr] 3 times; join with sl st in first sc.
"""
    )
    messages = [p.message for p in worked.problems if p.code == "passed"]
    assert messages == ["Rnd 2: next tr passes 1 hdc and 2 dc"]


def test_rows_by_measure_follow_the_measure_whatever_the_label_says() -> None:
    text = """Chain: Ch 11.
Row 1 (RS): Sc in 2nd ch from hook, sc in each ch across; turn. (10 sc)
Row 2 (WS): Ch 1, sc in each st across; turn. (10 sc)
Row 3: Ch 1, sc in each st across; turn. (10 sc)
Rows 4 and following: Rep Rows 2-3 until piece measures {cm} cm, ending with a WS row.
"""
    for cm, rows in ((20, 16), (19.5, 16), (21, 18)):
        for rounds in (None, 5, 40):
            assert made(text.format(cm=cm), rows=True, row_height_cm=1.3, rounds=rounds).last.number == rows
    assert made(text.format(cm=20), rows=True, row_height_cm=1.3, rounds=3).last.number == 3


def test_a_hint_is_something_that_an_editor_would_say() -> None:
    worked = made(
        """Ring: Magic ring.
Rnd 1: Ch 3 (counts as dc here and throughout), 2 dc in ring, ch 2, [3 dc in ring, ch 2] 3 times; join with sl st in top of beg ch-3. (12 dc, 4 ch-2 sps)
Rnd 2: Ch 1, sc in same st, sc in each of next 2 dc, sc in next ch-2 sp, [sc in each of next 3 dc, sc in next ch-2 sp] 3 times; join with sl st in first sc. (24 sc)
""",
        "square",
    )
    assert worked.codes == ["count"]
    assert worked.problems[0].hint == "if the work is right, the count is 16"  # not: 3 sc in each of next 3


def test_a_turn_inside_a_repeat_along_the_round_is_told_once() -> None:
    worked = made(
        """Ring: Magic ring.
Rnd 1: 12 sc in ring; join with sl st in first sc. (12 sc)
Rnd 2: Ch 1, *sc in next 3 sts, ch 1, turn, sc in next 3 sc, turn; rep from * around; join with sl st in first sc.
"""
    )
    assert worked.codes == ["not-worked"]


CUP = """Ring: Magic ring.
Rnd 1: Ch 3 (counts as dc here and throughout), 11 dc in ring; join. (12 dc)
Rnd 2: Ch 3, dc in same st, 2 dc in each st around; join. (24 dc)
Rnd 3: Ch 3, 2 dc in next st, [dc in next st, 2 dc in next st] around; join. (36 dc)
Rnd 4: Ch 3, dc in next 16 sts, 2 dc in next st, dc in next 17 sts, 2 dc in next st; join. (38 dc)
Rnd 5: Ch 3, dc in next 17 sts, 2 dc in next st, dc in next 18 sts, 2 dc in next st; join. (40 dc)
"""


def test_a_circle_that_stops_lying_flat_is_told() -> None:
    worked = made(CUP)
    assert [(p.code, p.message) for p in worked.problems] == [("flat", "From Rnd 4 on the work will cup: 2 dc more in a round")]


def test_a_cup_that_is_meant_is_silent() -> None:
    assert made(CUP + "Rnd 6: Ch 3, dc in each st around; join. (40 dc)\n").codes == []
    assert made(CUP.replace("2 dc in each st around; join. (24 dc)", "dc in each st around; join. (13 dc)").split("Rnd 3")[0]).codes == []


def test_a_chain_beyond_the_beginning_chain_is_told() -> None:
    worked = made(
        """Chain: Ch 24.
Row 1: Dc in 6th ch from hook, [ch 1, sk next ch, dc in next ch] 9 times; turn. (11 dc, 10 ch-1 sps)
Row 2: Ch 4 (counts as dc and ch 1), sk first ch-1 sp, [dc in next dc, ch 1] 9 times, dc in 9th ch of beg ch-5; turn. (11 dc, 10 ch-1 sps)
""",
        rows=True,
    )
    assert [(p.code, p.message) for p in worked.problems] == [("place", "The beginning chain has no 9th ch")]
