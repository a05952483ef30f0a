"""Repeats of whole rounds: ``Rep Rnds 3 and 4 twice``, ``Rep Rows 2-3 until piece measures 20 cm, ending with a WS row``."""

from __future__ import annotations

from motifold.render.pattern.instructions import Amount, RepeatRounds, SideFacing
from motifold.render.pattern.notation.amounts import read_number, read_times
from motifold.render.pattern.notation.phrases import UNITS_CM
from motifold.render.pattern.notation.problems import error
from motifold.render.pattern.notation.reader import Reader
from motifold.render.pattern.spelling import nearest

_MOST_ROUNDS = 1000
_FRACTIONS = {"¼": 1 / 4, "½": 1 / 2, "¾": 3 / 4, "⅓": 1 / 3, "⅔": 2 / 3, "⅛": 1 / 8, "⅜": 3 / 8, "⅝": 5 / 8, "⅞": 7 / 8}


def at_repeat_rounds(r: Reader) -> bool:
    """Such as "Rep Rnd 3", "Work as for Row 2", "As Rnd 2", "Same as Row 4"."""
    ahead = 0
    if r.peek().value in ("rep", "work", "same") and r.peek().kind == "word":
        ahead = 1
    while r.peek(ahead).raw in ("as", "for", "in", "same", "given"):
        ahead += 1
    if ahead == 0 or (ahead == 1 and r.peek().raw in ("in", "for", "same")):
        return False
    if r.peek(ahead).kind == "word" and r.peek(ahead).value in ("last", "prev"):
        ahead += 1
        if r.peek(ahead).kind == "num":
            ahead += 1
        return r.peek(ahead).value in ("rnd", "row") and r.peek().value == "rep"
    return r.peek(ahead).kind == "word" and r.peek(ahead).value in ("rnd", "row") and r.peek(ahead + 1).kind == "num"


def read_repeat_rounds(r: Reader) -> RepeatRounds:
    start, number = r.pos, r.new_id()
    while not r.at("rnd", "row", "last", "prev"):
        r.take()
    if r.accept("last", "prev"):
        count = read_number(r) if r.at_kind("num") else 1
        r.take()
        last = r.memory.last_number
        rounds = tuple(range(last - count + 1, last + 1))
        if not rounds or rounds[0] < 1:
            raise r.reject("round", f"there are not {count} rounds before this one to repeat")
    else:
        rounds = _numbers(r)
    times: Amount | None = None
    measures: tuple[float, ...] = ()
    said = read_times(r)
    if said is not None:
        times = said[0]
    elif r.at("until", "to") or (r.peek().raw == "for" and (r.peek(1).kind in ("num", "measure") or r.peek(1).raw in _FRACTIONS)):
        measures = _measures(r)
    elif r.peek().raw == "for":
        _for_pattern(r)
        if r.at("until"):
            measures = _measures(r)
    ending = _ending_side(r)
    return RepeatRounds(
        number, r.span(start), rounds, times, measures[0] if measures else None, ending, measures if len(measures) > 1 else ()
    )


def _numbers(r: Reader) -> tuple[int, ...]:
    """Such as "Rnds 3 and 4", "Rnds 2-5", "Rnds 2, 3 and 4", "Rnd 3"."""
    rounds: list[int] = []
    r.accept("rnd", "row")
    while True:
        number = read_number(r)
        tight = r.at_kind("num") and r.peek().tight
        if (r.at("to", "through") and r.peek(1).kind == "num") or tight or (r.at_kind("dash") and r.peek(1).kind == "num"):
            if not tight:
                r.take()
            last = read_number(r)
            if last < number or last - number > _MOST_ROUNDS:
                raise r.reject("round", f"{number} to {last} is no run of rounds", lexeme=r.before())
            rounds.extend(range(number, last + 1))
        else:
            rounds.append(number)
        at = r.pos
        r.accept_separator()
        r.accept("rnd", "row")
        if not r.at_kind("num") or (r.peek(1).value in ("times", "more", "x") and r.peek(1).kind == "word"):
            r.pos = at
            return tuple(rounds)


