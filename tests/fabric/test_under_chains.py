"""What the chains at the end of a round of lace pass needs no word of its own."""

import pytest
from make import fabric_of, made

LACE = """Ring: Magic ring.
Rnd 1: Ch 1, 36 sc in ring; join with sl st in first sc. (36 sc)
Rnd 2: Ch 5 (counts as dtr), ch 3, [sk next 2 sts, dtr in next st, ch 3] {}; join with sl st in top of beg ch-5.
"""


def test_the_stitches_under_the_last_chains_are_passed() -> None:
    fabric = fabric_of(LACE.format("11 times"))
    assert fabric.rounds[2].counts == {"dtr": 12, "ch-3 sp": 12}


@pytest.mark.parametrize("times", ["10 times", "11 times, sc in next st"])
def test_anything_else_is_left_over(times: str) -> None:
    assert made(LACE.format(times)).codes == ["left-over"]


DIAMOND = """Chain: Ch 26.
Row 1 (RS): Sc in 2nd ch from hook, [ch 5, sk next 3 ch, sc in next ch] 6 times; turn. (7 sc, 6 ch-5 sps)
Row 2 (WS): Ch 5 (counts as dc and ch 2), sc in next ch-5 sp, [ch 5, sc in next ch-5 sp] twice, 5 dc in next sc, sc in next ch-5 sp,
[ch 5, sc in next ch-5 sp] twice, ch 2, dc in last st; turn. (7 dc, 6 sc, 4 ch-5 sps, 2 ch-2 sps)
Row 3: Ch 1, sc in first st, [ch 5, sc in next ch-5 sp] twice, 5 dc in next sc, sc in center dc of next 5 dc, 5 dc in next sc,
{}, sc in last st; turn.
"""


def test_a_stitch_under_the_last_chains_of_a_row_of_lace_is_passed() -> None:
    assert not made(DIAMOND.format("[sc in next ch-5 sp, ch 5] twice"), rows=True).problems


@pytest.mark.parametrize("rest", ["sc in next ch-5 sp, ch 5", "[sc in next ch-5 sp, ch 5] twice, dc in same sp"])
def test_a_space_or_what_no_chains_pass_is_left_over(rest: str) -> None:
    assert made(DIAMOND.format(rest), rows=True).codes == ["left-over"]
