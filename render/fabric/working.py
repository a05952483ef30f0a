"""Works stitches into their place or places: one, several, so many spread evenly, or special ones.

``run`` works the steps of a stitch that the pattern defines.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from motifold.render.fabric.begin import begin_in_foundation, miss_own_chain, stand_in, stand_up, start_base
from motifold.render.fabric.bench import Hook
from motifold.render.fabric.decreases import together_from, together_over
from motifold.render.fabric.edge import first_match
from motifold.render.fabric.left import leave_behind
from motifold.render.fabric.making import add_chains, add_each, add_stitch, grouped, kind_of_spec, new_run, open_group
from motifold.render.fabric.model import Base
from motifold.render.fabric.places import (
    RING,
    along_one_side,
    base_of,
    next_base,
    next_chain,
    on_foundation_chain,
    resolve_extent,
    spots_of_each,
    take,
)
from motifold.render.fabric.plain import plain_spots
from motifold.render.fabric.resolve import cursor_for, enough_skipped, resolve
from motifold.render.fabric.special import beginning, counted_beginning, crossed, known, make, recipe_of, together
from motifold.render.fabric.travel import travels_or_closes
from motifold.render.fabric.wording import height_in_chains, key_of
from motifold.render.pattern.instructions import Place, Step, StitchSpec, Work

RunSteps = Callable[[Hook, Sequence[Step]], None]


def work(hook: Hook, step: Work, run: RunSteps) -> None:
    """Stitches into their place or places."""
    spec = step.stitch
    hook.budget(step.span)
    if hook.within is None:
        hook.lap.last_step = step
    place = step.place
    if place is not None and _is_plain(hook, step, place):
        _into(hook, run, step, resolve(hook, place, step.span), step.count.at(hook.shop.size))
        return
    if spec.name == "sl st" and travels_or_closes(hook, step):
        return
    if hook.beginning and step.place is not None and (spec.standing or step.place.which == "any"):
        stand_in(hook, step.place)
    if hook.beginning and step.place is not None and step.place.from_hook and not hook.pending and on_foundation_chain(hook.lap.cursor):
        _into(hook, run, step, begin_in_foundation(hook, step, step.place), step.count.at(hook.shop.size))
        return
    count = step.count.at(hook.shop.size)
    definition = hook.shop.definitions.get(spec.name)
    if spec.beginning and hook.depth == 0 and begin_special(hook, step):
        return
    stood = step.counts_as is not None and step.counts_as.stitches and hook.last == hook.lap.standing
    if step.counts_as is not None and stood and step.place is not None and not step.place.from_hook:
        counted_beginning(hook, spec, step.counts_as.stitches[0], resolve(hook, step.place, step.span), step)
    elif definition is not None and definition.spread:
        _spread(hook, run, step, count)
    elif spec.name.startswith("crossed "):
        _crossed(hook, step, count)
    elif step.place is None:
        _no_place(hook, run, step, count)
    elif step.place.target.kind == "missed" and step.place.which != "top":
        enough_skipped(hook, step.place)
        for _ in range(max(step.place.count.at(hook.shop.size), 1)):
            _into(hook, run, step, resolve(hook, step.place, step.span), count)
    elif step.place.each or step.place.which == "each":
        _each(hook, run, step, count)
    elif step.place.which == "evenly":
        _evenly(hook, run, step, count)
    elif spec.together > 1 and (step.place.then or step.place.manner == "over"):
        for _ in range(count):
            together_over(hook, step, step.place)
    elif spec.together > 1 and spec.name == "sc" and step.place.which == "next" and _is_stitch_place(step.place):
        # nobody closes two single crochets in one stitch; taller ones make a cluster there
        for _ in range(count):
            together_from(hook, step, step.place)
    else:
        base = _on_spine_or(hook, step.place, step)
        _into(hook, run, step, base, count)


def _is_plain(hook: Hook, step: Work, place: Place) -> bool:
    """Whether a step is a plain stitch in the next place, in the midst of a round: what most steps are."""
    said = place.each or hook.beginning or step.counts_as is not None
    return not said and recipe_of(hook, step.stitch).easy and hook.is_plain_next(place)


def begin_special(hook: Hook, step: Work) -> bool:
    """``beg cl``, ``beg shell``: its first stitch is a chain of that height, made now or just before.

    False if it is worked as any other.
    """
    lap = hook.lap
    if lap.stitches and hook.last != lap.standing:
        return False
    cursor = lap.cursor
    if step.place is not None and step.place.which != "same":
        stand_in(hook, step.place)
    base = start_base(hook)
    if lap.standing is None:
        found = known(kind_of_spec(step.stitch))
        stem = step.stitch.of or (found.stem if found else "dc")
        chains = add_chains(hook, max(height_in_chains(stem), 1), step)
        stand_up(hook, stem, chains, base, step)
    if cursor.size:
        cursor.begin_at(cursor.pos, fresh=False, taken=True)
    lap.last_base = base
    hook.beginning = False
    beginning(hook, step.stitch, base, step)
    return True


def _is_stitch_place(place: Place) -> bool:
    return place.target.kind in ("st", "stitch", "ch") and place.of is None and place.manner in ("in", "over", "around")


def _on_spine_or(hook: Hook, place: Place, step: Work) -> Base:
    """One's own chain goes on being worked back along while the places are chains."""
    if place.from_hook and hook.pending:
        base = resolve(hook, place, step.span)
        _make_spine(hook, step, place)
        return base
    return resolve(hook, place, step.span)


