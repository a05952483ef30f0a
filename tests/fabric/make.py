"""A Fabric from a few lines of text, for tests: ``fabric_of(text, shape="square")``."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import lru_cache
from typing import Literal

from motifold.render.fabric import Workshop, motif_edge, work_edging, work_motif
from motifold.render.fabric.model import Fabric, GivenItem, Round
from motifold.render.pattern.instructions import Definition, Instructions
from motifold.render.pattern.model import EdgingSource, MotifSource
from motifold.render.pattern.notation import NotationContext, parse_definition, parse_instructions
from motifold.render.pattern.problem import Problem, Span

Terms = Literal["US", "UK"]
CORNERS = {"circle": 0, "triangle": 3, "square": 4, "pentagon": 5, "hexagon": 6, "octagon": 8, "rectangle": 4}


@dataclass(frozen=True, slots=True)
class Plain:
    """A text that stands in no file: line 1 is its first."""

    text: str

    def span(self, start: int, end: int) -> Span:
        starts = _line_starts(self.text)
        line = bisect_right(starts, start)
        return Span(line, start - starts[line - 1] + 1, max(end - start, 0))


@lru_cache(maxsize=4)
def _line_starts(text: str) -> tuple[int, ...]:
    return (0, *(at + 1 for at, letter in enumerate(text) if letter == "\n"))


@dataclass(frozen=True, slots=True)
class Made:
    """What came of a text: the Fabric, the reader's problems and the worker's."""

    fabric: Fabric
    read: tuple[Problem, ...]
    problems: tuple[Problem, ...]
    by_label: Mapping[str, Round] = field(default_factory=dict)

    def counts(self, number: int) -> dict[str, int]:
        """Counts of a numbered round."""
        return dict(self.round(number).counts)

    def round(self, number: int) -> Round:
        return next(made for made in self.fabric.rounds if made.number == number)

    @property
    def last(self) -> Round:
        return [made for made in self.fabric.rounds if made.number is not None][-1]

    @property
    def codes(self) -> list[str]:
        return [problem.code for problem in (*self.read, *self.problems)]


def read(
    text: str,
    terms: Terms = "US",
    stitches: Mapping[str, str] | None = None,
    yarns: Sequence[str] = ("A", "B"),
    sizes: int = 1,
    rows: bool = False,
) -> tuple[Instructions, dict[str, Definition], tuple[Problem, ...]]:
    """The instructions of a text and its special stitches."""
    problems: list[Problem] = []
    given = dict(stitches or {})
    context = NotationContext(terms, tuple(yarns), {key: key for key in given}, sizes, "rows" if rows else "rounds", 10_000)
    definitions: dict[str, Definition] = {}
    for key, means in given.items():
        definition, found = parse_definition(key, Plain(means), context)
        problems.extend(found)
        if definition is not None:
            definitions[key] = definition
    context = NotationContext(terms, tuple(yarns), {key: key for key in given}, sizes, "rows" if rows else "rounds", 1)
    instructions, found = parse_instructions(Plain(text), context)
    return instructions, definitions, (*problems, *found)


def made(
    text: str,
    shape: str = "circle",
    terms: Terms = "US",
    stitches: Mapping[str, str] | None = None,
    *,
    rounds: int | None = None,
    yarns: Sequence[str] = ("A", "B"),
    size: int = 0,
    sizes: int = 1,
    rows: bool = False,
    counts_as: bool | None = None,
    row_height_cm: float | None = None,
) -> Made:
    """Reads and works a text."""
    instructions, definitions, problems = read(text, terms, stitches, yarns, sizes, rows)
    shop = Workshop(definitions, tuple(yarns), rounds, size, row_height_cm, terms, counts_as)
    source = MotifSource("motif", "rectangle" if rows else shape, 4 if rows else CORNERS[shape], "rows" if rows else "rounds", instructions)
    fabric, found = work_motif(source, shop)
    return Made(fabric, problems, found, {r.label: r for r in fabric.rounds})


def fabric_of(
    text: str,
    shape: str = "circle",
    terms: Terms = "US",
    stitches: Mapping[str, str] | None = None,
    *,
    rounds: int | None = None,
    rows: bool = False,
) -> Fabric:
    """The Fabric of a good text; fails where there is any problem."""
    found = made(text, shape, terms, stitches, rounds=rounds, rows=rows)
    assert not found.read, found.read
    assert not found.problems, found.problems
    return found.fabric


def edging(
    text: str,
    given: Sequence[GivenItem],
    terms: Terms = "US",
    stitches: Mapping[str, str] | None = None,
    *,
    size: int = 0,
    sizes: int = 1,
    yarns: Sequence[str] = ("A", "B"),
) -> Made:
    """Reads and works an edging on what is given."""
    instructions, definitions, problems = read(text, terms, stitches, yarns, sizes)
    shop = Workshop(definitions, tuple(yarns), None, size, None, terms, None)
    fabric, found = work_edging(EdgingSource("rim", None, None, instructions), given, shop)
    return Made(fabric, problems, found)


def opening(fabrics: Sequence[Fabric], side: str) -> tuple[GivenItem, ...]:
    """One side of each of several pieces in a row, each with its own corner at either end: what an opening offers."""
    items: list[GivenItem] = []
    for number, fabric in enumerate(fabrics):
        edge = next(s for s in fabric.sides if s.name == side)
        name = f"P{number}.{side}"
        for kind, item in (("start", edge.start), *(("", i) for i in edge.items), ("end", edge.end)):
            assert item is not None
            space = item.kind == "space"
            chains = fabric.runs[item.id].chains if space else 0
            items.append(
                GivenItem(
                    item.kind if item.kind != "group" else "stitch",
                    "" if space else fabric.stitches[item.id].kind,
                    chains,
                    kind in ("start", "end"),
                    kind == "start",
                    name,
                    fabric.name,
                    item,
                )
            )
    return tuple(items)


__all__ = ["Made", "edging", "fabric_of", "made", "motif_edge", "opening", "read"]
