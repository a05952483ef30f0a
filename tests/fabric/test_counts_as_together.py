# ruff: noqa: E501 (texts keep their lines)
"""``ch 2, dc2tog in same sp (counts as dc3tog)``: chain and stitch are one of the stitches that the round goes on with."""

import pytest
from make import fabric_of

ROUND = """Ring: Magic ring.
Rnd 1: Ch 1, [sc in ring, ch 2] 8 times; join with sl st in first sc. (8 sc, 8 ch-2 sps)
Rnd 2: Sl st in next ch-2 sp, {}, ch 3, [dc3tog in next ch-2 sp, ch 3] 7 times; join with sl st in top of first dc3tog. (8 dc3tog, 8 ch-3 sps)
"""


@pytest.mark.parametrize("ch", [2, 3])
@pytest.mark.parametrize("said", ["counts as dc3tog", "counts as first dc3tog"])
def test_a_beginning_closed_together_counts_as_its_like(ch: int, said: str) -> None:
    fabric = fabric_of(ROUND.format(f"ch {ch}, dc2tog in same sp ({said})"))
    assert fabric.rounds[2].counts == {"dc3tog": 8, "ch-3 sp": 8}
    assert {stitch.gather for stitch in fabric.round_stitches(2) if stitch.kind == "dc3tog"} == {"cluster"}