def _make_spine(hook: Hook, step: Work, place: Place) -> None:
    """The chain worked back along is no space any more. One closed at its very end is a picot."""
    stitches, hook.pending = hook.pending, []
    missed = (place.ordinal or 1) - 1
    if hook.lap.linear and hook.last is None and missed >= 2 and missed < len(stitches):
        own = stitches[: len(stitches) - missed]
        below = hook.lap.cursor
        new_run(hook, "spine", own, before=below.atom(below.pos).id if below.size and not below.atom(below.pos).space else None)
        miss_own_chain(hook, step, stitches[-missed:], Base("gap", own[-1], "gap"))
        return
    run = new_run(hook, "spine", stitches, before=hook.last)
    run.after = hook.last


def _no_place(hook: Hook, run: RunSteps, step: Work, count: int) -> None:
    """``5 sc``: one in each of the next five, or all into the place of the group around it."""
    spec = step.stitch
    if hook.here is not None or not hook.lap.cursor.size:
        base = hook.here or (RING if hook.lap.cursor.round >= 0 else None)
        if spec.name.endswith("picot"):
            for _ in range(count):
                make(hook, spec, RING, step, run)
            return
        if base is None:
            base = RING
        _into(hook, run, step, base, count)
        return
    if spec.name.endswith("picot"):
        for _ in range(count):
            make(hook, spec, RING, step, run)
        return
    if _is_foundation(spec):
        for _ in range(count):
            add_stitch(hook, spec.name, (), step)
        return
    place = hook.next_stitch(step)
    for _ in range(count):
        hook.budget(step.span)
        if spec.together > 1:
            together_from(hook, step, place)
        else:
            _one(hook, run, step, _next_st(hook, place, step))


def _next_st(hook: Hook, place: Place, step: Work) -> Base:
    cursor = hook.lap.cursor
    base = next_chain(hook, cursor, place, step.span) if hook.lap.spine else next_base(hook, cursor, place, step.span)
    hook.lap.last_base = base
    return base


def _is_foundation(spec: StitchSpec) -> bool:
    return spec.name in ("fsc", "fhdc", "fdc", "ftr")


def _one(hook: Hook, run: RunSteps, step: Work, base: Base) -> None:
    """What one place takes: one stitch, or two for an increase."""
    if step.stitch.increase > 1:
        with grouped(hook, None, base, step):
            for _ in range(step.stitch.increase):
                make(hook, step.stitch, base, step, run)
    else:
        make(hook, step.stitch, base, step, run)


def _into(hook: Hook, run: RunSteps, step: Work, base: Base, count: int) -> None:
    """All of them into one place."""
    _unstand(hook, step)
    total = count * step.stitch.increase
    if total == 1:
        make(hook, step.stitch, base, step, run)
        return
    recipe = recipe_of(hook, step.stitch)
    if recipe.plain:
        outermost = not hook.open_groups
        if outermost:
            open_group(hook, None, base, step)
        add_each(hook, recipe.kind, recipe.stems[0], [base] * total, step)
        if outermost:
            hook.open_groups.pop()
        return
    with grouped(hook, None, base, step):
        for _ in range(total):
            make(hook, step.stitch, base, step, run)


def _unstand(hook: Hook, step: Work) -> None:
    hook.beginning = False


