"""Labelled lines: ``Rnd 1 (RS):``, ``Rnds 4-6:``, ``Rnd 4 and following:``, ``Ring:``, ``Finish:``, and which words belong to each."""

from __future__ import annotations

from dataclasses import replace
from typing import Literal

from motifold.render.pattern.instructions import Label, SideFacing
from motifold.render.pattern.notation.lexicon import END, Lexeme
from motifold.render.pattern.notation.phrases import PHRASES
from motifold.render.pattern.spelling import nearest
from motifold.symbols.record import dataclass

LabelKind = Literal["ring", "chain", "foundation", "rnd", "row", "finish"]
_PLAIN_LABELS: dict[str, LabelKind] = {
    **dict.fromkeys(("ring", "magic ring", "center", "base", "beg", "setup"), "ring"),
    "ch": "chain",
    "foundation": "foundation",
    **dict.fromkeys(("finish", "finishing", "end", "fasten off", "ending"), "finish"),
}
_UNFINISHED = frozenset({"of", "rep", "in", "as", "work", "same", "and", "to", "from", "on", "with", "through", "until"})


@dataclass(frozen=True, slots=True)
class LabelledLine:
    """``label`` None: the text begins with no label. ``unnumbered``: "Next rnd". ``body``: positions of its lexemes after the label.

    ``yarn``: position of the yarn that a label names, "Rnd 2 (B):", "Rnd 2 (with B):". ``repeats``: a line without a label that repeats
    whole rows. ``others``: the further rounds of "Rnds 2, 4 and 6", for which the same is read again. ``slip``: position of a misspelt word
    of the label, and what it is read as.
    """

    label: Label | None
    start: int
    body: tuple[int, int]
    unnumbered: bool = False
    problem: str | None = None
    yarn: int | None = None
    repeats: bool = False
    others: tuple[Label, ...] = ()
    slip: tuple[int, str] | None = None


@dataclass(frozen=True, slots=True)
class _Found:
    """A label: where it ends, what it says, whether it has no number of its own, and what is wrong with it."""

    end: int
    label: Label
    unnumbered: bool = False
    problem: str | None = None
    yarn: int | None = None
    repeats: bool = False
    runs: tuple[tuple[int, int], ...] = ()
    slip: tuple[int, str] | None = None


@dataclass(slots=True)
class _Scan:
    """A place among the lexemes of a label."""

    items: list[Lexeme]
    pos: int

    def peek(self, ahead: int = 0) -> Lexeme:
        at = self.pos + ahead
        return self.items[at] if at < len(self.items) else END

    def word(self, *values: str) -> bool:
        lexeme = self.peek()
        if lexeme.kind == "word" and lexeme.value in values:
            self.pos += 1
            return True
        return False


def split_lines(items: list[Lexeme]) -> list[LabelledLine]:
    """The labelled lines of a text, in order. A line that begins with no label goes on with the one before."""
    starts: list[tuple[int, _Found]] = []
    for at, lexeme in enumerate(items):
        new_line = lexeme.first or at == 0
        if not new_line and not _may_begin_within(items, at):
            continue
        found = _label(items, at, must_end=not new_line)
        if new_line and (found is None or items[found.end - 1].kind not in ("colon", "sep", "dash")):
            found = _misspelt(items, at) or found
        if found is None and starts and starts[-1][1].end < at:
            found = _repeated_rows(items, at)
        if found is not None:
            starts.append((at, found))
    lines: list[LabelledLine] = []
    first = starts[0][0] if starts else len(items)
    if first > 0:
        lines.append(LabelledLine(None, 0, (0, first)))
    for index, (at, found) in enumerate(starts):
        stop = starts[index + 1][0] if index + 1 < len(starts) else len(items)
        others = _same_again(found)
        body = (found.end, stop)
        lines.append(LabelledLine(found.label, at, body, found.unnumbered, found.problem, found.yarn, found.repeats, others, found.slip))
    return lines


_LONGEST_LABEL = 10
_LABEL_WORDS = {"rnd": "rnd", "rnds": "rnd", "round": "rnd", "rounds": "rnd", "row": "row", "rows": "row", "following": "following"}
_LABEL_WORDS |= {"ring": "ring", "chain": "ch", "foundation": "foundation", "finish": "finish"}


def _misspelt(items: list[Lexeme], at: int) -> _Found | None:
    """A label with one word that nobody knows, as "Rdn 4:" or "Rnd 2 and folowing:", read as the nearest word of labels."""
    for index in range(at, min(at + _LONGEST_LABEL, len(items))):
        lexeme = items[index]
        if lexeme.kind == "colon" or (lexeme.first and index > at):
            return None
        if lexeme.kind != "word" or lexeme.raw in PHRASES:
            continue
        meant = nearest(lexeme.raw, _LABEL_WORDS)
        if meant is None:
            return None
        value = _LABEL_WORDS[meant]
        found = _label([*items[:index], lexeme._replace(value=value, raw=meant), *items[index + 1 : index + 20]], at, must_end=True)
        shown = meant.capitalize() if index == at else meant
        return None if found is None else replace(found, slip=(index, shown))
    return None


