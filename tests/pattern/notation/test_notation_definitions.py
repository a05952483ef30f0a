"""Special stitches: what they are made of, and whether it is gathered."""

from __future__ import annotations

import pytest
from notation_shorthand import define, steps_short

MEANINGS = [
    ("petal", "(sc, hdc, 3 dc, hdc, sc) in same st", "sc, hdc, 3 dc, hdc, sc", None, False),
    ("shell", "5 dc in same st", "5 dc", None, False),
    ("fan", "7 tr in indicated st or sp", "7 tr", None, False),
    ("pc", "4 dc in same st, gathered", "4 dc", "popcorn", False),
    ("puff", "3 hdc in same st, gathered into a puff", "3 hdc", "puff", False),
    ("tuft", "5 dc in same st, worked together", "5 dc", "cluster", False),
    ("knob", "dc5tog in same st", "dc5tog", None, False),
    ("V", "(dc, ch 1, dc) in same st", "dc, ch1, dc", None, False),
    ("tri", "2 dc, ch 2, 2 dc in same st", "2 dc, ch2, 2 dc", None, False),
    ("nib", "ch 3, sl st in 3rd ch from hook", "ch3, sl st@nth3 ch from hook", None, False),
    ("beg-shell", "ch 3, 4 dc in same st", "ch3, 4 dc", None, False),
    ("cross", "sk next st, dc in next st, dc in skipped st", "sk next st, dc@next st, dc@same missed", None, True),
    ("pair", "dc in next st, dc in same st", "dc@next st, dc@same st", None, True),
]


@pytest.mark.parametrize(("key", "means", "steps", "gather", "spread"), MEANINGS, ids=[row[0] for row in MEANINGS])
def test_a_special_stitch_is_read(key: str, means: str, steps: str, gather: str | None, spread: bool) -> None:
    found, problems = define(key, means)
    assert problems == ()
    assert found is not None
    assert (steps_short(found.steps), found.gather, found.spread) == (steps, gather, spread)


def test_a_uk_definition_is_read_in_uk_terms() -> None:
    found, problems = define("petal", "(dc, htr, 3 tr, htr, dc) in same st", "UK")
    assert problems == ()
    assert found is not None
    assert steps_short(found.steps) == "sc, hdc, 3 dc, hdc, sc"


@pytest.mark.parametrize("means", ["yo, insert hook in next st, pull up a loop", "wind it round twice", "", "5 dc in next st, remove hook"])
def test_prose_is_a_problem_that_says_the_form(means: str) -> None:
    found, problems = define("knob", means)
    assert found is None
    assert [problem.code for problem in problems] == ["definition"]
    assert "5 dc in same st" in (problems[0].hint or "")


@pytest.mark.parametrize("key", ["dc", "sc", "sl st", "double crochet", "FPdc", "dc2tog"])
def test_a_stitch_of_the_trade_keeps_its_meaning(key: str) -> None:
    found, problems = define(key, "3 dc in same st")
    assert found is None
    assert [problem.code for problem in problems] == ["definition"]


@pytest.mark.parametrize("key", ["shell", "cl", "pc", "bobble", "puff", "picot", "V-st"])
def test_a_stitch_that_every_pattern_makes_its_own_way_may_be_defined(key: str) -> None:
    assert define(key, "3 dc in same st")[0] is not None
