"""Repeats: so many times, or as far as they go."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from motifold.render.fabric.absent import what_there_is
from motifold.render.fabric.bench import MOST_STITCHES, Beyond, Hook, TooMuch
from motifold.render.fabric.claims import driving_place, worked_targets
from motifold.render.fabric.edge import Cursor, Match, any_of, first_match
from motifold.render.fabric.places import gap_remains, resolve_extent
from motifold.render.fabric.resolve import cursor_for
from motifold.render.fabric.trial import mark_pass, take_back_pass
from motifold.render.fabric.wording import key_of, round_word, target_word
from motifold.render.pattern.instructions import Chain, Group, Repeat, Step, Stop, Target, Work

NEAR_THE_END = 40
"""Places left from which on a repeat is watched: more than any one pass takes."""

RunStep = Callable[[Hook, Step], None]


def least_work(steps: Sequence[Step], size: int) -> int:
    """How many steps are worked at the least: repeats multiply. Cheap, so that a slip of the pen is told before it is worked."""
    total = 0
    for step in steps:
        if isinstance(step, Repeat):
            times = step.times.at(size) if step.times is not None else 1
            total += times * max(least_work(step.steps, size), 1)
        elif isinstance(step, Group):
            total += max(least_work(step.steps, size), 1)
        elif isinstance(step, Work | Chain):
            total += max(step.count.at(size), 1)
    return total


def run_repeat(hook: Hook, step: Repeat, run_step: RunStep) -> None:
    """Works a repeat; ``passes`` of what it makes says which pass made it."""
    outer = hook.passes
    try:
        if step.extent is None:
            _so_often(hook, step, run_step)
        else:
            _so_far(hook, step, run_step)
    finally:
        hook.passes = outer


def _so_often(hook: Hook, step: Repeat, run_step: RunStep) -> None:
    times = step.times.at(hook.shop.size) if step.times is not None else 1
    if times > MOST_STITCHES:
        raise TooMuch(step.span)
    outer = hook.passes
    for number in range(times):
        hook.budget(step.span)
        hook.passes = (*outer, number)
        last = number == times - 1
        steps = step.steps[: len(step.steps) - step.omit] if last and step.omit else step.steps
        for inner in steps:
            if isinstance(inner, Stop):
                if last:
                    break
                continue
            run_step(hook, inner)


def _so_far(hook: Hook, step: Repeat, run_step: RunStep) -> None:
    """As many passes as fit; the last one may end at ``**`` or leave its end out."""
    cursor = hook.lap.cursor
    targets = worked_targets(step.steps)
    if not targets:
        elsewhere = driving_place(step.steps)
        if elsewhere is not None:
            cursor = cursor_for(hook, elsewhere)
            targets = (elsewhere.target,)
    match = any_of(targets, hook.lap.groups_named) if targets else None
    pair = bool(targets) and all(target.kind == "between" for target in targets)
    kept = cursor.limit
    stop = resolve_extent(hook, cursor, step.extent, step.span)
    if match is None or not cursor.size:
        hook.complain(
            "repeat",
            step.span,
            "this repeat has no place that would take it further",
            "say how many times it is worked",
            key=key_of(step.span),
        )
        return
    cursor.limit = stop
    cursor.bounded += 1
    number, need = 0, 0
    goes_on = step.extent is not None and step.extent.kind == "to"
    outer = hook.passes
    try:
        while _remains(cursor, match, pair):
            hook.budget(step.span)
            hook.passes = (*outer, number)
            taken, at, was_fresh = hook.taken, cursor.pos, cursor.fresh
            before = _left(cursor, match)
            mark = mark_pass(hook, cursor) if goes_on and before <= NEAR_THE_END else None
            finished = _one_pass(hook, step, run_step, cursor, match, pair)
            if not finished and mark is not None:
                # what is left may be meant for the steps after the repeat: they will show
                take_back_pass(hook, mark)
                hook.lap.doubts.append((step.span, *_uneven_words(hook, targets, before, need)))
                break
            if not finished:
                hook.complain("uneven", step.span, *_uneven_words(hook, targets, before, need), key=key_of(step.span), follows=True)
                cursor.pos = max(cursor.pos, min(cursor.limit, cursor.end))
                cursor.fresh = False
                break
            need = max(need, hook.taken - taken)
            number += 1
            if cursor.pos <= at and not was_fresh:
                hook.complain(
                    "repeat",
                    step.span,
                    "each pass of this repeat comes back to where it began",
                    "say how many times it is worked",
                    key=key_of(step.span),
                )
                break
    finally:
        cursor.bounded -= 1
        cursor.limit = min(kept, cursor.end)
    if number:
        hook.busy.add(key_of(step.span))
    elif first_match(cursor, match, 0, cursor.size - 1) is None:
        name = round_word(hook.laps[cursor.round] if 0 <= cursor.round < len(hook.laps) else hook.lap)
        words = " or ".join(target_word(target, hook.shop.terms) for target in targets)
        hook.idle.setdefault(
            key_of(step.span),
            (
                step.span,
                f"{name[0].upper()}{name[1:]} has no {words}, so this repeat finds nothing to do",
                what_there_is(hook, cursor, targets[0]),
            ),
        )


def _one_pass(hook: Hook, step: Repeat, run_step: RunStep, cursor: Cursor, match: Match, pair: bool) -> bool:
    """One pass; False if it wanted more places than there are."""
    for index, inner in enumerate(step.steps):
        if isinstance(inner, Stop):
            if not _remains(cursor, match, pair):
                return True
            continue
        if step.omit and index == len(step.steps) - step.omit and not _remains(cursor, match, pair):
            return True
        here, groups, within = hook.here, len(hook.open_groups), hook.within
        try:
            run_step(hook, inner)
        except Beyond:
            hook.here, hook.within = here, within
            del hook.open_groups[groups:]
            return False
    return True


def _remains(cursor: Cursor, match: Match, pair: bool) -> bool:
    """Whether there is a place for one more pass; a gap needs something on either side of it."""
    stop = min(cursor.limit, cursor.end)
    if pair:
        return gap_remains(cursor, match, stop)
    return first_match(cursor, match, cursor.following, stop) is not None


def _left(cursor: Cursor, match: Match) -> int:
    """How many places are left, looked at only near the end so that long rounds stay cheap."""
    stop = min(cursor.limit, cursor.end)
    first = cursor.following
    if stop - first > NEAR_THE_END:
        return NEAR_THE_END + 1
    return sum(1 for index in range(first, stop + 1) if match(cursor.atom(index)))


def _uneven_words(hook: Hook, targets: tuple[Target, ...], left: int, need: int) -> tuple[str, str]:
    """Message and hint for a repeat that does not come out even."""
    terms = hook.shop.terms
    wanted = [target for target in targets if target.kind != "tch"]
    word = target_word(wanted[0], terms, left) if len(wanted) == 1 else ("place" if left == 1 else "places")
    needs = f"; one repeat takes {need}" if need else ""
    return (
        f"{round_word(hook.lap)}: the repeat does not come out even: {left} {word} {'is' if left == 1 else 'are'} left{needs}",
        "say how the last repeat ends, or give the round before it another count",
    )