def _repeated_rows(items: list[Lexeme], at: int) -> _Found | None:
    """Such as "Rep Rows 2-3 until piece measures 20 cm." on a line of its own: the rows that come next, without a label."""
    if not items[at].first or items[at].kind != "word" or items[at].value not in ("rep", "work"):
        return None
    if items[at - 1].kind == "word" and items[at - 1].value in _UNFINISHED:
        return None
    scan = _Scan(items, at + 1)
    while scan.peek().raw in ("as", "for", "in", "same"):
        scan.pos += 1
    last = scan.word("last", "prev")
    if last and scan.peek().kind == "num":
        scan.pos += 1
    named = scan.peek()
    if named.kind != "word" or named.value not in ("row", "rnd") or not (last or scan.peek(1).kind == "num"):
        return None
    return _Found(at, Label(_kind(named)), repeats=True)


def _same_again(found: _Found) -> tuple[Label, ...]:
    """The labels of the further rounds of "Rnds 2, 4 and 6"."""
    return tuple(Label(found.label.kind, first, last, side=found.label.side) for first, last in found.runs[1:])


def _may_begin_within(items: list[Lexeme], at: int) -> bool:
    """Whether a label may begin in the middle of a line: "... (12 dc) Rnd 2: ...", "... Finish: ..."."""
    lexeme = items[at]
    finish = _PLAIN_LABELS.get(lexeme.value) == "finish" and at + 1 < len(items) and items[at + 1].kind == "colon"
    return (
        lexeme.kind == "word"
        and (lexeme.value in ("rnd", "row") or finish)
        and items[at - 1].kind in ("sep", "close")
        and items[at - 1].value in (".", ")", "]")
    )


def _label(items: list[Lexeme], at: int, must_end: bool) -> _Found | None:
    """The label at this position, or None where there is none."""
    scan = _Scan(items, at)
    numbered = _numbered(scan)
    if numbered is None:
        return _plain(items, at)
    label, unnumbered, problem, runs = numbered
    yarn = _yarn(scan)
    side = _side(scan)
    yarn = yarn if yarn is not None else _yarn(scan)
    ended = _terminator(scan)
    side = side or _side(scan)
    if not ended and (must_end or unnumbered or (at and items[at - 1].value in _UNFINISHED and items[at - 1].kind == "word")):
        return None
    if side is not None:
        label = replace(label, side=side)
    return _Found(scan.pos, label, unnumbered, problem, yarn, runs=runs)


_Numbers = tuple[Label, bool, str | None, tuple[tuple[int, int], ...]]


def _numbered(scan: _Scan) -> _Numbers | None:
    """Such as "Rnd 1", "Rnds 4-6", "Rnds 4 to 6", "Rnd 4 and following", "1st rnd", "Next rnd", "R1"."""
    first = scan.peek()
    if first.kind == "ord" and scan.peek(1).kind == "word" and scan.peek(1).value in ("rnd", "row"):
        scan.pos += 2
        return Label(_kind(scan.items[scan.pos - 1]), first.number, first.number), False, None, ()
    if first.kind == "word" and first.value in ("next", "last") and scan.peek(1).value in ("rnd", "row"):
        scan.pos += 2
        return Label(_kind(scan.items[scan.pos - 1])), True, None, ()
    short = first.kind == "word" and first.raw == "r" and scan.peek(1).kind == "num"
    if not ((first.kind == "word" and first.value in ("rnd", "row")) or short):
        return None
    scan.pos += 1
    if scan.peek().kind != "num":
        if scan.peek().kind == "colon":
            return Label(_kind(first)), True, None, ()
        scan.pos -= 1
        return None
    number = scan.peek().number
    scan.pos += 1
    at = scan.pos
    runs, problem = _runs(scan, number)
    last = runs[0][1]
    ends = _ends(scan, last) if len(runs) == 1 and scan.pos > at else ()  # "Rnds 4-4 (5)" too, but not "Rnd 4 (12)"
    if ends:
        return Label(_kind(first), number, None, True, ends=ends), False, problem, ()
    following = False
    at = scan.pos
    scan.word("and")
    if scan.word("following", "onward", "onwards", "up") or (
        scan.peek().kind == "word" and scan.peek().raw in ("following", "foll", "on", "onward", "onwards", "up", "beyond", "subsequent")
    ):
        if scan.pos == at or scan.items[scan.pos - 1].value == "and":
            scan.pos += 1
        scan.word("rnd", "row")
        following, last = True, number
    elif scan.word("each", "all") and scan.peek().raw in ("following", "foll", "subsequent"):
        scan.pos += 1
        scan.word("rnd", "row")
        following, last = True, number
    else:
        scan.pos = at
        if scan.word("and") and scan.peek().kind in ("sep", "colon"):  # "Rnd 4+"
            following, last = True, number
        else:
            scan.pos = at
    return Label(_kind(first), number, None if following else last, following), False, problem, runs


