"""Repeats: so many times, or as far as they go."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace

from motifold.render.fabric.absent import note_idle, what_there_is
from motifold.render.fabric.bench import MOST_STITCHES, Beyond, Hook, TooMuch
from motifold.render.fabric.claims import driving_place, worked_targets
from motifold.render.fabric.edge import Cursor, Match, any_of, first_match
from motifold.render.fabric.gaps import gap_remains
from motifold.render.fabric.places import resolve_extent
from motifold.render.fabric.resolve import cursor_for
from motifold.render.fabric.trial import PassMark, mark_pass, take_back_pass
from motifold.render.fabric.wording import key_of, round_word, target_word
from motifold.render.pattern.instructions import Chain, Group, Repeat, Step, Stop, Target, Work
from motifold.symbols.record import dataclass

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
        raise TooMuch(step.span, f"a repeat of {times:,} times")
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


@dataclass(frozen=True, slots=True)
class _Drive:
    """What takes a repeat further: the edge that it goes along, and the places on it. ``pair``: gaps, with something on either side."""

    hook: Hook
    cursor: Cursor
    targets: tuple[Target, ...]
    match: Match
    pair: bool

    def remains(self) -> bool:
        """Whether there is a place for one more pass."""
        stop = min(self.cursor.limit, self.cursor.end)
        if self.pair:
            return gap_remains(self.hook, self.cursor, self.targets, self.match, stop)
        return first_match(self.cursor, self.match, self.cursor.following, stop) is not None

    def left(self) -> int:
        """How many places are left, looked at only near the end so that long rounds stay cheap."""
        stop = min(self.cursor.limit, self.cursor.end)
        first = self.cursor.following
        if stop - first > NEAR_THE_END:
            return NEAR_THE_END + 1
        return sum(1 for index in range(first, stop + 1) if self.match(self.cursor.atom(index)))


def _drive_of(hook: Hook, step: Repeat) -> _Drive | None:
    """None where no place in the repeat goes on along an edge."""
    cursor = hook.lap.cursor
    targets = worked_targets(step.steps)
    elsewhere = None if targets else driving_place(step.steps)
    if elsewhere is not None:
        cursor = cursor_for(hook, elsewhere)
        targets = (elsewhere.target,)
    if not targets or not cursor.size:
        return None
    return _Drive(hook, cursor, targets, any_of(targets, hook.lap.groups_named), all(target.kind == "between" for target in targets))


def _so_far(hook: Hook, step: Repeat, run_step: RunStep) -> None:
    """As many passes as fit; the last one may end at ``**`` or leave its end out."""
    if step.style == "each":
        _as_they_come(hook, step, run_step)
        return
    drive = _drive_of(hook, step)
    if drive is None:
        _complain_of_standing_still(hook, step, "this repeat has no place that would take it further")
        return
    cursor = drive.cursor
    kept = cursor.limit
    cursor.limit = resolve_extent(hook, cursor, step.extent, step.span)
    cursor.bounded += 1
    outer = hook.passes
    number, need = 0, 0
    ending = _Ending(hook, step, cursor)
    try:
        while drive.remains():
            hook.budget(step.span)
            hook.passes = (*outer, number)
            taken, at, was_fresh = hook.taken, cursor.pos, cursor.fresh
            if not _pass_or_part(hook, step, run_step, drive, need, ending):
                break
            need = max(need, hook.taken - taken)
            number += 1
            if cursor.pos <= at and not was_fresh:
                _complain_of_standing_still(hook, step, "each pass of this repeat comes back to where it began")
                break
        ending.take_back()
    finally:
        cursor.bounded -= 1
        cursor.limit = min(kept, cursor.end)
    if number:
        hook.busy.add(key_of(step.span))
    elif first_match(cursor, drive.match, 0, cursor.size - 1) is None:
        _note_idle(hook, step, drive)


def _as_they_come(hook: Hook, step: Repeat, run_step: RunStep) -> None:
    """Several kinds of place, each with what goes into it: whichever comes next. A corner is no plain space, a dc no plain stitch."""
    cursor = hook.lap.cursor
    kept = cursor.limit
    cursor.limit = resolve_extent(hook, cursor, step.extent, step.span)
    kinds: list[tuple[int, Match, Step]] = []
    for inner in step.steps:
        if isinstance(inner, Work | Group) and inner.place is not None:
            place = inner.place
            plain = 2 * (not place.target.corner) + (place.target.kind == "st" or place.target.chains is None)
            kinds.append((plain, hook.match_of(place), replace(inner, place=replace(place, which="next", each=False))))
    kinds.sort(key=lambda kind: kind[0])
    found = True
    while found:
        hook.budget(step.span)
        stop = min(cursor.limit, cursor.end)
        index = first_match(cursor, lambda atom: any(match(atom) for _, match, _ in kinds), cursor.following, stop)
        found = index is not None
        if index is not None:
            atom = cursor.atom(index)
            run_step(hook, next(inner for _, match, inner in kinds if match(atom)))
    cursor.limit = min(kept, cursor.end)


class _Ending:
    """Where the last pass ends: at ``**`` in so many words, whatever is left, if the line has something to work into the rest."""

    def __init__(self, hook: Hook, step: Repeat, cursor: Cursor) -> None:
        self.hook, self.cursor = hook, cursor
        self.mark: PassMark | None = None
        self.omitting = False
        at = next((index for index, other in enumerate(hook.rest) if other is step), None)
        later = hook.rest[at + 1 :] if at is not None else ()
        stops = any(isinstance(inner, Stop) for inner in step.steps)
        self.watched = stops and bool(worked_targets(later))
        self.begins_again = _begins_again(step, later)

    def at_stop(self) -> None:
        """A pass comes to ``**``."""
        if self.watched:
            self.mark = mark_pass(self.hook, self.cursor)

    def at_omission(self, drive: _Drive) -> None:
        """A pass comes to what the last one leaves out: if that does not fit any more, this was the last."""
        self.omitting = drive.left() <= NEAR_THE_END
        if self.omitting:
            self.mark = mark_pass(self.hook, self.cursor)

    def past_omission(self) -> None:
        """It did fit."""
        if self.omitting:
            self.mark, self.omitting = None, False

    def take_back(self) -> bool:
        """Undoes what was worked since the last ``**``; False if there was none."""
        if self.mark is None:
            return False
        take_back_pass(self.hook, self.mark)
        self.mark = None
        return True


def _begins_again(step: Repeat, later: Sequence[Step]) -> bool:
    """Whether what follows a repeat "around" begins as one more pass of it: "..., dc in last sp" is the end that the passes leave over."""
    first = next((inner for inner in step.steps if isinstance(inner, Work | Group | Chain)), None)
    after = next((other for other in later if isinstance(other, Work | Group | Chain)), None)
    if isinstance(first, Work) and isinstance(after, Work):
        return first.stitch == after.stitch and after.place is not None and after.place.which == "last"
    return isinstance(first, Chain) and isinstance(after, Chain) and first.count == after.count and bool(worked_targets(later))


def _pass_or_part(hook: Hook, step: Repeat, run_step: RunStep, drive: _Drive, need: int, ending: _Ending) -> bool:
    """One pass; False if only a part of it fits. Before a place that is named, what is left may be meant for the steps that follow."""
    cursor = drive.cursor
    before = drive.left()
    goes_on = step.extent is not None and (step.extent.kind == "to" or (ending.begins_again and step.extent.kind != "last"))
    mark = mark_pass(hook, cursor) if goes_on and before <= NEAR_THE_END else None
    if _one_pass(hook, step, run_step, drive, ending):
        return True
    if ending.take_back():
        return False
    words = _uneven_words(hook, drive.targets, before, need)
    if mark is not None:
        take_back_pass(hook, mark)
        hook.lap.doubts.append((step.span, *words))
        return False
    hook.complain("uneven", step.span, *words, key=key_of(step.span), follows=True)
    cursor.pos = max(cursor.pos, min(cursor.limit, cursor.end))
    cursor.fresh = False
    return False


def _complain_of_standing_still(hook: Hook, step: Repeat, message: str) -> None:
    hook.complain("repeat", step.span, message, "say how many times it is worked", key=key_of(step.span), follows=True)


def _note_idle(hook: Hook, step: Repeat, drive: _Drive) -> None:
    """A repeat that finds nothing: a slip, unless its line serves several rounds and it finds something in another."""
    if hook.tainted:
        return
    under = drive.cursor.round
    name = round_word(hook.laps[under] if 0 <= under < len(hook.laps) else hook.lap)
    words = " or ".join(target_word(target, hook.shop.terms) for target in drive.targets)
    message = f"{name[0].upper()}{name[1:]} has no {words}, so this repeat finds nothing to do"
    note_idle(hook, step.span, message, what_there_is(hook, drive.cursor, drive.targets[0]))


def _one_pass(hook: Hook, step: Repeat, run_step: RunStep, drive: _Drive, ending: _Ending) -> bool:
    """One pass; False if it wanted more places than there are."""
    for index, inner in enumerate(step.steps):
        if isinstance(inner, Stop):
            ending.at_stop()
            if not drive.remains():
                return True
            continue
        if step.omit and index == len(step.steps) - step.omit:
            if not drive.remains():
                return True
            ending.at_omission(drive)
        here, groups, within = hook.here, len(hook.open_groups), hook.within
        try:
            run_step(hook, inner)
        except Beyond:
            hook.here, hook.within = here, within
            del hook.open_groups[groups:]
            return False
    ending.past_omission()
    return True


def _uneven_words(hook: Hook, targets: tuple[Target, ...], left: int, need: int) -> tuple[str, str]:
    """Message and hint for a repeat that does not come out even."""
    terms = hook.shop.terms
    wanted = [target for target in targets if target.kind != "tch"]
    word = target_word(wanted[0], terms, left) if len(wanted) == 1 else ("place" if left == 1 else "places")
    needs = f"; one repeat takes {need}" if need > left else ""
    return (
        f"{round_word(hook.lap)}: the repeat does not come out even: {left} {word} {'is' if left == 1 else 'are'} left{needs}",
        "say how the last repeat ends, or give the round before it another count",
    )