def _each(hook: Hook, run: RunSteps, step: Work, count: int) -> None:
    """One (or ``count``) into each of several places; stitches worked together take theirs by twos, threes ..."""
    place = step.place
    assert place is not None
    spec = step.stitch
    bases: list[Base] = []
    cursor = cursor_for(hook, place)
    recipe = recipe_of(hook, spec)
    if recipe.plain and count * spec.increase == 1:
        spots = plain_spots(hook, cursor, place, step.span)
        if spots:
            add_each(hook, recipe.kind, recipe.stems[0], spots, step)
            hook.lap.last_base = spots[-1]
            _unstand(hook, step)
            return
    for base in spots_of_each(hook, cursor, place, step.span):
        hook.lap.last_base = base
        if spec.together > 1 and base.kind == "stitch":
            bases.append(base)
            if len(bases) == spec.together:
                together(hook, spec, bases, step)
                bases = []
        elif spec.together > 1 or count * spec.increase > 1:
            _into(hook, run, step, base, count)
        else:
            make(hook, spec, base, step, run)
    if bases:
        together(hook, spec, bases, step)
        if not (place.which == "next" and len(bases) == place.count.at(hook.shop.size)):
            hook.complain(
                "uneven",
                step.span,
                f"the last {spec.together} to be worked together are only {len(bases)}",
                "work the last ones singly, or change the count",
                key=key_of(step.span),
                follows=True,
            )
    _unstand(hook, step)


def _evenly(hook: Hook, run: RunSteps, step: Work, count: int) -> None:
    """So many spread evenly over what the place names."""
    place = step.place
    assert place is not None
    onward = place.extent is not None and place.target.kind == "side"  # "evenly around", "evenly to next corner": from where the hook is
    cursor = hook.lap.cursor if onward else cursor_for(hook, place)
    if cursor.sided and not onward and place.target.kind in ("side", "row end", "foundation"):
        limit = min(cursor.limit, cursor.end)
        side = "bottom" if place.target.kind == "foundation" else place.words
        named = first_match(cursor, lambda atom: side is not None and atom.side_name == side, cursor.following, limit)
        ends = first_match(cursor, lambda atom: atom.name == "row end", cursor.following, limit)
        ahead = named if named is not None else ends
        if ahead is not None and ahead > cursor.following:
            leave_behind(hook, cursor, ahead)
            cursor.pos, cursor.fresh = ahead - 1, False
    first = cursor.following
    stop = resolve_extent(hook, cursor, place.extent, step.span) if place.extent is not None else min(cursor.limit, cursor.end)
    if place.extent is None:
        stop = along_one_side(cursor, lambda atom: True, None, stop)
    room = stop - first + 1
    if room <= 0 and cursor.size and place.extent is not None and place.extent.kind == "to":
        return  # the place that it goes to comes first
    if room <= 0 or not cursor.size:
        hook.complain("place", place.span, "there is nothing there to work evenly along", key=key_of(place.span))
        return
    if count == 1:
        # "sc evenly around": one in each, and in a space as many as it has chains
        for index in range(first, stop + 1):
            for _ in range(max(cursor.atom(index).chains, 1)):
                make(hook, step.stitch, base_of(hook, cursor, index, place), step, run)
    else:
        for number in range(count):
            index = first + (2 * number + 1) * room // (2 * count)
            make(hook, step.stitch, base_of(hook, cursor, index, place), step, run)
    take(hook, cursor, stop)


def _spread(hook: Hook, run: RunSteps, step: Work, count: int) -> None:
    """A defined stitch that covers several stitches: its own places are worked as they stand."""
    definition = hook.shop.definitions[step.stitch.name]
    extent = step.place.extent if step.place is not None and step.place.which == "each" else None
    node, node_outside = step, hook.within
    if step.place is not None and (step.place.each or step.place.which == "each") and extent is None:
        count *= max(step.place.count.at(hook.shop.size), 1)
    for _ in range(count):
        hook.budget(step.span)
        outer, hook.here = hook.here, None
        with grouped(hook, definition.key, None, node) as group:
            hook.within = hook.within or node
            run(hook, definition.steps)
            hook.within = node_outside
            if group is not None and group.stitches:
                legs = hook.stitches[group.stitches[0]].legs
                group.base = legs[0].base if legs else None
        hook.here = outer


def _crossed(hook: Hook, step: Work, count: int) -> None:
    place = step.place if step.place is not None and step.place.which == "next" else hook.next_stitch(step)
    for _ in range(count):
        cursor = cursor_for(hook, place)
        first = next_base(hook, cursor, place, step.span)
        second = next_base(hook, cursor, place, step.span)
        crossed(hook, step.stitch, first, second, step)
