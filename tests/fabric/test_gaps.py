# ruff: noqa: E501 (texts keep their lines)
"""``sp between next two groups``: a group worked into one place is one, its chains included, and a closed round has as many gaps as groups."""

import pytest
from make import Made, made

FLOWER = """Ring: Magic ring.
Rnd 1 (RS): Ch 1, [sc in ring, ch 1] 6 times; join with sl st in first sc. (6 sc, 6 ch-1 sps)
Rnd 2: Sl st in next ch-1 sp, ch 2 (does not count as a st), {one} in same sp, [{one} in next ch-1 sp] 5 times; join with sl st in first dc.
Rnd 3: Sl st in next st, sl st in next ch-1 sp, ch 3 (counts as dc), 6 dc in same sp, [7 dc in next ch-1 sp] 5 times; join with sl st in top of beg ch-3. (42 dc)
Rnd 4: Ch 1, sc in same st, sc in each of next 6 sts, sc in sp between next two {groups}, [sc in each of next 7 sts, sc in sp between next two {groups}] {times} times; join with sl st in first sc.
"""
PETAL = {"petal": "(2 dc, ch 1, 2 dc) in same sp"}


def gaps(worked: Made) -> list[tuple[int, int | None]]:
    return [(leg.base.id, leg.base.other) for stitch in worked.fabric.stitches for leg in stitch.legs if leg.base.kind == "gap"]


@pytest.mark.parametrize("one, groups", [
    ("(2 dc, ch 1, 2 dc)", "groups of Rnd 2"), ("petal", "petals of Rnd 2"), ("(2 dc, ch 1, 2 dc)", "groups of Rnd 3"),
    ("(2 dc, ch 1, 2 dc)", "groups"),
])  # fmt: skip
def test_six_groups_have_six_gaps(one: str, groups: str) -> None:
    worked = made(FLOWER.format(one=one, groups=groups, times=5), "hexagon", stitches=PETAL)
    assert not worked.problems
    found = gaps(worked)
    assert len(set(found)) == len(found) == 6
    ahead = [stitch - (before or 0) for stitch, before in found]
    assert ahead[:5] == [1] * 5 and ahead[5] < 0  # the last lies between the last group and the first


@pytest.mark.parametrize("one, groups", [("petal", "petals of Rnd 2"), ("(2 dc, ch 1, 2 dc)", "groups of Rnd 2")])
def test_a_seventh_gap_is_told(one: str, groups: str) -> None:
    worked = made(FLOWER.format(one=one, groups=groups, times=6).replace("7 sts", "6 sts"), "hexagon", stitches=PETAL)
    assert worked.codes == ["beyond"]
    assert "gap" in worked.problems[0].message or "sp between" in worked.problems[0].message


def test_among_three_dc_groups_those_of_a_corner_are_two() -> None:
    worked = made(
        """Ring: Ch 4, join with sl st in first ch to form a ring.
Rnd 1 (RS): Ch 3 (counts as dc), 2 dc in ring, ch 2, [3 dc in ring, ch 2] 3 times; join with sl st in top of beg ch-3.
Rnd 2: Sl st in next 2 sts, sl st in next ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, [(3 dc, ch 2, 3 dc) in next ch-2 sp] 3 times; join with sl st in top of beg ch-3.
Rnd 3: Sl st in next 2 sts, sl st in next ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, 3 dc in sp between next two groups, [(3 dc, ch 2, 3 dc) in next ch-2 sp, 3 dc in sp between next two groups] 3 times; join with sl st in top of beg ch-3.
Rnd 4: Sl st in next 2 sts, sl st in next ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, [3 dc in sp between next two groups] twice, [(3 dc, ch 2, 3 dc) in next ch-2 sp, [3 dc in sp between next two groups] twice] 3 times; join with sl st in top of beg ch-3. (48 dc, 4 ch-2 sps)
""",
        "square",
    )
    assert not worked.problems
    assert len(set(gaps(worked))) == 12


def test_a_round_that_begins_in_a_gap_goes_on_with_the_next() -> None:
    worked = made(
        """Rnd 1: Ch 3 (counts as dc), 11 dc in ring; join with sl st in top of beg ch-3. (12 dc)
Rnd 2: Ch 3 (counts as dc), 2 dc in same st, [sk next st, 3 dc in next st] 5 times, sk last st; join with sl st in top of beg ch-3. (18 dc)
Rnd 3: Sl st in next 2 sts, sl st in sp between next two groups, ch 3 (counts as dc), 2 dc in same sp, [3 dc in sp between next two groups] 5 times; join. (18 dc)
"""
    )
    assert not worked.problems
    found = gaps(worked)
    assert len(found) == 1 + 18 and len(set(found)) == 6
    assert [found.count(gap) for gap in dict.fromkeys(found)] == [4, 3, 3, 3, 3, 3]  # the first holds a slip stitch too
