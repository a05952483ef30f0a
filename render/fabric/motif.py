"""Works a whole text, round after round."""

from __future__ import annotations

from collections.abc import Sequence

from motifold.render.fabric.bench import Hook, Lap, TooMuch, Workshop
from motifold.render.fabric.edge import Cursor
from motifold.render.fabric.finish import finished
from motifold.render.fabric.laps import beginning_index, close_lap, open_lap
from motifold.render.fabric.lines import Job, lay_out, split_beginning
from motifold.render.fabric.model import Fabric
from motifold.render.fabric.work import run_step
from motifold.render.pattern.instructions import (
    Chain,
    FastenOff,
    Instructions,
    Join,
    LeaveYarn,
    Marker,
    Step,
    Turn,
    UseYarn,
    Words,
    Work,
)
from motifold.render.pattern.model import MotifSource
from motifold.render.pattern.problem import Problem


def new_hook(shop: Workshop, polygon: int) -> Hook:
    """A hook with the first yarn in hand and nothing made."""
    lap = Lap(-1, None, "", "finish", "RS", 1, None, Cursor())
    return Hook(shop, polygon, lap, yarn=shop.yarns[0] if shop.yarns else "A")


def work_motif(source: MotifSource, shop: Workshop) -> tuple[Fabric, tuple[Problem, ...]]:
    """Works a motif for one size. The Fabric is whole as far as it could be worked; every mistake is a problem, none is raised."""
    hook = new_hook(shop, 0 if source.worked == "rows" else source.sides)
    work_text(hook, source.instructions)
    return finished(hook, source.name, source.shape, source.sides, source.worked), tuple(hook.problems)


def work_text(hook: Hook, instructions: Instructions) -> None:
    """Works the lines of a text in order."""
    shop = hook.shop
    jobs, problems = lay_out(instructions, shop.rounds, shop.row_height_cm, shop.size)
    hook.problems.extend(problems)
    jobs = split_beginning(jobs) if not hook.laps else jobs
    carried: tuple[Step, ...] = ()
    try:
        for index, job in enumerate(jobs):
            following = jobs[index + 1] if index + 1 < len(jobs) else None
            carried = _work_job(hook, job, carried, following)
    except TooMuch as stop:
        hook.problems.append(Problem(
            "limit", "error", stop.span, "this is more work than anyone would do: it was given up here", "look for a number with too many digits",
        ))
        if hook.lap.index >= 0 and hook.lap not in hook.laps:
            hook.pending.clear()
            hook.laps.append(hook.lap)
    _tell_idle(hook)
    hook.problems.sort(key=lambda problem: (problem.span.line, problem.span.column) if problem.span else (0, 0))


def _work_job(hook: Hook, job: Job, carried: tuple[Step, ...], following: Job | None) -> tuple[Step, ...]:
    """Works one round and returns what its end leaves for the beginning of the next."""
    own, tail = split_tail(job.steps, job.kind == "row")
    steps = (*carried, *own)
    if job.kind == "finish" and not any(isinstance(step, Work | Chain | Join) for step in _flat(steps)):
        if hook.laps and any(isinstance(step, FastenOff) for step in steps):
            hook.laps[-1].fastened = True
        return ()
    lap = open_lap(hook, job, steps)
    hook.lap = lap
    hook.rest = steps
    hook.last = None
    hook.here = None
    hook.behind = False
    hook.beginning = True
    hook.passes = ()
    lead = beginning_index(steps)
    for index, step in enumerate(steps):
        hook.walking = index < lead
        run_step(hook, step)
    hook.walking = False
    lap.fastened = lap.fastened or any(isinstance(step, FastenOff) for step in tail)
    close_lap(hook, job)
    if following is None or following.kind == "finish":
        return ()
    return tuple(step for step in tail if not isinstance(step, FastenOff))


def _flat(steps: Sequence[Step]) -> Sequence[Step]:
    from motifold.render.pattern.instructions import Group, Repeat

    found: list[Step] = []
    for step in steps:
        if isinstance(step, Repeat | Group):
            found.extend(_flat(step.steps))
            if isinstance(step, Group):
                found.extend(inner for inner in step.steps if isinstance(inner, Work))
        else:
            found.append(step)
    return found


def split_tail(steps: tuple[Step, ...], row: bool) -> tuple[tuple[Step, ...], tuple[Step, ...]]:
    """A line's own work, and what follows its join (or its last stitch, in a row): that is already the next round's beginning."""
    for index, step in enumerate(steps):
        if isinstance(step, Join) and not step.attach and not step.ring:
            return steps[: index + 1], steps[index + 1 :]
    end = len(steps)
    while end and isinstance(steps[end - 1], Chain | Turn | UseYarn | LeaveYarn | FastenOff | Words | Marker):
        end -= 1
    tail = steps[end:]
    turn = next((index for index, step in enumerate(tail) if isinstance(step, Turn)), None)
    if turn is None:
        return steps, ()
    begin = turn
    while begin and isinstance(tail[begin - 1], Chain | UseYarn | LeaveYarn | Words | Marker):
        begin -= 1
    return steps[: end + begin], tail[begin:]


def _tell_idle(hook: Hook) -> None:
    """Places and repeats that never found anything, in any of the rounds that their line serves."""
    for key, (span, message, hint) in sorted(hook.idle.items()):
        if key not in hook.busy and ("place", key) not in hook.told and not hook.tainted:
            hook.problems.append(Problem("place", "error", span, message, hint))
