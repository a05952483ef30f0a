"""Stitches and chains with their counts and places: ``3 dc in ring``, ``sc 5``, ``dc2tog over next 2 sts``, ``ch 3 (counts as dc)``."""

from __future__ import annotations

from dataclasses import replace

from motifold.render.pattern.instructions import ONE, Amount, Chain, Place, Repeat, Step, StitchSpec, Target, Words, Work
from motifold.render.pattern.notation.amounts import at_times, read_amount, read_times
from motifold.render.pattern.notation.beginnings import read_counts_as, tell_of_missed
from motifold.render.pattern.notation.counts import try_sentence
from motifold.render.pattern.notation.joins import as_join
from motifold.render.pattern.notation.places import Found, at_bare_place, at_place, read_more_places, read_places
from motifold.render.pattern.notation.problems import warning
from motifold.render.pattern.notation.reader import Reader
from motifold.render.pattern.notation.repeats import every_other
from motifold.render.pattern.notation.stitches import GATHERED, at_several_in_one, at_stitch, may_be_sized, read_sized, read_stitch
from motifold.render.pattern.notation.suggestions import is_known, suggestion, unexplained


def read_chain(r: Reader) -> Chain:
    """``ch 3``, ``ch-3``, ``chain of 80``, ``foundation ch 21``, ``beg ch 3``, with what it counts as."""
    start, number = r.pos, r.new_id()
    r.accept("beg")
    r.take()
    r.accept("ch")
    r.accept("of")
    if r.peek().raw in ("multiple", "any"):
        raise r.reject("number", "how many chains is not said", 'write the number of this pattern: "ch 21"')
    amount = read_amount(r) if r.at_kind("num") else ONE
    return _chain(r, number, start, amount)


def _chain(r: Reader, number: int, start: int, amount: Amount) -> Chain:
    r.accept("st", "more") or (r.at("ch") and r.peek(1).kind != "num" and r.take())
    if r.peek().raw in ("loosely",):
        r.take()
    if 0 in amount.values and len(amount.values) == 1:
        raise r.reject("number", "a chain of 0 is nothing to work", lexeme=r.before())
    counts = read_counts_as(r, amount.values[0])
    return Chain(number, r.span(start), amount, counts)


def read_stitches(r: Reader) -> list[Step]:
    """Stitches with count and place; several steps where the place is said in two parts ("in next st and in each st around")."""
    start, number = r.pos, r.new_id()
    sized = may_be_sized(r) and r.attempt(lambda: _peeked_sized(r)) is not None
    count: Amount | None = None
    if not sized and r.at_kind("num") and not at_several_in_one(r):
        count = read_amount(r)
        if r.at("ch") and r.peek(1).value != "picot" and not (r.peek(1).kind == "num" and r.peek(2).value == "picot"):
            r.take()
            return [_chain(r, number, start, count)]
        r.accept("more") if r.peek(1).kind == "stitch" else None
    if not at_stitch(r) and not (may_be_sized(r) and r.attempt(lambda: _peeked_sized(r)) is not None):
        return _number_alone(r, start)
    spec = read_stitch(r)
    if spec.name == "ch":
        return [_chain(r, number, start, count or ONE)]
    count = count or _count_after(r)
    if count is not None and count.values == (0,):
        raise r.reject("number", "0 stitches are nothing to work", lexeme=r.items[start])
    places: list[Found | None] = list(read_places(r, walks=spec.name == "sl st")) if at_place(r) or at_bare_place(r) else [None]
    steps: list[Step] = []
    if spec.name == "sl st":
        places = [found and _where_it_walks(found) for found in places]
    for index, found in enumerate(places):
        steps.append(_work(r, number if index == 0 else r.new_id(), start, spec, count, found))
    steps.extend(_places_after_bracket(r, steps, start, spec, count))
    works = [step for step in steps if isinstance(step, Work)]
    if spec.together > 1 and len(works) > 1 and works[0].place is not None:
        further = tuple(step.place for step in works[1:] if step.place is not None)
        steps = [replace(works[0], place=replace(works[0].place, manner="over", then=further))]
    return _after(r, steps, start)


