"""Where stitches go: a place in words becomes spots on an edge, and the cursor moves with them."""

from __future__ import annotations

from collections.abc import Iterator

from motifold.render.fabric.absent import chain_used_up, missing, note_idle, on_own_chain, warn_passed, what_there_is
from motifold.render.fabric.bench import Beyond, Hook
from motifold.render.fabric.claims import is_turning_chain
from motifold.render.fabric.edge import Cursor, Match, beside, first_match, group_range, has_sides, last_match, matcher
from motifold.render.fabric.gaps import gap_remains, lie_between_groups, next_gap
from motifold.render.fabric.left import leave_behind
from motifold.render.fabric.marks import before_index, middle
from motifold.render.fabric.model import Base, Foot
from motifold.render.fabric.wording import key_of, round_word, target_word
from motifold.render.pattern.instructions import Extent, Loop, Place, Target
from motifold.render.pattern.problem import Span

RING = Base("ring", 0, "ring")
_FOOT: dict[Loop | None, Foot] = {None: "loops", "back": "back loop", "front": "front loop"}


def base_of(hook: Hook, cursor: Cursor, index: int, place: Place | None) -> Base:
    """The base that the atom at an index offers, entered in the manner that the place says."""
    atom = cursor.atom(index)
    if atom.space:
        return Base("space", atom.id, "space")
    if atom.chains and place is not None and place.target.kind == "sp":
        return Base("space", hook.stitches[hook.stitches[atom.id].chains[0]].run or 0, "space")
    return Base("stitch", atom.id, "row end" if atom.name == "row end" else foot_of(hook, place))


def foot_of(hook: Hook, place: Place | None) -> Foot:
    """How a stitch is entered: which loops, or round its post from which side."""
    if place is None:
        return "loops"
    if place.manner == "around":
        return "back post" if hook.behind else "front post"
    return _FOOT[place.loop]


def take(hook: Hook, cursor: Cursor, index: int) -> None:
    """Moves to the place at an index: it is the current one from now on."""
    cursor.pos = index
    cursor.fresh = False
    cursor.sub = cursor.past = -1
    cursor.reached_by_walk = hook.walking
    hook.taken += 1
    lap = hook.lap
    lap.covered, lap.uncovered = 0, (0, 0)
    if cursor.cyclic and index >= cursor.start + cursor.size:
        cursor.wrapped = True
    if index == cursor.start and not hook.walking:
        cursor.start_came = not cursor.atom(index).space
        use_start(cursor)


def use_start(cursor: Cursor, groups: frozenset[str] = frozenset()) -> None:
    """The place that the round began in is worked into in so many words: neither it nor the rest of its petal (``groups``) comes again."""
    cursor.start_worked = True
    cursor.taken_start = True
    if not cursor.size:
        return
    last, begun = cursor.end, cursor.atom(cursor.start)
    while begun.group_name in groups and cursor.atom(last).group == begun.group and last > cursor.pos:
        last -= 1
    cursor.limit = min(cursor.limit, last)


def find_next(hook: Hook, cursor: Cursor, match: Match, *, wrap: bool = True) -> int | None:
    """The index of the next place that matches; the last of a round may come round to where it began."""
    index = first_match(cursor, match, cursor.following, cursor.limit)
    if index is not None or not wrap or not cursor.cyclic or not cursor.size:
        return index
    start = cursor.start + cursor.size
    free = not (cursor is hook.lap.began and cursor.start_worked) and not cursor.wrapped and cursor.taken_start and cursor.pos < start
    free = free and not cursor.start_came
    if free and not (cursor.bounded and (cursor.start_worked or cursor.limit < cursor.end)) and match(cursor.atom(start)):
        return start
    return None


def beyond(hook: Hook, cursor: Cursor, place: Place | None, span: Span, target: Target) -> Base:
    """No such place before the end: inside a bounded repeat that ends it, else one more stitch is wanted than there is."""
    lap = hook.lap
    known = place is not None and id(place) in cursor.absent
    there_is_none = not known and _has_none(hook, cursor, target)
    if cursor.bounded and not there_is_none and not known:
        raise Beyond
    if cursor.spiral and target.kind in ("st", "stitch") and lap.overrun < len(lap.made):
        space, own = lap.made[lap.overrun]
        lap.overrun += 1
        cursor.pos = max(cursor.pos, cursor.end)
        return Base("space" if space else "stitch", own, "space" if space else foot_of(hook, place))
    if there_is_none:
        missing(hook, cursor, span, target)
        if place is not None:
            cursor.absent.add(id(place))
    if known or (there_is_none and place is not None):
        instead = Target("sp") if target.kind == "sp" else Target("st")
        from_here, to_there = cursor.dry.get(instead.kind, (cursor.following + 1, -1))
        searched = cursor.following >= from_here and cursor.limit <= to_there
        index = None if searched else find_next(hook, cursor, matcher(instead))
        if index is None:
            cursor.dry[instead.kind] = cursor.following, cursor.limit
        if index is not None:
            take(hook, cursor, index)
            return base_of(hook, cursor, index, place)
        return current_base(hook, cursor, place)
    lap.faulty = True
    if lap.excess_span is None:
        lap.excess_span, lap.excess_target, lap.excess_round = span, target, cursor.round
    lap.excess += target == lap.excess_target
    return current_base(hook, cursor, place)


