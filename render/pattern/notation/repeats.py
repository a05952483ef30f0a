"""Brackets and stars: repeats, and groups worked into one place.

A bracket followed by a number of times or a distance is a repeat; followed by a place it is a group. A star goes on to its
``rep from *``, or to the star that closes it.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from motifold.render.pattern.instructions import ONE, Amount, Chain, Extent, Group, Repeat, Skip, Step, Stop, Work
from motifold.render.pattern.notation.amounts import read_amount, read_extent, read_times
from motifold.render.pattern.notation.endings import read_ending
from motifold.render.pattern.notation.nouns import read_noun
from motifold.render.pattern.notation.places import at_place, read_more_places, read_np, read_place
from motifold.render.pattern.notation.problems import error
from motifold.render.pattern.notation.reader import DEEPEST, Reader
from motifold.symbols.record import dataclass

Body = Callable[[Reader], tuple[Step, ...]]
_MORE_OF_IT = frozenset({"instructions", "directions", "sequence", "everything", "stitches", "section", "steps", "pattern"})


def read_bracket(r: Reader, body: Body) -> list[Step]:
    """``[ ... ] 3 times``, ``( ... ) around``, ``(3 dc, ch 2, 3 dc) in next ch-2 sp``."""
    start, number = r.pos, r.new_id()
    style = "[" if r.peek().value == "[" else "("
    closer = r.closers[r.pos]
    if r.depth >= DEEPEST:
        r.say(error("depth", r.span_of(r.peek()), f"brackets stand more than {DEEPEST} deep in each other here"))
        r.pos, r.broken = closer + 1, True
        read_times(r)
        return []
    r.take()
    outer, r.starred = r.starred, _stops_inside(r, closer)
    with r.inside(closer):
        steps = body(r)
    r.pos, r.starred = closer + 1, outer
    if r.at_kind("sep") and r.peek().value == "," and (r.peek(1).value in ("rep",) or _bare_times_follow(r)):
        r.take()
    if r.at("all") and r.peek(1).value in ("in", "on"):
        r.take()
    if r.follows("and", "rep") and r.peek(2).kind != "mark":
        r.take()
    if r.follows("rep") and not _at_rep(r):
        r.take()
    said = read_times(r)
    if said is not None:
        times, more = said
        if r.at("in", "on") or (r.at("all") and r.peek(1).value in ("in", "on")):  # "[dc, ch 1] twice in next st"
            inside = Repeat(r.new_id(), r.span(start), steps, times=_plus(times, 1 if more else 0), style=style)  # type: ignore[arg-type]
            return [Group(number, r.span(start), (inside,), read_place(r).place)]
        repeat = Repeat(number, r.span(start), steps, times=_plus(times, 1 if more else 0), style=style)  # type: ignore[arg-type]
        return _ended(r, repeat, body)
    if (
        r.at("around", "across", "to", "until")
        or (r.at("rnd") and r.peek().raw == "round")
        or r.at("along")
        or (r.at("all") and r.peek(1).value == "around")
    ):
        extent = read_extent(r, read_np, read_noun)
        if extent is not None:
            return _ended(r, Repeat(number, r.span(start), steps, extent=extent, style=style), body)  # type: ignore[arg-type]
    if at_place(r):
        found = read_place(r)
        group = Group(number, r.span(start), _placeless(r, steps), found.place)
        if found.every > 1:
            return [every_other(r, group, found.every, start)]
        times_of_group = read_times(r)
        others = _same_again_elsewhere(r, start, body)
        if others:
            return [group, *others]
        if times_of_group is not None:
            return [Repeat(r.new_id(), r.span(start), (group,), times=_plus(times_of_group[0], 1 if times_of_group[1] else 0), style="[")]
        return [group]
    if r.at_kind("num") and r.peek(1).kind in ("sep", "end", "open", "dash", "close", "mark"):
        return [Repeat(number, r.span(start), steps, times=read_amount(r), style=style)]  # type: ignore[arg-type]
    if not r.broken and steps and not r.in_definition:
        opener, r.unread = r.items[start], True
        r.say(error("bracket", r.span_of(opener), _NEITHER, _EITHER))
    return list(steps)


def at_times_before(r: Reader) -> bool:
    """Whether a number of times stands before its bracket: "6x (sc, inc)", "6 times [sc, inc]"."""
    ahead = 2 if r.peek(2).kind == "open" else 3 if r.peek(2).kind == "colon" and r.peek(3).kind == "open" else 0
    times = r.peek(1)
    if not r.at_kind("num") or not ahead or times.kind != "word" or times.value not in ("x", "times"):
        return False
    after = r.closers.get(r.pos + ahead, r.end) + 1
    return after >= r.end or not (r.items[after].kind == "word" and r.items[after].value in ("in", "x", "around", "across", "to"))


def read_times_before(r: Reader, body: Body) -> list[Step]:
    """Such as "6x (sc, inc)"."""
    start, number = r.pos, r.new_id()
    times = read_amount(r)
    r.take()
    r.accept_kind("colon")
    style, closer = "[" if r.peek().value == "[" else "(", r.closers[r.pos]
    r.take()
    with r.inside(closer):
        steps = body(r)
    r.pos = closer + 1
    return _ended(r, Repeat(number, r.span(start), steps, times=times, style=style), body)  # type: ignore[arg-type]


def _stops_inside(r: Reader, closer: int) -> bool:
    """Whether a ``**`` may stand in this bracket: "[sc in next st**, ch 1] around, ending last rep at **"."""
    at = closer + 1
    while at < r.end and r.items[at].kind in ("word", "num", "stitch", "sep") and r.items[at].value not in (";", "."):
        at += 1
    return at < r.end and r.items[at].kind == "mark" and len(r.items[at].value) > 1 and r.items[at - 1].value in ("at", "on", "with", "in")


def _same_again_elsewhere(r: Reader, start: int, body: Body) -> list[Step]:
    """Such as "(sc, 3 dc, sc) in same sp and in each ch-3 sp around": the bracket is read once more, for each further place."""
    groups: list[Step] = []
    for found in read_more_places(r):
        after, number = r.pos, r.new_id()
        r.pos = start + 1
        with r.inside(r.closers[start]):
            steps = body(r)
        r.pos = after
        groups.append(Group(number, r.span(start), _placeless(r, steps), found.place))
    return groups


def _placeless(r: Reader, steps: tuple[Step, ...]) -> tuple[Step, ...]:
    """The steps of a group go where the group goes: what "working in other side of foundation ch" says is said of the group's own place."""
    if r.mode.loop is None and r.mode.target is None:
        return steps
    return tuple(
        replace(step, place=None, count=step.place.count)
        if isinstance(step, Work) and step.place is not None and step.place.which == "next" and step.place.span == step.span
        else step
        for step in steps
    )  # fmt: skip


