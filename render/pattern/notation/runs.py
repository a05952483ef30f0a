"""Steps that only together say what is meant: "sc in each st and 3 sc in each corner", "2 dc, ch 2, 3 dc in same sp"."""

from __future__ import annotations

from dataclasses import replace

from motifold.render.pattern.instructions import ONE, Chain, Extent, Group, Repeat, Step, Stop, Work
from motifold.render.pattern.notation.problems import warning
from motifold.render.pattern.notation.reader import Reader


def with_others(r: Reader, steps: list[Step], before: list[Step]) -> list[Step]:
    """Such as "sc in each st around, working 3 sc in each corner", "sc in each dc and 2 sc in each ch-1 sp around".

    What goes into each of one kind and what goes into each of another are met in turn: so far as the next of the other, one of those,
    and on; the last pass may end before another is met.
    """
    other = steps[0] if steps else None
    side = before[-1] if before else None
    if not isinstance(other, Work | Group) or other.place is None or other.place.which != "each" or other.place.target.kind == "st":
        return steps
    if isinstance(side, Repeat) and (two := _two_kinds(side)):  # "..., 2 sc in each ch-1 sp and 3 sc in each corner"
        before[-1] = replace(side, steps=(*two, replace(other, place=replace(other.place, extent=None))), style="each")
        return steps[1:]
    if not isinstance(side, Work) or side.place is None or side.place.which not in ("each", "evenly"):
        return steps
    extent = other.place.extent or side.place.extent
    first = before[-2] if len(before) > 1 else None
    if isinstance(first, Work) and all(_in_each(step) for step in (first, side)):
        kinds = (first, side, replace(other, place=replace(other.place, extent=None)))
        before[-2:] = [Repeat(r.new_id(), first.span, kinds, extent=extent or _all_round(r), style="each")]
        return steps[1:]
    if side.place.target == other.place.target or (extent is not None and extent.kind not in ("around", "across", "end")):
        return steps
    extent = extent or _all_round(r)
    if other.place.target.kind == "row end":  # one side has the ends of all its rows before a stitch comes again
        both = (replace(side, place=replace(side.place, extent=None)), replace(other, place=replace(other.place, extent=None)))
        before[-1] = Repeat(r.new_id(), side.span, both, extent=extent, style="each")
        return steps[1:]
    in_next = replace(other.place, which="next", each=False, extent=None)
    to_other = replace(side, place=replace(side.place, extent=Extent("to", place=in_next)))
    stop = Stop(r.new_id(), other.span)
    before[-1] = Repeat(r.new_id(), side.span, (to_other, stop, replace(other, place=in_next)), extent=extent, style="*")
    return steps[1:]


def nothing_would_be_left(before: list[Step], steps: list[Step]) -> bool:
    """Such as "sc in each st around, 3 sc in each corner": what goes all round leaves nothing, so that both are meant in turn."""
    side, other = before[-1] if before else None, steps[0] if len(steps) == 1 else None
    if not isinstance(side, Work) or side.place is None or not isinstance(other, Work | Group) or other.place is None:
        return False
    far = side.place.extent
    all_round = side.place.which == "each" and far is not None and far.kind in ("around", "across")
    where = other.place
    return all_round and where.which == "each" and where.extent is None and (where.target.corner or where.target.kind == "corner")


def _two_kinds(repeat: Repeat) -> tuple[Step, ...]:
    """The two steps that were read as met in turn; none where the repeat is of another kind."""
    if repeat.style != "*" or len(repeat.steps) != 3 or not isinstance(repeat.steps[1], Stop):
        return ()
    first, _, second = repeat.steps
    if not isinstance(first, Work) or not isinstance(second, Work | Group) or first.place is None or second.place is None:
        return ()
    if first.place.extent is None or first.place.extent.place != second.place:
        return ()
    return replace(first, place=replace(first.place, extent=None)), replace(second, place=replace(second.place, which="each", each=True))


def _in_each(step: Work) -> bool:
    """Whether a step goes into each of a kind, and does not say how far."""
    return step.place is not None and step.place.which == "each" and step.place.extent is None and step.stitch.together == 1


def _all_round(r: Reader) -> Extent:
    return Extent("around" if r.context.worked == "rounds" else "across")


def into_one_place(r: Reader, steps: list[Step], starts: list[int], run: int) -> None:
    """Such as "2 dc, ch 2, 3 dc in same sp" without brackets: all of it goes there, since "same" leaves no other place for the first.

    With another place than "same", the first stitches may as well go on along the round: that is said, and read so; but where they are all
    that is repeated, and the same on both sides ("[2 dc, ch 2, 2 dc in next sp] around"), they are read as going there.
    """
    last = steps[-1] if steps else None
    if not isinstance(last, Work) or last.place is None or last.place.each or last.place.count != ONE or r.in_definition:
        return
    if last.place.target.kind not in ("sp", "corner", "ring"):
        return
    first = len(steps) - 1
    while first > run and _placeless(steps[first - 1]):
        first -= 1
    while first < len(steps) - 1 and isinstance(steps[first], Chain):
        first += 1
    inner = steps[first:-1]
    if not any(isinstance(step, Chain) for step in inner):
        return
    ends = all(lexeme.kind == "sep" for lexeme in r.items[r.pos : r.end])
    whole = r.depth > 0 and first == 0 and ends and steps[0] == replace(last, id=steps[0].id, span=steps[0].span, place=None)
    if last.place.which == "same" or whole:
        if whole and not r.broken:
            said = "it is not clear whether all of these go into that place, and they are read so"
            r.say(warning("ambiguous", r.span(starts[first]), said, _BRACKETS))
        group = Group(inner[0].id, r.span(starts[first]), (*inner, replace(last, place=None)), last.place)
        del steps[first:], starts[first + 1 :]
        steps.append(group)
    elif isinstance(inner[0], Work) and inner[0].stitch == last.stitch and not r.broken:
        said = "only the last of these stitches are said to go into that place; those before are read as one in each next stitch"
        r.say(
            warning(
                "ambiguous",
                r.span(starts[first]),
                said,
                f"if all go into it, {_BRACKETS}",
            )
        )


_BRACKETS = "put them in brackets: (2 dc, ch 2, 2 dc) in next ch-2 sp"


def _placeless(step: Step) -> bool:
    if isinstance(step, Chain):
        return step.counts_as is None
    return isinstance(step, Work) and step.place is None and step.stitch.name != "sl st" and not step.stitch.standing
