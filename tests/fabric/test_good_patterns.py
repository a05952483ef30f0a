"""Patterns of many kinds work out as they state, without a word."""

import pytest
from good import GOOD, Good
from make import made
from more_good import MORE


@pytest.mark.parametrize("name", sorted(GOOD | MORE))
def test_it_works_in_silence(name: str) -> None:
    good: Good = (GOOD | MORE)[name]
    worked = made(
        good.text,
        good.shape,
        good.terms,
        good.stitches,
        rows=good.rows,
        row_height_cm=good.row_height_cm,
        counts_as=good.counts_as,
    )
    assert [(p.code, p.span, p.message) for p in (*worked.read, *worked.problems)] == []
