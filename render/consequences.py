"""One mistake gives one problem: what only follows from another mistake in the file is left out of what is told."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import replace

from motifold.render.fabric.model import Fabric
from motifold.render.pattern.doubts import parts
from motifold.render.pattern.instructions import Instructions, StitchSpec, Target
from motifold.render.pattern.model import Pattern
from motifold.render.pattern.problem import Problem

OF_A_MOTIF = frozenset({"sides-differ", "count", "uneven", "left-over", "beyond", "place", "too-much"})
"""Codes that what is joined or edged shows only because a motif is wrong."""

OF_LOST_SIDES = frozenset(
    {
        "net-shape",
        "unknown-side",
        "panel-unjoined",
        "panel-motif",
        "open-unknown",
        "open-differs",
        "pass-unknown",
        "pass-missing",
        "pass-broken",
    }
)
"""Codes that an assembly shows only because a motif that went wrong has no corners, so that its sides are not there."""

OF_LOST_PANELS = OF_LOST_SIDES | {"unknown-panel"}
"""Codes that an assembly shows only because something in its table could not be read."""

OF_A_LOST_SIZE = frozenset({"size-gauge", "size-fit", "size-rounds", "gauge"})
"""Codes that show only because a measurement could not be read."""

OF_A_WRONG_MOTIF = frozenset({"size-fit"})
"""Codes that a size shows only because its motif has other stitches than it should."""

OF_AN_UNEVEN_GAUGE = frozenset({"size-fit"})
"""Codes that a size shows only because one of the measured rounds is mistyped."""

OF_AN_UNKNOWN_STITCH = frozenset({"join", "passed", "unstated", "corners", "unjoined"})
"""Codes besides that a motif shows only because it is not known what one of its stitches is."""

_PANELS = re.compile(r"(\S+?)\.\S+ has \d+ stitches but (\S+?)\.\S+ has ")


def tables_unread(pattern: Pattern, problems: Iterable[Problem]) -> frozenset[str]:
    """The tables of the file in which something could not be read: {"gauge"}."""
    lines = pattern.source.splitlines()
    found = set()
    for problem in problems:
        if problem.severity == "error" and problem.span is not None:
            above = lines[: problem.span.line]
            head = next((line for line in reversed(above) if line.lstrip().startswith("[") and "]" in line), "")
            found.add(head.strip().strip("[]").partition(".")[0].partition("]")[0].strip())
    return frozenset(found)


def unexplained(pattern: Pattern) -> frozenset[str]:
    """The special stitches whose meaning could not be read."""
    return frozenset(stitch.key for stitch in pattern.stitches if stitch.definition is None)


def names_one_of(text: Instructions, stitches: Collection[str]) -> bool:
    """Whether a text works one of these stitches, or works into one."""
    return bool(stitches) and any(isinstance(part, StitchSpec | Target) and part.name in stitches for part in parts(text))


def sides_lost(pattern: Pattern, fabrics: Mapping[str, Fabric]) -> bool:
    """Whether a motif that should have corners came out without them."""
    return any(
        motif.worked == "rounds" and motif.sides >= 3 and motif.name in fabrics and len(fabrics[motif.name].sides) != motif.sides
        for motif in pattern.motifs
    )


def told_of_panels(problems: Sequence[Problem]) -> list[Problem]:
    """An assembly's problems: a panel of the wrong shape is joined to nothing, and what is no side stays open nowhere."""
    codes = {problem.code for problem in problems}
    gone = {"net-shape": "panel-unjoined", "open-unknown": "open-differs"}
    return without(problems, {follows for cause, follows in gone.items() if cause in codes})


def spare_words_known(unread: frozenset[str], problems: Iterable[Problem], doubts: Iterable[Problem]) -> list[Problem]:
    """An editor's doubts; that a stitch or a yarn is never used is not asked where a line, or its table, could not be read."""
    lines = unread & {"motif", "edging"} or any(problem.code == "yarn" for problem in problems)
    gone = {"spare-stitch", "spare-yarn"} if lines else {"spare-stitch"} if "stitch" in unread else set()
    return without(doubts, gone)


def without(problems: Iterable[Problem], codes: Collection[str]) -> list[Problem]:
    """The problems that have none of the codes."""
    return [problem for problem in problems if problem.code not in codes]


def sides_told_once(pattern: Pattern, found: Sequence[tuple[str, Problem]]) -> list[tuple[str, Problem]]:
    """Sides that differ, told once for each two motifs and not at each of their seams. ``found``: size and problem."""
    first: dict[frozenset[str | None], Problem] = {}
    seams: dict[frozenset[str | None], set[object]] = {}
    told: list[tuple[str, Problem]] = []
    pairs: list[frozenset[str | None] | None] = []
    for _, problem in found:
        names = _PANELS.match(problem.message) if problem.code == "sides-differ" and pattern.assembly is not None else None
        pair = None
        if names is not None and pattern.assembly is not None:
            pair = frozenset(pattern.assembly.panels.get(name, pattern.assembly.motif) for name in names.groups())
            first.setdefault(pair, problem)
            seams.setdefault(pair, set()).add(problem.span)
        pairs.append(pair)
    for (size, problem), pair in zip(found, pairs, strict=True):
        if pair is None:
            told.append((size, problem))
            continue
        more = len(seams[pair]) - 1
        also = "" if not more else f" (and so at {more} more seam{'s' if more > 1 else ''})"
        hint = first[pair].hint
        if len(pair) == 1:
            hint = "both are sides of one motif: make its sides alike, or ease the longer one in"
        told.append((size, replace(first[pair], message=first[pair].message + also, hint=hint)))
    return told
