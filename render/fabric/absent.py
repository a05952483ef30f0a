"""What is said where a place is not there, or was reached by passing others."""

from __future__ import annotations

from collections.abc import Sequence

from motifold.render.fabric.bench import Hook
from motifold.render.fabric.edge import Atom, Cursor
from motifold.render.fabric.model import Base
from motifold.render.fabric.wording import key_of, listed, round_word, target_word
from motifold.render.pattern.instructions import Place, Target
from motifold.render.pattern.problem import Span


def missing(hook: Hook, cursor: Cursor, span: Span, target: Target) -> None:
    """Complains that the edge has no such place at all, and says what it has instead."""
    terms = hook.shop.terms
    under = hook.laps[cursor.round] if 0 <= cursor.round < len(hook.laps) else hook.lap
    name = round_word(under)
    if under.line is not None and under.line.broken and under.index < len(hook.laps) - 1:
        hook.lap.faulty = hook.lap.reported = hook.tainted = True  # an earlier round that could not be read may well have it
        return
    hook.complain(
        "place",
        span,
        f"{name[0].upper()}{name[1:]} has no {target_word(target, terms)} to work into",
        what_there_is(hook, cursor, target),
        key=key_of(span),
        follows=True,
    )
    hook.tainted = True  # how the line goes on from there is not known


def missing_part(hook: Hook, atoms: Sequence[Atom], place: Place) -> None:
    """Complains that a shell, a petal or another group has no such part, and says which it has."""
    terms, outer = hook.shop.terms, place.of
    name = target_word(outer.target, terms) if outer is not None else "group"
    kinds = [Target("sp", chains=atom.chains) if atom.space else Target("stitch", atom.name) for atom in atoms]
    words = [target_word(kind, terms, kinds.count(kind)) for kind in dict.fromkeys(kinds) if kind.kind == place.target.kind]
    hook.complain(
        "place",
        place.span,
        f"this {name} has no {target_word(place.target, terms)} to work into",
        f"it has {listed(words)}" if words else None,
        key=key_of(place.span),
        follows=True,
    )
    hook.tainted = True


def on_own_chain(hook: Hook) -> bool:
    """Whether the last stitch went into a chain of this round that is worked back along."""
    base = hook.lap.last_base
    if base is None or base.kind != "stitch":
        return False
    run = hook.stitches[base.id].run
    return run is not None and hook.runs[run].role == "spine" and hook.runs[run].round == hook.lap.index


def chain_used_up(hook: Hook, place: Place) -> Base:
    """Complains that a chain worked back along is at its end; goes on in its last chain."""
    hook.complain("place", place.span, "the chain worked back along has no ch left", "make it longer", key=key_of(place.span), follows=True)
    hook.tainted = True
    base = hook.lap.last_base
    assert base is not None
    return base


def note_idle(hook: Hook, span: Span, message: str, hint: str | None) -> None:
    """An "each" or a repeat that finds nothing: told now, or, where its line serves several rounds, only if it finds nothing in any."""
    if hook.lap.several:
        hook.idle.setdefault(key_of(span), (span, message, hint))
        return
    hook.complain("place", span, message, hint, key=key_of(span), follows=True)
    hook.tainted = True


def what_there_is(hook: Hook, cursor: Cursor, target: Target) -> str | None:
    """What an edge has instead of what it has not, for a hint."""
    terms = hook.shop.terms
    if target.kind == "sp":
        lengths = sorted({atom.chains for atom in cursor.atoms if atom.space})
        if not lengths:
            return "there are no spaces in it: nothing was chained between two stitches"
        return f"its spaces are {listed([f'ch-{n} sps' for n in lengths])}"
    kinds = sorted({atom.group_name or atom.name for atom in cursor.atoms if not atom.space})
    words = [target_word(Target("stitch", kind), terms, 2) for kind in kinds if kind]
    return f"its stitches are {listed(words)}" if words else None


def warn_passed(hook: Hook, cursor: Cursor, first: int, index: int, place: Place) -> None:
    """Warns once if ``next dc`` walked over other stitches. What a space walks over is only counted, to tell likely mends."""
    if index <= first or hook.walking:
        return
    target = place.target
    if target.kind == "sp" and hook.lap.claims:
        claimed, atoms = hook.lap.claims_it(), cursor.atoms
        for at in range(first, index):
            if claimed(atoms[at % len(atoms)]):
                hook.lap.passed += 1
        return
    now = None if cursor.fresh else cursor.atom(cursor.pos)
    passed = [atom for atom in (cursor.atom(i) for i in range(first, index)) if now is None or not _one_group(now, atom)]
    terms = hook.shop.terms
    if target.kind == "stitch" and cursor.atom(index).group_name != target.name:
        over = [atom for atom in passed if not atom.space and not (hook.entered and atom.name == "sl st")]  # slipped into a block's side
        if over:
            kinds: dict[str, int] = {}
            for atom in over:
                kinds[atom.name] = kinds.get(atom.name, 0) + 1
            words = listed([f"{number} {target_word(Target('stitch', kind), terms, number)}" for kind, number in kinds.items()])
            hook.complain(
                "passed",
                place.span,
                f"{round_word(hook.lap)}: next {target_word(target, terms)} passes {words}",
                "say how many to skip, if that is meant",
                severity="warning",
                key=key_of(place.span),
                follows=True,
            )


def warn_skipped_over(hook: Hook, cursor: Cursor, first: int, place: Place) -> None:
    """Warns once where "sk next ch-1 sp" goes over stitches of a kind that the line works into: were they to be skipped too?"""
    if hook.walking or cursor is not hook.lap.cursor or not hook.lap.claims:
        return
    claimed = hook.lap.claims_it()
    over = [atom for atom in (cursor.atom(index) for index in range(first, cursor.pos)) if not atom.space and claimed(atom)]
    if over and not hook.lap.several:
        terms = hook.shop.terms
        word = target_word(Target("stitch", over[0].name), terms, len(over)) if len({a.name for a in over}) == 1 else "sts"
        skip = "miss" if terms == "UK" else "sk"
        message = f"{round_word(hook.lap)}: {skip} next {target_word(place.target, terms)} passes {len(over)} {word}"
        hint = "say that they are skipped too, if that is meant"
        hook.complain("passed", place.span, message, hint, severity="warning", key=key_of(place.span), follows=True)


def _one_group(one: Atom, other: Atom) -> bool:
    """Leaving a group passes what is left of it, as entering one passes what lies before its middle."""
    return one.group == other.group if one.group >= 0 else one.cluster >= 0 and one.cluster == other.cluster


def check_same_space(hook: Hook, cursor: Cursor, place: Place, last: Base | None) -> None:
    """Complains where "same ch-3 sp" is said and the hook is in a stitch, or in a space of another length."""
    if last is not None and last.kind == "space":
        there: int | None = hook.runs[last.id].chains
    else:
        there = cursor.atom(cursor.pos).chains if cursor.atom(cursor.pos).space else None
    wanted = place.target.chains
    if (last is not None and last.kind in ("ring", "gap")) or wanted == there:
        return
    where = "a stitch" if there is None else f"a ch-{there} sp"
    message = f"same ch-{wanted} sp is said, but the hook is in {where}"
    hook.complain("place", place.span, message, f"next ch-{wanted} sp, if that is meant", key=key_of(place.span), follows=True)
