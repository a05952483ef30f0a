"""Works one line: its parts, and the round or row that each of them makes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from motifold.render.fabric.bench import MOST_STITCHES, Hook, TooMuch
from motifold.render.fabric.blocks import goes_back
from motifold.render.fabric.laps import beginning_index, close_lap, only_slips, open_lap
from motifold.render.fabric.lines import Job
from motifold.render.fabric.repeats import least_work
from motifold.render.fabric.wording import target_word
from motifold.render.fabric.work import run_step
from motifold.render.pattern.instructions import (
    Chain,
    FastenOff,
    Group,
    Join,
    LeaveYarn,
    Marker,
    Repeat,
    Step,
    Turn,
    UseYarn,
    Words,
    Work,
)
from motifold.render.pattern.problem import Problem


def work_job(hook: Hook, job: Job, carried: tuple[Step, ...], following: Job | None) -> tuple[Step, ...]:
    """Works one line's round and returns what its end leaves for the beginning of the next."""
    parts = split_parts(job.steps, job.kind == "row")
    for number, (own, tail) in enumerate(parts):
        last = number == len(parts) - 1
        steps = (*carried, *own)
        part = job if len(parts) == 1 else replace(job, judged=job.judged and last, side=job.side if number == 0 else None)
        if job.kind == "round" and not last and not _closes(own):
            part = replace(part, kind="row")
        if not _has_work(steps) and job.kind in ("finish", "round", "row"):
            _only_ends(hook, steps)
            hook.tainted = hook.tainted or job.line.broken
            if job.kind != "finish" and job.judged and len(parts) == 1:
                _tell_of_nothing(hook, job)
            carried = () if job.kind == "finish" else tuple(step for step in (*steps, *tail) if not isinstance(step, FastenOff))
            continue
        _work_part(hook, part, steps, tail)
        carried = tuple(step for step in tail if not isinstance(step, FastenOff))
    if following is None or following.kind == "finish":
        return ()
    return carried


def _work_part(hook: Hook, job: Job, steps: tuple[Step, ...], tail: tuple[Step, ...]) -> None:
    """Works one round from its beginning to its end."""
    lap = open_lap(hook, job, steps)
    hook.lap = lap
    hook.rest = steps
    hook.last = None
    hook.here = None
    hook.behind = hook.crossing = False
    hook.beginning = True
    hook.passes = ()
    hook.matchers.clear()
    hook.recipes.clear()
    lead = beginning_index(steps, bool(hook.entered) and lap.linear)
    if least_work(steps, hook.shop.size) > MOST_STITCHES:
        raise TooMuch(job.line.span, f"more than {MOST_STITCHES:,} stitches")
    finishes = job.kind == "finish" and only_slips(steps)
    hook.tainted = hook.tainted or job.line.broken
    for index, step in enumerate(steps):
        hook.walking = index < lead or finishes
        if hook.beginning and isinstance(step, Chain) and goes_back(step, steps[index + 1 :]):
            hook.beginning = False  # a chain that is worked back along stands for nothing
        run_step(hook, step)
    hook.walking = False
    lap.fastened = lap.fastened or any(isinstance(step, FastenOff) for step in tail)
    close_lap(hook, job)


def _only_ends(hook: Hook, steps: Sequence[Step]) -> None:
    """A line that works nothing, such as "Finish: Fasten off."."""
    if hook.laps and any(isinstance(step, FastenOff) for step in steps):
        hook.laps[-1].fastened = True


def _tell_of_nothing(hook: Hook, job: Job) -> None:
    """A line that states counts and works nothing."""
    claim = next((claim for claim in job.line.counts if claim.amount.at(hook.shop.size)), None)
    if claim is None or job.line.broken or hook.tainted:
        return
    said = target_word(claim.target, hook.shop.terms, claim.amount.at(hook.shop.size))
    message = f"{job.label} says {claim.amount.at(hook.shop.size)} {said}, but nothing is worked in it"
    hook.problems.append(Problem("count", "error", claim.span, message, "write what is worked in it"))
    hook.tainted = True


def _has_work(steps: Sequence[Step]) -> bool:
    return any(
        isinstance(step, Work | Chain | Group)
        or (isinstance(step, Join) and not step.attach)
        or (isinstance(step, Repeat) and _has_work(step.steps))
        for step in steps
    )


def _closes(steps: Sequence[Step]) -> bool:
    return any(isinstance(step, Join) and not step.attach and not step.ring for step in steps)


def split_parts(steps: tuple[Step, ...], row: bool) -> list[tuple[tuple[Step, ...], tuple[Step, ...]]]:
    """A line's parts, each worked on the one before, as (work, what it leaves for the next).

    One part as a rule; more where the work turns in the middle of a line, or goes on after a join.
    """
    parts: list[tuple[tuple[Step, ...], tuple[Step, ...]]] = []
    rest = tuple(_unrolled(steps))
    while True:
        at = _middle_turn(rest)
        own, tail = split_tail(rest if at is None else rest[:at], row) if at is None or _closes(rest[:at]) else (rest[:at], ())
        if at is not None and not tail and not _closes(own):
            parts.append((own, ()))
            rest = rest[at:]
            continue
        if at is not None:
            tail = (*tail, *rest[at:])
        if any(isinstance(step, Group | Repeat) or (isinstance(step, Work) and step.stitch.name != "sl st") for step in tail):
            parts.append((own, tuple(step for step in tail if isinstance(step, FastenOff))))
            rest = tuple(step for step in tail if not isinstance(step, FastenOff))
            continue
        parts.append((own, tail))
        return parts


def _unrolled(steps: Sequence[Step]) -> Iterator[Step]:
    """Repeats that turn inside are written out: each turn begins a new piece of work."""
    for step in steps:
        if isinstance(step, Repeat) and step.times is not None and any(isinstance(inner, Turn) for inner in step.steps):
            for _ in range(min(max(step.times.values), 200)):
                yield from _unrolled(step.steps)
        else:
            yield step


def _middle_turn(steps: Sequence[Step]) -> int | None:
    """Where the work turns in the middle of a line: the turn, or the chain made just before it."""
    worked = False
    for index, step in enumerate(steps):
        if isinstance(step, Turn) and worked and _works_on(steps[index:]):
            at = index
            while at and isinstance(steps[at - 1], Chain | UseYarn | LeaveYarn | Words | Marker):
                at -= 1
            return at if at and _has_work(steps[:at]) else index
        worked = worked or isinstance(step, Work | Group | Repeat)
    return None


def _works_on(steps: Sequence[Step]) -> bool:
    return any(isinstance(step, Work | Group | Repeat) for step in steps)


def split_tail(steps: tuple[Step, ...], row: bool) -> tuple[tuple[Step, ...], tuple[Step, ...]]:
    """A line's own work, and what follows its join (or its last stitch, in a row): that is already the next round's beginning."""
    for index, step in enumerate(steps):
        if isinstance(step, Join) and not step.attach and not step.ring:
            return steps[: index + 1], steps[index + 1 :]
    end = len(steps)
    while end and _may_trail(steps[end - 1]):
        end -= 1
    tail = steps[end:]
    turn = next((index for index, step in enumerate(tail) if isinstance(step, Turn)), None)
    if turn is None:
        return steps, ()
    begin = turn
    while begin and isinstance(tail[begin - 1], Chain | UseYarn | LeaveYarn | Words | Marker):
        begin -= 1
    return steps[: end + begin], tail[begin:]


def _may_trail(step: Step) -> bool:
    if isinstance(step, Words):
        return not step.leave and step.behind is None
    return isinstance(step, Chain | Turn | UseYarn | LeaveYarn | FastenOff | Marker)
