"""Which way a cable crosses: said before the stitches that go back to those skipped, or after them."""

import pytest
from make import fabric_of

ROW = """Chain: Ch 14.
Row 1: Sc in 2nd ch from hook, sc in each ch across; turn.
Row 2: Ch 3 (counts as dc), dc in each of next 12 sts; turn.
Row 3: Ch 3 (counts as dc), sk next 3 sts, FPtr around each of next 3 sts, {}, sk next 2 sts, FPtr around next 2 sts,
FPtr around each of 2 skipped sts, dc in next 2 sts. (3 dc, 10 FPtr)
"""
BACK = "FPtr around each of 3 skipped sts"


@pytest.mark.parametrize(
    ("words", "behind"),
    [
        (f"working in front {BACK}", False),
        (f"working in front of last 3 sts, {BACK}", False),
        (f"working in front, {BACK}", False),
        (f"in front of these {BACK}", False),
        (f"crossing in front of the 3 FPtr just made, {BACK}", False),
        (f"{BACK}, working in front of previous 3 FPtr", False),
        (f"working behind {BACK}", True),
        (f"working behind FPtr just made, {BACK}", True),
        (f"working in back of sts just worked, {BACK}", True),
        (f"{BACK}, going behind last 3 FPtr", True),
        (BACK, False),
    ],
)
def test_a_cable_crosses_the_way_that_is_said(words: str, behind: bool) -> None:
    made = [stitch for stitch in fabric_of(ROW.format(words), rows=True).round_stitches(3) if stitch.kind == "FPtr"]
    assert [stitch.behind for stitch in made] == [False] * 3 + [behind] * 3 + [False] * 4
    assert {stitch.legs[0].base.foot for stitch in made} == {"front post"}
