"""One step of a line: stitches, chains, skips, turns, and the doors to joins, yarn, repeats and remarks."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from motifold.render.pattern.instructions import (
    Group,
    Join,
    MagicRing,
    Repeat,
    Step,
    Stop,
    Turn,
    Work,
)
from motifold.render.pattern.notation.again import key_of_step, read_before, remember
from motifold.render.pattern.notation.amounts import at_times
from motifold.render.pattern.notation.asides import cluster_made, counts_as_after, counts_in_bracket, remark_in_brackets, you_should_have
from motifold.render.pattern.notation.beginnings import at_counts_as
from motifold.render.pattern.notation.counts import try_dash, try_sentence
from motifold.render.pattern.notation.elsewhere import at_last_elsewhere, last_elsewhere
from motifold.render.pattern.notation.joins import read_join
from motifold.render.pattern.notation.moves import read_brace, read_magic_ring, read_marker, read_no_join, read_skip, read_turn
from motifold.render.pattern.notation.phrases import KNITTING
from motifold.render.pattern.notation.places import at_place, read_place
from motifold.render.pattern.notation.problems import Rejected, error
from motifold.render.pattern.notation.reader import Mode, Reader
from motifold.render.pattern.notation.remarks import at_remark, read_remark
from motifold.render.pattern.notation.repeats import (
    at_rep_clause,
    at_times_before,
    opens_a_repeat,
    read_bracket,
    read_star,
    read_times_before,
    read_unmarked_repeat,
)
from motifold.render.pattern.notation.rounds import at_repeat_rounds, read_repeat_rounds
from motifold.render.pattern.notation.runs import into_one_place, nothing_would_be_left, with_others
from motifold.render.pattern.notation.stitches import at_stitch
from motifold.render.pattern.notation.suggestions import is_known, suggestion, unexplained
from motifold.render.pattern.notation.working import read_chain, read_stitches
from motifold.render.pattern.notation.yarns import read_change, read_fasten_off, read_leave, read_pick_up, read_with

_DOORS: dict[str, Callable[[Reader], list[Step]]] = {
    "join": read_join,
    "invisible join": read_join,
    "with": read_with,
    "change": read_change,
    "pick up": read_pick_up,
    "drop": lambda r: read_leave(r, "drop"),
    "carry": lambda r: read_leave(r, "carry"),
    "fasten off": read_fasten_off,
    "cut": read_fasten_off,
}


def read_steps(r: Reader) -> tuple[Step, ...]:
    """Steps up to the end of what may be read now. What cannot be read is one problem; reading goes on at the next comma."""
    steps: list[Step] = []
    starts: list[int] = []
    run = 0  # where the steps begin that only commas part
    while not r.at_kind("end"):
        at = r.pos
        if r.accept_separator():
            if any(lexeme.value in (";", ".", ":") for lexeme in r.items[at : r.pos]):
                run = len(steps)
            continue
        linked = r.before().kind == "word" and r.before().value == "and"
        try:
            key = key_of_step(r)
            again = read_before(r, key) if key is not None else None
            said = len(r.memory.problems)
            more = again if again is not None else read_step(r, steps)
            if key is not None and again is None:
                remember(r, key, at, said, more)
            if r.memory.ring_wanted and r.depth == 0 and more:
                more = [MagicRing(r.new_id(), r.span(at)), *more]
                r.memory.ring_wanted = False
            if linked or nothing_would_be_left(steps, more):
                more = with_others(r, more, steps)
            steps.extend(more)
            starts.extend([at] * (len(steps) - len(starts)))
            del starts[len(steps) :]  # a repeat of all before it stands in its place
            into_one_place(r, steps, starts, run)
        except Rejected as rejected:
            if not (r.broken and rejected.problem.code in ("bracket", "star")):
                r.say(rejected.problem)
            r.unread = True
            recover(r, at)
        if r.pos == at:
            r.take()
    return tuple(steps)


def recover(r: Reader, at: int) -> None:
    """Goes on to the next comma, semicolon or full stop at this depth of brackets, and past what cannot be read in any case."""
    r.pos = max(r.pos, at)
    while r.pos < r.end:
        lexeme = r.items[r.pos]
        if lexeme.kind == "sep" or (lexeme.kind == "mark" and r.pos > at):
            return
        if lexeme.kind == "open" and r.pos in r.closers:
            r.pos = r.closers[r.pos]
        r.pos += 1


def read_step(r: Reader, before: list[Step]) -> list[Step]:
    """The step that begins here; more than one where the words say more ("dc in next st and in each st around")."""
    lexeme = r.peek()
    match lexeme.kind:
        case "open":
            if before and at_counts_as(r):
                return counts_as_after(r, before)
            if r.depth == 0 and (counts_in_bracket(r) or cluster_made(r, before)):
                return []
            remark = remark_in_brackets(r, read_steps)
            return read_bracket(r, read_steps) if remark is None else remark
        case "mark":
            return _mark(r)
        case "brace":
            return [read_brace(r)]
        case "stitch" | "num":
            if (
                lexeme.kind == "num"
                and r.depth == 0
                and r.before().value == "."
                and _line_may_be_over(before)
                and try_sentence(r, to_end=True)
            ):
                return []
            return read_times_before(r, read_steps) if at_times_before(r) else read_stitches(r)
        case "unworked" if lexeme.raw in ("continue", "cont") and r.peek(1).value in ("in", "working", "work") and r.peek(2).kind == "word":
            return read_remark(r)
        case "unworked" if lexeme.raw in KNITTING:
            raise r.reject("not-worked", f'"{r.written()}" is a word of knitting, and says nothing here', _NOT_KNITTING)
        case "unworked":
            raise r.reject(
                "not-worked", f'"{r.written()}" is known but not worked here', "say it in stitches, or put it in braces to print it only"
            )
        case "dash" | "equals":
            counts = try_dash(r) if r.depth == 0 else None
            r.claims.extend(counts or ())
            if counts is None:
                r.take()
            return []
        case "word":
            return _worded(r, before)
        case _:
            return _unknown(r)


def _line_may_be_over(before: list[Step]) -> bool:
    """Whether the line has been joined, turned after some work, or worked to its end: what stands alone after that is a count."""
    if not before:
        return False
    last = before[-1]
    turned = isinstance(last, Turn) and any(isinstance(step, Work | Group | Repeat) for step in before)
    all_the_way = isinstance(last, Repeat) or (isinstance(last, Work | Group) and last.place is not None and last.place.extent is not None)
    closed = isinstance(last, Work) and last.stitch.name == "sl st"
    return turned or all_the_way or closed or any(isinstance(step, Join) for step in before)


def _worded(r: Reader, before: list[Step]) -> list[Step]:
    word = r.peek().value
    if before and at_last_elsewhere(r):
        return last_elsewhere(r, before)
    if word == "ch" and not at_stitch(r):
        return [read_chain(r)]
    if at_repeat_rounds(r):
        return [read_repeat_rounds(r)]
    if word == "work":
        return _work_word(r, before)
    if word == "with" and (r.peek(1).kind in ("num", "stitch", "open")):
        r.take()
        return with_others(r, read_step(r, before), before)
    if word in _DOORS:
        return _DOORS[word](r)
    if word == "skip":
        return read_skip(r)
    if at_stitch(r):
        return read_stitches(r)
    if word in ("foundation", "tch") or (word == "beg" and r.peek(1).value in ("ch", "foundation")):
        return [read_chain(r)]
    if word == "beg" and r.peek().raw in _STARTING and r.peek(2 if _with_after(r) else 1).kind == "num":
        r.pos += 2 if _with_after(r) else 1
        return read_step(r, before)
    if word == "turn":
        return [read_turn(r)]
    if word == "not" and r.peek(1).value in ("join", "close"):
        return [read_no_join(r)]
    if word == "close":
        return read_join(r)
    if word == "magic ring":
        return read_magic_ring(r)
    if word in ("place marker", "slip marker"):
        return [read_marker(r)]
    if word in ("rs", "ws") and (r.peek(1).raw == "facing" or r.peek(1).kind in ("sep", "end", "close")):
        r.facing = "RS" if r.take().value == "rs" else "WS"
        if r.peek().raw == "facing":
            r.take()
        return []
    if word in ("counts as", "counts") and before:
        return counts_as_after(r, before)
    if word == "rep" and at_rep_clause(r):
        mark = next(r.items[at].value for at in range(r.pos, len(r.items)) if r.items[at].kind == "mark")
        rep = r.peek()
        while not r.at_kind("mark"):
            r.take()
        r.take()
        raise r.reject("star", f'"rep from {mark}" has no {mark} before it to repeat from', lexeme=rep)
    if word == "rep":
        return read_unmarked_repeat(r, before)
    if word in ("blo", "flo") and (r.peek(1).kind in ("stitch", "num") or r.peek(1).value in ("inc", "dec")):
        return _loop_before(r)
    if word == "working" and (r.peek(1).kind in ("open", "num", "stitch", "mark") or r.peek(1).value in ("inc", "dec", "ch")):
        return with_others(r, _work_word(r, before), before)
    if r.peek().raw == "you" and r.depth == 0 and you_should_have(r):
        return []
    if at_remark(r):
        return read_remark(r)
    if at_place(r):
        return _place_first(r)
    return _unknown(r)


_STARTING = frozenset({"start", "starting", "begin", "beginning"})


def _with_after(r: Reader) -> bool:
    """Such as the "with" of "begin with 6 sc in magic ring"."""
    return r.peek(1).kind == "word" and r.peek(1).value == "with"


_NOT_KNITTING = 'to pass a stitch, write "sk next st"; to work two together, "sc2tog"'
_BRACES = "words that are printed and not worked stand in braces: {like this}"


def _unknown(r: Reader) -> list[Step]:
    """One problem at a word that cannot be read, with the nearest thing that can."""
    lexeme = r.peek()
    if lexeme.kind == "odd":
        r.take()
        if lexeme.value in "{}":
            r.say(error("bracket", r.span_of(lexeme), f"{lexeme.value} has no partner", _BRACES))
        else:
            r.say(error("word", r.span_of(lexeme), f"the sign {lexeme.value} means nothing here"))
        return []
    if at_times(r):
        raise r.reject("bracket", "a number of times stands here, but nothing before it is in brackets", '"[dc in next st, ch 1] 3 times"')
    if lexeme.value == "group" and lexeme.kind == "word":
        raise r.reject("word", *unexplained(lexeme))
    if is_known(lexeme):
        raise r.reject("word", f'"{r.written()}" cannot be read at this place', _BRACES)
    raise r.reject(
        "word",
        f'"{r.written()}" cannot be read',
        suggestion(lexeme, r.context) or _BRACES,
    )


def _work_word(r: Reader, before: list[Step]) -> list[Step]:
    """Such as "work 3 dc", "make a magic ring", "work (dc, ch 1, dc) in next st"."""
    at = r.pos
    while r.at("work", "working"):
        r.take()
    if r.accept("ring"):
        r.memory.ring_made = r.memory.ring_fresh = True
        return [MagicRing(r.new_id(), r.span(at))]
    if r.at_kind("end", "sep"):
        raise r.reject("word", "what to work is not said", lexeme=r.before())
    return read_step(r, before)


def _loop_before(r: Reader) -> list[Step]:
    """Such as "BLO sc in next st": the loop of this stitch alone."""
    outer = r.mode
    r.mode = replace(outer, loop="back" if r.take().value == "blo" else "front")
    try:
        return read_stitches(r)
    finally:
        r.mode = outer


def _mark(r: Reader) -> list[Step]:
    """A star opens a repeat; two of them end its last pass, unless a "rep from **" makes them a repeat of their own."""
    mark = r.peek()
    if len(mark.value) == 1 or opens_a_repeat(r):
        return read_star(r, read_steps)
    if r.starred:
        start, number = r.pos, r.new_id()
        r.take()
        return [Stop(number, r.span(start))]
    raise r.reject(
        "star",
        f"{mark.value} stands here, but no repeat from * that it could end",
        f'is the * at its beginning missing, or "rep from {mark.value}"?',
    )


def _place_first(r: Reader) -> list[Step]:
    """Such as "In next ch-2 sp work (3 dc, ch 2, 3 dc)", "in ring, 12 dc"; "in BLO," speaks of all that follows in the line."""
    start = r.pos
    if (
        r.at("in", "through")
        and r.peek(1).value in ("blo", "flo")
        and (r.peek(2).kind in ("sep", "colon", "stitch", "num") or r.peek(2).value in ("inc", "dec"))
    ):
        r.take()
        r.mode = replace(r.mode, loop="back" if r.take().value == "blo" else "front")
        return []
    found = read_place(r)
    if r.at_kind("sep", "colon") and found.place.which == "each" and found.place.target.kind in ("unused loop", "foundation", "row end"):
        r.mode = Mode(found.place.loop, found.place.target.kind, found.place.of_round)
        return []
    r.accept_kind("sep", "colon")
    r.accept("work")
    if found.place.target.kind == "ring" and r.at("ch"):  # "In ring, ch 3 (counts as dc), 11 dc"
        r.memory.ring_fresh = True
        return []
    if r.at_kind("open"):
        number, closer = r.new_id(), r.closers[r.pos]
        r.take()
        with r.inside(closer):
            steps = read_steps(r)
        r.pos = closer + 1
        return [Group(number, r.span(start), steps, found.place)]
    if not at_stitch(r) and not r.at_kind("num"):
        raise r.reject("word", "a place stands here, but nothing to work in it", '"3 dc in next ch-2 sp"', lexeme=r.items[start])
    steps = tuple(read_stitches(r))
    first = steps[0] if steps else None
    if isinstance(first, Work) and first.place is None:
        return [replace(first, place=found.place), *steps[1:]]
    return list(steps)
