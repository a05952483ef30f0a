"""How a round ends: joined into its own beginning, closed by a stitch, or not joined at all."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from motifold.render.fabric.bench import Hook
from motifold.render.fabric.edge import family
from motifold.render.fabric.making import add_chains, add_travel, hang, new_run
from motifold.render.fabric.model import Base, Leg
from motifold.render.fabric.resolve import names_beginning_chain, resolve, too_few_chains
from motifold.render.fabric.wording import height_in_chains, key_of, ordinal, round_word, stitch_word, target_word
from motifold.render.pattern.instructions import Chain, Join, Place, Step, Work

RunSteps = Callable[[Hook, Sequence[Step]], None]


def close_ring(hook: Hook, step: Join) -> None:
    """A chain joined into a ring: worked into as a ring, or chain by chain."""
    lap = hook.lap
    chains, hook.pending = hook.pending, []
    if not chains and not lap.made:
        hook.complain("join", step.span, "there is no chain to join into a ring", "make it first: ch 4", key=key_of(step.span))
        return
    if chains and step.place is not None and step.place.from_hook and (step.place.ordinal or 1) > len(chains):
        too_few_chains(hook, step.place, len(chains))
    if chains:
        new_run(hook, "ring", chains)
        lap.made.extend((False, ident) for ident in chains)
        add_travel(hook, "sl st", (Leg("sl st", Base("stitch", chains[0], "loops")),), step)
    else:
        add_travel(hook, "sl st", (Leg("sl st", Base("stitch", lap.made[0][1], "loops")),), step)
    lap.kind = "ring"
    lap.linear = False
    lap.end = "joined"
    lap.join_at = 0


def close(hook: Hook, step: Join, run: RunSteps) -> None:
    """Closes the round: from here on the hook stands at its beginning."""
    lap = hook.lap
    hook.lap.spine.clear()
    if lap.kind == "foundation":
        lap.linear = False  # chainless foundation stitches joined into a ring
    if step.method == "none":
        lap.end = "spiral"
        return
    first = next((ident for space, ident in lap.made if not space), None)
    if first is None and lap.kind == "finish" and lap.cursor.size:
        place = step.place if step.place is not None else hook.next_stitch(step)
        add_travel(hook, "sl st", (Leg("sl st", resolve(hook, place, step.span)),), step)
        return
    if first is None:
        lap.no_join = (step.span, f"{round_word(lap)} has nothing to join into", "work something before the join")
        lap.end = "joined"
        return
    if step.method == "work" or step.steps:
        _close_with_stitch(hook, step, first)
        return
    at, base = own_place(hook, step.place, step)
    hang(hook, first)
    if step.method != "invisible":
        add_travel(hook, "sl st", (Leg("sl st", base),), step)
    lap.end = "joined"
    lap.join_at = at


def own_place(hook: Hook, place: Place | None, step: Join) -> tuple[int, Base]:
    """Where in the round itself a join goes: its index in what was made, and the base."""
    lap = hook.lap
    first = next(index for index, (space, _) in enumerate(lap.made) if not space)
    base = Base("stitch", lap.made[first][1], "loops")
    if place is None:
        return first, base
    if names_beginning_chain(place):
        return _join_beginning_chain(hook, place, first, base)
    if place.which in ("first", "next", "any", "top", "beg") or (place.which == "same" and place.target.kind == "stitch"):
        found = _first_of(hook, place)
        if found is not None:
            return found
        word = target_word(place.target, hook.shop.terms)
        is_there = stitch_word(hook.stitches[lap.made[first][1]].kind, hook.shop.terms)
        lap.no_join = (place.span, f"{round_word(lap)} has no {word} to join into", f"its first st is {is_there}")
    return first, base


def _join_beginning_chain(hook: Hook, place: Place, first: int, base: Base) -> tuple[int, Base]:
    lap = hook.lap
    if lap.beginning is None:
        name = stitch_word(hook.stitches[lap.made[first][1]].kind, hook.shop.terms)
        hook.complain(
            "join",
            place.span,
            f"{round_word(lap)} has no beginning chain to join into",
            f"join with sl st in first {name}",
            key=key_of(place.span),
        )
        lap.faulty = lap.reported = True
        return first, base
    length = len(hook.runs[lap.beginning].stitches) + _after_standing(hook)
    named = place
    while named.of is not None:
        named = named.of
    said = named.target.chains
    own = length - _after_standing(hook) + _after_standing(hook, same=True)
    foundation = hook.laps[lap.cursor.round].kind == "foundation" if 0 <= lap.cursor.round < len(hook.laps) else False
    if said is not None and said not in (length, own, *((length + 1,) if foundation else ())):
        hook.complain(
            "join",
            place.span,
            f"{round_word(lap)} begins with ch {length}, not with ch {said}",
            f"name the chain that is there, beg ch-{length}, or begin with ch {said}",
            key=key_of(place.span),
        )
        lap.faulty = lap.reported = True
    if lap.standing is not None:
        _check_height(hook, place, lap.standing, foundation)
        at = lap.made.index((False, lap.standing)) if lap.made[first][1] != lap.standing else first
        return at, Base("stitch", lap.standing, "loops")
    return first, Base("stitch", hook.runs[lap.beginning].stitches[-1], "loops")


def _check_height(hook: Hook, place: Place, standing: int, foundation: bool) -> None:
    """Of a beginning chain that counts as a stitch and a space, the join goes into the top of the stitch."""
    lap, stitch = hook.lap, hook.stitches[standing]
    height = len(stitch.chains)
    if place.which != "nth" or place.ordinal in (None, height) or lap.by_habit or foundation or not _after_standing(hook):
        return
    word = stitch_word(stitch.kind, hook.shop.terms)
    hook.complain(
        "join",
        place.span,
        f"the {ordinal(height)} ch is the top of the {word} that the beginning chain counts as, not the {ordinal(place.ordinal or 0)}",
        f"join with sl st in {ordinal(height)} ch of beg ch-{height + _after_standing(hook)}",
        key=key_of(place.span),
    )


def _after_standing(hook: Hook, same: bool = False) -> int:
    """Chains of the beginning chain that hang after the stitch it counts as. ``same``: only those of the same instruction."""
    lap = hook.lap
    if lap.standing is None:
        return 0
    run = next((ident for space, ident in lap.made if space and hook.runs[ident].before == lap.standing), None)
    if run is None or not same:
        return hook.runs[run].chains if run is not None else 0
    node = hook.stitches[lap.standing].origin.instruction
    return sum(1 for ident in hook.runs[run].stitches if hook.stitches[ident].origin.instruction == node)


def _first_of(hook: Hook, place: Place) -> tuple[int, Base] | None:
    """The first stitch or space of the round that the place names."""
    target = place.target
    for index, (space, ident) in enumerate(hook.lap.made):
        if target.kind == "sp":
            if space and (target.chains is None or hook.runs[ident].chains == target.chains):
                return index, Base("space", ident, "space")
            continue
        if space:
            continue
        stitch = hook.stitches[ident]
        group = hook.groups[stitch.group].name if stitch.group is not None else None
        if target.kind != "stitch" or target.name in (stitch.kind, family(stitch.kind), group):
            return index, Base("stitch", ident, "loops")
    return None


def _close_with_stitch(hook: Hook, step: Join, first: int) -> None:
    """``join with ch 1, hdc in first sc``: chain and stitch together are the round's last space, and the hook stands in its middle."""
    lap = hook.lap
    at, base = own_place(hook, None, step)
    nominal, said = 0, None
    closing = None
    for inner in step.steps:
        if isinstance(inner, Chain):
            count = inner.count.at(hook.shop.size)
            hook.pending.extend(add_chains(hook, count, inner))
        elif isinstance(inner, Work):
            _, base = own_place(hook, inner.place, step)
            closing = inner
            if inner.counts_as is not None:
                said = inner.counts_as.space
    del at
    nominal = len(hook.pending)
    stitches, hook.pending = hook.pending, []
    if closing is not None:
        name = closing.stitch.name
        nominal += height_in_chains(name)
        stitches.append(add_travel(hook, name, (Leg(name, base),), closing))
    run = new_run(hook, "space", stitches, before=hook.last, after=first, chains=said if said is not None else nominal)
    lap.made.append((True, run.id))
    lap.end = "joined"
    lap.join_at = len(lap.made) - 1


__all__ = ["close", "close_ring", "own_place"]
