"""One place in words -> what the hook goes into: every ``which`` of a place but "each", which is many."""

from __future__ import annotations

from dataclasses import replace

from motifold.render.fabric.absent import missing, missing_part
from motifold.render.fabric.below import below_base, other_cursor, turn_to_underside
from motifold.render.fabric.bench import Hook
from motifold.render.fabric.edge import Cursor, first_match, group_range, last_match, matcher
from motifold.render.fabric.left import leave_behind
from motifold.render.fabric.marks import middle
from motifold.render.fabric.model import Base
from motifold.render.fabric.places import (
    RING,
    base_of,
    between,
    beyond,
    chain_base,
    current_base,
    enter,
    find_next,
    foot_of,
    last_of_its_side,
    next_base,
    next_chain,
    on_foundation_chain,
    take,
    use_start,
)
from motifold.render.fabric.same import as_another, same
from motifold.render.fabric.wording import key_of
from motifold.render.pattern.instructions import Place, Target
from motifold.render.pattern.problem import Span


def cursor_for(hook: Hook, place: Place) -> Cursor:
    """The cursor that a place moves: the round below's, or that of an earlier round which the place names."""
    if place.target.kind == "foundation" or (place.of is not None and place.of.target.kind == "foundation"):
        return turn_to_underside(hook)
    if place.of_round is not None or place.target.kind in ("unused loop", "row end", "side"):
        return other_cursor(hook, place)
    return hook.lap.cursor


def resolve(hook: Hook, place: Place, span: Span) -> Base:
    """What the hook goes into for one place; complains where there is no such place, and goes on with the nearest sensible one."""
    lap = hook.lap
    quick = hook.is_plain_next(place) and bool(lap.cursor.atoms)
    base = next_base(hook, lap.cursor, place, span) if quick else _resolve(hook, place, span)
    lap.last_base = base
    return base


def _resolve(hook: Hook, place: Place, span: Span) -> Base:
    if place.target.kind == "ring":
        return RING
    if hook.here is not None and place.which in ("same", "current") and place.of is None:
        return hook.here
    if place.which == "same" and place.words is not None:
        there = as_another(hook, place)
        if there is not None:
            return there
    if place.which == "made" or (place.of is not None and place.of.which == "made"):
        return just_made(hook, place)
    if place.target.kind == "missed" and place.which != "top":
        return skipped(hook, place)
    cursor = cursor_for(hook, place)
    if place.below:
        return below_base(hook, cursor, place, span)
    if place.from_hook:
        return from_hook(hook, cursor, place, span)
    if _is_beginning(place) or (place.of is not None and _is_beginning(place.of)):
        return beginning_chain(hook, cursor, place, span)
    if not cursor.size:
        return RING
    if place.of is not None:
        return within(hook, cursor, place, span)
    if place.target.kind == "between":
        return between(hook, cursor, place, span)
    which = place.which
    if which == "same":
        return same(hook, cursor, place)
    if which == "current":
        return current(hook, cursor, place, span)
    if which in ("first", "any"):
        return first(hook, cursor, place, span)
    if which == "last":
        return last(hook, cursor, place, span)
    if which == "beg":
        return beginning_place(hook, cursor, place, span)
    if which == "center":
        return center(hook, cursor, place, span)
    if which == "nth":
        return nth(hook, cursor, place, span)
    if place.target.kind == "ch":
        return next_chain(hook, cursor, place, span)
    return next_base(hook, cursor, place, span)


def names_beginning_chain(place: Place) -> bool:
    """Whether a join goes into the beginning chain: "top of beg ch-3", "3rd ch of beg ch-5"."""
    if place.target.kind in ("tch", "missed") or (place.target.kind == "ch" and place.which in ("beg", "top")):
        return True
    return place.of is not None and names_beginning_chain(place.of)


def _is_beginning(place: Place) -> bool:
    return place.target.kind in ("tch", "missed") or (place.which == "beg" and place.target.kind == "ch")  # a skipped st is resolved before