_NEITHER = "these brackets say neither how often nor where: a number of times, or a place, is missing after them"
_EITHER = '"[...] 3 times" and "[...] around" repeat; "(...) in next st" puts all of it into one place'


def _bare_times_follow(r: Reader) -> bool:
    return (r.peek(1).kind == "num" and r.peek(2).value == "times" and r.peek(2).kind == "word") or r.peek(1).raw in ("twice", "thrice")


def _plus(amount: Amount, more: int) -> Amount:
    return Amount(tuple(value + more for value in amount.values)) if more else amount


def every_other(r: Reader, step: Work | Group, every: int, start: int) -> Repeat:
    """Such as "sc in every other st around": one worked, the rest of so many passed, all the way."""
    place = step.place
    assert place is not None
    one = replace(place, which="next", count=ONE, each=False, extent=None)
    passed = replace(one, count=Amount((every - 1,)), each=every > 2)
    span = r.span(start)
    worked = replace(step, place=one)
    return Repeat(r.new_id(), span, (worked, Skip(r.new_id(), span, passed)), extent=place.extent or Extent("around"), style="[")


# -- stars -----------------------------------------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class _Scope:
    """Where the steps after a star end, and whether a second star closed them."""

    end: int
    closed: bool


def at_rep_clause(r: Reader, mark: str | None = None) -> bool:
    """Whether "rep from *" comes next (of this mark, if one is given)."""
    found = _at_rep(r)
    return found is not None and (mark is None or found == mark)


def _at_rep(r: Reader) -> str | None:
    """The mark that a "rep from *" names, if one comes next."""
    if not r.at("rep"):
        return None
    ahead = 1
    while r.peek(ahead).raw in _MORE_OF_IT or r.peek(ahead).value in ("from", "between", "st", "beg", "all", "work", "in"):
        ahead += 1
    return r.peek(ahead).value if r.peek(ahead).kind == "mark" else None


