# ruff: noqa: E501 (texts keep their lines)
"""``same ch as first hdc``: where that stitch went, not where the hook is now."""

import pytest
from make import fabric_of, made

OVAL = """Chain: Ch 11.
Rnd 1 (RS): 2 hdc in 3rd ch from hook, hdc in each of next 7 ch, 4 hdc in last ch; working in other side of foundation ch, hdc in each of next 7 ch, 2 hdc in same {}; join with sl st in first hdc. (22 hdc)
"""


@pytest.mark.parametrize("words", ["ch as first hdc", "st as first st", "ch as the first 2 hdc", "place as first hdc"])
def test_an_oval_ends_in_the_chain_where_it_began(words: str) -> None:
    fabric = fabric_of(OVAL.format(words))
    bases = [stitch.legs[0].base.id for stitch in fabric.stitches if stitch.kind == "hdc"]
    assert bases.count(bases[0]) == 4
    assert bases[-2:] == bases[:2]


def test_the_round_comes_back_to_the_stitch_of_its_beginning_chain() -> None:
    text = """Ring: Magic ring.
Rnd 1: Ch 1, 12 sc in ring; join with sl st in first sc. (12 sc)
Rnd 2: Ch 3 (counts as dc), dc in each of next 11 sts, dc in same st as beg ch-3; join with sl st in top of beg ch-3. (13 dc)
Rnd 3: Ch 1, sc in same st as join, sc in each of next 12 sts, sc in same st as first sc; join with sl st in first sc. (14 sc)
"""
    fabric = fabric_of(text)
    for number in (2, 3):
        worked = [stitch for stitch in fabric.round_stitches(number) if stitch.role in ("stitch", "standing")]
        assert worked[0].legs[0].base == worked[-1].legs[0].base


def test_a_stitch_that_was_not_worked_is_no_place() -> None:
    assert made(OVAL.format("ch as first dc")).codes == ["place"]
