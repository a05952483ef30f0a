
"""A chain at a turn that the next row works into is a space, said or not."""

import pytest
from make import fabric_of, made

EDGING = """Chain: Ch 8.
Row 1 (RS): Dc in 4th ch from hook (missed 3 ch count as dc), ch 2, sk next 3 ch, (2 dc, ch 2, 2 dc) in next ch; turn. (6 dc, 2 ch-2 sps)
Row 2 (WS): Ch 5{said}, (2 dc, ch 2, 2 dc) in next ch-2 sp, ch 2, sk next 2 sts, dc in each of next 2 sts; turn.
Row 3: Ch 3 (counts as dc), dc in next st, ch 2, sk ch-2 sp, (2 dc, ch 2, 2 dc) in next ch-2 sp, 9 dc in {place}; turn. (15 dc, 2 ch-2 sps)
"""


@pytest.mark.parametrize("place", ["ch-5 sp", "next ch-5 sp", "ch-5 lp", "next ch-5 lp", "tch", "beg ch-5", "turning ch"])
def test_nine_dc_go_round_the_chain_of_the_turn(place: str) -> None:
    fabric = fabric_of(EDGING.format(said="", place=place), rows=True)
    as_said = fabric_of(EDGING.format(said=" (counts as ch-5 sp)", place="ch-5 sp"), rows=True)
    nine = [stitch.legs[0].base for stitch in fabric.stitches if stitch.legs][-9:]
    assert {base.kind for base in nine} == {"space"} and len(set(nine)) == 1
    assert [stitch.legs for stitch in fabric.stitches] == [stitch.legs for stitch in as_said.stitches]


def test_two_dc_in_the_turning_chain_stand_on_its_top() -> None:
    text = """Chain: Ch 12.
Row 1: Dc in 4th ch from hook, dc in each of next 8 ch; turn. (10 dc)
Row 2: Ch 3 (counts as dc), dc in each of next 8 sts, 2 dc in tch; turn. (11 dc)
"""
    assert not made(text, rows=True).problems
