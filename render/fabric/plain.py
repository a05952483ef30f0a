"""The commonest line of all, one plain stitch in each place: found at one go, without asking again for each what holds for all."""

from __future__ import annotations

from motifold.render.fabric.bench import Hook
from motifold.render.fabric.edge import Atom, Cursor
from motifold.render.fabric.model import Base, Foot
from motifold.render.fabric.places import along_one_side, foot_of, resolve_extent, take
from motifold.render.fabric.wording import key_of
from motifold.render.pattern.instructions import Place
from motifold.render.pattern.problem import Span


def plain_spots(hook: Hook, cursor: Cursor, place: Place, span: Span) -> list[Base] | None:
    """The spots of a plain "in each st around", all at once; None where ``spots_of_each`` must find them one after another."""
    target = place.target
    if place.which != "each" or hook.walking or not cursor.size or cursor.sub >= 0 or target.kind not in ("st", "stitch", "sp"):
        return None
    if hook.entered:
        return None  # a chain that counts is a space too
    if place.also and any(other.kind not in ("st", "stitch", "sp") for other in place.also):
        return None
    if place.extent is None and place.count.at(hook.shop.size) > 1:
        return None
    if target.kind == "stitch" and cursor.has_group(target.name):
        return None  # a group is entered at its middle
    match = hook.match_of(place)
    stop = along_one_side(cursor, match, place.extent, resolve_extent(hook, cursor, place.extent, span))
    atoms, size, foot = cursor.atoms, cursor.size, foot_of(hook, place)
    first = cursor.following
    found = [index for index in range(first, stop + 1) if match(atoms[index % size])]
    if not found:
        return None
    if found[0] == cursor.start:
        take(hook, cursor, found[0])
        hook.taken -= 1
    take(hook, cursor, found[-1])
    hook.taken += len(found) - 1
    hook.busy.add(key_of(place.span))
    return [_spot(atoms[index % size], foot) for index in found]


def _spot(atom: Atom, foot: Foot) -> Base:
    if atom.space:
        return Base("space", atom.id, "space")
    return Base("stitch", atom.id, "row end" if atom.name == "row end" else foot)
