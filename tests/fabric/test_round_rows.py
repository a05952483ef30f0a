# ruff: noqa: E501 (texts keep their lines)
"""All round a piece in rows: its last row, its row ends, the other side of its foundation, its row ends."""

import pytest
from make import edging, fabric_of, made, motif_edge

PIECE = """Chain: Ch 11.
Row 1 (RS): Sc in 2nd ch from hook, sc in each ch across; turn. (10 sc)
Rows 2-4: Ch 1, sc in each st across; turn. (10 sc)
"""
ROUND = {
    "so many along each side": "Ch 1, 3 sc in first st, sc in each of next 8 sts, 3 sc in last st, 4 sc evenly along side, working in other side of foundation ch, 3 sc in next ch, sc in each of next 8 ch, 3 sc in last ch, 4 sc evenly along side; join with sl st in first sc. (36 sc)",
    "row ends": "Ch 1, 3 sc in first st, sc in each st to last st, 3 sc in last st, sc in row ends, working in other side of foundation ch, 3 sc in first ch, sc in each ch to last ch, 3 sc in last ch, sc in row ends; join with sl st in first sc. (36 sc)",
    "corners": "Ch 1, 3 sc in corner, sc in each st to next corner, 3 sc in corner, sc evenly along side, 3 sc in corner, sc in each ch to next corner, 3 sc in corner, sc evenly along side; join with sl st in first sc. (36 sc)",
    "fewer than there are row ends": "Ch 1, (sc, ch 1, sc) in first st, sc in next 8 sts, (sc, ch 1, sc) in last st, 3 sc evenly along side, (sc, ch 1, sc) in first ch, sc in next 8 ch, (sc, ch 1, sc) in last ch, 3 sc evenly along next side; join with sl st in first sc. (30 sc, 4 ch-1 sps)",
    "more than there are row ends": "Ch 1, 3 sc in first st, sc in next 8 sts, 3 sc in last st, 12 sc evenly along side, 3 sc in next ch, sc in next 8 ch, 3 sc in next ch, 12 sc evenly along side; join with sl st in first sc. (52 sc)",
}


@pytest.mark.parametrize("name", sorted(ROUND))
def test_a_round_goes_all_round_the_piece(name: str) -> None:
    fabric = fabric_of(PIECE + "Rnd 5: " + ROUND[name], rows=True)
    feet = [leg.base.foot for stitch in fabric.round_stitches(5) if stitch.role == "stitch" for leg in stitch.legs]
    ends = [index for index, foot in enumerate(feet) if foot == "row end"]
    first = [index for index in ends if index < len(feet) // 2]
    assert len(first) * 2 == len(ends) and first == list(range(first[0], first[-1] + 1))


def test_an_edging_of_its_own_goes_all_round_too() -> None:
    piece = fabric_of(PIECE + "Row 5: Ch 1, sc in each st across. (10 sc)", rows=True)
    worked = edging(
        "Rnd 1: Join with sl st in first st, ch 1, 3 sc in same st, sc in next 8 sts, 3 sc in last st, 5 sc evenly along side, 3 sc in next ch, sc in next 8 ch, 3 sc in last ch, 5 sc evenly along side; join with sl st in first sc. (38 sc)",
        motif_edge(piece),
    )
    assert worked.codes == []


def test_a_stitch_left_before_the_side_is_told() -> None:
    worked = made(
        PIECE + "Rnd 5: " + ROUND["corners"].replace("sc in each st to next corner", "sc in next 7 sts").split(" (36")[0], rows=True
    )
    assert worked.codes == ["left-over"]
