"""What a technical editor would ask about a pattern that reads well: nothing here is wrong for certain, so all of it is a warning."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from motifold.render.pattern.instructions import (
    Amount,
    CountClaim,
    FastenOff,
    Instructions,
    Node,
    RepeatRounds,
    StitchSpec,
    Target,
    Turn,
    UseYarn,
)
from motifold.render.pattern.model import Pattern
from motifold.render.pattern.problem import Problem, Span

_GAUGES_DISAGREE = 0.4
"""Share by which a round may differ from two rows before it is asked about: rounds worked into spaces are lower, but not by half."""


def editor_doubts(pattern: Pattern) -> tuple[Problem, ...]:
    """Stitches and yarns that nothing uses, numbers that go up and down by size, a gauge that contradicts itself."""
    spare = (*_spare_stitches(pattern), *_spare_yarns(pattern))
    return (*spare, *_turns(pattern), *_sizes_out_of_order(pattern), *_numbers_out_of_order(pattern), *_gauge(pattern))


def _texts(pattern: Pattern) -> tuple[Instructions, ...]:
    return (*(motif.instructions for motif in pattern.motifs), *(edging.instructions for edging in pattern.edgings))


def parts(node: object) -> Iterator[object]:
    """Every part of a tree of instructions, in reading order."""
    if isinstance(node, tuple):
        for part in node:
            yield from parts(part)
        return
    fields = getattr(node, "__dataclass_fields__", None)
    if fields is not None:
        yield node
        for name in fields:
            yield from parts(getattr(node, name))


def _spare_stitches(pattern: Pattern) -> Iterator[Problem]:
    inside = tuple(stitch.definition for stitch in pattern.stitches if stitch.definition is not None)
    named = {part.name for part in parts((*_texts(pattern), *inside)) if isinstance(part, StitchSpec | Target)}
    for stitch in pattern.stitches:
        if stitch.key not in named:
            message = f'the special stitch "{stitch.name}" is explained and never used'
            yield Problem("spare-stitch", "warning", pattern.place("stitch", stitch.key), message)


def _spare_yarns(pattern: Pattern) -> Iterator[Problem]:
    """The first yarn is the one that works where none is named; "the other yarn" is whichever of two."""
    changes = [part for part in parts(_texts(pattern)) if isinstance(part, UseYarn)]
    if not pattern.yarns or any(change.yarn is None for change in changes):
        return
    used = {pattern.yarns[0].key, *(change.yarn for change in changes)}
    if pattern.assembly is not None:
        used.add(pattern.assembly.seam.yarn)
    used.update(yarn for motif in pattern.motifs for way in motif.colourways for yarn in way.yarns.values())
    for yarn in pattern.yarns:
        if yarn.key not in used:
            message = f"yarn {yarn.key} is in the materials and nothing is worked with it"
            yield Problem("spare-yarn", "warning", pattern.place("yarn", yarn.key), message)


def _turns(pattern: Pattern) -> Iterator[Problem]:
    """One row that does not say "turn" where all the others do."""
    for motif in pattern.motifs:
        rows = [line for line in motif.instructions.lines if line.label.kind == "row"][:-1]
        rows = [line for line in rows if not line.broken and not any(isinstance(step, FastenOff | RepeatRounds) for step in line.steps)]
        silent = [line for line in rows if not any(isinstance(step, Turn) for step in line.steps)]
        if len(silent) == 1 and len(rows) > 2:
            span = silent[0].span
            message = f'Row {silent[0].label.first} does not say "turn", and every other row does: it is taken as turned'
            yield Problem("side", "warning", Span(span.line, span.column, min(span.length, 5)), message, 'add "turn" at its end')


def _up_and_down(values: tuple[float, ...]) -> bool:
    return any(a < b for a, b in pairwise(values)) and any(a > b for a, b in pairwise(values))


def _sizes_out_of_order(pattern: Pattern) -> Iterator[Problem]:
    bodies = pattern.size.bodies if pattern.size is not None else ()
    measured = tuple((name, float(body)) for name, body in bodies if not isinstance(body, str))
    if len(measured) == len(bodies) and _up_and_down(tuple(cm for _, cm in measured)):
        low = next(b for a, b in pairwise(measured) if a[1] > b[1])
        message = f"the sizes go up and down: {low[0]} is smaller than the size before it"
        yield Problem("size-order", "warning", pattern.place("size", "bodies", low[0]), message, "is one of the measurements mistyped?")


def _numbers_out_of_order(pattern: Pattern) -> Iterator[Problem]:
    asked: set[Span] = set()
    for text in _texts(pattern):
        for part in parts(text):
            if not isinstance(part, Node | CountClaim) or part.span in asked:
                continue
            amounts = [getattr(part, name) for name in part.__dataclass_fields__ if isinstance(getattr(part, name), Amount)]
            for amount in amounts:
                if _up_and_down(tuple(float(value) for value in amount.values)):
                    asked.add(part.span)
                    first, *rest = amount.values
                    message = f"the numbers for the sizes go up and down: {first} ({', '.join(map(str, rest))})"
                    yield Problem("size-order", "warning", part.span, message, "is one of them mistyped?")


def _gauge(pattern: Pattern) -> Iterator[Problem]:
    gauge = pattern.gauge
    motif = next((m for m in pattern.motifs if gauge is not None and m.name == gauge.motif), None)
    if gauge is None or motif is None or motif.worked != "rounds" or not gauge.points or not gauge.rows or not gauge.height_cm:
        return
    point = gauge.points[0]
    each, two_rows = point.width_cm / point.rounds, 2 * gauge.height_cm / gauge.rows
    if not 1 - _GAUGES_DISAGREE <= each / two_rows <= 1 + _GAUGES_DISAGREE:
        message = (
            f"the gauge contradicts itself: a round adds {each:.2g} cm to the width, but two rows, one at either side, are "
            f"{two_rows:.2g} cm"
        )
        yield Problem("gauge-differs", "warning", pattern.place("gauge"), message)