def current(hook: Hook, cursor: Cursor, place: Place, span: Span) -> Base:
    """``in ch-2 sp``: the one that the hook stands at, if nothing is worked into it yet, else the one that comes next."""
    match = hook.match_of(place)
    if (
        match(cursor.atom(cursor.pos))
        and not cursor.fresh
        and (cursor.reached_by_walk or cursor.pos == cursor.start)
        and not cursor.start_worked
    ):
        if not hook.walking:
            cursor.reached_by_walk = False
            if cursor.pos == cursor.start:
                use_start(cursor)
        return base_of(hook, cursor, cursor.pos, place)
    if place.target.kind == "ch":
        return next_chain(hook, cursor, place, span)
    return next_base(hook, cursor, place, span)


def first(hook: Hook, cursor: Cursor, place: Place, span: Span) -> Base:
    """``first st``: counted from where the round began."""
    match = hook.match_of(place)
    index = first_match(cursor, match, cursor.following if cursor.sided else cursor.start, cursor.start + cursor.size - 1)
    if index is None:
        missing(hook, cursor, place.span, place.target)
        return current_base(hook, cursor, place)
    if index >= cursor.pos:
        return enter(hook, cursor, index, place)
    if cursor.cyclic:  # the hook has come round to it
        leave_behind(hook, cursor, index + cursor.size)
        return enter(hook, cursor, index + cursor.size, place)
    return base_of(hook, cursor, index, place)


def last(hook: Hook, cursor: Cursor, place: Place, span: Span) -> Base:
    """``last st``: the last one before the round's end; ``last ch`` of a chain that is worked back along."""
    if place.target.kind == "ch" and hook.lap.spine:
        del hook.lap.spine[1:]
        return next_chain(hook, cursor, place, span)
    match = hook.match_of(place)
    index = last_match(cursor, match, cursor.following, last_of_its_side(cursor, match, min(cursor.limit, cursor.end)))
    if index is None:
        return beyond(hook, cursor, place, span, place.target)
    leave_behind(hook, cursor, index)
    return enter(hook, cursor, index, place)


def beginning_place(hook: Hook, cursor: Cursor, place: Place, span: Span) -> Base:
    """``beg sp``: the space that the round began in, now or when the round comes back to it."""
    if not matcher(replace(place.target, chains=None))(cursor.atom(cursor.start)):
        hook.complain(
            "place",
            place.span,
            "the round did not begin in a space" if place.target.kind == "sp" else "the round did not begin there",
            "name the place that it began in, or walk to the space first: sl st in next ch-2 sp",
            key=key_of(place.span),
            follows=True,
        )
        return current_base(hook, cursor, place)
    if cursor.pos == cursor.start:
        return same(hook, cursor, place)
    index = cursor.start + cursor.size if cursor.cyclic else cursor.start
    if index > cursor.pos:
        leave_behind(hook, cursor, index)
        take(hook, cursor, index)
    elif cursor.came_round is not None:  # a "next" took it that was meant for another
        lap = hook.lap
        lap.faulty = True
        if lap.excess_span is None:
            lap.excess_span, lap.excess_target = cursor.came_round
            lap.excess_round, lap.excess = cursor.round, 1
        cursor.came_round = None
    return base_of(hook, cursor, index, place)


def center(hook: Hook, cursor: Cursor, place: Place, span: Span) -> Base:
    """``in center st``: the middle one of the whole row or round."""
    index = middle(cursor, hook.match_of(place))
    if index is None or index < cursor.following:
        return beyond(hook, cursor, place, span, place.target)
    leave_behind(hook, cursor, index)
    return enter(hook, cursor, index, place)