def _measures(r: Reader) -> tuple[float, ...]:
    """Such as "until piece measures 20 cm", "for 15 (16, 17) cm", "to 8 in": in centimetres, one or one a size."""
    while r.at_kind("word") and not r.at_kind("num", "measure"):
        r.take()
    wanted = r.pos
    values: list[float] = []
    while not r.at_kind("end", "sep") or (r.at_kind("sep") and r.peek(1).kind in ("num", "measure") and values):
        lexeme = r.take()
        if lexeme.kind == "measure":
            number, unit = _split_measure(lexeme.value)
            return _checked(r, [*values, number], unit)
        if lexeme.kind == "num":
            value = float(lexeme.number)
            if r.at_kind("num") and r.peek(1).raw == "/" and r.peek(2).kind == "measure":  # "8 1/2 in."
                over, unit = _split_measure(r.peek(2).value)
                value += r.peek().number / max(over, 1)
                r.pos += 3
                return _checked(r, [*values, value], unit)
            values.append(_fraction(r, value, lexeme.raw))
        elif lexeme.raw in _FRACTIONS:  # "½ in"
            values.append(_FRACTIONS[lexeme.raw])
        elif lexeme.raw in UNITS_CM and values:
            return _checked(r, values, UNITS_CM[lexeme.raw])
        elif lexeme.kind not in ("open", "close", "sep") and lexeme.value != "to":
            break
    return _no_measure(r, wanted)


def _no_measure(r: Reader, wanted: int) -> tuple[float, ...]:
    """One problem from the first number on; what the line says after the measure is still read."""
    while not r.at_kind("end", "sep"):
        r.take()
    r.unread = True
    written = r.items[min(wanted, r.pos - 1) : r.pos]
    guess = nearest(written[-1].raw, UNITS_CM, few=True) if len(written) > 1 else None
    r.say(
        error(
            "measure",
            r.span(min(wanted, r.pos - 1)),
            "a measure is wanted here, such as 20 cm or 8 in",
            f'did you mean "{guess}"?' if guess else None,
        )
    )
    return ()


def _split_measure(written: str) -> tuple[float, float]:
    """The number of "20 cm" and its unit in centimetres."""
    digits = written.rstrip('abcdefghijklmnopqrstuvwxyz." ')
    return float(digits), UNITS_CM[written[len(digits) :].strip()]


def _fraction(r: Reader, value: float, written: str) -> float:
    """What follows a whole number: ".5", "1/2" or "½"."""
    if r.peek().raw in _FRACTIONS:
        return value + _FRACTIONS[r.take().raw]
    if r.at_kind("sep") and r.peek().value == "." and r.peek().tight and r.peek(1).kind == "num" and r.peek(1).tight:
        r.take()
        return float(f"{written}.{r.take().raw}")
    if r.at_kind("num") and r.peek(1).raw == "/" and r.peek(2).kind == "num" and r.peek(2).number:
        value += r.peek().number / r.peek(2).number
        r.pos += 3
    return value


def _checked(r: Reader, values: list[float], unit: float) -> tuple[float, ...]:
    r.accept_kind("close")
    _skip_other_unit(r)
    sizes = r.context.sizes
    if len(values) not in (1, sizes):
        raise r.reject("sizes", f"{sizes} measures were expected, one for each size, and here are {len(values)}", lexeme=r.before())
    r.accept("from")
    while r.at("beg", "of", "rnd", "row", "foundation", "end", "join") or r.peek().raw in (
        "long",
        "tall",
        "wide",
        "high",
        "in",
        "length",
        "all",
    ):
        r.take()
    return tuple(round(value * unit, 6) for value in values)


def _skip_other_unit(r: Reader) -> None:
    """The same length again in the other unit: "60 in (152 cm)", "15 (16, 17) cm [6 (6¼, 6¾) in]"."""
    closer = r.closers.get(r.pos) if r.at_kind("open") else None
    if closer is None:
        return
    inside = r.items[r.pos + 1 : closer]
    lengths = all(lexeme.kind in ("num", "measure", "open", "close", "sep") or lexeme.raw in (*UNITS_CM, *_FRACTIONS) for lexeme in inside)
    if lengths and any(lexeme.kind == "measure" or lexeme.raw in UNITS_CM for lexeme in inside):
        r.pos = closer + 1


def _for_pattern(r: Reader) -> None:
    """Such as "Rep Rows 2 and 3 for pattern": how often is said by the label or not at all."""
    r.take()
    while r.at_kind("unworked", "word") and not r.at("ending", "and", "until"):
        r.take()


def _ending_side(r: Reader) -> SideFacing | None:
    """Such as "ending with a WS row"."""
    at = r.pos
    r.accept_separator()
    if r.accept("ending", "end"):
        while r.at("with", "on", "after", "last") or r.peek().raw in ("with", "after"):
            r.take()
        if r.at("rs", "ws"):
            side: SideFacing = "RS" if r.take().value == "rs" else "WS"
            r.accept("row", "rnd")
            return side
        if r.at("row", "rnd") and r.peek(1).kind == "num":
            r.take(), r.take()
            return None
        if r.at_kind("word") and r.peek(1).value in ("row", "rnd"):
            guess = nearest(r.peek().raw, ("RS", "WS"), few=True)
            raise r.reject("word", f'"{r.written()}" is no side of the work', f'did you mean "{guess}"?' if guess else "RS or WS")
    r.pos = at
    return None
