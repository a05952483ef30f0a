"""The examples in the docstrings say what happens."""

from __future__ import annotations

import doctest
import importlib
import pkgutil

import pytest

import motifold.cli
import motifold.render
import motifold.symbols

MODULES = sorted(
    name
    for package in (motifold.cli, motifold.render, motifold.symbols)
    for _, name, _ in pkgutil.walk_packages(package.__path__, package.__name__ + ".")
    if not name.endswith("__main__")
)


@pytest.mark.parametrize("name", MODULES)
def test_examples(name: str) -> None:
    assert doctest.testmod(importlib.import_module(name)).failed == 0


def test_there_are_examples() -> None:
    finder = doctest.DocTestFinder(exclude_empty=True)
    examples = sum(len(t.examples) for name in MODULES for t in finder.find(importlib.import_module(name)))
    assert examples >= 25