def _places_after_bracket(r: Reader, steps: list[Step], start: int, spec: StitchSpec, count: Amount | None) -> list[Step]:
    """Such as "dc in 4th ch from hook (missed 3 ch count as dc) and in each ch across": the places go on behind the bracket."""
    last = steps[-1]
    if not r.at_kind("open") or not isinstance(last, Work):
        return []
    at = r.pos
    if last.place is None and _explains(r, spec):  # "beg cl (ch 3, dc2tog) in same sp"
        r.pos, counts = r.closers[r.pos] + 1, None
        if not at_place(r):
            inside = " ".join(r.text.text[r.items[at].start : r.before().end].split())
            return [Words(r.new_id(), r.span(at), inside)] if r.at_kind("sep", "end", "close", "mark") else _back(r, at)
    else:
        counts = read_counts_as(r, 0)
        if counts is None:
            return []
    if last.place is None and at_place(r):  # "dc2tog (counts as cl) in same sp"
        steps.pop()
        for index, found in enumerate(read_places(r)):
            steps.append(_work(r, last.id if index == 0 else r.new_id(), start, spec, count, found))
        steps[-1] = replace(steps[-1], counts_as=counts) if isinstance(steps[-1], Work) else steps[-1]
        return []
    if counts is None or not r.at("and"):
        r.pos = at
        return []
    steps[-1] = replace(last, counts_as=counts)
    return [_work(r, r.new_id(), start, spec, count, found) for found in read_more_places(r)]


def _back(r: Reader, at: int) -> list[Step]:
    r.pos = at
    return []


def _explains(r: Reader, spec: StitchSpec) -> bool:
    """Whether the bracket that comes next only says how the special stitch before it is made: "picot (ch 3, sl st in first ch)"."""
    if spec.name not in GATHERED and spec.name not in r.context.defined:
        return False
    inside = r.items[r.pos + 1 : r.closers[r.pos]]
    return any(lexeme.kind == "stitch" for lexeme in inside) and any(
        lexeme.kind == "word" and lexeme.value in ("ch", "in", "tog") for lexeme in inside
    )


def _peeked_sized(r: Reader) -> bool | None:
    at = r.pos
    found = read_sized(r) is not None
    r.pos = at
    return found or None


def _count_after(r: Reader) -> Amount | None:
    """The number in "sc 5", "inc x 6"; a number of times is no count of stitches in one place."""
    if (
        r.at_kind("num")
        and not at_times(r)
        and r.peek(1).kind not in ("stitch",)
        and not (r.peek(1).value == "ch" and r.peek(1).kind == "word")
    ):
        return read_amount(r)
    if r.at("x") and r.peek(1).kind == "num":
        r.take()
        return read_amount(r)
    return None


def _where_it_walks(found: Found) -> Found:
    """Such as "sl st across to ch-2 sp": slip stitches go on to the space and into it."""
    extent = found.place.extent
    if found.place.which != "each" or found.place.target.kind != "st" or extent is None or extent.kind != "to" or extent.place is None:
        return found
    return replace(found, place=extent.place, said_each=False)


def _work(r: Reader, number: int, start: int, spec: StitchSpec, count: Amount | None, found: Found | None) -> Work | Repeat:
    total = count or ONE
    if found is None:
        place = Place(r.span(start), "current", Target("ring")) if r.memory.ring_fresh and r.depth == 0 else None
        loop = r.mode.loop or r.mode.target
        if place is None and loop is not None and spec.name != "picot":  # a picot sits on the stitch before it
            found = Found(_under_mode(r, start, total), said_each=True)
            return Work(number, r.span(start), spec, ONE, found.place)
        return Work(number, r.span(start), spec, total, place)
    r.memory.ring_fresh = False
    place = found.place
    if spec.together > 1:
        if place.count != ONE and not found.said_each:
            place = replace(place, each=False, manner="over" if place.manner == "in" else place.manner)
    else:
        if place.manner == "over" or (place.manner == "around" and place.target.kind in ("sp", "ring", "ch")):
            place = replace(place, manner="in", each=place.each or place.count != ONE)
        if found.bare_loop and total != ONE:
            place, total = replace(place, count=total, each=True), ONE
        elif place.count == total and total != ONE and not found.said_each and place.manner != "between":
            total = _one_or_all(r, start, total, found)
    work = Work(number, r.span(start), spec, total, place)
    return every_other(r, work, found.every, start) if found.every > 1 else work


