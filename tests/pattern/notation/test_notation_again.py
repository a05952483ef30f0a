"""Words that come again are read as they were, with a number and a place of their own; what depends on its surroundings is read anew."""

# ruff: noqa: E501 (a row keeps its line)

from __future__ import annotations

import pytest
from notation_shorthand import read, short

from motifold.render.pattern.instructions import Work

TWICE = [
    ("sc in next st, dc in next ch-2 sp, sc in next st, dc in next ch-2 sp, inc", "sc@next st; dc@next sp2; sc@next st; dc@next sp2; dc inc2"),
    ("dc in next st, sc in next st, inc, dc in next st, inc", "dc@next st; sc@next st; sc inc2; dc@next st; dc inc2"),
    ("sc in next sp, dc in same sp, dc in next st, dc in same st", "sc@next sp; dc@same sp; dc@next st; dc@same st"),
    ("sc in next st, ch 2, working in back loops only, sc in next st, ch 2", "sc@next st; ch2; 'working in back loops only'; sc@next st back; ch2"),
    ("dc in next st, ch 1, dc in next st, (counts as hdc), ch 1", "dc@next st; ch1; dc@next st{=hdc}; ch1"),
]  # fmt: skip


@pytest.mark.parametrize(("written", "meant"), TWICE, ids=[row[0][:40] for row in TWICE])
def test_words_that_come_again_mean_what_they_meant(written: str, meant: str) -> None:
    assert short(written) == meant


def test_a_step_read_again_has_its_own_number_and_place() -> None:
    text = "Rnd 1: sc in next st, sc in next st, sc in next st, ch 1"
    lines, problems = read(text)
    assert not problems
    works = [step for step in lines[0].steps if isinstance(step, Work)]
    assert len({step.id for step in works}) == 3
    for step, at in zip(works, (7, 22, 37), strict=True):
        assert step.span.column == at + 1 and step.span.length == len("sc in next st")
        assert step.place is not None
        assert (step.place.span.column, step.place.span.length) == (at + 4, len("in next st"))


def test_a_doubtful_count_is_doubted_each_time() -> None:
    _, problems = read("Rnd 1: sc in next st, sc 2 in next 2 sts, sc in next st, sc 2 in next 2 sts, ch 1")
    assert [problem.code for problem in problems] == ["ambiguous", "ambiguous"]
