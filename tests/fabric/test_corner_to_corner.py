# ruff: noqa: E501 (texts keep their lines)
"""Rows that grow from one corner: each begins with a block on a new chain, and works a block into the side of every block below."""

import pytest
from make import fabric_of, made

BLOCK = "Ch 6, dc in 4th ch from hook, dc in each of next 2 ch"
IN_WORDS = {
    "in parentheses": (BLOCK, "(sl st, ch 3, 3 dc) in next ch-3 sp"),
    "one after another": ("Ch 6, dc in 4th ch from hook and in each of last 2 ch", "sl st in next ch-3 sp, ch 3, 3 dc in same sp"),
    "the chain counts as nothing": ("Ch 6 (does not count as a st), dc in 4th ch from hook, dc in next 2 ch", "sk 3 dc, (sl st, ch 3, 3 dc) in next ch-3 sp"),
    "of the block": (BLOCK, "(sl st, ch 3, 3 dc) in ch-3 sp of next block"),
}


@pytest.mark.parametrize("words", IN_WORDS)
def test_rows_of_blocks_grow_and_shrink_by_one(words: str) -> None:
    begin, block = IN_WORDS[words]
    further = block.removeprefix("sk 3 dc, ")
    fabric = fabric_of(
        f"""Row 1: {BLOCK}; turn. (3 dc, 1 ch-3 sp)
Row 2: {begin}, {block}; turn. (6 dc, 2 ch-3 sps)
Row 3: {begin}, [{block}] twice; turn. (9 dc)
Rows 4-5: {begin}, [{block}] across; turn.
Row 6: Sl st in each of next 3 dc, [{further}] to last ch-3 sp, sl st in last ch-3 sp; turn. (12 dc)
Row 7: Ch 1, sl st in each of first 3 dc, [{further}] to last ch-3 sp, sl st in last ch-3 sp. (3 blocks)
""",
        rows=True,
    )
    assert [row.counts["dc"] for row in fabric.rounds[1:]] == [3, 6, 9, 12, 15, 12, 9]
    assert [row.counts["ch-3 sp"] for row in fabric.rounds[1:]] == [1, 2, 3, 4, 5, 4, 3]


def test_a_block_goes_into_the_side_of_the_block_below() -> None:
    fabric = fabric_of(f"Row 1: {BLOCK}; turn.\nRow 2: {BLOCK}, (sl st, ch 3, 3 dc) in next ch-3 sp; turn.\n", rows=True)
    second = [stitch for stitch in fabric.round_stitches(2) if stitch.kind == "dc"]
    own, entered = second[:3], second[3:]
    assert all(fabric.stitches[stitch.legs[0].base.id].round == 2 for stitch in own)  # worked back along the new chain
    sides = {stitch.legs[0].base.id for stitch in entered}
    assert len(sides) == 1 and fabric.runs[sides.pop()].round == 1


def test_the_missed_chains_may_count_and_still_be_entered() -> None:
    counted = BLOCK.replace("hook,", "hook (missed 3 ch count as dc),")
    fabric = fabric_of(
        f"Row 1: {counted}; turn. (4 dc)\nRow 2: {counted}, (sl st, ch 3, 3 dc) in next ch-3 sp; turn. (7 dc)\n"
        f"Row 3: {counted}, [(sl st, ch 3, 3 dc) in next ch-3 sp] across; turn. (10 dc)\n",
        rows=True,
    )
    assert fabric.rounds[-1].counts["ch-3 sp"] == 2


def test_blocks_may_be_stitches_of_the_pattern_itself() -> None:
    fabric = fabric_of(
        "Row 1: Bb; turn.\nRow 2: Bb, bl in next ch-3 sp; turn.\nRows 3-4: Bb, [bl in next ch-3 sp] across; turn.\n"
        "Row 5: Sl st in each of next 3 dc, bl in each ch-3 sp to last ch-3 sp, sl st in last ch-3 sp.\n",
        stitches={"bb": "ch 6, dc in 4th ch from hook, dc in each of next 2 ch", "bl": "(sl st, ch 3, 3 dc) in same sp"},
        rows=True,
    )
    assert [row.counts.get("bl", 0) for row in fabric.rounds] == [0, 1, 2, 3, 3]


def test_a_block_more_than_there_are_below_is_told() -> None:
    worked = made(f"Row 1: {BLOCK}; turn.\nRow 2: {BLOCK}, [(sl st, ch 3, 3 dc) in next ch-3 sp] twice; turn.\n", rows=True)
    assert worked.codes == ["beyond"]
