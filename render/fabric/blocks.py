"""Rows that grow corner to corner: a block is worked back along a new chain, and the chains that it misses are the next row's space.

``Ch 6, dc in 4th ch from hook, dc in each of next 2 ch, (sl st, ch 3, 3 dc) in next ch-3 sp``: the three chains that the first dc misses
stand at the side of the block, and the block of the next row is worked into them.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from motifold.render.fabric.lines import Job
from motifold.render.pattern.instructions import Chain, Definition, Group, Place, Repeat, Step, Turn, Words, Work


def goes_back(chain: Chain, steps: Sequence[Step]) -> bool:
    """Whether what follows a chain is worked back along it: it is then no beginning chain."""
    if chain.counts_as is not None and chain.counts_as.stitches:
        return False
    step = next((step for step in steps if not isinstance(step, Words)), None)
    place = step.place if isinstance(step, Work | Group) else None
    return place is not None and place.from_hook and (place.ordinal or 1) <= min(chain.count.values)


def entered_lengths(jobs: Sequence[Job], definitions: Mapping[str, Definition]) -> frozenset[int]:
    """Lengths of missed chains that the rows enter as spaces. None, unless a later row begins with a chain that is worked back along."""
    rows = [job.steps for job in jobs if job.kind == "row"]
    if not any(begins_with_block(steps, definitions) for steps in rows[1:]):
        return frozenset()
    missed: set[int | None] = {(place.ordinal or 1) - 1 for steps in rows for place in _backs(steps, definitions)}
    named = {place.target.chains for steps in rows for place in _places(steps, definitions) if place.target.kind == "sp"}
    if None not in named and not missed & named:
        return frozenset()
    return frozenset(length for length in (missed | named if None in named else named) if length is not None and length >= 2)


def in_its_space(steps: Sequence[Step]) -> tuple[Step, ...]:
    """Steps with "ch-3 sp of next block" as "next ch-3 sp": each block has one."""
    return tuple(_in_its_space(step) for step in steps)


def _in_its_space(step: Step) -> Step:
    if isinstance(step, Work | Group) and step.place is not None and step.place.target.kind == "sp":
        of = step.place.of
        if of is not None and of.target.kind == "group" and of.which in ("next", "current", "last"):
            step = replace(step, place=replace(step.place, which="last" if of.which == "last" else "next", of=None))
    return replace(step, steps=in_its_space(step.steps)) if isinstance(step, Repeat) else step


def slips_on(steps: Sequence[Step], chain: Chain) -> bool:
    """Whether a row slips over the stitches of a block right after its turning chain, to begin further in: the chain stands for nothing."""
    at = next((index for index, step in enumerate(steps) if step is chain), len(steps))
    later = next((step for step in steps[at + 1 :] if not isinstance(step, Turn | Words)), None)
    return isinstance(later, Work) and later.stitch.name == "sl st"


def begins_with_block(steps: Sequence[Step], definitions: Mapping[str, Definition]) -> bool:
    """Whether the first thing that a row makes is a chain, worked back along."""
    for index, step in enumerate(steps):
        if isinstance(step, Chain):
            return goes_back(step, steps[index + 1 :])
        if isinstance(step, Work):
            definition = definitions.get(step.stitch.name)
            return definition is not None and begins_with_block(definition.steps, {})
        if isinstance(step, Group | Repeat):
            return False
    return False


def _backs(steps: Sequence[Step], definitions: Mapping[str, Definition]) -> Iterator[Place]:
    return (place for place in _places(steps, definitions) if place.from_hook)


def _places(steps: Sequence[Step], definitions: Mapping[str, Definition]) -> Iterator[Place]:
    for step in steps:
        if isinstance(step, Work | Group) and step.place is not None:
            yield step.place
        if isinstance(step, Group | Repeat):
            yield from _places(step.steps, definitions)
        elif isinstance(step, Work) and step.stitch.name in definitions:
            yield from _places(definitions[step.stitch.name].steps, {})
