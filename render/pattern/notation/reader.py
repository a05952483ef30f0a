"""Where the reading stands: the lexemes of one labelled line, a place among them, and the problems found so far."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import field, replace
from typing import Protocol, TypeVar

from motifold.render.pattern.instructions import CountClaim, Loop, Place, SideFacing, TargetKind, Work
from motifold.render.pattern.notation.context import NotationContext
from motifold.render.pattern.notation.lexicon import END, Lexeme
from motifold.render.pattern.notation.problems import Rejected, error
from motifold.render.pattern.problem import Problem, Span
from motifold.symbols.record import dataclass

T = TypeVar("T")

DEEPEST = 50
"""How deep brackets and stars may stand in each other; no reader could follow half of that."""


class Located(Protocol):
    """A text that knows where its characters stand in the file."""

    @property
    def text(self) -> str: ...

    def span(self, start: int, end: int) -> Span: ...


@dataclass(frozen=True, slots=True)
class Mode:
    """What "working in back loops only," or "working in row ends," says for the places that follow it in the line."""

    loop: Loop | None = None
    target: TargetKind | None = None
    of_round: int | None = None


@dataclass(frozen=True, slots=True)
class Known:
    """A step that was read, the stitch in hand after it, and from which of its words to which its place is said."""

    step: Work
    hand: str
    place_from: int
    place_to: int


@dataclass(slots=True)
class Memory:
    """What one line tells the next: ids, the stitch in hand, the last place named, the last round's number.

    ``ring_made``: a magic ring has been read; ``ring_wanted``: stitches went "in magic ring" before it was; ``ring_fresh``: nothing has
    been worked since it was made, so stitches without a place go into it.
    """

    next_id: int
    problems: list[Problem] = field(default_factory=list)
    hand: str = "sc"
    ring_made: bool = False
    ring_wanted: bool = False
    ring_fresh: bool = False
    last_place: Place | None = None
    last_number: int = 0
    known: dict[tuple[str, ...], Known] = field(default_factory=dict)


@dataclass(slots=True)
class Reader:
    """``end`` bounds what may be read now (the inside of a bracket, of a star repeat); ``closers`` maps each opening bracket.

    ``worked``: the special stitches that the text works by name. ``broken``: its brackets or stars do not close, and what follows from
    that is not said; ``unread``: some of its words could not be read.
    """

    items: list[Lexeme]
    text: Located
    context: NotationContext
    memory: Memory
    closers: dict[int, int]
    worked: frozenset[str] = frozenset()
    pos: int = 0
    end: int = 0
    depth: int = 0
    mode: Mode = Mode()
    broken: bool = False
    unread: bool = False
    in_definition: bool = False
    starred: bool = False
    places_open: int = 0
    facing: SideFacing | None = None
    claims: list[CountClaim] = field(default_factory=list)

    # -- looking -------------------------------------------------------------------------------------------------------

    def peek(self, ahead: int = 0) -> Lexeme:
        at = self.pos + ahead
        return self.items[at] if at < self.end else END

    def written(self) -> str:
        """The next word as the text writes it, capitals and all."""
        lexeme = self.peek()
        return self.text.text[lexeme.start : lexeme.end]

    def before(self) -> Lexeme:
        return self.items[self.pos - 1] if self.pos else END

    def at(self, *values: str) -> bool:
        """Whether a word with one of these meanings comes next."""
        lexeme = self.items[self.pos] if self.pos < self.end else END
        return lexeme.kind == "word" and lexeme.value in values

    def at_kind(self, *kinds: str) -> bool:
        return (self.items[self.pos].kind if self.pos < self.end else "end") in kinds

    def follows(self, *values: str, ahead: int = 0) -> bool:
        """Whether these words come next, in this order; nothing is taken."""
        for step, value in enumerate(values):
            lexeme = self.peek(ahead + step)
            if lexeme.kind != "word" or lexeme.value != value:
                return False
        return True

    # -- taking --------------------------------------------------------------------------------------------------------

    def take(self) -> Lexeme:
        lexeme = self.peek()
        if lexeme is not END:
            self.pos += 1
        return lexeme

    def accept(self, *values: str) -> Lexeme | None:
        """Takes the next word if it has one of these meanings."""
        return self.take() if self.at(*values) else None

    def accept_kind(self, *kinds: str) -> Lexeme | None:
        return self.take() if self.at_kind(*kinds) else None

    def accept_sequence(self, *values: str) -> bool:
        """Takes these words if they come next in this order."""
        if not self.follows(*values):
            return False
        self.pos += len(values)
        return True

    def accept_separator(self) -> bool:
        """Takes commas, full stops, semicolons, "and", "then" that stand between two steps."""
        start = self.pos
        while self.at_kind("sep", "colon") or self.at("and", "then"):
            self.pos += 1
        return self.pos > start

    def attempt(self, read: Callable[[], T | None]) -> T | None:
        """What ``read`` gives, or None with nothing taken and nothing said if it cannot read what stands here."""
        pos, said, next_id, unread = self.pos, len(self.memory.problems), self.memory.next_id, self.unread
        try:
            found = read()
        except Rejected:
            found = None
        if found is None:
            self.pos, self.memory.next_id, self.unread = pos, next_id, unread
            del self.memory.problems[said:]
        return found

    @contextmanager
    def inside(self, end: int) -> Iterator[None]:
        """Reads no further than ``end`` for a while."""
        outer, self.end = self.end, end
        self.depth += 1
        try:
            yield
        finally:
            self.end = outer
            self.depth -= 1

    # -- ids and places ------------------------------------------------------------------------------------------------

    def new_id(self) -> int:
        number = self.memory.next_id
        self.memory.next_id += 1
        return number

    def span(self, start: int) -> Span:
        """The place of everything taken since position ``start``."""
        last = self.items[max(start, self.pos - 1)] if self.items else END
        first = self.items[start] if start < len(self.items) else last
        return self.text.span(first.start, last.end)

    def span_of(self, lexeme: Lexeme) -> Span:
        if lexeme is not END:
            return self.text.span(lexeme.start, lexeme.end)
        last = self.items[self.end - 1] if 0 < self.end <= len(self.items) else END
        return self.text.span(last.end, last.end)

    # -- problems ------------------------------------------------------------------------------------------------------

    def say(self, problem: Problem) -> None:
        self.memory.problems.append(problem)

    def reject(self, code: str, message: str, hint: str | None = None, lexeme: Lexeme | None = None) -> Rejected:
        """What to raise where the words cannot be read: one problem at the word (the next one if none is given)."""
        return Rejected(error(code, self.span_of(lexeme or self.peek()), message, hint))


def relocated(place: Place, mode: Mode) -> Place:
    """A place under a mode: "working in back loops only, sc in each st" puts each of them into the back loop."""
    if place.target.kind in ("st", "stitch", "ch"):
        if mode.target is not None and place.which not in ("first", "top", "beg"):
            place = replace(place, target=replace(place.target, kind=mode.target, name=None), of_round=place.of_round or mode.of_round)
        if mode.loop is not None and place.loop is None:
            place = replace(place, loop=mode.loop)
    return place
