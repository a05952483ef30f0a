"""Corners and sides, found by structure: a corner is the space, or the middle stitch, of a corner group."""

from __future__ import annotations

from collections.abc import Sequence

from motifold.render.fabric.bench import Hook, Lap
from motifold.render.fabric.edge import Atom

Key = tuple[str, int]
_NO_CORNER = ("ring", "row end")
_FRAME = 4
"""A border all round a piece in rows has so many corners."""


def find_corners(hook: Hook, lap: Lap, count: int, before: Lap | None) -> list[int]:
    """Indices of the ``count`` corner places among the atoms of a round; empty where its structure does not show them.

    In this order: spaces with stitches of one place on either side; three or more stitches in one stitch (the middle one);
    the longest spaces; what is worked over the corners of the round before.
    """
    atoms = lap.atoms
    if count < 3 or lap.linear or len(atoms) < count:
        return []
    old = {(atom.space, atom.id) for atom in before.atoms if atom.corner} if before is not None else set()
    for look in (_spaces_in_one_place, _middles, _longest):
        chosen = _choose(hook, atoms, look(hook, atoms), count, old)
        if chosen:
            return chosen
    return _choose(hook, atoms, _above(hook, atoms, old), count, old)


def sides_alike(lap: Lap) -> bool | None:
    """Whether all sides of a round, from corner to corner, have as many places; None where it has no corners."""
    corners = [index for index, atom in enumerate(lap.atoms) if atom.corner]
    if lap.linear or len(corners) < 3:
        return None
    return len({(end - start) % len(lap.atoms) for start, end in zip(corners, corners[1:] + corners[:1], strict=True)}) == 1


def find_row_corners(hook: Hook, lap: Lap, count: int) -> list[int]:
    """The same of a row of half a motif, whose ends are no corners: exactly ``count`` of one kind, or none."""
    inner = range(1, len(lap.atoms) - 1)
    for look in (_spaces_in_one_place, _middles, _longest):
        found = [index for index in look(hook, lap.atoms) if index in inner]
        if len(found) == count:
            return found
    return []


def _base(hook: Hook, atom: Atom, last: bool) -> Key | None:
    if atom.space:
        return None
    legs = hook.stitches[atom.id].legs
    if not legs:
        return None
    base = legs[-1 if last else 0].base
    return ("row end" if base.foot == "row end" else base.kind, base.id)  # the end of a row is another place than its last stitch


def _spaces_in_one_place(hook: Hook, atoms: Sequence[Atom]) -> list[int]:
    found = []
    size = len(atoms)
    for index, atom in enumerate(atoms):
        if atom.space:
            before = _base(hook, atoms[index - 1], True)
            if before is not None and before == _base(hook, atoms[(index + 1) % size], False):
                found.append(index)
    return found


def _middles(hook: Hook, atoms: Sequence[Atom]) -> list[int]:
    """The middle of each run of three or more stitches in one stitch or space."""
    size = len(atoms)
    first, last = ([_base(hook, atom, which) for atom in atoms] for which in (False, True))
    start = next((i for i in range(size) if first[i] != last[i - 1]), None)
    if start is None:
        return []
    found = []
    length = 0
    for step in range(size + 1):
        index = (start + step) % size
        base = first[index]
        same = step < size and step > 0 and base is not None and base == last[index - 1] and base[0] not in _NO_CORNER
        if same:
            length += 1
            continue
        if length >= 3:
            found.append((start + step - length + length // 2 if length % 2 else start + step - length // 2 - 1) % size)
        length = 1 if base is not None else 0
    return found


def _longest(_hook: Hook, atoms: Sequence[Atom]) -> list[int]:
    most = max((atom.chains for atom in atoms if atom.space), default=0)
    return [index for index, atom in enumerate(atoms) if atom.space and atom.chains == most]


def _above(hook: Hook, atoms: Sequence[Atom], old: set[tuple[bool, int]]) -> list[int]:
    """The middle one of what is worked into each corner of the round before."""
    over: dict[Key, list[int]] = {}
    for index, atom in enumerate(atoms):
        base = _base(hook, atom, False)
        if base is not None and (base[0] == "space", base[1]) in old:
            over.setdefault(base, []).append(index)
    return sorted(group[len(group) // 2] for group in over.values())


def _choose(hook: Hook, atoms: Sequence[Atom], candidates: list[int], count: int, old: set[tuple[bool, int]]) -> list[int]:
    """Exactly ``count`` of the candidates: all, the longest, or those over the old corners. A round of equal ones shows no corners."""
    if len(candidates) <= count:
        return candidates if len(candidates) == count else []
    most = max(atoms[index].chains for index in candidates)
    longest = [index for index in candidates if atoms[index].chains == most]
    if len(longest) == count:
        return longest
    pool = longest if len(longest) > count else candidates
    above = [index for index in pool if _stands_over(hook, atoms, index, old)]
    return above if len(above) == count else []


def _stands_over(hook: Hook, atoms: Sequence[Atom], index: int, old: set[tuple[bool, int]]) -> bool:
    near = atoms[index] if not atoms[index].space else atoms[index - 1]
    base = _base(hook, near, True)
    return base is not None and (base[0] == "space", base[1]) in old


def mark_corners(hook: Hook, lap: Lap, before: Lap | None) -> None:
    """Marks the corner places of a finished round, and the runs and groups that they belong to."""
    count = hook.polygon or (_FRAME if _goes_round_rows(hook, lap, before) else 0)
    for index in find_corners(hook, lap, count, before):
        atom = lap.atoms[index]
        atom.corner = True
        near = atom if not atom.space else lap.atoms[index - 1]
        if atom.space:
            hook.runs[atom.id].corner = True
        group = hook.stitches[near.id].group if not near.space else None
        if group is not None:
            hook.groups[group].corner = True


def _goes_round_rows(hook: Hook, lap: Lap, before: Lap | None) -> bool:
    """Whether a round is a border of a piece in rows: it goes over row ends, or is worked on a border that has corners."""
    kinds = [one.kind for one in hook.laps]
    in_rows = "row" in kinds or (kinds[:1] == ["edge"] and any(atom.name == "row end" for atom in hook.laps[0].atoms))
    if lap.kind != "round" or not in_rows:
        return False
    if before is not None and before.kind == "round":
        return any(atom.corner for atom in before.atoms)
    return any(leg.base.foot == "row end" for number in lap.stitches for leg in hook.stitches[number].legs)
