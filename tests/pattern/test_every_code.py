"""Every code has an example that makes exactly that code."""

from __future__ import annotations

import sys
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parent))

from examples_of_codes import EXAMPLES, NOT_FROM_A_FILE, Example

from motifold.render.pattern import read_pattern
from motifold.render.pattern.catalogue import CATALOGUE
from motifold.render.pattern.problem import Problem
from motifold.render.worked import work_pattern


def problems_of(example: Example) -> tuple[Problem, ...]:
    data = example.source if isinstance(example.source, bytes) else example.source.encode()
    reading = read_pattern("example.toml", data)
    if reading.pattern is None:
        return reading.problems
    return work_pattern(reading.pattern, example.rounds, example.size, reading.problems).problems


@pytest.mark.parametrize("code", sorted(EXAMPLES))
def test_its_example_makes_this_problem_and_no_other(code: str) -> None:
    found = problems_of(EXAMPLES[code])
    if code == "more":  # what is too many to print is of some other kind
        assert found[-1].code == code
        return
    assert {problem.code for problem in found} == {code}
    entry = next(entry for entry in CATALOGUE if entry.code == code)
    assert all(problem.severity in entry.severity for problem in found)


def test_every_code_has_its_example() -> None:
    known = {entry.code for entry in CATALOGUE}
    assert EXAMPLES.keys() | NOT_FROM_A_FILE.keys() == known
    assert not EXAMPLES.keys() & NOT_FROM_A_FILE.keys()
