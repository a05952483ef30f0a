"""Stitch markers, and the stitch in the middle: places that are found by what hangs in them or by counting."""

from __future__ import annotations

from motifold.render.fabric.bench import Hook, Lap
from motifold.render.fabric.edge import Atom, Cursor, Match, first_match, last_match, matcher
from motifold.render.pattern.instructions import Extent, Marker, Target


def mark(hook: Hook, step: Marker) -> None:
    """``pm``: in the stitch just made, in the first or the next one of the round. ``sm`` with a place: it moves up by itself."""
    lap, place = hook.lap, step.place
    made = len(lap.made)
    if place is not None and (place.which == "each" or (place.target.kind == "corner" and place.which != "next")):
        if lap.made or not hook.laps:
            lap.marks_each.append(place.target)
        else:  # the round was joined before they are placed
            _hang_in_each(place.target, hook.laps[-1].atoms)
        return
    if place is not None and place.target.kind == "sp" and (place.which in ("same", "last", "current", "made") or step.manner == "slip"):
        if lap.made or hook.pending or not hook.laps:
            lap.marks.append(_space_just_made(hook, lap, place.target.chains))
        else:
            _hang_in_each(place.target, hook.laps[-1].atoms, last=True)
        return
    if step.manner == "slip":
        if place is None and lap.last_base is not None and lap.cursor.size:
            worked = lap.cursor.atom(lap.cursor.pos).marked and not lap.cursor.fresh
            lap.marks.append(made - 1 if worked and made else made)
    elif place is None or place.which in ("made", "same", "last", "current"):
        lap.marks.append(made if hook.pending or not made else made - 1)
    elif place.which == "first" and place.of is None:
        lap.marks.append(0)
    elif place.which == "next" and place.of is None and not place.each:
        lap.marks.append(made)


def hang_markers(hook: Hook, lap: Lap, atoms: list[Atom]) -> None:
    """The markers of a finished round: where it placed them, else straight above those of the round below, the middle one of several."""
    for position in lap.marks:
        if position < len(atoms):
            atoms[position].marked = True
    for target in lap.marks_each:
        _hang_in_each(target, atoms)
    if lap.marks or lap.marks_each:
        return
    for below in lap.cursor.atoms:
        if below.marked:
            above = [index for index, atom in enumerate(atoms) if not atom.space and _stands_in(hook, atom, below)]
            spaces = [index for index in range(above[0], above[-1]) if atoms[index].space] if above and below.space else []
            if above:  # a marker in a space goes on in the space above it, if the same group has one
                found = spaces or above
                atoms[found[(len(found) - 1) // 2]].marked = True


def _hang_in_each(target: Target, atoms: list[Atom], last: bool = False) -> None:
    """A marker in every place of a finished round that the words name, or in the ``last`` one only."""
    found = list(filter(matcher(target), atoms))
    for atom in found[-1:] if last else found:
        atom.marked = True


def _space_just_made(hook: Hook, lap: Lap, chains: int | None) -> int:
    """Where in ``made`` the space stands that was made last, of so many chains: perhaps it is still being made."""
    if hook.pending and chains in (None, len(hook.pending)):
        return len(lap.made)
    found = (k for k in range(len(lap.made) - 1, -1, -1) if lap.made[k][0] and chains in (None, hook.runs[lap.made[k][1]].chains))
    return next(found, len(lap.made))


def _stands_in(hook: Hook, atom: Atom, below: Atom) -> bool:
    legs = hook.stitches[atom.id].legs
    return any(leg.base.id == below.id and (leg.base.kind == "space") == below.space for leg in legs)


def middle(cursor: Cursor, match: Match) -> int | None:
    """The index of the middle one of all that match along the edge; of an even number, the one before the middle."""
    found: list[int] = []
    at = first_match(cursor, match, cursor.start, cursor.start + cursor.size - 1)
    while at is not None:
        found.append(at)
        at = first_match(cursor, match, at + 1, cursor.start + cursor.size - 1)
    return found[(len(found) - 1) // 2] if found else None


def before_index(hook: Hook, cursor: Cursor, extent: Extent, found: int) -> int:
    """The last index that "to 2 sts before marker" may take: so many are left before the place that was found."""
    count = extent.count.at(hook.shop.size) if extent.count is not None else 0
    index = last_match(cursor, matcher(extent.target or Target("st")), cursor.following, found - 1, count)
    return cursor.pos if index is None else index - 1
