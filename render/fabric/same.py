"""``same st``, ``same sp``; ``same ch as first hdc``: where the hook is, or where another stitch of the round went."""

from __future__ import annotations

from dataclasses import replace

from motifold.render.fabric.absent import check_same_space
from motifold.render.fabric.bench import DraftStitch, Hook
from motifold.render.fabric.edge import Cursor, family
from motifold.render.fabric.model import Base
from motifold.render.fabric.places import base_of, current_base, foot_of, use_start
from motifold.render.fabric.wording import key_of, target_word
from motifold.render.pattern.instructions import Place

_AS_JOINED = ("as join", "as the join", "as sl st", "as the sl st")


def as_another(hook: Hook, place: Place) -> Base | None:
    """``same ch as first hdc``, ``same st as beg ch-3``, ``same st as join``: where that went; None where the hook still is there, and
    where another stitch is not spoken of.
    """
    lap = hook.lap
    if place.as_where is not None:
        found = _went(hook, place.as_where)
        if found is None and lap.made:
            _not_worked(hook, place)
    elif place.words is not None and place.words.startswith(_AS_JOINED):
        found = _began(hook)
    else:
        return None
    last = lap.last_base
    if found is None or (last is not None and (found.kind, found.id) == (last.kind, last.id)):
        return None
    return replace(found, foot=foot_of(hook, place)) if found.kind == "stitch" and found.foot != "row end" else found


def _began(hook: Hook) -> Base | None:
    """Where the round began; None while the hook has not moved from there."""
    lap = hook.lap
    if lap.standing is not None:
        return hook.stitches[lap.standing].legs[0].base
    cursor = lap.began or lap.cursor
    return base_of(hook, cursor, cursor.start, None) if cursor.size and cursor.cyclic and cursor.pos != cursor.start else None


def _went(hook: Hook, where: Place) -> Base | None:
    """Where the first (n-th) stitch of a kind went that this round has."""
    target = where.target
    if target.kind in ("ch", "tch") or where.of is not None:
        return _began(hook)
    made = [hook.stitches[ident] for space, ident in hook.lap.made if not space]
    found = [one for one in made if one.legs and (target.kind != "stitch" or _is_called(hook, one, target.name or ""))]
    wanted = (where.ordinal or 1) - 1
    return found[wanted].legs[0].base if wanted < len(found) else None


def _is_called(hook: Hook, stitch: DraftStitch, name: str) -> bool:
    group = hook.groups[stitch.group].name if stitch.group is not None else None
    return name in (stitch.kind, family(stitch.kind), group)


def _not_worked(hook: Hook, place: Place) -> None:
    assert place.as_where is not None
    word = target_word(place.as_where.target, hook.shop.terms)
    hook.complain(
        "place",
        place.span,
        f"no {word} has been worked yet that this could go beside",
        "name a stitch that this round has worked, or the place itself: in first st",
        key=key_of(place.span),
        follows=True,
    )


def same(hook: Hook, cursor: Cursor, place: Place) -> Base:
    """``same st``, ``same sp``: where the hook is."""
    if cursor.pos == cursor.start and not hook.walking:
        use_start(cursor, hook.lap.groups_named)
    cursor.fresh = False
    began = hook.lap.began
    if began is not None and began.pos == began.start:
        use_start(began)
        began.fresh = False
    last = hook.lap.last_base
    if place.target.kind == "sp" and place.target.chains:
        check_same_space(hook, cursor, place, last)
    if place.target.kind == "sp" and cursor.atom(cursor.pos).space:
        return base_of(hook, cursor, cursor.pos, place)
    if last is None or last.kind == "ring":
        return current_base(hook, cursor, place)
    # A loop once named holds for what follows in the same stitch; a post does not: only "around" says so.
    said = place.loop or place.manner == "around" or last.foot in ("front post", "back post")
    return replace(last, foot=foot_of(hook, place)) if last.kind == "stitch" and said else last
