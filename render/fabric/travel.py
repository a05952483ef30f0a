"""Slip stitches that are no stitches of the round: they walk, join another motif, or close a picot."""

from __future__ import annotations

from motifold.render.fabric.bench import Hook
from motifold.render.fabric.making import add_travel, grouped
from motifold.render.fabric.model import Leg
from motifold.render.fabric.places import spots_of_each
from motifold.render.fabric.resolve import cursor_for, resolve
from motifold.render.fabric.special import close_picot
from motifold.render.pattern.instructions import Place, Work


def travels_or_closes(hook: Hook, step: Work) -> bool:
    """A slip stitch that walks, joins another motif or closes a picot; False if it is a stitch of the round."""
    place = step.place
    if place is not None and place.which == "corresponding":
        # it takes the place of the middle chain of a space
        hook.pending.append(add_travel(hook, "sl st", (), step))
        return True
    if hook.walking or _ends_row_of_blocks(hook, step):
        if hook.lap.walked_from is None:
            hook.lap.walked_from = hook.lap.cursor.pos
        count = step.count.at(hook.shop.size)
        if place is None:
            place = hook.next_stitch(step)
            for _ in range(count):
                add_travel(hook, "sl st", (Leg("sl st", resolve(hook, place, step.span)),), step)
        elif place.each or place.which == "each":
            for base in spots_of_each(hook, cursor_for(hook, place), place, step.span):
                hook.lap.last_base = base
                add_travel(hook, "sl st", (Leg("sl st", base),), step)
        else:
            add_travel(hook, "sl st", (Leg("sl st", resolve(hook, place, step.span)),), step)
        cursor = hook.lap.cursor
        cursor.begin_at(cursor.pos, fresh=False, taken=False)
        cursor.reached_by_walk = True
        return True
    size = _ring_closed(hook, place) if place is not None else 0
    if size:
        ring = hook.pending[len(hook.pending) - size :]
        del hook.pending[len(hook.pending) - size :]
        on = hook.pending[-1] if hook.pending else hook.last
        with grouped(hook, "picot", None, step) as made:
            for ident in ring:
                hook.stitches[ident].group = made.id if made is not None else None
        close_picot(hook, ring, on, step, made.id if made is not None else None)
        return True
    return False


def _ends_row_of_blocks(hook: Hook, step: Work) -> bool:
    """``sl st in last ch-3 sp`` ends a row of blocks that grows narrower: it is no stitch of the next row's edge."""
    narrower = bool(hook.entered) and hook.lap.linear and step.place is not None and step.place.target.kind == "sp"
    return narrower and bool(hook.rest) and hook.rest[-1] is step


def _ring_closed(hook: Hook, place: Place) -> int:
    """How many of the waiting chains a slip stitch closes into a ring: "in 3rd ch from hook", "in first ch", "in dc just made"."""
    waiting = len(hook.pending)
    if not waiting:
        return 0
    if place.which == "made" or (place.of is not None and place.of.which == "made"):
        return waiting
    if place.from_hook:
        # nearer than the third chain it begins a way back along the chain
        size = place.ordinal or 0
        return size if 3 <= size <= waiting else 0
    if place.target.kind == "ch" and place.which in ("first", "nth") and (place.ordinal or 1) == 1 and hook.last is not None:
        inner = place.of
        return waiting if inner is None or (inner.target.chains in (None, waiting) and inner.which != "beg") else 0
    return 0
