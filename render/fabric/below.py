"""Places that are not on the last round: stitches below, earlier rounds, unused loops, row ends, the underside of a foundation."""

from __future__ import annotations

from dataclasses import replace

from motifold.render.fabric.bench import Hook, Lap
from motifold.render.fabric.edge import Atom, Cursor, matcher, oriented
from motifold.render.fabric.model import Base, Foot
from motifold.render.fabric.places import beyond, find_next, foot_of, take
from motifold.render.fabric.wording import key_of, round_word
from motifold.render.pattern.instructions import Loop, Place, Target
from motifold.render.pattern.problem import Span


def root_of(hook: Hook, base: Base, levels: int) -> Base:
    """What lies ``levels`` rounds below a base, followed through what each stitch is worked into."""
    for _ in range(levels):
        if base.kind not in ("stitch", "gap"):
            break
        legs = hook.stitches[base.id].legs
        if not legs:
            break
        base = legs[len(legs) // 2].base
    return base


def below_base(hook: Hook, cursor: Cursor, place: Place, span: Span) -> Base:
    """``in st 2 rnds below``: straight below the next stitch, which it covers. Rounds are counted from the one being worked."""
    lap = hook.lap
    target = Target("st") if place.target.kind == "st" else place.target
    skipped, at = lap.uncovered
    covered = lap.covered
    if skipped and at == cursor.pos and place.which == "next" and place.below > 1:  # "sk next st, dc in st 2 rnds below": over that one
        lap.uncovered = (skipped - 1, at)
        return _straight_below(hook, cursor, place, cursor.pos - skipped + 1)
    match = matcher(target if place.below < 2 else Target("st"))
    index = cursor.pos if place.which == "same" and cursor.atoms else find_next(hook, cursor, match)
    if index is None:
        return beyond(hook, cursor, place, span, target)
    take(hook, cursor, index)
    lap.covered = covered + 1 if place.below > 1 else 0
    return _straight_below(hook, cursor, place, index)


def _straight_below(hook: Hook, cursor: Cursor, place: Place, index: int) -> Base:
    atom = cursor.atom(index)
    start = Base("space", atom.id, "space") if atom.space else Base("stitch", atom.id, "loops")
    found = root_of(hook, start, max(place.below, 2) - 1)
    if found.kind != "stitch":
        return found
    return Base("stitch", found.id, foot_of(hook, place))


def other_cursor(hook: Hook, place: Place) -> Cursor:
    """The cursor over an earlier round, a side or unused loops; it keeps its place until the round ends."""
    lap = hook.lap
    if place.target.kind in ("row end", "side"):
        return lap.cursor if has_row_ends(lap.cursor) else _row_end_cursor(hook)
    number = place.of_round
    under = _numbered(hook, number) if number is not None else _round_below(hook)
    if under is None:
        hook.complain(
            "place",
            place.span,
            f"there is no earlier round {number} to work into",
            "name a round that is already worked",
            key=key_of(place.span),
        )
        return lap.cursor
    if under.index == lap.cursor.round and place.target.kind != "unused loop":
        return lap.cursor
    loops = place.target.kind == "unused loop"
    key = under.index * 2 + (1 if loops else 0)
    found = lap.others.get(key)
    if found is None:
        found = _open_cursor(hook, under, loops, place)
        if found is not lap.cursor:
            lap.others[key] = found
    return found


def _numbered(hook: Hook, number: int) -> Lap | None:
    return next((lap for lap in reversed(hook.laps) if lap.number == number), None)


def _round_below(hook: Hook) -> Lap | None:
    """The last round, if some of its loops are unused, else the one below it."""
    return hook.laps[-1] if hook.laps else None


def _open_cursor(hook: Hook, under: Lap, loops: bool, place: Place) -> Cursor:
    lap = hook.lap
    flipped = under.direction != lap.direction
    atoms = under.atoms
    if loops:
        atoms = _unused(hook, under, place)
        if not atoms:
            _no_unused_loops(hook, under, place)
            return lap.cursor
    cursor = Cursor(oriented(atoms, flipped, not under.linear), cyclic=not under.linear, flipped=flipped, round=under.index)
    begin = _index_above(hook, cursor, under.index)
    cursor.begin_at(begin, fresh=True, taken=True)
    return cursor


_OTHER_LOOP: dict[Loop | None, tuple[Foot, ...]] = {"back": ("front loop",), "front": ("back loop",), None: ("back loop", "front loop")}


def _unused(hook: Hook, under: Lap, place: Place) -> list[Atom]:
    """The stitches of a round of which the loop that the place names is left: the other one alone was worked into."""
    other = _OTHER_LOOP[place.loop]
    worked = {leg.base.id for stitch in hook.stitches for leg in stitch.legs if leg.base.kind == "stitch" and leg.base.foot in other}
    return [atom for atom in under.atoms if not atom.space and atom.id in worked]


def _no_unused_loops(hook: Hook, under: Lap, place: Place) -> None:
    """Complains that no loop is left, and says which round has some, or how they come to be."""
    name = round_word(under)
    loop = f"{place.loop} loops" if place.loop else "loops"
    worked = "BLO" if place.loop != "back" else "FLO"
    having = next((other for other in reversed(hook.laps) if other is not under and _unused(hook, other, place)), None)
    hook.complain(
        "place",
        place.span,
        f"{name} has no unused {loop}: what was worked on it went into both loops",
        f"{round_word(having)} has unused {loop}" if having else f"they are left where a round is worked in {worked} of {name}",
        key=key_of(place.span),
        follows=True,
    )
    hook.tainted = True


def _index_above(hook: Hook, cursor: Cursor, round_index: int) -> int:
    """Where on an earlier round the hook stands: straight below its place on the last one."""
    main = hook.lap.cursor
    if not main.size or not cursor.size:
        return 0
    if not cursor.cyclic:
        return _after_short_rows(hook, cursor)
    places = {(atom.space, atom.id): index for index, atom in enumerate(cursor.atoms)}
    for step in range(main.size):
        atom = main.atom(main.pos + step)
        base = Base("space", atom.id, "space") if atom.space else Base("stitch", atom.id, "loops")
        for _ in range(len(hook.laps)):
            found = places.get((base.kind == "space", base.id))
            if found is not None and base.kind in ("space", "stitch"):
                return found
            below = root_of(hook, base, 1)
            if below is base:
                break
            base = below
    return 0


def _after_short_rows(hook: Hook, cursor: Cursor) -> int:
    """Where an earlier row goes on beyond short rows: once the short row is worked to its end, what they left of it comes next."""
    main = hook.lap.cursor
    if main.following <= main.end:
        return 0
    worked = {(leg.base.kind == "space", leg.base.id) for stitch in hook.stitches for leg in stitch.legs if leg.base.kind != "ring"}
    used = [index for index, atom in enumerate(cursor.atoms) if (atom.space, atom.id) in worked]
    return used[-1] + 1 if used and used[-1] + 1 < cursor.size else 0


def row_end_atoms(hook: Hook, left: bool) -> list[Atom]:
    """The end stitch of every row on one side (as the right side is seen), from the first row to the last."""
    atoms = []
    for lap in hook.laps:
        if lap.kind != "row":
            continue
        met = reversed(lap.made) if (lap.direction > 0) == left else iter(lap.made)
        end = next((ident for space, ident in met if not space), None)
        if end is not None:
            atoms.append(Atom(False, end, "row end"))
    return atoms


def has_row_ends(cursor: Cursor) -> bool:
    """Whether the edge goes round a piece in rows."""
    return cursor.sided


def _row_end_cursor(hook: Hook) -> Cursor:
    """Row ends in the order that the hook comes to them: down the side where the last row ended, later up the other one."""
    lap = hook.lap
    done = lap.others.get(-1)
    if done is not None and (done.pos < done.end or done.fresh) and hook.lap.cursor is not lap.under:
        return done
    last = next((before for before in reversed(hook.laps) if before.kind == "row"), None)
    left = last is not None and last.direction > 0
    if done is None:
        cursor = Cursor(row_end_atoms(hook, left)[::-1], round=-1)
        cursor.begin_at(0, fresh=True, taken=True)
        lap.others[-1] = cursor
        return cursor
    second = lap.others.get(-2)
    if second is None:
        second = Cursor(row_end_atoms(hook, not left), round=-1)
        second.begin_at(0, fresh=True, taken=True)
        lap.others[-2] = second
    return second


def perimeter(hook: Hook, before: Lap, lap: Lap) -> Cursor:
    """All round a piece in rows, from where its last row ended: row ends, the other side of the foundation, row ends, the last row."""
    hook.steps_done += 20 * len(hook.laps)  # who goes all round after every row soon asks for more than anyone would do
    top = before.atoms if before.direction > 0 else before.atoms[::-1]
    foundation = next((one for one in hook.laps if one.kind == "foundation"), None)
    bottom = [] if foundation is None else [replace(atom) for atom in foundation.atoms]
    sides = ([replace(atom) for atom in top], row_end_atoms(hook, True)[::-1], bottom, row_end_atoms(hook, False))
    for number, (name, side) in enumerate(zip(("top", "left", "bottom", "right"), sides, strict=True)):
        for atom in side:
            atom.side, atom.side_name = number, name
        if number in (0, 2) and side:
            side[0].corner = side[-1].corner = True
    # counter-clockwise: top, left, bottom, right; a row that ended at the left goes on down the left side
    around = [*sides[1], *sides[2], *sides[3], *sides[0]] if before.direction > 0 else [*sides[0], *sides[1], *sides[2], *sides[3]]
    flipped = lap.direction < 0
    cursor = Cursor(oriented(around, flipped, True), cyclic=True, flipped=flipped, round=before.index, sided=True)
    cursor.begin_at(0, fresh=True, taken=True)
    return cursor


def turn_to_underside(hook: Hook) -> Cursor:
    """From here on the hook works along the other side of the foundation chain: what was last met comes first."""
    lap = hook.lap
    if has_row_ends(lap.cursor):
        return lap.cursor
    if lap.under is not None:
        return lap.under
    foundation = next((before for before in hook.laps if before.kind == "foundation"), None)
    if foundation is None:
        return lap.cursor
    if lap.cursor.round == foundation.index:
        atoms = lap.cursor.atoms[lap.cursor.start : lap.cursor.pos][::-1]
    else:
        first = next((before.cursor for before in hook.laps if before.cursor.round == foundation.index), None)
        missed = {atom.id for atom in first.atoms[: first.start]} if first is not None else set()
        atoms = [atom for atom in foundation.atoms if (atom.name == "ch" or not atom.space) and atom.id not in missed]
    cursor = Cursor(list(atoms), round=foundation.index)
    cursor.begin_at(0, fresh=True, taken=True)
    lap.under = lap.cursor = cursor
    return cursor
