"""Whether the lines of a text follow each other: a label that slipped, a line that is missing, a line that stands there twice."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import fields, is_dataclass, replace

from motifold.render.fabric.wording import label_span
from motifold.render.pattern.instructions import Line, RepeatRounds
from motifold.render.pattern.problem import Problem
from motifold.symbols.record import dataclass


@dataclass(frozen=True, slots=True)
class Ordered:
    """Lines with the labels that they should have. ``doubtful``: ids of lines that come after a gap, so that what they meet is not known;
    ``gaps``: numbers that are nowhere."""

    lines: tuple[Line, ...]
    problems: tuple[Problem, ...]
    doubtful: frozenset[int]
    gaps: frozenset[int]


def in_order(lines: Sequence[Line]) -> Ordered:
    """Holds each number against the one before and the one after it: one slip is one problem, and the count goes on from there."""
    lines, problems = _exchanged(lines)
    kept: list[Line] = []
    doubtful: set[int] = set()
    gaps: set[int] = set()
    want: int | None = 1
    kind: str | None = None
    for index, line in enumerate(lines):
        label = line.label
        first = label.first
        if label.kind not in ("rnd", "row") or first is None:
            kept.append(line)
            continue
        if first == 1 and kind not in (None, label.kind):
            want = 1  # rounds about a piece in rows are numbered for themselves
        kind = label.kind
        if want is not None and first != want:
            following = _next_number(lines, index)
            before = next((one for one in reversed(kept) if one.label.kind == kind), None)
            if before is not None and first == before.label.last and first > (before.label.first or first) and following == want:
                problems.append(_overlap(line, before, first))
                at = kept.index(before)
                kept[at] = replace(before, label=replace(before.label, last=first - 1))
            elif before is not None and first < want and (following == want or _same_words(before, line)):
                problems.append(_twice(line, before, first, want))
                continue
            elif first < want or following == want + _length(line):
                problems.append(_slip(line, first, want, following))
                label = replace(label, first=want, last=None if label.last is None else want + _length(line) - 1)
                line = replace(line, label=label)
            else:
                problems.append(_gap(line, first, want))
                gaps.update(range(want, min(first, want + 100)))
                doubtful.add(line.id)
        kept.append(line)
        want = _after(line)
    return Ordered(tuple(kept), tuple(problems), frozenset(doubtful), frozenset(gaps))


def _exchanged(lines: Sequence[Line]) -> tuple[list[Line], list[Problem]]:
    """The lines with two that changed places put right: Rnd 4 before Rnd 3 between Rnd 2 and Rnd 5."""
    found = list(lines)
    problems: list[Problem] = []
    numbered = [at for at, line in enumerate(found) if line.label.kind in ("rnd", "row") and line.label.first is not None]
    for k, at in enumerate(numbered[:-1]):
        one, other = found[at], found[numbered[k + 1]]
        before = found[numbered[k - 1]] if k else None
        after = found[numbered[k + 2]] if k + 2 < len(numbered) else None
        first, second = one.label.first or 0, other.label.first or 0
        want = 1 if before is None else _after(before)
        apart = one.label.kind == other.label.kind and not one.label.following and not other.label.following
        if apart and want == second and first == second + _length(other) and (after is None or after.label.first == first + _length(one)):
            found[at], found[numbered[k + 1]] = other, one
            problems.append(_problem(one, first, f"{_name(one, first)} stands before {_name(other, second)}", "exchange the two lines"))
    return found, problems


def _length(line: Line) -> int:
    """How many rounds the label stands for."""
    label = line.label
    return max((label.last or label.first or 1) - (label.first or 1) + 1, 1)


def _after(line: Line) -> int | None:
    """The number that comes next; None after an open end."""
    repeats = next((step for step in line.steps if isinstance(step, RepeatRounds)), None)
    if line.label.following or (repeats is not None and (repeats.until_cm is not None or line.label.last is None)):
        return None
    return max(line.label.first or 1, line.label.last or 0) + 1


def _next_number(lines: Sequence[Line], index: int) -> int | None:
    """What the next numbered line of the same kind is called."""
    kind = lines[index].label.kind
    following = next((line for line in lines[index + 1 :] if line.label.kind in ("rnd", "row")), None)
    return following.label.first if following is not None and following.label.kind == kind else None


def _name(line: Line, number: int) -> str:
    return f"{'Row' if line.label.kind == 'row' else 'Rnd'} {number}"


def _problem(line: Line, first: int, message: str, hint: str) -> Problem:
    return Problem("order", "error", label_span(line.span, _name(line, first)), message, hint)


def _slip(line: Line, first: int, want: int, following: int | None) -> Problem:
    before = f"follows {_name(line, want - 1)}" if want > 1 else "is the first"
    after = f", and {_name(line, following)} comes after it" if following is not None else ""
    return _problem(line, first, f"this line is called {_name(line, first)}, but it {before}{after}", f"call it {_name(line, want)}")


def _gap(line: Line, first: int, want: int) -> Problem:
    missing = str(want) if first == want + 1 else f"{want} to {first - 1}"
    verb = "is" if first == want + 1 else "are"
    name = _name(line, first)
    place = f"{name} follows {_name(line, want - 1)}" if want > 1 else f"the first one is {name}"
    return _problem(line, first, f"{place}: {missing} {verb} missing", f"write {_name(line, want)}, or call this one {_name(line, want)}")


def _overlap(line: Line, before: Line, first: int) -> Problem:
    kind, begins = ("Row", before.label.first or 1) if line.label.kind == "row" else ("Rnd", before.label.first or 1)
    meant = f"{kind} {begins}" if begins == first - 1 else f"{kind}s {begins}-{first - 1}"
    message = f"{_name(line, first)} has a line of its own, but {kind}s {begins}-{first} come before it"
    return _problem(line, first, message, f"is {meant} meant there?")


def _twice(line: Line, before: Line, first: int, want: int) -> Problem:
    name = _name(line, first)
    if _same_words(before, line):
        return _problem(line, first, f"{name} stands there twice", "take one of the two lines out")
    message = f"there are two lines called {name}: the first is worked"
    hint = f"take one of them out, or call this one {_name(line, want)} and number those after it anew"
    return _problem(line, first, message, hint)


def _same_words(one: Line, other: Line) -> bool:
    return one.label == other.label and _bare(one.steps) == _bare(other.steps)


def _bare(node: object) -> object:
    """A part of the tree without its identity and its place."""
    if isinstance(node, tuple):
        return tuple(_bare(part) for part in node)
    if is_dataclass(node) and not isinstance(node, type):
        return (type(node).__name__, *(_bare(getattr(node, field.name)) for field in fields(node) if field.name not in ("id", "span")))
    return node


__all__ = ["Ordered", "in_order"]