def _runs(scan: _Scan, first: int) -> tuple[tuple[tuple[int, int], ...], str | None]:
    """The runs of rounds that a label names: "4-6" is one, "2, 4 and 6-8" are three, "4 and 5" is one again."""
    runs: list[tuple[int, int]] = []
    problem: str | None = None
    number = first
    while True:
        last = _range_end(scan, number)
        if last < number:
            problem = problem or f"{number} to {last} is no run of rounds"
        elif runs and number <= runs[-1][1]:
            problem = problem or f"rounds {runs[-1][1]} and {number} are not named in their order"
        elif runs and number == runs[-1][1] + 1:
            runs[-1] = (runs[-1][0], last)
        else:
            runs.append((number, last))
        at = scan.pos
        while scan.peek().value in (",", "and") or (scan.pos > at and scan.peek().value in ("rnd", "row")):
            scan.pos += 1
        if scan.pos == at or scan.peek().kind != "num" or not (runs[1:] or _still_label(scan)):
            scan.pos = at
            return (tuple(runs) if problem is None else ((first, first),)), problem
        number = scan.peek().number
        scan.pos += 1


def _ends(scan: _Scan, last: int) -> tuple[int, ...]:
    """The last round of each size, the 6, 7 and 8 of "Rnds 4-6 (7, 8)"; () and nothing taken where no list of numbers follows."""
    ahead, ends = 1, [last]
    while scan.peek().kind == "open" and scan.peek(ahead).kind == "num":
        ends.append(scan.peek(ahead).number)
        after = scan.peek(ahead + 1)
        ahead += 2
        if after.kind == "close":
            scan.pos += ahead
            return tuple(ends)
        if after.value != ",":
            break
    return ()


def _range_end(scan: _Scan, number: int) -> int:
    """The 6 of "4-6", "4 to 6"; the number itself where no range follows."""
    if scan.peek().kind == "num" and scan.peek().tight:
        scan.pos += 1
        return scan.peek(-1).number
    if (scan.peek().kind == "dash" and scan.peek(1).kind == "num" and scan.peek(2).kind in ("colon", "sep", "open", "word")) or (
        scan.peek().kind == "word" and scan.peek().value in ("to", "through") and scan.peek(1).kind == "num"
    ):
        scan.pos += 2
        return scan.peek(-1).number
    return number


def _still_label(scan: _Scan) -> bool:
    """Whether a colon still comes after ", 4" or "and 5": only then do the numbers belong to the label."""
    ahead = 0
    while scan.peek(ahead).kind in ("num", "dash") or scan.peek(ahead).value in (",", "and", "to", "through", "rnd", "row"):
        ahead += 1
    return scan.peek(ahead).kind in ("colon", "open") or scan.peek(ahead).value == "."


def _kind(lexeme: Lexeme) -> LabelKind:
    return "row" if lexeme.value == "row" else "rnd"


def _side(scan: _Scan) -> SideFacing | None:
    """Such as "(RS)", "[WS]", ", RS", "(RS facing)"."""
    at = scan.pos
    opened = scan.peek().kind == "open"
    if opened or scan.peek().value == ",":
        scan.pos += 1
    if scan.peek().kind == "word" and scan.peek().value in ("rs", "ws"):
        side: SideFacing = "RS" if scan.peek().value == "rs" else "WS"
        scan.pos += 1
        if scan.peek().raw in ("facing", "row", "rnd"):
            scan.pos += 1
        if not opened or scan.peek().kind == "close":
            scan.pos += 1 if opened else 0
            return side
    scan.pos = at
    return None


def _yarn(scan: _Scan) -> int | None:
    """Position of the yarn in "(B)" or "(with B)"; None and nothing taken if there is none."""
    ahead = 2 if scan.peek(1).value == "with" else 1
    if scan.peek().kind != "open" or scan.peek(ahead).kind != "yarn" or scan.peek(ahead + 1).kind != "close":
        return None
    scan.pos += ahead + 2
    return scan.pos - 2


def _terminator(scan: _Scan) -> bool:
    """Takes the colon, full stop or dash that ends a label; a comma is taken too, but proves nothing."""
    ended = False
    if scan.peek().value == ",":
        scan.pos += 1
    while scan.peek().kind in ("colon", "dash") or (scan.peek().kind == "sep" and scan.peek().value == "."):
        ended = True
        scan.pos += 1
    return ended


def _plain(items: list[Lexeme], at: int) -> _Found | None:
    """Such as "Ring:", "Chain:", "Foundation:", "Finish:"; these need their colon."""
    for ahead in range(1, 4):
        if at + ahead < len(items) and items[at + ahead].kind == "colon":
            words = items[at : at + ahead]
            kind = _PLAIN_LABELS.get(words[0].value) if words[0].kind == "word" else None
            if kind is None and any(word.raw in ("foundation", "set", "setup") for word in words):
                kind = "foundation"
            if kind is None or any(lexeme.kind != "word" for lexeme in words):
                return None
            if any(word.value == "ring" for word in words):
                kind = "ring"
            if kind == "chain" and any(word.value == "foundation" for word in words):
                kind = "foundation"
            return _Found(at + ahead + 1, Label(kind))
        if at + ahead < len(items) and items[at + ahead].kind != "word":
            return None
    return None
