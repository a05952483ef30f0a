"""The house holds its own rules: data flows one way, packages are listed, files can be read in a sitting."""

from __future__ import annotations

import ast
import tomllib
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]

# Each room may look at those that stand before it, and at itself.
ORDER = ["symbols", "pattern", "fabric", "sizing", "motif", "assembly", "words", "drawing", "booklet", "cli"]
ALLOWED: dict[str, set[str]] = {
    "symbols": set(),
    "drawing": set(),
    "pattern": {"symbols"},
    "fabric": {"symbols", "pattern"},
    "sizing": {"symbols", "pattern", "fabric", "assembly", "drawing"},
    "motif": {"symbols", "pattern", "fabric", "drawing"},
    "assembly": {"symbols", "pattern", "fabric", "drawing"},
    "words": {"symbols", "pattern", "fabric", "sizing", "assembly", "worked"},
    "consequences": {"pattern", "fabric"},
    "worked": {"symbols", "pattern", "fabric", "sizing", "assembly", "consequences"},
    "proof": {"symbols", "pattern", "fabric", "sizing", "assembly", "worked"},
    "charts": {"symbols", "pattern", "fabric", "motif", "drawing", "worked"},
    "joining": {"symbols", "fabric", "motif", "assembly", "drawing", "charts", "worked"},
    "schematics": {"symbols", "sizing", "assembly", "drawing", "charts", "joining", "worked"},
    "booklet": {
        "symbols", "pattern", "fabric", "sizing", "motif", "assembly", "words", "drawing", "worked", "charts", "schematics", "joining",
    },
    "handouts": {"symbols", "pattern", "fabric", "motif", "assembly", "words", "drawing", "worked", "charts", "schematics", "booklet"},
}


def room_of(path: Path) -> str:
    parts = path.relative_to(ROOT).with_suffix("").parts
    return parts[1] if parts[0] == "render" and len(parts) > 1 else parts[0]


def imported_rooms(path: Path) -> set[str]:
    found = set()
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        names = [node.module] if isinstance(node, ast.ImportFrom) and node.module else []
        names += [alias.name for alias in node.names] if isinstance(node, ast.Import) else []
        for name in names:
            parts = name.split(".")
            if parts[0] == "motifold":
                found.add(parts[2] if parts[1] == "render" and len(parts) > 2 else parts[1])
    return found


SOURCES = sorted(path for folder in ("cli", "symbols", "render", "samples") for path in (ROOT / folder).rglob("*.py"))


@pytest.mark.parametrize("path", SOURCES, ids=lambda path: str(path.relative_to(ROOT)))
def test_a_room_never_imports_a_later_one(path: Path) -> None:
    room = room_of(path)
    if room in ("cli", "samples", "__init__"):
        return
    assert imported_rooms(path) - {room} <= ALLOWED[room], f"{room} looks at a room that it must not know"


def test_nothing_imports_the_command_line() -> None:
    for path in SOURCES:
        if room_of(path) != "cli":
            assert "cli" not in imported_rooms(path), path


@pytest.mark.parametrize("path", SOURCES, ids=lambda path: str(path.relative_to(ROOT)))
def test_no_file_is_longer_than_one_reads_in_a_sitting(path: Path) -> None:
    assert len(path.read_text(encoding="utf-8").splitlines()) <= 420


def test_the_listed_packages_are_the_folders() -> None:
    listed = set(tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["tool"]["setuptools"]["packages"])
    folders = {
        "motifold." + ".".join(path.parent.relative_to(ROOT).parts)
        for top in ("cli", "symbols", "render", "samples")
        for path in (ROOT / top).rglob("__init__.py")
    }
    assert listed == folders


def test_only_the_agreed_names_stand_at_the_top() -> None:
    agreed = {"README.md", "DEVELOPERS.md", "LICENSE", "pyproject.toml", "render", "symbols", "cli", "tests", "samples"}
    by_hand = {"build", "dist", "motifold.egg-info", "out"}
    here = {path.name for path in ROOT.iterdir() if not path.name.startswith(".")}
    assert here - by_hand <= agreed
