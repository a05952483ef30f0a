# ruff: noqa: E501 (texts keep their lines)
"""How the last pass of a repeat ends, and what the line works after it."""

import pytest
from make import fabric_of, made

PENTAGON = """Ring: Make a magic ring.
Rnd 1 (RS): Ch 3 (counts as dc here and throughout), dc in ring, [ch 2, 2 dc in ring] 4 times, ch 2; join with sl st in top of beg ch-3. (10 dc, 5 ch-2 sps)
Rnd 2: Ch 3, dc in next dc, *(dc, ch 2, dc) in next ch-2 sp**, dc in each of next 2 dc; rep from * around, ending last rep at **; join with sl st in top of beg ch-3. (20 dc, 5 ch-2 sps)
Rnd 3: Ch 3, dc in each of next 2 dc, *(dc, ch 2, dc) in next ch-2 sp**, {side}; rep from * around, ending last rep at **, {end}; join with sl st in top of beg ch-3. (30 dc, 5 ch-2 sps)
"""


@pytest.mark.parametrize("side", ["dc in each of next 4 dc", "dc in each dc to next ch-2 sp"])
@pytest.mark.parametrize("end", ["dc in last dc", "dc in next dc", "dc in each dc to end", "dc in each of last 1 dc"])
def test_what_follows_the_repeat_works_the_rest(side: str, end: str) -> None:
    fabric = fabric_of(PENTAGON.format(side=side, end=end), "pentagon")
    assert {side.counts["dc"] for side in fabric.sides} == {6}


def test_more_left_than_one_pass_takes_is_left_to_what_follows() -> None:
    fabric_of(
        """Ring: Magic ring.
Rnd 1: 24 sc in ring; join with sl st in first sc. (24 sc)
Rnd 2: Ch 1, *sc in next 2 sc**, ch 3, sc in next 2 sc; rep from * around, ending last rep at **, ch 1, sc in each of last 2 sc; join with sl st in first sc.
"""
    )


def test_a_last_pass_that_does_not_fit_is_told_where_nothing_follows() -> None:
    worked = made(PENTAGON.format(side="dc in each of next 4 dc", end="ch 1"), "pentagon")
    assert "uneven" in worked.codes or "count" in worked.codes
