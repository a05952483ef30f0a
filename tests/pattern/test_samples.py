"""The samples as they are shipped, read whole: file and instructions together."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from motifold.render.pattern import Pattern, read_pattern, report_problems
from motifold.render.pattern.instructions import Node

SAMPLES = sorted((Path(__file__).parents[2] / "samples").glob("*.toml"))


def nodes(thing: object) -> Iterator[Node]:
    if isinstance(thing, Node):
        yield thing
    if isinstance(thing, tuple):
        for item in thing:
            yield from nodes(item)
    elif is_dataclass(thing):
        for one in fields(thing):
            yield from nodes(getattr(thing, one.name))


def read(path: Path) -> Pattern:
    reading = read_pattern(path.name, path.read_bytes())
    assert reading.problems == ()
    assert reading.pattern
    return reading.pattern


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_a_sample_has_no_problem_and_an_id_for_every_instruction(path: Path) -> None:
    pattern = read(path)
    ids = [node.id for part in (pattern.stitches, pattern.motifs, pattern.edgings) for node in nodes(part)]
    assert len(ids) > 20
    assert len(ids) == len(set(ids))


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_every_instruction_stands_where_its_words_are(path: Path) -> None:
    pattern = read(path)
    lines = pattern.source.split("\n")
    for node in nodes(pattern.motifs):
        words = lines[node.span.line - 1][node.span.column - 1 : node.span.column - 1 + node.span.length]
        assert words.strip() == words != ""


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_a_file_read_twice_is_the_same(path: Path) -> None:
    assert read(path) == read(path)


@settings(max_examples=60, deadline=None)
@given(
    st.sampled_from(SAMPLES),
    st.lists(
        st.tuples(st.integers(0, 10_000), st.integers(0, 30), st.sampled_from(["", '"', "[", ")", "*", "5", " x ", "\n"])), max_size=3
    ),
)
def test_a_damaged_sample_brings_no_traceback(path: Path, cuts: list[tuple[int, int, str]]) -> None:
    source = path.read_text(encoding="utf-8")
    for at, length, put in cuts:
        source = source[: at % len(source)] + put + source[at % len(source) + length :]
    reading = read_pattern("x.toml", source.encode())
    assert isinstance(report_problems(reading.problems, "x.toml", source), str)
