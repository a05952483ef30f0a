"""The whole pattern worked for each of its sizes: the one thing that every output is made from."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from motifold.render.assembly.model import Assembly
from motifold.render.fabric.model import Fabric
from motifold.render.pattern.model import Pattern
from motifold.render.pattern.problem import Problem
from motifold.render.sizing.model import SizeChoice, SizeTable


@dataclass(frozen=True, slots=True)
class WorkedSize:
    """One size: its Fabrics by motif name, its assembly, its edgings by name. What could not be worked is left out."""

    choice: SizeChoice
    fabrics: Mapping[str, Fabric]
    assembly: Assembly | None
    edgings: Mapping[str, Fabric]


@dataclass(frozen=True, slots=True)
class Worked:
    """``sizes`` in the file's order; a pattern without sizes has the one size "One size"."""

    pattern: Pattern
    sizes: tuple[WorkedSize, ...]
    table: SizeTable | None
    problems: tuple[Problem, ...]
