"""The last pass of a repeat, where it ends otherwise than the others; and which steps are the same as which."""

from __future__ import annotations

from collections.abc import Callable

from motifold.render.pattern.instructions import Chain, Extent, Group, Place, Repeat, Skip, Step, Stop, Work
from motifold.render.pattern.notation.reader import Reader
from motifold.symbols.record import dataclass

Body = Callable[[Reader], tuple[Step, ...]]


@dataclass(frozen=True, slots=True)
class Ending:
    """The repeat under what is said of its last pass: how far it runs, its steps (a Stop among them where the last pass ends early),
    how many of them the last pass leaves out, and the steps that follow it. ``at_stop``: it is to end at a ``**`` of its own.
    """

    extent: Extent | None
    steps: tuple[Step, ...]
    omit: int = 0
    after: tuple[Step, ...] = ()
    at_stop: bool = False


def stopped(r: Reader, before: tuple[Step, ...], after: tuple[Step, ...]) -> tuple[Step, ...]:
    """These steps, the last pass ending between them."""
    return (*before, Stop(r.new_id(), before[-1].span), *after)


def alike(one: Step, other: Step) -> bool:
    """Whether two steps work the same, wherever they stand in the text. A place that one of them leaves unsaid is the other's."""
    if isinstance(one, Chain) and isinstance(other, Chain):
        return one.count == other.count
    if isinstance(one, Skip) and isinstance(other, Skip):
        return same_place(one.place, other.place)
    if isinstance(one, Work) and isinstance(other, Work):
        return (one.stitch, one.count) == (other.stitch, other.count) and same_place(one.place, other.place)
    if isinstance(one, Group) and isinstance(other, Group):
        return all_alike(one.steps, other.steps) and same_place(one.place, other.place)
    if isinstance(one, Repeat) and isinstance(other, Repeat):
        ends_same = (one.times, one.omit, one.extent is None) == (other.times, other.omit, other.extent is None)
        return ends_same and all_alike(one.steps, other.steps)
    return False


def all_alike(some: tuple[Step, ...], others: tuple[Step, ...]) -> bool:
    return len(some) == len(others) and all(alike(one, other) for one, other in zip(some, others, strict=True))


def same_place(one: Place | None, other: Place | None) -> bool:
    """Whether two places are described alike; one that is not said may be any."""
    if one is None or other is None:
        return True
    return (one.which, one.target, one.count) == (other.which, other.target, other.count) and (one.manner, one.ordinal) == (
        other.manner,
        other.ordinal,
    )
