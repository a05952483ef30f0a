"""A chain at a turn that the next row works into as a space: ``Ch 5, dc in next ch-2 sp ...; turn``, then ``9 dc in ch-5 lp``."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import pairwise

from motifold.render.fabric.lines import Job
from motifold.render.pattern.instructions import (
    Chain,
    CountsAs,
    Group,
    LeaveYarn,
    Place,
    Repeat,
    Step,
    Target,
    Turn,
    UseYarn,
    Which,
    Words,
    Work,
)

_FEWEST_ROUND_IT = 5
"""So many stitches in "tch" go round the chain, not into its top; and so many chains make a loop for them."""


def with_spaces_at_turns(jobs: Sequence[Job]) -> tuple[Job, ...]:
    """The rows with each such chain said to be a space, where it says nothing of itself."""
    found = list(jobs)
    for index, (job, after) in enumerate(pairwise(jobs)):
        at = _turning_chain(job)
        if at is None or after.kind != "row":
            continue
        chain = job.steps[at]
        assert isinstance(chain, Chain)
        length = chain.count.values[0]
        alike = any(length in step.count.values for step in _flat(job.steps[at + 1 :]) if isinstance(step, Chain))
        named = not alike and any(step.place is not None and _is_space(step.place, length) for step in _worked(after.steps))
        round_it = any(_goes_round(step, length) for step in _worked(after.steps))
        if named or round_it:
            steps = found[index].steps
            said = replace(chain, counts_as=CountsAs(space=length))
            found[index] = replace(found[index], steps=(*steps[:at], said, *steps[at + 1 :]))
        if round_it:
            found[index + 1] = replace(after, steps=_rewritten(after.steps, length, "last" if alike else "next"))
    return tuple(found)


def _turning_chain(job: Job) -> int | None:
    """Where a row's turning chain stands, if nothing is said of what it counts as."""
    if job.kind != "row":
        return None
    for index, step in enumerate(job.steps):
        if isinstance(step, Chain):
            return index if step.counts_as is None and not step.count.varies else None
        if not isinstance(step, Turn | UseYarn | LeaveYarn | Words):
            return None
    return None


def _is_space(place: Place, length: int) -> bool:
    return place.target.kind == "sp" and place.target.chains == length and place.of is None and place.of_round is None and not place.below


def _goes_round(step: Work | Group, length: int) -> bool:
    place = step.place
    if place is None or place.of is not None or length < _FEWEST_ROUND_IT:
        return False
    many = max(step.count.values) if isinstance(step, Work) else len(step.steps)
    chain = place.target.kind == "tch" or (place.target.kind == "ch" and place.which == "beg" and place.target.chains == length)
    return chain and place.which not in ("top", "nth", "center") and many >= _FEWEST_ROUND_IT


def _rewritten(steps: Sequence[Step], length: int, which: Which) -> tuple[Step, ...]:
    """Steps with the chain named as the space that it is."""
    made: list[Step] = []
    for step in steps:
        if isinstance(step, Repeat):
            made.append(replace(step, steps=_rewritten(step.steps, length, which)))
        elif isinstance(step, Work | Group) and step.place is not None and _goes_round(step, length):
            made.append(replace(step, place=replace(step.place, which=which, target=Target("sp", chains=length))))
        else:
            made.append(step)
    return tuple(made)


def _worked(steps: Sequence[Step]) -> Iterator[Work | Group]:
    return (step for step in _flat(steps) if isinstance(step, Work | Group))


def _flat(steps: Sequence[Step]) -> Iterator[Step]:
    for step in steps:
        yield step
        if isinstance(step, Group | Repeat):
            yield from _flat(step.steps)
