"""Steps that a line may have forgotten: a stitch of its own once more, chains of a space, stitches before the join."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from motifold.render.fabric.bench import Terms
from motifold.render.fabric.wording import step_words, stitch_word
from motifold.render.pattern.instructions import ONE, Amount, Chain, Group, Join, Place, Repeat, Step, StitchSpec, Target, Work

Change = tuple[tuple[Step, ...], str]
"""The line's steps with one put in, and the words for it."""


def missing_stitch(steps: tuple[Step, ...], size: int, terms: Terms) -> Iterator[Change]:
    """A stitch in the next place, as the line works it elsewhere, forgotten between two steps: "dc in next sc after ch 2"."""
    singles: dict[tuple[StitchSpec, Target], Work] = {}
    for step in _flat(steps):
        if isinstance(step, Work) and not walks(step) and step.count == ONE and step.place is not None:
            place = step.place
            if place.which == "next" and place.target.kind in ("st", "stitch") and place.of is None and place.of_round is None:
                one = replace(step, place=replace(place, count=ONE, each=False))
                singles.setdefault((one.stitch, place.target), one)
    for one in list(singles.values())[:3]:
        for new, after in _put_in(steps, one):
            yield new, f"{step_words(one, terms, size)} after {step_words(after, terms, size)}"


def _put_in(steps: Sequence[Step], one: Work) -> Iterator[tuple[tuple[Step, ...], Work | Group]]:
    for index, step in enumerate(steps):
        rest = tuple(steps[index + 1 :])
        if isinstance(step, Group) or (isinstance(step, Work) and not walks(step)):
            yield (*steps[: index + 1], one, *rest), step
        if isinstance(step, Repeat):
            for inner, after in _put_in(step.steps, one):
                yield (*steps[:index], replace(step, steps=inner), *rest), after


def missing_chains(steps: tuple[Step, ...], spaces: Sequence[int], size: int, terms: Terms) -> Iterator[Change]:
    """Chains that make one of the spaces that are counted, forgotten after a stitch or within a group."""
    for chains in spaces:
        for new, after in _with_chains(steps, chains):
            yield new, f"ch {chains} after {step_words(after, terms, size) if after is not None else 'the repeat'}"


def _with_chains(steps: Sequence[Step], chains: int) -> Iterator[tuple[tuple[Step, ...], Work | Group | None]]:
    for index, step in enumerate(steps):
        rest = tuple(steps[index + 1 :])
        if isinstance(step, Work | Group) and not walks(step) and not (rest and isinstance(rest[0], Chain)):
            yield (*steps[: index + 1], Chain(step.id, step.span, Amount((chains,))), *rest), step
        if isinstance(step, Group | Repeat):
            if isinstance(step, Repeat) and not (rest and isinstance(rest[0], Chain)) and (not rest or isinstance(rest[0], Join)):
                yield (*steps[: index + 1], Chain(step.id, step.span, Amount((chains,))), *rest), None
            for inner, after in _with_chains(step.steps, chains):
                yield (*steps[:index], replace(step, steps=inner), *rest), after


def walks(step: Step) -> bool:
    return isinstance(step, Work) and step.stitch.name == "sl st"


def missing_at_end(steps: tuple[Step, ...], size: int, terms: Terms) -> Iterator[Change]:
    """Stitches in the beginning space, forgotten before the join."""
    join = next((index for index, step in enumerate(steps) if isinstance(step, Join) and not step.attach), len(steps))
    at = join
    while at and isinstance(steps[at - 1], Chain):
        at -= 1
    works = [step for step in _flat(steps[:join]) if isinstance(step, Work) and step.stitch.name not in ("sl st", "picot")]
    if not works:
        return
    last = works[-1]
    ring = last.place is not None and last.place.target.kind == "ring"
    for count in (1, 2, 3, 4, 5):
        place = last.place if ring and last.place is not None else Place(last.span, "beg", Target("sp"))
        new = Work(last.id, last.span, StitchSpec(last.stitch.name), Amount((count,)), place)
        word = stitch_word(last.stitch.name, terms, count)
        words = f"{count} more {word} in ring" if ring else f"{count} {word} in beg sp before the join"
        yield (*steps[:at], new, *steps[at:]), words


def _flat(steps: Sequence[Step]) -> Iterator[Step]:
    for step in steps:
        if isinstance(step, Group | Repeat):
            yield from _flat(step.steps)
        else:
            yield step