def _has_none(hook: Hook, cursor: Cursor, target: Target) -> bool:
    """Whether the whole edge has no place of the kind."""
    return cursor.size > 0 and first_match(cursor, matcher(target, hook.lap.groups_named), 0, cursor.size - 1) is None


def current_base(hook: Hook, cursor: Cursor, place: Place | None) -> Base:
    """The place where the hook is now."""
    if not cursor.size:
        return RING
    if cursor.sub >= 0 and cursor.atom(cursor.pos).space:
        return chain_base(hook, cursor, cursor.pos, cursor.sub)
    return base_of(hook, cursor, cursor.pos, place)


def chain_base(hook: Hook, cursor: Cursor, index: int, sub: int) -> Base:
    """One chain of the space at an index, counted as the hook meets them."""
    stitches = hook.runs[cursor.atom(index).id].stitches
    order = stitches[::-1] if cursor.flipped else stitches
    return Base("stitch", order[min(sub, len(order) - 1)], "loops")


def next_chain(hook: Hook, cursor: Cursor, place: Place, span: Span) -> Base:
    """``next ch``: of one's own chain being worked back along, of the space entered, or of the next space or foundation chain."""
    if hook.lap.spine:
        return Base("stitch", hook.lap.spine.pop(), foot_of(hook, place))
    if cursor.size and cursor.sub >= 0:
        atom = cursor.atom(cursor.pos)
        if atom.space and cursor.sub + 1 < atom.chains:
            cursor.sub += 1
            hook.taken += 1
            return chain_base(hook, cursor, cursor.pos, cursor.sub)
    index = find_next(hook, cursor, matcher(place.target))
    if index is None and on_own_chain(hook):
        return chain_used_up(hook, place)
    if index is None:
        return beyond(hook, cursor, place, span, place.target)
    take(hook, cursor, index)
    if cursor.atom(index).space:
        cursor.sub = 0
        return chain_base(hook, cursor, index, 0)
    return base_of(hook, cursor, index, place)


