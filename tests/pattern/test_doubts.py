"""What a technical editor would ask."""

from __future__ import annotations

from importlib import resources

import pytest

from motifold.render.pattern import read_pattern
from motifold.render.pattern.doubts import editor_doubts
from motifold.render.pattern.problem import Problem

BASKET = resources.files("motifold.samples").joinpath("lighthouse-basket.toml").read_text()
COASTER = resources.files("motifold.samples").joinpath("tidepool-coaster.toml").read_text()


def doubts(text: str) -> tuple[Problem, ...]:
    reading = read_pattern("x.toml", text.encode())
    assert reading.pattern is not None
    return editor_doubts(reading.pattern)


@pytest.mark.parametrize("text", [BASKET, COASTER])
def test_there_is_nothing_to_ask_about_the_samples(text: str) -> None:
    assert doubts(text) == ()


@pytest.mark.parametrize(
    ("text", "old", "new", "code", "says"),
    [
        (COASTER, "[motif.coaster]", '[stitch.leaf]\nname = "leaf"\nmeans = "3 tr in same st"\n\n[motif.coaster]', "spare-stitch", "leaf"),
        (COASTER, "[gauge]", '[yarn.Z]\nname = "Spare"\n\n[gauge]', "spare-yarn", "yarn Z"),
        (BASKET, '"48 cm"', '"40 cm"', "size-order", "Medium"),
        (BASKET, "116 (132, 148) sc", "116 (112, 148) sc", "size-order", "116 (112, 148)"),
        (COASTER, "rounds = 3\n", "rounds = 3\nrows = 20\nheight = \"10 cm\"\n", "gauge-differs", "contradicts"),
    ],
)  # fmt: skip
def test_an_editor_asks(text: str, old: str, new: str, code: str, says: str) -> None:
    assert old in text
    found = doubts(text.replace(old, new, 1))
    assert [problem.code for problem in found] == [code]
    assert says in found[0].message
    assert found[0].severity == "warning"
    assert found[0].span is not None
    assert found[0].span.line > 1


def test_sizes_may_go_down_all_the_way() -> None:
    smaller = BASKET.replace('"42 cm"', '"60 cm"').replace('"48 cm"', '"55 cm"').replace('"54 cm"', '"50 cm"')
    assert doubts(smaller) == ()


def test_a_stitch_used_only_within_another_is_used() -> None:
    text = COASTER.replace("[stitch.petal]", '[stitch.tip]\nname = "tip"\nmeans = "3 tr in same st"\n\n[stitch.petal]', 1)
    assert doubts(text.replace("3 tr, htr", "tip, htr", 1)) == ()