def read_star(r: Reader, body: Body) -> list[Step]:
    """``* ... ; rep from * 2 more times``, ``*...* 3 times``, ``* ...**, ... ; rep from * around, ending last rep at **``."""
    start, number = r.pos, r.new_id()
    star = r.take()
    scope = _scope(r, star.value)
    if scope is None or r.depth >= DEEPEST:
        if not r.broken:
            r.say(error("star", r.span_of(star), f"nothing says how often to repeat from {star.value}",
                        f"\"; rep from {star.value} 3 more times\" or \"; rep from {star.value} around\" is missing"))  # fmt: skip
            r.broken = True
        return []
    outer, r.starred = r.starred, star.value == "*" or r.starred
    with r.inside(scope.end):
        steps = body(r)
    r.starred = outer
    r.pos = scope.end
    if scope.closed:
        r.take()
    times, extent, ending_at_stop = _how_often(r, star.value, scope.closed)
    extra, stops = _once_more_to_stop(r, star.value)
    if extra and times is not None:
        times = _plus(times, extra)
    stop_wanted = ending_at_stop or stops
    return _ended(r, Repeat(number, r.span(start), steps, times=times, extent=extent, style="*"), body, stop_wanted, star.value)


def _ended(r: Reader, repeat: Repeat, body: Body, stop_wanted: bool = False, mark: str = "*") -> list[Step]:
    """The repeat under what is said of its last pass, and the steps that this puts behind it."""
    ending = read_ending(r, repeat.extent, repeat.steps, body)
    _check_stop(r, repeat.steps, stop_wanted or ending.at_stop, mark)
    stops = ending.steps is not repeat.steps
    extent = ending.extent if repeat.extent is not None else None
    style = "*" if stops else repeat.style
    return [replace(repeat, steps=ending.steps, extent=extent, omit=ending.omit, style=style), *ending.after]


def _scope(r: Reader, mark: str) -> _Scope | None:
    """Finds the "rep from *" of a star, or the star that closes it, at the same depth of brackets."""
    at, pos = r.pos, r.pos
    plain: _Scope | None = None
    try:
        while pos < r.end:
            lexeme = r.items[pos]
            if lexeme.kind == "open" and pos in r.closers:
                pos = r.closers[pos] + 1
                continue
            if lexeme.kind == "mark" and lexeme.value == mark:
                return _Scope(pos, True)
            if lexeme.kind == "word" and lexeme.value == "rep":
                r.pos = pos
                named = _at_rep(r)
                if named == mark:
                    return _Scope(pos, False)
                if named is None and plain is None and _plain_rep(r):
                    plain = _Scope(pos, False)
                if named is not None:
                    while r.items[pos].kind != "mark":
                        pos += 1
            pos += 1
    finally:
        r.pos = at
    return plain


def _plain_rep(r: Reader) -> bool:
    """Such as "*sc, inc; repeat around", "*sc, inc, rep 6 times": no star is named, and there is only one it can mean."""
    return r.peek(1).value in ("around", "across", "to") or r.peek(1).kind == "num" or r.peek(1).raw in ("twice", "thrice", "once")


def read_unmarked_repeat(r: Reader, before: list[Step]) -> list[Step]:
    """Such as "sc in next st, inc, rep around", "..., repeat from beginning 5 more times": all that the line has worked so far.

    Where the line begins with a chain or with yarn, it is not clear what is repeated, and a star has to say it.
    """
    start, number = r.pos, r.new_id()
    r.take()
    from_beginning = r.accept("from") is not None and r.accept("beg") is not None
    if from_beginning:
        r.accept("of")
        r.accept("rnd", "row")
    clear = before and r.depth == 0 and all(isinstance(step, Work | Group | Skip | Repeat | Chain) for step in before)
    if not clear or isinstance(before[0], Chain) or not (from_beginning or r.at("around", "across", "to") or _times_ahead(r)):
        raise r.reject("star", "it is not marked from where to repeat", _STAR_HINT, lexeme=r.items[start])
    said = read_times(r)
    times = _plus(said[0], 1 if said[1] else 0) if said is not None else None
    extent = None if said is not None else read_extent(r, read_np, read_noun) or _all_the_way(r)
    steps = tuple(before)
    before.clear()
    return [Repeat(number, r.span(0), steps, times=times, extent=extent, style="*")]