def center_of(hook: Hook, cursor: Cursor, first: int, last: int, place: Place | None) -> tuple[Base, int]:
    """The middle of a group: its middle space if it has one, else its middle stitch, else the gap between the middle two."""
    spaces = [i for i in range(first, last + 1) if cursor.atom(i).space]
    if len(spaces) % 2:
        middle = spaces[len(spaces) // 2]
        return base_of(hook, cursor, middle, place), middle
    stitches = [i for i in range(first, last + 1) if not cursor.atom(i).space]
    middle = stitches[len(stitches) // 2]
    if len(stitches) % 2:
        return base_of(hook, cursor, middle, place), middle
    before = stitches[len(stitches) // 2 - 1]
    return Base("gap", cursor.atom(middle).id, "gap", cursor.atom(before).id), before


def enter(hook: Hook, cursor: Cursor, index: int, place: Place) -> Base:
    """Takes the place at an index; a group is entered at its middle."""
    target = place.target
    atom = cursor.atom(index)
    named = target.kind == "group" or (target.kind == "stitch" and atom.group_name == target.name and atom.group >= 0)
    if named and target.name != "picot":
        first, last = group_range(cursor, index)
        if last > first:
            base, at = center_of(hook, cursor, first, last, place)
            take(hook, cursor, at)
            if target.kind == "stitch" and last < cursor.start + cursor.size:
                cursor.past = last
            return base
    take(hook, cursor, index)
    return base_of(hook, cursor, index, place)


def resolve_extent(hook: Hook, cursor: Cursor, extent: Extent | None, span: Span) -> int:
    """The last index that an "each" or a repeat may take."""
    if extent is None or extent.kind in ("around", "across", "end"):
        return min(cursor.limit, cursor.end)
    if extent.kind == "last":
        count = (extent.count.at(hook.shop.size) if extent.count else 1) or 0
        if count == 0:
            return cursor.limit
        match = _counted_back(hook, extent.target or Target("st"))
        found = last_match(cursor, match, cursor.following, last_of_its_side(cursor, match, cursor.limit), count)
        return cursor.pos if found is None else found - 1
    place = extent.place
    if place is None:
        return cursor.limit
    if place.which == "beg" and place.target.kind in ("sp", "st", "stitch"):
        return min(cursor.start + cursor.size - 1, max(cursor.limit, cursor.end))
    if is_turning_chain(place):
        found = last_match(cursor, lambda atom: atom.standing, cursor.following, cursor.limit)
        return cursor.limit if found is None else found - 1
    match = _counted_back(hook, place.target) if place.which == "last" and place.of is None else hook.match_of(place)
    if place.which == "last":
        found = last_match(cursor, match, cursor.following, last_of_its_side(cursor, match, cursor.limit))
        return cursor.limit if found is None else found - 1
    if place.which == "first":
        return min(cursor.limit, cursor.start + cursor.size - 1)
    reach = max(cursor.limit, cursor.start + cursor.size if cursor.cyclic else cursor.limit)
    centered = place.which == "center" and place.of is None
    found = middle(cursor, match) if centered else first_match(cursor, match, cursor.following, reach)
    if found is None:
        if first_match(cursor, match, 0, cursor.size - 1) is None:
            missing(hook, cursor, place.span, place.target)
        return cursor.limit
    return found - 1 if extent.count is None else before_index(hook, cursor, extent, found)


def _counted_back(hook: Hook, target: Target) -> Match:
    """What "to last st" counts back over: the turning chain too, unless as many stitches are worked before the line comes to it."""
    plain = matcher(target)
    if not hook.lap.counts_tch or target.kind not in ("st", "stitch"):
        return plain
    return lambda atom: plain(atom) or (atom.apart and target.name in (None, atom.name))


def on_foundation_chain(cursor: Cursor) -> bool:
    """Whether the edge is a chain that nothing was worked along yet."""
    return bool(cursor.atoms) and cursor.atoms[0].name == "ch" and not has_sides(cursor)


def along_one_side(cursor: Cursor, match: Match, extent: Extent | None, stop: int) -> int:
    """Where an edge has several sides, "each st across" ends with the side that it begins on; "around" goes on."""
    if extent is not None and extent.kind not in ("across", "end"):
        return stop
    first = first_match(cursor, match, cursor.following, stop)
    if first is None:
        return stop
    side = cursor.atom(first).side
    index = first
    while index < stop and cursor.atom(index + 1).side == side:
        index += 1
    return index


def last_of_its_side(cursor: Cursor, match: Match, stop: int) -> int:
    """Round a piece in rows, "last st" is the last of the side that the hook is on."""
    return along_one_side(cursor, match, None, stop) if cursor.sided else stop


def spots_of_each(hook: Hook, cursor: Cursor, place: Place, span: Span) -> Iterator[Base]:
    """Every spot of "in each st around", "in next 3 sts", "in each of last 2 sts", one after another."""
    targets = (place.target, *place.also)
    if place.which in ("last", "first", "next") or (place.which == "each" and place.extent is None and place.count.at(hook.shop.size) > 1):
        yield from _counted(hook, cursor, place, span)
        return
    match = hook.match_of(place)
    stop = along_one_side(cursor, match, place.extent, resolve_extent(hook, cursor, place.extent, span))
    chains = any(target.kind == "ch" for target in targets)
    if chains and hook.lap.spine:
        yield from _along_own_chain(hook, cursor, place, span)
        return
    before = cursor.pos
    found_any = False
    while place.target.kind == "between" and gap_remains(hook, cursor, (place.target,), match, stop):
        yield between(hook, cursor, place, span)
        found_any = True
    while place.target.kind != "between":
        if chains and cursor.size and cursor.sub >= 0 and cursor.sub + 1 < cursor.atom(cursor.pos).chains:
            yield next_chain(hook, cursor, place, span)
            continue
        index = first_match(cursor, match, cursor.following, stop)
        if index is None:
            break
        found_any = True
        if chains and cursor.atom(index).space and not any(t.kind == "sp" for t in targets):
            take(hook, cursor, index)
            cursor.sub = 0
            yield chain_base(hook, cursor, index, 0)
        else:
            yield enter(hook, cursor, index, place)
    if not found_any and cursor.pos == before and first_match(cursor, match, 0, cursor.size - 1) is None and cursor.size:
        _idle(hook, cursor, place, span)
    elif found_any:
        hook.busy.add(key_of(place.span))


def _along_own_chain(hook: Hook, cursor: Cursor, place: Place, span: Span) -> Iterator[Base]:
    """``each ch to end`` where a chain just made is worked back along: its own, to its end, none of the round below."""
    extent = place.extent
    kept = (extent.count.at(hook.shop.size) if extent.count else 1) if extent is not None and extent.kind == "last" else 0
    for _ in range(len(hook.lap.spine) - kept):
        yield next_chain(hook, cursor, place, span)


def _idle(hook: Hook, cursor: Cursor, place: Place, span: Span) -> None:
    """An "each" that finds nothing: a slip, unless the line serves several rounds and finds something in another."""
    if hook.tainted:
        return
    name = round_word(hook.laps[cursor.round] if 0 <= cursor.round < len(hook.laps) else hook.lap)
    message = f"{name[0].upper()}{name[1:]} has no {target_word(place.target, hook.shop.terms)} to work into"
    note_idle(hook, place.span, message, what_there_is(hook, cursor, place.target))


def _counted(hook: Hook, cursor: Cursor, place: Place, span: Span) -> Iterator[Base]:
    count = place.count.at(hook.shop.size)
    own = place.target.kind == "ch" and bool(hook.lap.spine)  # "each of last 2 ch" of a chain that is worked back along
    if place.which == "last" and not own:
        match = hook.match_of(place)
        stop = last_of_its_side(cursor, match, min(cursor.limit, cursor.end))
        first = last_match(cursor, match, cursor.following, stop, count)
        if first is None:
            first = last_match(cursor, match, cursor.following, stop)
        if first is not None:
            leave_behind(hook, cursor, first)
            if cursor.sub < 0 and first > cursor.following:
                cursor.pos, cursor.fresh = first - 1, False
    for _ in range(count):
        hook.budget(span)
        if place.target.kind == "ch":
            yield next_chain(hook, cursor, place, span)
            continue
        yield next_base(hook, cursor, place, span)


def next_base(hook: Hook, cursor: Cursor, place: Place, span: Span) -> Base:
    """The next place of its kind."""
    if hook.lap.spine:
        hook.lap.spine.clear()
    first = cursor.following
    index = None if id(place) in cursor.absent else find_next(hook, cursor, hook.match_of(place))
    if index is None:
        return beyond(hook, cursor, place, span, place.target)
    if index == cursor.start + cursor.size:
        cursor.came_back = span, place.target
        if cursor.start_worked:
            cursor.came_round = span, place.target
    if index > first:
        warn_passed(hook, cursor, first, index, place)
        _note_side_passed(hook, cursor, first, index, place)
    return enter(hook, cursor, index, place)


def _note_side_passed(hook: Hook, cursor: Cursor, first: int, index: int, place: Place) -> None:
    """From corner to corner a whole side is passed: what the line works on the others is left over on this one."""
    there = cursor.atom(index)
    whole = there.corner and not cursor.fresh and cursor.atom(first - 1).corner
    if hook.walking or not (whole or (place.target.kind == "corner" and not there.space)):
        return
    if hook.lap.left_at is None:
        hook.lap.left_at = place.span
    leave_behind(hook, cursor, index)


def between(hook: Hook, cursor: Cursor, place: Place, span: Span) -> Base:
    """``between next 2 dc``, ``sp between next two groups``: the gap, or the space that lies in it."""
    target = beside(place.target)
    match = matcher(target, hook.lap.groups_named)
    if place.manner != "before" and lie_between_groups(cursor, target):
        gap = next_gap(hook, cursor, target, cursor.limit)
        if gap is None:
            return beyond(hook, cursor, place, span, place.target)
        end, two = gap
        cursor.gap = end
        return _in_gap(hook, cursor, end, two, place)
    one = find_next(hook, cursor, match)
    if one is None:
        return beyond(hook, cursor, place, span, target)
    if place.manner == "before":
        return _before(hook, cursor, place, match, one)
    limit = cursor.limit + (1 if cursor.cyclic and cursor.taken_start else 0)
    further = first_match(cursor, match, one + 1, limit)
    return beyond(hook, cursor, place, span, target) if further is None else _in_gap(hook, cursor, one, further, place)


def _in_gap(hook: Hook, cursor: Cursor, end: int, two: int, place: Place) -> Base:
    """The gap from one index to another: the space in it, if there is one."""
    spaces = [i for i in range(end + 1, two) if cursor.atom(i).space]
    if spaces:
        take(hook, cursor, spaces[0])
        return base_of(hook, cursor, spaces[0], place)
    take(hook, cursor, end)
    return Base("gap", cursor.atom(two).id, "gap", cursor.atom(end).id)


def _before(hook: Hook, cursor: Cursor, place: Place, match: Match, index: int) -> Base:
    """``sp before next dc``: the gap on this side of what comes next, which is still to be worked; from that gap it is the one after."""
    there = hook.lap.last_base
    if there is not None and there.kind == "gap" and there.id == cursor.atom(index).id:
        further = first_match(cursor, match, group_range(cursor, index)[1] + 1, cursor.limit + (1 if cursor.cyclic else 0))
        index = index if further is None else further
    if index - 1 > cursor.pos:
        take(hook, cursor, index - 1)
    if cursor.atom(index - 1).space:
        return base_of(hook, cursor, index - 1, place)
    return Base("gap", cursor.atom(index).id, "gap", cursor.atom(index - 1).id)