def nth(hook: Hook, cursor: Cursor, place: Place, span: Span) -> Base:
    """``in 5th st``: the fifth of its kind from the hook."""
    match = hook.match_of(place)
    wanted = place.ordinal or 1
    index: int | None = cursor.following - 1
    for _ in range(wanted):
        index = first_match(cursor, match, (index if index is not None else cursor.pos) + 1, cursor.limit)
        if index is None:
            return beyond(hook, cursor, place, span, place.target)
    assert index is not None
    return enter(hook, cursor, index, place)


def beginning_chain(hook: Hook, cursor: Cursor, place: Place, span: Span) -> Base:
    """``top of beg ch-3``, ``3rd ch of beg ch-4``, ``tch``, ``top of 3 missed ch``: the row below's, as the stitch that it counts as."""
    named = place.of if place.of is not None and _is_beginning(place.of) else place
    index = last_match(cursor, lambda atom: atom.standing, cursor.following, min(cursor.limit, cursor.end))
    if index is None and cursor.size and cursor.atom(cursor.pos).standing:
        index = cursor.pos
    if index is not None:
        if place.which in ("nth", "center") and place.ordinal:
            return _chain_of_beginning(hook, cursor, index, place)
        leave_behind(hook, cursor, index)
        take(hook, cursor, index)
        return base_of(hook, cursor, index, place)
    below = hook.laps[cursor.round] if 0 <= cursor.round < len(hook.laps) else None
    if below is not None and below.beginning is not None:
        leave_behind(hook, cursor, cursor.end + 1)
        cursor.pos = max(cursor.pos, cursor.end)
        return Base("stitch", hook.runs[below.beginning].stitches[-1], "loops")
    missing_chain(hook, named)
    return current_base(hook, cursor, place)


def _chain_of_beginning(hook: Hook, cursor: Cursor, index: int, place: Place) -> Base:
    """The n-th chain of a beginning chain: the stitch itself up to its height, beyond it a chain of the space that follows."""
    standing = hook.stitches[cursor.atom(index).id]
    height = len(standing.chains)
    wanted = place.ordinal or 1
    space = index - 1 if cursor.flipped else index + 1
    if wanted > height and cursor.atom(space).space and cursor.flipped:
        leave_behind(hook, cursor, space)
        take(hook, cursor, space)
        there = height + cursor.atom(space).chains
        if wanted > there:
            hook.complain(
                "place",
                place.span,
                f"the beginning chain has no {wanted}th ch",
                "count the chains from its first",
                key=key_of(place.span),
                follows=True,
            )
        cursor.sub = max(there - wanted, 0)
        return chain_base(hook, cursor, space, cursor.sub)
    leave_behind(hook, cursor, index)
    take(hook, cursor, index)
    return base_of(hook, cursor, index, place)


def missing_chain(hook: Hook, place: Place) -> None:
    """Complains that there is no beginning chain to work into."""
    hook.complain(
        "place",
        place.span,
        "there is no beginning chain there to work into",
        "name the stitch: a round without a beginning chain starts with its first st",
        key=key_of(place.span),
        follows=True,
    )


def within(hook: Hook, cursor: Cursor, place: Place, span: Span) -> Base:
    """``center ch of ch-5 lp``, ``2nd dc of next shell``, ``ch-2 sp of next shell``: a part of the place after "of"."""
    outer = place.of
    assert outer is not None
    match = hook.match_of(outer)
    index: int | None
    if outer.which in ("same", "current") and outer.target.kind == "sp" and match(cursor.atom(cursor.pos)) and cursor.reached_by_walk:
        index = cursor.pos
    elif outer.which == "last":
        index = last_match(cursor, match, cursor.following, cursor.limit)
    elif outer.which in ("first", "any", "beg"):
        index = first_match(cursor, match, cursor.start, cursor.start + cursor.size - 1)
    else:
        index = find_next(hook, cursor, match)
    if index is None:
        return beyond(hook, cursor, outer, span, outer.target)
    if cursor.atom(index).space and outer.target.kind != "stitch":
        chains = cursor.atom(index).chains
        sub = _pick(chains, place) if place.target.kind in ("ch", "st") else -1
        take(hook, cursor, index)
        if sub < 0:
            return base_of(hook, cursor, index, place)
        cursor.sub = sub
        return chain_base(hook, cursor, index, sub)
    return _part_of_group(hook, cursor, index, place, span)