_STAR_HINT = 'a star marks it: "*sc in next st, ch 1; rep from * around"'


def _all_the_way(r: Reader) -> Extent:
    return Extent("around" if r.context.worked == "rounds" else "across")


def opens_a_repeat(r: Reader) -> bool:
    """Whether the ``**`` that comes next begins a repeat of its own: a "rep from **" or a closing ``**`` with times follows."""
    mark = r.peek().value
    at, pos = r.pos, r.pos + 1
    try:
        while pos < r.end:
            lexeme = r.items[pos]
            if lexeme.kind == "open" and pos in r.closers:
                pos = r.closers[pos] + 1
                continue
            if lexeme.kind == "word" and lexeme.value == "rep":
                r.pos = pos
                named = _at_rep(r)
                if named is not None:
                    return named == mark
            if lexeme.kind == "mark" and lexeme.value == mark:
                r.pos = pos + 1
                return read_times(r) is not None or _at_rep(r) == mark or r.at("around", "across")
            pos += 1
    finally:
        r.pos = at
    return False


def _how_often(r: Reader, mark: str, closed: bool) -> tuple[Amount | None, Extent | None, bool]:
    """The times or the distance after "rep from *", or after the closing star; and whether it ends at ``**``."""
    separators = r.pos
    r.accept_separator()
    stop = between = False
    if _at_rep(r) == mark:
        while not r.at_kind("mark"):
            between = r.take().value == "between" or between
        r.take()
        if r.peek().raw == "s":  # "between *s"
            r.take()
        if r.at("to", "and", "until") and r.peek(1).kind == "mark":
            r.take()
            stop = r.take().value != mark
        added = 0 if between else 1  # what stands after the star is worked once, and then repeated
    elif r.at("rep") and _plain_rep(r):
        r.take()
        added = 0
    elif closed:
        if not (r.at("around", "across", "to") or _times_ahead(r)):
            r.pos = separators
        r.accept("rep")
        added = 0
    else:
        added = 1
    total = r.at("total") or (r.at("for") and r.peek(1).value in ("total",))
    said = read_times(r)
    if said is not None:
        total = total or r.before().value == "total"
        added = 1 if between and said[0] == ONE else added  # "rep between * and * once" is said of what was worked before
        return _plus(said[0], 0 if total else 1 if said[1] else added), None, stop
    if r.at_kind("num") and r.peek(1).kind in ("sep", "end", "open", "dash", "close"):
        return _plus(read_amount(r), added), None, stop
    extent = read_extent(r, read_np, read_noun)
    if extent is None and closed and added == 0 and not r.broken:
        r.unread = True
        r.say(error("star", r.span_of(r.before()), f"nothing says how often to repeat what stands between {mark} and {mark}",
                    f"\"{mark}...{mark} 3 times\" or \"; rep from {mark} to {mark} around\""))  # fmt: skip
    return None, extent or _all_the_way(r), stop


def _times_ahead(r: Reader) -> bool:
    at = r.pos
    found = read_times(r) is not None
    r.pos = at
    return found


def _once_more_to_stop(r: Reader, mark: str) -> tuple[int, bool]:
    """Such as "rep from * twice more, then from * to ** once": one more pass, which ends at the ``**``."""
    at = r.pos
    r.accept_separator()
    r.accept("rep", "work")
    if (
        r.accept("from")
        and r.at_kind("mark")
        and r.peek().value == mark
        and r.peek(1).value in ("to", "until")
        and r.peek(2).kind == "mark"
    ):
        r.pos += 3
        read_times(r)
        return 1, True
    r.pos = at
    return 0, False


def _check_stop(r: Reader, steps: tuple[Step, ...], wanted: bool, mark: str) -> None:
    """A ``**`` and "ending last rep at **" belong together."""
    stop = next((step for step in steps if isinstance(step, Stop)), None)
    if r.broken or wanted == (stop is not None):
        return
    r.unread = True
    if stop is not None:
        r.say(
            error(
                "star",
                stop.span,
                "** marks where the last repeat ends, but the repeat does not say so",
                f'"rep from {mark} around, ending last rep at **"',
            )
        )
    else:
        r.say(error("star", r.span_of(r.before()), f"the last repeat is to end at **, but no ** stands in what is repeated from {mark}"))
