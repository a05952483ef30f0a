"""Labelled lines -> the rounds to be worked, one after another: ranges, repeats of rounds, what a size leaves out."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace
from typing import Literal

from motifold.render.fabric.labels import Ordered, in_order
from motifold.render.fabric.wording import label_span
from motifold.render.pattern.instructions import (
    Chain,
    Group,
    Instructions,
    Join,
    Line,
    MagicRing,
    Place,
    Repeat,
    RepeatRounds,
    SideFacing,
    Step,
    UseYarn,
    Work,
)
from motifold.render.pattern.problem import Problem
from motifold.symbols.record import dataclass

MOST_ROUNDS = 3000
"""More numbered rounds than this are a slip of the pen."""

JobKind = Literal["ring", "foundation", "round", "row", "finish"]


@dataclass(frozen=True, slots=True)
class Job:
    """One round or row to work. ``judged``: its counts are the line's own (a repeated line's counts hold for its own rounds only)."""

    number: int | None
    label: str
    kind: JobKind
    line: Line
    steps: tuple[Step, ...]
    side: SideFacing | None
    judged: bool = True
    several: bool = False  # the line serves more rounds than this one
    doubtful: bool = False  # a line is missing before it: what it meets is not known
    edge: Literal["", "last"] = ""


@dataclass(slots=True)
class _Book:
    """What has been laid out so far."""

    jobs: list[Job]
    problems: list[Problem]
    by_number: dict[int, Line]
    ordered: Ordered
    number: int = 1  # of the next round
    kind: str | None = None  # "rnd" or "row", of the last numbered line
    measured: int | None = None  # from which round on a measure says how many are worked


def lay_out(
    instructions: Instructions,
    rounds: int | None,
    row_height_cm: float | None,
    size: int,
) -> tuple[tuple[Job, ...], tuple[Problem, ...]]:
    """The rounds in the order of work. ``rounds``: how many numbered rounds this size works, None for as many as the text has."""
    ordered = in_order(instructions.lines)
    book = _Book([], list(ordered.problems), {}, ordered)
    lines = ordered.lines
    after = [_span_of_label(line) for line in lines]
    for index, line in enumerate(lines):
        if line.label.kind in ("rnd", "row"):
            _numbered(book, line, rounds, sum(after[index + 1 :]), row_height_cm, size)
        elif line.label.kind == "finish":
            book.jobs.append(Job(None, "Finish", "finish", line, line.steps, line.label.side))
        else:
            kind: JobKind = "foundation" if line.label.kind in ("chain", "foundation") else "ring"
            label = {"ring": "Ring", "chain": "Chain", "foundation": "Foundation"}[line.label.kind]
            book.jobs.append(Job(None, label, kind, line, line.steps, line.label.side))
    jobs = book.jobs
    if rounds is not None and (book.measured is None or rounds < book.measured):
        have = book.number - 1
        if rounds > have and have > 0 and not any(line.label.following for line in lines):
            last = next(line for line in reversed(lines) if line.label.kind in ("rnd", "row"))
            book.problems.append(
                Problem(
                    "rounds",
                    "error",
                    last.span,
                    f"this size works {rounds} rounds, but the text has {have}",
                    "write the last one for all that follow: Rnd n and following",
                )
            )
        main = next((job.kind for job in jobs if job.number is not None), None)
        jobs = [job for job in jobs if job.number is None or job.kind != main or job.number <= rounds]
    return tuple(replace(job, doubtful=True) if job.line.id in ordered.doubtful else job for job in jobs), tuple(book.problems)


def _span_of_label(line: Line) -> int:
    """How many numbered rounds a line stands for, where its label says so."""
    label = line.label
    if label.kind not in ("rnd", "row") or label.first is None:
        return 0
    return max((label.last or label.first) - label.first + 1, 1)


def _numbered(book: _Book, line: Line, rounds: int | None, later: int, height: float | None, size: int) -> None:
    label = line.label
    first = label.first if label.first is not None else book.number
    if first == 1 and book.kind not in (None, label.kind):
        book.number = 1  # rounds about a piece in rows are numbered for themselves
    book.kind = label.kind
    if line.id in book.ordered.doubtful:
        book.number = max(book.number, first)
    last = label.last if label.last is not None else first
    if last < first:
        book.problems.append(
            Problem("order", "error", line.span, f"{_name(line, first)} runs backwards to {last}", "write the smaller number first")
        )
        last = first
    count = last - first + 1
    repeats = next((step for step in line.steps if isinstance(step, RepeatRounds)), None)
    own = tuple(step for step in line.steps if not isinstance(step, RepeatRounds))
    worked = any(isinstance(step, Work | Chain | Group | Repeat | Join) for step in own)
    if label.following:
        count = max((rounds if rounds is not None else first) - later - book.number + 1, 0 if rounds is not None else 1)
    if repeats is None or worked:
        if repeats is not None:
            count = 1
        count = _bounded(book, line, count)
        for _ in range(count):
            _add(book, line, line, own, True, count > 1 or label.following)
    if repeats is not None:
        begun = len(book.jobs)
        _repeat_rounds(book, line, repeats, last - first + 1 if label.last is not None else None, rounds, later, height, size)
        if not worked:
            _said_beside(book, line.steps, begun)


def _said_beside(book: _Book, steps: tuple[Step, ...], begun: int) -> None:
    """What a line says beside its "rep Rnd 2": before it for the first of those rounds, behind it for the last; new colours for each."""
    if begun == len(book.jobs):
        return
    at = next(index for index, step in enumerate(steps) if isinstance(step, RepeatRounds))
    every = tuple(replace(step, manner="change") for step in steps if isinstance(step, UseYarn) and step.manner == "each")
    lead, rest = (tuple(s for s in part if not (isinstance(s, UseYarn) and s.manner == "each")) for part in (steps[:at], steps[at + 1 :]))
    for index in range(begun, len(book.jobs)):
        before = (lead if index == begun else ()) + every
        after = rest if index == len(book.jobs) - 1 else ()
        if before or after:
            book.jobs[index] = replace(book.jobs[index], steps=before + book.jobs[index].steps + after)


def _name(line: Line, number: int) -> str:
    return f"{'Row' if line.label.kind == 'row' else 'Rnd'} {number}"


def _bounded(book: _Book, line: Line, count: int) -> int:
    if count > MOST_ROUNDS:
        book.problems.append(
            Problem("limit", "error", line.span, f"{count} rounds are more than anyone works", f"at most {MOST_ROUNDS} are worked")
        )
        return 1
    return count


def _add(book: _Book, label_line: Line, line: Line, steps: tuple[Step, ...], judged: bool, several: bool) -> None:
    kind: JobKind = "row" if label_line.label.kind == "row" else "round"
    number = book.number
    side = label_line.label.side if label_line.label.first in (None, number) or label_line.label.last is not None else None
    if several and label_line.label.first != number:
        side = None
    book.jobs.append(Job(number, _name(label_line, number), kind, line, steps, side, judged, several))
    book.by_number[number] = line
    book.number += 1


def _repeat_rounds(
    book: _Book,
    line: Line,
    repeats: RepeatRounds,
    wanted: int | None,
    rounds: int | None,
    later: int,
    height: float | None,
    size: int,
) -> None:
    sources = []
    for number in repeats.rounds:
        source = book.by_number.get(number)
        if source is None and number not in book.ordered.gaps:
            book.problems.append(
                Problem(
                    "order",
                    "error",
                    repeats.span,
                    f"{_name(line, number)} is to be repeated, but it is not worked before this",
                    "repeat rounds that are above",
                )
            )
        elif source is not None:
            sources.append(source)
    if not sources:
        return
    total = _how_many(book, line, repeats, len(repeats.rounds), wanted, rounds, later, height, size)
    for index in range(_bounded(book, line, total)):
        source = sources[index % len(sources)]
        steps = tuple(step for step in source.steps if not isinstance(step, RepeatRounds))
        _add(book, line, replace(source, counts=line.counts) if line.counts else source, steps, bool(line.counts), True)


def _how_many(
    book: _Book,
    line: Line,
    repeats: RepeatRounds,
    length: int,
    wanted: int | None,
    rounds: int | None,
    later: int,
    height: float | None,
    size: int,
) -> int:
    times = repeats.times.at(size) if repeats.times is not None else None
    if repeats.until_cm is not None:
        book.measured = book.number
        return _until(book, repeats, height, size)
    if line.label.following:
        return max((rounds if rounds is not None else book.number + length - 1) - later - book.number + 1, 0)
    if times is not None:
        total = times * length
        if wanted is not None and wanted != total:
            book.problems.append(
                Problem(
                    "order",
                    "error",
                    repeats.span,
                    f"the label has {wanted} rounds, but {length} rounds {times} times are {total}",
                    f"make the label end at {book.number + total - 1}",
                )
            )
        return total
    return wanted if wanted is not None else length


def _until(book: _Book, repeats: RepeatRounds, height: float | None, size: int) -> int:
    """Rows until the piece measures so much; on to the next row of the side that it shall end with."""
    if not height:
        book.problems.append(
            Problem(
                "gauge",
                "error",
                repeats.span,
                "how many rows this is cannot be told without a gauge for rows",
                "give [gauge] rows and height",
            )
        )
        return len(repeats.rounds)
    done = sum(1 for job in book.jobs if job.kind in ("round", "row"))
    measure = repeats.until_sizes[min(size, len(repeats.until_sizes) - 1)] if repeats.until_sizes else repeats.until_cm or 0.0
    total = max(math.ceil(measure / height - 1e-9), done)
    if repeats.ending is not None:
        first = next((job.side for job in book.jobs if job.number == 1), None) or "RS"
        last: SideFacing = first if total % 2 == 1 else ("WS" if first == "RS" else "RS")
        if last != repeats.ending:
            total += 1
    return total - done


LONGEST_BEGINNING = 7
"""A chain as long as this may only begin a row; a longer one may be a strap."""


def only_chains(jobs: Sequence[Job]) -> tuple[Problem, ...]:
    """Rounds and rows cut down to their beginning chain: "Row 2: Ch 2; turn." works into nothing."""
    return tuple(_only_chain(job) for job, after in zip(jobs, (*jobs[1:], None), strict=False) if _is_only_chain(job, after))


def _is_only_chain(job: Job, after: Job | None) -> bool:
    chains = [step.count.values[0] for step in job.steps if isinstance(step, Chain)]
    worked = any(isinstance(step, Work | Group | Repeat | RepeatRounds | Join) for step in job.steps)
    if job.number is None or job.line.broken or worked or not 0 < sum(chains) <= LONGEST_BEGINNING:
        return False
    first = next((step for step in after.steps if isinstance(step, Work | Group | Repeat)), None) if after is not None else None
    return not (isinstance(first, Work | Group) and first.place is not None and first.place.from_hook)


def _only_chain(job: Job) -> Problem:
    message = f"{job.label} is no more than its beginning chain: nothing is worked in it"
    return Problem("left-over", "error", label_span(job.line.span, job.label), message, "write what is worked after the chain")


def split_beginning(jobs: Sequence[Job]) -> tuple[Job, ...]:
    """A ring or foundation chain made inside the first round is a line of its own."""
    found = next((index for index, job in enumerate(jobs) if job.kind in ("round", "row")), None)
    if found is None or any(job.kind in ("ring", "foundation") for job in jobs[:found]):
        return tuple(jobs)
    job = jobs[found]
    for index, step in enumerate(job.steps):
        if isinstance(step, MagicRing) or (isinstance(step, Join) and step.ring):
            return (*jobs[:found], *_split(job, index + 1, "ring"), *jobs[found + 1 :])
        if isinstance(step, Chain):
            following = job.steps[index + 1] if index + 1 < len(job.steps) else None
            if isinstance(following, Work) and following.place is not None and following.place.from_hook:
                return (*jobs[:found], *_split(job, index + 1, "foundation"), *jobs[found + 1 :])
        elif isinstance(step, Work | Group | Repeat):
            break
    if any(in_ring(step) for step in job.steps):
        ring = replace(job, number=None, label="Ring", kind="ring", steps=(), judged=False)
        return (*jobs[:found], ring, *jobs[found:])
    return tuple(jobs)


def _split(job: Job, at: int, kind: JobKind) -> tuple[Job, Job]:
    label = "Ring" if kind == "ring" else "Chain"
    return (
        replace(job, number=None, label=label, kind=kind, steps=job.steps[:at], judged=False),
        replace(job, steps=job.steps[at:]),
    )


def in_ring(step: Step) -> bool:
    """Whether a step works into the ring."""
    if isinstance(step, Repeat):
        return any(in_ring(inner) for inner in step.steps)
    place: Place | None = step.place if isinstance(step, Work | Group) else None
    return place is not None and place.target.kind == "ring"
