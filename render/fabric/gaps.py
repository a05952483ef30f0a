"""The gaps between groups: ``sp between next two groups of Rnd 2``, ``between next two petals``.

A group worked into one place is one, its chains included ("(2 dc, ch 1, 2 dc) in next ch-1 sp"), unless the edge has groups without
chains too: among the 3-dc groups of a granny square the two of a corner are two.
"""

from __future__ import annotations

from collections.abc import Sequence

from motifold.render.fabric.bench import Hook
from motifold.render.fabric.edge import Atom, Cursor, Match, beside, first_match
from motifold.render.pattern.instructions import Target

Gap = tuple[int, int]
"""The last index of the group before it and the first of the group after it."""


def lie_between_groups(cursor: Cursor, target: Target) -> bool:
    """Whether a place between two of something means groups of several stitches on this edge."""
    beside_it = beside(target)
    return beside_it.kind == "group" or (beside_it.kind == "stitch" and cursor.has_group(beside_it.name or ""))


def next_gap(hook: Hook, cursor: Cursor, target: Target, stop: int) -> Gap | None:
    """The first gap that the hook has not come past, up to index ``stop``; a closed round has one more from its last group to its first."""
    size = cursor.size
    groups = cursor.grouped.get(target)
    if groups is None:
        groups = cursor.grouped[target] = _groups(hook, cursor, beside(target))
    begin = cursor.pos - 1 if cursor.fresh and cursor.atom(cursor.pos).space else cursor.pos
    last = (cursor.start + size - 1) if cursor.cyclic else size - 1
    open_end = cursor.cyclic and stop >= cursor.end
    for end in range(max(begin, cursor.gap + 1), min(stop, last) + 1):
        here = groups[end % size]
        if here < 0 or cursor.atom(end).space:
            continue
        two = end + 1
        while two < end + size and (cursor.cyclic or two < size) and (groups[two % size] < 0 or cursor.atom(two).space):
            two += 1
        if two >= end + size or (two >= size and not cursor.cyclic):
            return None
        if groups[two % size] != here and (open_end or two <= stop + 1):
            return end, two
    return None


def gap_remains(hook: Hook, cursor: Cursor, targets: Sequence[Target], match: Match, stop: int) -> bool:
    """Whether a gap is left: it needs something on either side, and the last may be where the round began."""
    if any(lie_between_groups(cursor, target) for target in targets):
        return any(next_gap(hook, cursor, target, stop) is not None for target in targets)
    first = first_match(cursor, match, cursor.following, stop)
    return (
        first is not None and first_match(cursor, match, first + 1, stop + (1 if cursor.cyclic and cursor.taken_start else 0)) is not None
    )


def _groups(hook: Hook, cursor: Cursor, target: Target) -> list[int]:
    """A number for each atom of the edge: the group that it belongs to, of those that the target names; -1 for none."""
    atoms = cursor.atoms
    if target.kind == "stitch":
        return [atom.group if atom.group_name == target.name else -1 for atom in atoms]
    found = _by_place(hook, cursor)
    sizes = {number: [atom for atom, one in zip(atoms, found, strict=True) if one == number] for number in set(found)}
    whole = {number for number, members in sizes.items() if number >= 0 and sum(not atom.space for atom in members) > 1}
    if any(not any(atom.space for atom in sizes[number]) for number in whole):
        return [-1 if atom.space else atom.cluster if atom.group < 0 else len(atoms) + atom.group for atom in atoms]
    return [number if number in whole else -1 for number in found]


def _by_place(hook: Hook, cursor: Cursor) -> list[int]:
    """Stitches (and the chains among them) of one place share a number; round the start of the round too."""
    atoms = cursor.atoms
    found = [-1] * len(atoms)
    before = -1  # the last stitch
    for index, atom in enumerate(atoms):
        if atom.space:
            continue
        together = before >= 0 and _share(hook, atoms[before], atom)
        found[index] = found[before] if together else index
        if together:
            for between in range(before + 1, index):
                found[between] = found[index]
        before = index
    stitches = [index for index, atom in enumerate(atoms) if not atom.space]
    if cursor.cyclic and len(stitches) > 1 and _share(hook, atoms[stitches[-1]], atoms[stitches[0]]):
        last, first = found[stitches[-1]], found[stitches[0]]
        found = [first if number == last or index > stitches[-1] or index < stitches[0] else number for index, number in enumerate(found)]
    return found


def _share(hook: Hook, one: Atom, other: Atom) -> bool:
    """Whether two neighbours are worked into one place."""
    if one.group >= 0 or other.group >= 0:
        return one.group == other.group
    if one.cluster >= 0 and one.cluster == other.cluster:
        return True
    if one.id < 0 or other.id < 0 or one.name == "sl st" or other.name == "sl st":
        return False
    legs, more = hook.stitches[one.id].legs, hook.stitches[other.id].legs
    if not legs or not more or legs[0].base.kind == "ring":
        return False
    return (legs[0].base.kind, legs[0].base.id) == (more[0].base.kind, more[0].base.id)
