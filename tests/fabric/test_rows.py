# ruff: noqa: E501 (texts keep their lines)
"""The ends of rows: the turning chain is the last stitch of the row below, however the line names it."""

import pytest
from make import fabric_of, made

CHAIN = """Chain: Ch 12.
Row 1 (RS): Dc in 4th ch from hook (missed 3 ch count as dc), dc in each ch across; turn. (10 dc)
"""


@pytest.mark.parametrize(
    "end",
    [
        "dc in each st to last st, dc in top of beg ch-3",
        "dc in each st to last 2 sts, dc in next st, dc in top of beg ch-3",
        "dc in each st to last 2 sts, dc in next 2 sts, dc in tch",  # the two before the turning chain
        "dc in each st to beg ch-3, dc in beg ch-3",
        "dc in each st across",
        "dc in each dc, dc in tch",
        "dc in each st to last st, dc in last st",
        "dc in each st to last 3 sts, dc in each of last 3 sts",
        "[dc in next st] to last st, dc in 3rd ch of beg ch-3",
    ],
)
def test_the_turning_chain_is_the_last_stitch(end: str) -> None:
    fabric = fabric_of(CHAIN + f"Row 2: Ch 3 (counts as dc), {end}; turn. (10 dc)\n", rows=True)
    assert len({leg.base.id for stitch in fabric.round_stitches(2) for leg in stitch.legs}) == 10


@pytest.mark.parametrize("stop", ["last st", "beg ch-4", "3rd ch of beg ch-4", "last dc"])
def test_a_repeat_to_the_turning_chain_works_the_space_before_it(stop: str) -> None:
    fabric = fabric_of(
        f"""Ring: Ch 4; join with sl st in first ch to form a ring.
Row 1 (RS): Ch 4 (counts as dc and ch 1), (3 dc, ch 2, 3 dc) in ring, ch 1, dc in ring; turn. (8 dc, 2 ch-1 sps, 1 ch-2 sp)
Rows 2-5: Ch 4 (counts as dc and ch 1), [3 dc in next ch-1 sp, ch 1] to next ch-2 sp, (3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1, [3 dc in next ch-1 sp, ch 1] to {stop}, dc in 3rd ch of beg ch-4; turn.
""",
        rows=True,
    )
    assert [one.counts["dc"] for one in fabric.rounds[1:]] == [8, 14, 20, 26, 32]


def test_a_space_left_before_the_turning_chain_is_told() -> None:
    worked = made(
        """Ring: Ch 4; join with sl st in first ch to form a ring.
Row 1 (RS): Ch 4 (counts as dc and ch 1), 3 dc in ring, ch 1, 3 dc in ring, ch 1, dc in ring; turn. (8 dc, 3 ch-1 sps)
Row 2: Ch 4 (counts as dc and ch 1), 3 dc in next ch-1 sp, ch 1, 3 dc in next ch-1 sp, ch 1, dc in 3rd ch of beg ch-4; turn.
""",
        rows=True,
    )
    assert worked.codes == ["left-over"]
    assert "1 ch-1 sp of Row 1" in worked.problems[0].message


@pytest.mark.parametrize(
    "end",
    [
        "dc in each of last 2 sts",
        "dc in next 2 sts",
        "dc in next st, dc in last st",
        "dc in next dc, dc in tch",
        "2 dc",
        "dc2tog over last 2 sts, dc in same st",
    ],
)
def test_after_a_named_group_comes_what_follows_the_whole_group(end: str) -> None:
    fabric = fabric_of(
        f"""Chain: Ch 18.
Row 1 (RS): Dc in 4th ch from hook (missed 3 ch count as dc), [sk next ch, V-st in next ch, sk next ch] 4 times, dc in each of last 2 ch; turn. (4 dc, 4 V-sts)
Row 2: Ch 3 (counts as dc), dc in next dc, [V-st in next V-st] 4 times, {end}; turn.
""",
        stitches={"V-st": "(dc, ch 1, dc) in same st"},
        rows=True,
    )
    below = fabric.rounds[1]
    ends = [item.id for item in below.edge[:2]]
    assert {leg.base.id for stitch in fabric.round_stitches(2)[-4:] for leg in stitch.legs} >= set(ends)


def test_stitches_together_over_the_last_two() -> None:
    fabric = fabric_of(
        """Chain: Ch 11.
Row 1 (RS): Sc in 2nd ch from hook, sc in each ch across; turn. (10 sc)
Row 2: Ch 1, sc2tog over first 2 sts, sc in each st to last 2 sts, sc2tog over last 2 sts; turn. (6 sc, 2 sc2tog)
""",
        rows=True,
    )
    closing = fabric.round_stitches(2)[-1]
    assert len({leg.base.id for leg in closing.legs}) == 2


def test_what_goes_into_each_row_end_goes_all_along_both_sides() -> None:
    border = "Rnd 5: Ch 1, sc in each st around, working 2 sc in each row end; join with sl st in first sc. (26 sc)\n"
    fabric = fabric_of(
        "Chain: Ch 6.\nRow 1: Sc in 2nd ch from hook and in each ch across; turn. (5 sc)\n"
        "Rows 2-4: Ch 1, sc in each st across; turn. (5 sc)\n" + border,
        rows=True,
    )
    assert fabric.rounds[-1].counts == {"sc": 26}


@pytest.mark.parametrize(
    ("first", "dcs", "spaces"),
    [
        ("(2 dc, ch 1, 3 dc) in 4th ch from hook (missed 3 ch count as dc), dc in next 2 ch", 8, {"ch-1 sp": 1}),
        ("(2 dc, ch 1, 3 dc) in 4th ch from hook, dc in next 2 ch", 8, {"ch-1 sp": 1}),
        ("(dc, ch 2, 2 dc) in 5th ch from hook (missed 4 ch count as dc and ch 1), dc in next ch", 5, {"ch-1 sp": 1, "ch-2 sp": 1}),
    ],
)
def test_missed_chains_count_beside_a_group_too(first: str, dcs: int, spaces: dict[str, int]) -> None:
    fabric = fabric_of(f"Chain: Ch 6.\nRow 1: {first}; turn.\n", rows=True)
    assert fabric.rounds[1].counts == {"dc": dcs, **spaces}


def test_the_foundation_side_has_a_place_for_the_missed_chains_that_count() -> None:
    fabric = fabric_of(CHAIN + "Row 2: Ch 3 (counts as dc), dc in each of next 9 sts.\n", rows=True)
    assert {side.name: side.stitches for side in fabric.sides} == {"bottom": 10, "right": 2, "top": 10, "left": 2}


def test_after_short_rows_the_row_below_goes_on_where_they_left_it() -> None:
    fabric = fabric_of(
        """Chain: Ch 11.
Row 1: Sc in 2nd ch from hook, sc in each ch across; turn. (10 sc)
Row 2: Ch 1, sc in each st across; turn. (10 sc)
Row 3: Ch 1, sc in next 6 sts, leave remaining sts unworked; turn. (6 sc)
Row 4: Ch 1, sc in each st across; turn. (6 sc)
Row 5: Ch 1, sc in next 6 sts, sc in next 4 sts of Row 2; turn. (10 sc)
""",
        rows=True,
    )
    worked = [leg.base.id for stitch in fabric.stitches for leg in stitch.legs if fabric.stitches[leg.base.id].round == 2]
    assert len(worked) == len(set(worked)) == 10
