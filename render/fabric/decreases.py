"""Stitches worked together over several places."""

from __future__ import annotations

from motifold.render.fabric.bench import Hook
from motifold.render.fabric.model import Base
from motifold.render.fabric.places import next_base, spots_of_each
from motifold.render.fabric.resolve import cursor_for, resolve
from motifold.render.fabric.special import together
from motifold.render.pattern.instructions import Place, Work


def together_from(hook: Hook, step: Work, place: Place) -> None:
    """``sc2tog``, ``sc2tog in next st``: one leg in the next, the others in those that follow."""
    cursor = cursor_for(hook, place)
    bases = [next_base(hook, cursor, place, step.span) for _ in range(step.stitch.together)]
    hook.lap.last_base = bases[-1]
    together(hook, step.stitch, bases, step)


def together_over(hook: Hook, step: Work, place: Place) -> None:
    """``dc2tog over next 2 sts``, ``dc3tog over same st and next 2 sts``: a leg in each of the places named."""
    bases: list[Base] = []
    if place.which in ("first", "last") and not place.then and place.count.at(hook.shop.size) > 1:
        together(hook, step.stitch, list(spots_of_each(hook, cursor_for(hook, place), place, step.span)), step)
        return
    for part in (place, *place.then):
        wanted = part.count.at(hook.shop.size)
        if part is place and not place.then:
            wanted = max(wanted, step.stitch.together)
        bases.extend(resolve(hook, part, step.span) for _ in range(min(wanted, step.stitch.together)))
    together(hook, step.stitch, bases, step)
