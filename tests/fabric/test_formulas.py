# ruff: noqa: E501 (texts keep their lines)
"""Counts that a formula gives, whatever the number of rounds."""

import tomllib
from pathlib import Path

import pytest
from make import edging, fabric_of, made, opening

SAMPLES = Path(__file__).parents[2] / "samples"
OPEN_SQUARE = tomllib.loads((SAMPLES / "lighthouse-basket.toml").read_text(encoding="utf-8"))
COASTER = tomllib.loads((SAMPLES / "tidepool-coaster.toml").read_text(encoding="utf-8"))
SOLID_SQUARE = """Ring: Ch 4; join with sl st in first ch to form a ring.
Rnd 1: Ch 3 (counts as dc here and throughout), 2 dc in ring, ch 2, [3 dc in ring, ch 2] 3 times; join with sl st in top of beg ch-3. (12 dc, 4 ch-2 sps)
Rnd 2 and following: Ch 3, dc in each dc to next corner sp, [(2 dc, ch 2, 2 dc) in corner sp, dc in each dc to next corner sp] 3 times, \
(2 dc, ch 2, 2 dc) in corner sp, dc in each dc to end of rnd; join.
"""
CIRCLE = """Ring: Make a magic ring.
Rnd 1: Ch 3 (counts as dc here and throughout), 11 dc in ring; join with sl st in top of beg ch-3. (12 dc)
Rnd 2: Ch 3, dc in same st, 2 dc in each st around; join.
Rnd 3: Ch 3, 2 dc in next st, [dc in next st, 2 dc in next st] around; join.
Rnd 4: Ch 3, dc in next st, 2 dc in next st, [dc in next 2 sts, 2 dc in next st] around; join.
Rnd 5: Ch 3, dc in next 2 sts, 2 dc in next st, [dc in next 3 sts, 2 dc in next st] around; join.
"""
SPIRAL = """Rnd 1: 6 sc in magic ring; do not join. (6 sc)
Rnd 2: 2 sc in each st around. (12 sc)
Rnd 3: [Sc in next st, inc] 6 times. (18 sc)
Rnd 4: (2 sc, inc) x 6. (24 sc)
Rnd 5: *3 sc, inc; rep from * 5 more times. (30 sc)
Rnd 6: [Sc in next 4 sts, 2 sc in next st] around. (36 sc)
"""


@pytest.mark.parametrize("rounds", [1, 2, 3, 7, 8, 9, 14])
def test_the_open_square_of_r_rounds(rounds: int) -> None:
    fabric = fabric_of(OPEN_SQUARE["motif"]["square"]["rounds"], "square", rounds=rounds)
    for made_round in fabric.rounds[1:]:
        r = made_round.number or 0
        spaces = {"ch-1 sp": 4 * (r - 1)} if r > 1 else {}
        assert dict(made_round.counts) == {"dc": 12 * r, **spaces, "ch-2 sp": 4}
        assert made_round.side == ("RS" if r % 2 else "WS")
    assert [side.name for side in fabric.sides] == ["top", "left", "bottom", "right"]
    assert {side.stitches for side in fabric.sides} == {4 * rounds + 1}
    assert all(side.counts.get("dc") == 3 * rounds for side in fabric.sides)
    assert not fabric.rounds[-1].turned


@pytest.mark.parametrize("index, rounds", [(0, 7), (1, 8), (2, 9)])
def test_the_rim_of_the_basket_has_4r_plus_1_a_side(index: int, rounds: int) -> None:
    square = fabric_of(OPEN_SQUARE["motif"]["square"]["rounds"], "square", rounds=rounds)
    rim = edging(OPEN_SQUARE["edging"]["rim"]["rounds"], opening([square] * 4, "top"), size=index, sizes=3)
    assert not rim.codes
    assert dict(rim.last.counts) == {"sc": 4 * (4 * rounds + 1), "ch-1 sp": 4}
    assert rim.fabric.rounds[0].kind == "edge"
    assert all(rim.fabric.stitches[i].role == "given" for i in rim.fabric.rounds[0].stitches)


def test_the_petalled_coaster() -> None:
    petal = COASTER["stitch"]["petal"]["means"]
    fabric = fabric_of(COASTER["motif"]["coaster"]["rounds"], terms="UK", stitches={"petal": petal})
    assert [dict(r.counts) for r in fabric.rounds[1:]] == [{"dc": 12}, {"dc": 24}, {"dc": 36}, {"sl st": 9, "petal": 9}]
    assert dict(fabric.rounds[-1].parts) == {"sl st": 9, "sc": 18, "hdc": 18, "dc": 27}
    assert sum(1 for group in fabric.groups if group.name == "petal" and len(group.stitches) == 7) == 9


@pytest.mark.parametrize("rounds", range(1, 9))
def test_the_solid_square(rounds: int) -> None:
    fabric = fabric_of(SOLID_SQUARE, "square", rounds=rounds)
    for made_round in fabric.rounds[1:]:
        assert made_round.counts["dc"] == 4 * (4 * (made_round.number or 0) - 1)
    assert {side.stitches for side in fabric.sides} == {4 * rounds - 1 + 2}


def test_a_flat_circle_grows_by_twelve() -> None:
    assert [r.counts["dc"] for r in fabric_of(CIRCLE).rounds[1:]] == [12, 24, 36, 48, 60]


def test_a_spiral_grows_by_six() -> None:
    fabric = fabric_of(SPIRAL)
    assert [r.counts["sc"] for r in fabric.rounds[1:]] == [6, 12, 18, 24, 30, 36]
    assert {r.end for r in fabric.rounds[1:]} == {"spiral"}


def test_fewer_rounds_than_written_leave_the_rest_out() -> None:
    worked = made(CIRCLE, rounds=3)
    assert [r.number for r in worked.fabric.rounds] == [None, 1, 2, 3]


def test_more_rounds_than_written_are_a_problem() -> None:
    assert made(CIRCLE, rounds=9).codes == ["rounds"]
