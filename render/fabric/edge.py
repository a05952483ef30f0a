"""What the hook meets: the edge of a round as a row of atoms, and a cursor that walks along it."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import field
from functools import lru_cache

from motifold.render.pattern.instructions import Target
from motifold.render.pattern.problem import Span
from motifold.symbols.record import dataclass


@dataclass(slots=True)
class Atom:
    """One stitch or space of an edge. ``group``: the named group that it belongs to (-1: none); ``head``: first of that group as met.

    ``chains`` of a stitch: it is a beginning chain of that length, which is entered as a space too. ``cluster``: number of its run of
    stitches worked into one place; ``first``: the first of that run as met. ``side``: number of the side of a piece that it lies on,
    where the edge has several, ``side_name`` what it is called ("left", "3").
    """

    space: bool
    id: int
    name: str
    chains: int = 0
    group: int = -1
    group_name: str = ""
    head: bool = False
    cluster: int = -1
    first: bool = False
    corner: bool = False
    standing: bool = False
    starts_side: bool = False
    side: int = 0
    side_name: str = ""
    marked: bool = False  # a stitch marker hangs in it
    apart: bool = False  # a turning chain that the line names in so many words: "each st" does not mean it too


@dataclass(slots=True)
class Cursor:
    """A place on an edge. Indices are virtual: on a cyclic edge they run on past the end, modulo its length.

    ``pos`` is the last place taken (``fresh``: still free, it is itself the next one); ``start`` the place that the round began in.
    ``limit`` is the last index that may be taken now. ``sub``: which chain of the space at ``pos`` was entered, -1 for the whole space.
    """

    atoms: list[Atom] = field(default_factory=list)
    cyclic: bool = False
    flipped: bool = False  # the edge is met against its own order of work
    round: int = -1
    start: int = 0
    pos: int = 0
    sub: int = -1
    past: int = -1  # the last index of a group that was entered by its name: what comes after it is next
    gap: int = -1  # the last index before the gap between two groups that was entered last
    fresh: bool = True
    taken_start: bool = True  # the place at ``start`` is occupied (or comes first, not last)
    start_worked: bool = False  # ... by more than a beginning chain
    start_came: bool = False  # ... as the "next" of a round whose beginning chain does not count: it comes no second time
    wrapped: bool = False
    came_round: tuple[Span, Target] | None = None  # where "next" came to the start again, though more than a beginning chain stands in it
    came_back: tuple[Span, Target] | None = None  # where "next" came to the start again at all
    spiral: bool = False
    sided: bool = False  # the edge goes round a piece in rows: first and last are those of the side that the hook is on
    limit: int = -1
    bounded: int = 0  # how many repeats or extents hold ``limit`` back
    reached_by_walk: bool = False
    group_names: frozenset[str] | None = None  # of all groups on the edge, once anyone asked
    grouped: dict[Target, list[int]] = field(default_factory=dict)  # the number of each atom's group, by what is called a group
    absent: set[int] = field(default_factory=set)  # places (by key) that this edge does not have at all
    dry: dict[str, tuple[int, int]] = field(default_factory=dict)  # kinds of place, and from where to where the edge has none of them

    @property
    def size(self) -> int:
        """How many atoms the edge has."""
        return len(self.atoms)

    @property
    def end(self) -> int:
        """The last index of the round: the start itself comes last where nothing stands in it."""
        if not self.cyclic:
            return len(self.atoms) - 1
        return self.start + len(self.atoms) - (1 if self.taken_start else 0)

    def has_group(self, name: str | None) -> bool:
        """Whether the edge has a named group of this name."""
        if self.group_names is None:
            self.group_names = frozenset(atom.group_name for atom in self.atoms)
        return name in self.group_names

    def reset_limit(self) -> None:
        """Lets the hook go to the end of the round."""
        self.limit = self.end

    def atom(self, index: int) -> Atom:
        """The atom at a virtual index."""
        return self.atoms[index % len(self.atoms)]

    def begin_at(self, index: int, *, fresh: bool, taken: bool) -> None:
        """Puts the beginning of the round here."""
        self.start = self.pos = index
        self.sub = self.past = -1
        self.gap = index if self.gap == index else -1  # a round that begins in a gap is past it
        self.fresh = fresh
        self.taken_start = taken
        self.start_worked = False
        self.wrapped = False
        self.came_round = self.came_back = None
        self.dry.clear()
        self.reset_limit()

    @property
    def following(self) -> int:
        """The first index that ``next`` may look at."""
        if self.fresh:
            return self.pos
        return (self.pos if self.pos >= self.past else self.past) + 1


Match = Callable[[Atom], bool]


@lru_cache(maxsize=1024)
def family(kind: str) -> str:
    """The plainer name that a stitch also goes by: "sc" of "sc2tog" and of "fsc", "cl" of "beg cl" and of "5-dc cl"."""
    kind = kind.removeprefix("beg ")
    if kind.endswith("tog"):
        return kind[:-3].rstrip("0123456789")
    if kind == "inv dec":
        return "sc"
    if kind.startswith("f") and kind[1:] in ("sc", "hdc", "dc", "tr", "dtr"):
        return kind[1:]
    last = kind.rsplit(" ", 1)[-1]
    return last if last in ("cl", "pc", "bobble", "puff", "shell", "picot") else kind


def _any_stitch(atom: Atom) -> bool:
    return not atom.space and atom.name != "row end" and not atom.apart


def matcher(target: Target, within: frozenset[str] = frozenset()) -> Match:
    """A test for what a place names. ``within``: groups named beside it: their own stitches are reached through their name only."""
    kind = target.kind
    if kind == "st":
        return (lambda a: not a.space and a.corner) if target.corner else _any_stitch
    if kind == "stitch":
        return _stitch_matcher(target.name or "", target.corner, within)
    if kind == "sp":
        return _space_matcher(target.chains, target.corner)
    if kind == "ch":
        return lambda a: a.space or a.name == "ch"
    if kind == "group":
        return lambda a: a.first and (a.corner or not target.corner)
    if kind == "tch":
        return lambda a: a.standing
    if kind == "corner":
        return lambda a: a.corner
    if kind == "marker":
        return lambda a: a.marked
    if kind == "row end":
        return lambda a: a.name == "row end"
    if kind == "between":
        return matcher(beside(target), within)
    return _any_stitch


def beside(target: Target) -> Target:
    """What lies on either side of the gap that a place names."""
    if target.kind != "between":
        return target
    if target.name in (None, "group"):
        return Target("group", corner=target.corner)
    return Target("st") if target.name == "st" else Target("stitch", target.name, corner=target.corner)


def _stitch_matcher(name: str, corner: bool, within: frozenset[str]) -> Match:
    def match(atom: Atom) -> bool:
        if atom.group_name and atom.group_name == name:
            return atom.head and (atom.corner or not corner)
        if atom.space or atom.apart or (within and atom.group_name in within):
            return False
        return (atom.name == name or family(atom.name) == name) and (atom.corner or not corner)

    return match


def _space_matcher(chains: int | None, corner: bool) -> Match:
    if chains is None:
        return lambda a: (a.space or a.chains > 0) and (a.corner or not corner)
    return lambda a: a.chains == chains and (a.corner or not corner)


def any_of(targets: Sequence[Target], within: frozenset[str] = frozenset()) -> Match:
    """A test for any of several targets; ``within`` as in ``matcher``."""
    tests = [matcher(target, within) for target in targets]
    if len(tests) == 1:
        return tests[0]
    if len(tests) == 2:
        one, other = tests
        return lambda atom: one(atom) or other(atom)
    return lambda atom: any(test(atom) for test in tests)


def oriented(atoms: list[Atom], flipped: bool, cyclic: bool) -> list[Atom]:
    """The edge as met by the next round; marks which atom of each group is met first."""
    order = atoms[::-1] if flipped else atoms
    previous = order[-1] if cyclic and order else None
    for atom in order:
        atom.head = atom.group >= 0 and (previous is None or previous.group != atom.group or previous is atom)
        atom.first = (
            atom.head
            if atom.group >= 0
            else (atom.cluster >= 0 and (previous is None or previous.cluster != atom.cluster or previous is atom))
        )
        previous = atom
    return order


def first_match(cursor: Cursor, match: Match, start: int, limit: int) -> int | None:
    """The first index from ``start`` to ``limit`` that matches."""
    atoms = cursor.atoms
    size = len(atoms)
    if not size:
        return None
    if start <= limit and match(atoms[start % size]):
        return start  # most often it is the very next one
    for index in range(start + 1, limit + 1):
        if match(atoms[index % size]):
            return index
    return None


def last_match(cursor: Cursor, match: Match, start: int, limit: int, count: int = 1) -> int | None:
    """The index of the ``count``-th match counted back from ``limit``."""
    atoms = cursor.atoms
    size = len(atoms)
    if not size:
        return None
    for index in range(limit, start - 1, -1):
        if match(atoms[index % size]):
            count -= 1
            if count == 0:
                return index
    return None


def has_sides(cursor: Cursor) -> bool:
    """Whether the edge goes round a piece with several sides."""
    return cursor.atoms[0].side != cursor.atoms[-1].side


def group_range(cursor: Cursor, index: int) -> tuple[int, int]:
    """First and last index of the named group, or of the run of stitches into one place, that the atom belongs to."""
    atom = cursor.atom(index)

    def same(other: Atom) -> bool:
        return other.group == atom.group if atom.group >= 0 else atom.cluster >= 0 and other.cluster == atom.cluster

    last = index
    while last + 1 < index + cursor.size and (cursor.cyclic or last + 1 < cursor.size) and same(cursor.atom(last + 1)):
        last += 1
    return index, last
