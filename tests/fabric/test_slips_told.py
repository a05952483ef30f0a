"""Slips that used to pass in silence: each is told once, with its code."""

import pytest
from make import made

CHAIN = "Chain: Ch 11.\nRow 1: Sc in 2nd ch from hook, sc in each ch across; turn. (10 sc)\n"
RING = "\nRnd 1: Ch 1, 6 sc in ring; join with sl st in first sc. (6 sc)\n"
SLIPS = {
    "a number beyond all measure": (CHAIN + "Row 2: Ch 1, sc in each of next 1000000000 sts; turn.\n", "number", "too large a number"),
    "a row cut down to its chain": (CHAIN + "Row 2: Ch 2; turn.\n", "left-over", "no more than its beginning chain"),
    "each st five times": (CHAIN + "Row 2: Ch 1, sc in each st 5 times; turn.\n", "repeat", "nothing is left for the times after it"),
    "more missed chains than there are": (
        "Chain: Ch 12.\nRow 1: Hdc in 3rd ch from hook (missed 3 ch count as hdc), hdc in each ch across.\n",
        "count",
        "3 missed ch are said to count, but before this ch from the hook there are only 2",
    ),
    "a ring that is a chain too short": (
        "Ring: Ch 4; join with sl st in 5th ch from hook to form a ring." + RING,
        "place",
        "Only 4 ch can be counted from the hook",
    ),
}


@pytest.mark.parametrize("name", SLIPS)
def test_a_slip_is_told(name: str) -> None:
    text, code, words = SLIPS[name]
    found = made(text, rows=text.startswith("Chain"))
    problems = (*found.read, *found.problems)
    assert [problem.code for problem in problems] == [code]
    assert words in problems[0].message


def test_a_chain_alone_may_be_what_the_next_row_is_worked_along() -> None:
    for text in ("Row 2: Ch 6; turn.\nRow 3: Sc in 2nd ch from hook, sc in next 4 ch, sc in next 10 sts.\n", "Row 2: Ch 30.\n"):
        assert "left-over" not in made(CHAIN + text, rows=True).codes