def _one_or_all(r: Reader, start: int, total: Amount, found: Found) -> Amount:
    """How "5 sc in next 5 sts" is meant: one in each, mostly; but two in next 2 are two in each. Both are doubtful, and said to be."""
    n = total.values[0]
    if found.place.manner == "over" or total.varies:
        return ONE
    name = next((lexeme.raw for lexeme in r.items[start : r.pos] if lexeme.kind == "stitch"), "sc")
    where = found.place.which if found.place.which in ("first", "last") else "next"
    one_each, all_each = f'"{name} in {where} {n} sts"', f'"{n} {name} in each of {where} {n} sts"'
    taken, other = (all_each, one_each) if n == 2 else (one_each, all_each)
    said = f"this can be read in two ways, and is read as {taken}"
    r.say(warning("ambiguous", r.span(start), said, f"if it is not meant so, write {other}"))
    return total if n == 2 else ONE


def _under_mode(r: Reader, start: int, total: Amount) -> Place:
    """Such as "working in back loops only, 5 sc": the next five, in their back loops."""
    target = Target(r.mode.target or "st")
    return Place(r.span(start), "next", target, total, each=total != ONE, loop=r.mode.loop, of_round=r.mode.of_round)


def _after(r: Reader, steps: list[Step], start: int) -> list[Step]:
    """What may follow: "to join", "(counts as ch-3 sp)", "6 times"."""
    last = steps[-1]
    if not isinstance(last, Work):
        return steps
    if last.stitch.name == "sl st":
        join = as_join(r, last)
        if join is not None:
            return [*steps[:-1], replace(join, span=r.span(start))]
    if r.follows("to", "join") and r.peek(2).kind in ("sep", "end", "open", "dash"):
        r.pos += 2  # "ch 1, hdc in first sc to join": that it closes the round shows from the line
    at = r.pos
    counts = read_counts_as(r, 0)
    if counts is not None:
        steps[-1] = last = replace(last, counts_as=counts)
        if last.place is not None and last.place.from_hook:
            tell_of_missed(r, at, last.place.ordinal or 1)
    said = read_times(r)
    if said is None:
        return steps
    times = Amount(tuple(value + 1 for value in said[0].values)) if said[1] else said[0]
    if last.place is None and last.count == ONE:
        return [*steps[:-1], replace(last, count=times, span=r.span(start))]
    return [Repeat(r.new_id(), r.span(start), tuple(steps), times=times)]


def _number_alone(r: Reader, start: int) -> list[Step]:
    """Such as "36 sts." after a full stop is a count; any other number without a stitch is a problem."""
    r.pos = start
    begins = start == 0 or r.items[start - 1].kind in ("sep", "dash", "equals", "colon")
    if r.depth == 0 and begins and r.peek(1).value in ("st", "corner", "group") and try_sentence(r):
        return []
    number = r.peek()
    if at_times(r):
        raise r.reject("bracket", "a number of times stands here, but nothing before it is in brackets", '"[dc in next st, ch 1] 3 times"')
    r.take()
    following = r.peek()
    if following.kind != "word":
        raise r.reject("word", f"the number {number.raw} stands alone: a stitch is missing", _NUMBER_HINT, lexeme=number)
    if following.value == "group":
        raise r.reject("word", *unexplained(following))
    unknown = r.peek(1)
    if is_known(following) and unknown.kind == "word" and not is_known(unknown) and not unknown.first:
        guess = suggestion(unknown, r.context)  # "2 rnds bellow": the word that nobody knows is the slip
        if guess is not None:
            raise r.reject("word", f'"{r.text.text[unknown.start : unknown.end]}" cannot be read', guess, lexeme=unknown)
    if is_known(following):
        raise r.reject("word", f'a stitch is missing between {number.raw} and "{following.raw}"', _NUMBER_HINT)
    raise r.reject("word", f'"{r.written()}" cannot be read as a stitch', suggestion(following, r.context) or _NUMBER_HINT)


_NUMBER_HINT = 'a number stands before or after a stitch: "3 dc", "ch 3"'
