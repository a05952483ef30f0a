"""The table of codes is what the sources use: no code without a row, no row without a code."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from motifold.render.pattern.catalogue import CATALOGUE, describe_codes

ROOT = Path(__file__).parents[2]
SOURCES = sorted(path for folder in ("render", "cli") for path in (ROOT / folder).rglob("*.py") if path.name != "catalogue.py")
CODE = re.compile(r"[a-z]+(-[a-z]+)*")
MAKERS = {"Problem", "error", "warning", "add", "_problem", "problem", "_error", "_warning", "reject", "Rejected", "complain"}


def codes_in(path: Path) -> Iterator[str]:
    """The codes of problems that a source makes, by itself or through a helper that takes the code first."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Call):
            name = node.func.id if isinstance(node.func, ast.Name) else node.func.attr if isinstance(node.func, ast.Attribute) else ""
            first = [node.args[0]] if name in MAKERS and len(node.args) > 1 else []
            for value in [*first, *(keyword.value for keyword in node.keywords if keyword.arg == "code")]:
                if isinstance(value, ast.Constant) and isinstance(value.value, str) and CODE.fullmatch(value.value):
                    yield value.value


@pytest.mark.parametrize("path", SOURCES, ids=lambda path: str(path.relative_to(ROOT)))
def test_every_code_has_a_row(path: Path) -> None:
    known = {entry.code for entry in CATALOGUE}
    assert set(codes_in(path)) <= known, "add a row to render/pattern/catalogue.py"


def test_every_row_is_used() -> None:
    texts = [path.read_text(encoding="utf-8") for path in SOURCES]
    unused = [entry.code for entry in CATALOGUE if not any(f'"{entry.code}"' in text for text in texts)]
    assert unused == []


def test_no_code_has_two_rows() -> None:
    codes = [entry.code for entry in CATALOGUE]
    assert len(codes) == len(set(codes))
    assert all(CODE.fullmatch(code) for code in codes)


def test_the_table_can_be_printed() -> None:
    assert describe_codes().count("\n") == len(CATALOGUE) + 2
