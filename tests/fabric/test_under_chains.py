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