def _pick(count: int, place: Place) -> int:
    """Which of ``count`` things in a row: the center, the n-th, the first or the last."""
    if place.which == "center":
        return (count - 1) // 2
    if place.which == "last":
        return count - 1
    return min((place.ordinal or 1) - 1, count - 1) if place.which == "nth" else 0


def _part_of_group(hook: Hook, cursor: Cursor, index: int, place: Place, span: Span) -> Base:
    start, stop = group_range(cursor, index)
    match = matcher(place.target if place.target.kind != "tch" else Target("st"))
    parts = [i for i in range(start, stop + 1) if match(cursor.atom(i))]
    if not parts:
        missing_part(hook, [cursor.atom(i) for i in range(start, stop + 1)], place)
        return enter(hook, cursor, index, place)
    at = parts[_pick(len(parts), place)]
    take(hook, cursor, at)
    return base_of(hook, cursor, at, place)


def enough_skipped(hook: Hook, place: Place) -> None:
    """Complains where more skipped stitches are named than were skipped just before."""
    wanted, there = place.count.at(hook.shop.size), len(hook.lap.skipped)
    if 0 < there < wanted:
        verb = "was" if there == 1 else "were"
        skipped, skip = ("missed", "miss") if hook.shop.terms == "UK" else ("skipped", "skip")
        message = f"{wanted} {skipped} sts are named, but {there} {verb} {skipped} before this"
        hook.complain("place", place.span, message, f"{skip} {wanted} sts, or work into {there}", key=key_of(place.span), follows=True)
        hook.tainted = True


def skipped(hook: Hook, place: Place) -> Base:
    """``in skipped st``: the places skipped last, one after another; ``in second skipped st`` that one of them."""
    lap = hook.lap
    chosen = {"first": 0, "last": len(lap.skipped) - 1, "nth": (place.ordinal or 1) - 1}.get(place.which)
    if not lap.skipped or (chosen is not None and chosen >= len(lap.skipped)):
        hook.complain("place", place.span, "nothing was skipped before this", "skip it first: sk next st", key=key_of(place.span))
        return current_base(hook, lap.cursor, place)
    if chosen is not None:
        return lap.skipped[chosen]
    return lap.skipped.pop(0) if len(lap.skipped) > 1 else lap.skipped[0]


def just_made(hook: Hook, place: Place) -> Base:
    """``in dc just made``: the last stitch of this round."""
    if hook.last is None:
        return current_base(hook, hook.lap.cursor, place)
    return Base("stitch", hook.last, foot_of(hook, place))


def from_hook(hook: Hook, cursor: Cursor, place: Place, span: Span) -> Base:
    """``in 4th ch from hook``: of the chain just made, or of the foundation chain."""
    ordinal = place.ordinal or 1
    if hook.pending:
        count = len(hook.pending)
        if ordinal > count:
            too_few_chains(hook, place, count)
        at = max(count - ordinal, 0)
        hook.lap.spine = hook.pending[:at]
        return Base("stitch", hook.pending[at], foot_of(hook, place))
    if not on_foundation_chain(cursor):
        too_few_chains(hook, place, 0)
        return current_base(hook, cursor, place)
    if ordinal > cursor.size:
        too_few_chains(hook, place, cursor.size)
    index = min(ordinal, cursor.size) - 1
    take(hook, cursor, index)
    return base_of(hook, cursor, index, place)


def too_few_chains(hook: Hook, place: Place, count: int) -> None:
    """Complains that the chain is shorter than the place says."""
    hook.complain(
        "place",
        place.span,
        f"only {count} ch can be counted from the hook" if count else "there is no chain to count from the hook",
        "make a longer chain first, or count fewer",
        key=key_of(place.span),
        follows=True,
    )
