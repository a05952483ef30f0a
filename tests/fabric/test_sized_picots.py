"""Picots may be counted by their length."""

import pytest
from make import made

SNOW = """Ring: Magic ring.
Rnd 1: Ch 1, [2 sc in ring, ch-3 picot, ch-5 picot, ch-3 picot] 6 times; join with sl st in first sc. ({counts})
"""


@pytest.mark.parametrize("counts", ["12 sc, 18 picots", "12 sc, 12 ch-3 picots, 6 ch-5 picots", "12 ch-3 picots"])
def test_picots_are_counted_by_their_length(counts: str) -> None:
    found = made(SNOW.format(counts=counts))
    assert not found.read and not found.problems


@pytest.mark.parametrize("counts", ["12 sc, 18 ch-3 picots", "12 sc, 6 ch-4 picots", "12 sc, 12 picots"])
def test_a_wrong_number_of_them_is_told(counts: str) -> None:
    found = made(SNOW.format(counts=counts))
    assert found.codes == ["count"]
    assert counts.split(", ")[1] in found.problems[0].message
