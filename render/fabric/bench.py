"""The workbench: what is being made, while it is being made.

Everything here is mutable and lives for one piece of work only; ``finish.py`` turns it into a Fabric.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import Literal

from motifold.render.fabric.edge import Atom, Cursor, Match, any_of
from motifold.render.fabric.model import Base, Foot, Gather, Leg, Origin, RunRole, StitchRole
from motifold.render.pattern.instructions import CountsAs, Definition, Group, Line, Node, Place, Step, StitchSpec, Target, Work
from motifold.render.pattern.problem import Problem, Severity, Span
from motifold.symbols.record import dataclass

Terms = Literal["US", "UK"]
RoundKind = Literal["ring", "foundation", "round", "row", "finish", "edge"]

MOST_STITCHES = 102_000
"""More than this in one pattern, all pieces and sizes together, is a slip of the pen (a doily has some 20,000, five sizes of a
garment, or a blanket of 400 rows in one piece, some 100,000)."""


STRUCTURAL = frozenset({"place", "uneven", "left-over", "beyond", "count", "repeat"})
"""Codes of mistakes that make the work come out wrong."""

MENDABLE = STRUCTURAL | {"join"}
"""Codes of mistakes for which a change is looked for that makes the line come out."""


MOST_IN_A_ROUND = 6_000
"""More than this in one round is one too: twelve metres of edge, at two millimetres a stitch."""


class TooMuch(Exception):
    """More work than anyone would do. ``what`` names the bound that was passed: "more than 6,000 stitches in one round"."""

    def __init__(self, span: Span, what: str) -> None:
        super().__init__(what)
        self.span = span
        self.what = what


class Beyond(Exception):
    """A place beyond where the enclosing repeat may go."""


@dataclass(frozen=True, slots=True)
class Workshop:
    """What a piece is worked with: special stitches, yarns, and what one size decides.

    ``rounds``: how many numbered rounds this size works (None: as many as the text has). ``size`` picks from numbers given
    for several sizes. ``row_height_cm`` serves "until piece measures". ``counts_as`` is the file's word on beginning
    chains (None: it says nothing). ``stitches``: how many may be made, after what other pieces and sizes took.
    """

    definitions: Mapping[str, Definition]
    yarns: tuple[str, ...]
    rounds: int | None
    size: int
    row_height_cm: float | None
    terms: Terms
    counts_as: bool | None
    stitches: int = MOST_STITCHES


@dataclass(frozen=True, slots=True)
class Recipe:
    """How a stitch comes off the hook wherever it goes: its kind, its stems, how they are closed, and the ``foot`` that it has of itself.

    ``special``: none of that is enough to make it. ``easy``: it goes into its one place, and nothing else is to be asked. ``spec`` is
    what it was read from, kept so that its identity stays its own.
    """

    spec: StitchSpec
    special: bool
    kind: str = ""
    stems: tuple[str, ...] = ()
    gather: Gather | None = None
    foot: Foot | None = None
    easy: bool = False

    @property
    def plain(self) -> bool:
        """Whether it is one stem that takes its foot from its place."""
        return len(self.stems) == 1 and self.foot is None and not self.special


@dataclass(slots=True)
class DraftStitch:
    id: int
    kind: str
    role: StitchRole
    round: int
    yarn: str
    origin: Origin
    legs: tuple[Leg, ...] = ()
    gather: Gather | None = None
    chains: tuple[int, ...] = ()
    run: int | None = None
    group: int | None = None
    behind: bool = False


@dataclass(slots=True)
class DraftRun:
    id: int
    role: RunRole
    round: int
    chains: int
    stitches: list[int]
    before: int | None = None
    after: int | None = None
    group: int | None = None
    corner: bool = False


@dataclass(slots=True)
class DraftGroup:
    id: int
    name: str | None
    round: int
    base: Base | None
    origin: Origin
    stitches: list[int] = field(default_factory=list)
    corner: bool = False


@dataclass(slots=True)
class Lap:
    """One round or row in the making, then made. ``made`` holds (is it a space, id) in the order of work."""

    index: int
    number: int | None
    label: str
    kind: RoundKind
    side: Literal["RS", "WS"]
    direction: int
    line: Line | None
    cursor: Cursor
    linear: bool = False  # a row: it has ends
    stitches: list[int] = field(default_factory=list)
    made: list[tuple[bool, int]] = field(default_factory=list)
    atoms: list[Atom] = field(default_factory=list)  # the finished edge, in order of work
    end: Literal["joined", "open", "spiral"] = "open"
    unjoined: bool = False  # "do not join", in so many words
    join_at: int = 0  # where in ``made`` the next round begins
    join_free: bool = False  # a spiral: that place is still to be worked
    overrun: int = 0  # a spiral's stitches already worked into this round's own first ones
    turned: bool = False
    fastened: bool = False
    attached: bool = False
    yarns: list[str] = field(default_factory=list)
    standing: int | None = None  # the beginning chain that counts, as a stitch
    beginning: int | None = None  # the run of the beginning chain, whether it counts or not
    counts: dict[str, int] = field(default_factory=dict)
    parts: dict[str, int] = field(default_factory=dict)
    met: int = 0
    others: dict[int, Cursor] = field(default_factory=dict)  # cursors over earlier rounds
    under: Cursor | None = None  # the other side of the foundation chain, once turned to
    marks: list[int] = field(default_factory=list)  # where in ``made`` markers were placed
    marks_each: list[Target] = field(default_factory=list)  # what markers were placed in wherever the finished round has it: "each corner"
    spine: list[int] = field(default_factory=list)  # chains still to be worked back along
    claims: tuple[Target, ...] = ()  # the kinds of place that the line names: none of them may be left over
    claimed: Match | None = None  # the test for any of them, once it was asked for
    groups_named: frozenset[str] = frozenset()  # groups that the line goes into by name
    names_tch: bool = False  # the line works into the turning chain in so many words
    counts_tch: bool = False  # ... and counts it as one of its last stitches
    last_base: Base | None = None  # what the hook went into last
    last_step: Work | Group | None = None  # the instruction worked last
    walked_from: int | None = None  # where on the round below the hook stood before slip stitches walked on
    passed: int = 0  # places of a kind that the line works into, walked over on the way to a space
    bend: int = 0  # +1 grows too much to lie flat, -1 too little
    covered: int = 0  # stitches of this edge that the last spike stitches cover, so that to skip them is no more than that
    uncovered: tuple[int, int] = (0, 0)  # how many places were skipped just now, and where: what the next spike stitches cover
    skipped: list[Base] = field(default_factory=list)  # what was skipped last, for those who come back to it
    excess: int = 0  # places wanted beyond the end
    excess_span: Span | None = None
    excess_target: Target | None = None
    excess_round: int = -1
    left_at: Span | None = None  # the first place that passed a whole side
    began: Cursor | None = None  # over the earlier round that yarn was joined in
    left: list[int] = field(default_factory=list)  # atoms that were claimed and passed
    left_on: Cursor | None = None  # the edge of which they are, where it is not the last round's
    earlier: tuple[Place, ...] = ()  # places of earlier rounds that the line goes on to, where it works nothing on the last one
    doubts: list[tuple[Span, str, str]] = field(default_factory=list)  # repeats that stopped short: a problem if anything else is
    leave: bool = False  # "leave remaining sts unworked"
    faulty: bool = False
    reported: bool = False  # what makes it come out wrong is told already
    no_join: tuple[Span, str, str] | None = None  # a join into what is not there: told if nothing else is wrong
    several: bool = False  # its line serves other rounds too, where it may find what it does not find here
    habit_of: int = 0  # length of a beginning chain of which nothing is said
    by_habit: bool = False  # the trade's habit decided whether a chain counts


    def claims_it(self) -> Match:
        """The test for what the line claims, made once."""
        if self.claimed is None:
            self.claimed = any_of(self.claims)
        return self.claimed


@dataclass(slots=True)
class Hook:
    """The state of the work: yarn in hand, the round being made and where the hook is."""

    shop: Workshop
    polygon: int
    lap: Lap
    stitches: list[DraftStitch] = field(default_factory=list)
    runs: list[DraftRun] = field(default_factory=list)
    groups: list[DraftGroup] = field(default_factory=list)
    laps: list[Lap] = field(default_factory=list)
    yarn: str = "A"
    pending: list[int] = field(default_factory=list)  # chains that hang from ``last``
    last: int | None = None  # the last stitch worked in this round
    here: Base | None = None  # the one place that a group goes into
    open_groups: list[int] = field(default_factory=list)
    passes: tuple[int, ...] = ()
    depth: int = 0
    beginning: bool = False  # a chain now would be a beginning chain
    walking: bool = False  # slip stitches now only walk
    behind: bool = False
    crossing: bool = False  # ... or in front of, until the next stitches are skipped: the stitches that a cable crosses
    rest: tuple[Step, ...] = ()  # all steps of the line, for what may be inferred from them
    throughout: dict[int, CountsAs] = field(default_factory=dict)
    problems: list[Problem] = field(default_factory=list)
    told: set[tuple[str, int]] = field(default_factory=set)
    tainted: bool = False  # an earlier mistake may still show
    taken: int = 0  # places taken so far, to know how many a repeat needs
    steps_done: int = 0
    mending: int = 12_000  # stitches that may still be worked on trial
    mended: dict[tuple[Step, ...], tuple[Step, ...]] = field(default_factory=dict)  # what made a line come out, for its other rounds
    borne_out: set[int] = field(default_factory=set)  # lengths of beginning chains whose usual reading a count has borne out
    flip: bool = False  # read unstated beginning chains the other way
    idle: dict[int, tuple[Span, str, str | None]] = field(default_factory=dict)
    busy: set[int] = field(default_factory=set)
    origin: Origin | None = None
    within: Node | None = None  # the step that uses a defined stitch, while that is worked
    matchers: dict[int, tuple[Place, Match, bool]] = field(default_factory=dict)  # by identity; the place is kept, so it stays its own
    recipes: dict[int, Recipe] = field(default_factory=dict)  # by identity of what they were read from
    entered: frozenset[int] = frozenset()  # lengths of missed chains that rows enter as spaces
    plain_places: dict[int, Place] = field(default_factory=dict)  # "next st", for steps that name no place

    def match_of(self, place: Place) -> Match:
        """The test for what a place names, made once."""
        found = self.matchers.get(id(place))
        return (found or self._known(place))[1]

    def is_plain_next(self, place: Place) -> bool:
        """Whether a place is the next stitch or space of the round below, and nothing else is said of it."""
        found = self.matchers.get(id(place))
        return (found or self._known(place))[2]

    def _known(self, place: Place) -> tuple[Place, Match, bool]:
        within = frozenset[str]() if self.walking else self.lap.groups_named  # who walks to a petal's space passes its stitches
        plain = place.which == "next" and place.target.kind in ("st", "stitch", "sp") and place.of is None and place.of_round is None
        plain = plain and not place.from_hook and not place.below
        self.matchers[id(place)] = found = (place, any_of((place.target, *place.also), within), plain)
        return found

    def next_stitch(self, node: Node) -> Place:
        """The place of a step that names none: the next stitch."""
        found = self.plain_places.get(node.id)
        if found is None:
            found = self.plain_places[node.id] = Place(node.span, "next", Target("st"))
        return found

    def budget(self, span: Span) -> None:
        """Counts one piece of work; raises TooMuch when there is more than anyone would do."""
        self.steps_done += 1
        most = self.shop.stitches
        if self.steps_done > 2 * most or len(self.stitches) > most or len(self.lap.stitches) > MOST_IN_A_ROUND:
            raise TooMuch(span, self.too_much())

    def room(self) -> int:
        """How many more stitches may be made in this round before there is more than anyone would do."""
        most = self.shop.stitches
        return max(min(most - len(self.stitches), 2 * most - self.steps_done, MOST_IN_A_ROUND - len(self.lap.stitches)), 0)

    def too_much(self) -> str:
        """Which bound is passed."""
        if len(self.lap.stitches) >= MOST_IN_A_ROUND:
            return f"more than {MOST_IN_A_ROUND:,} stitches in one round"
        if len(self.stitches) >= self.shop.stitches:
            return f"more than {MOST_STITCHES:,} stitches"
        return f"more than {2 * MOST_STITCHES:,} steps"

    def origin_of(self, node_id: int, span: Span) -> Origin:
        """The identity of what is being made: the step of the line, also for the stitches of a defined stitch that it uses."""
        if self.within is not None:
            node_id, span = self.within.id, self.within.span
        last = self.origin
        if last is not None and last.instruction == node_id and last.passes is self.passes:
            return last
        made = Origin(node_id, self.passes, span)
        self.origin = made
        return made

    def complain(
        self,
        code: str,
        span: Span | None,
        message: str,
        hint: str | None = None,
        *,
        severity: Severity = "error",
        key: int = 0,
        follows: bool = False,
    ) -> None:
        """Notes a problem once for each ``code`` and ``key``; ``follows``: not while an earlier mistake may be its cause."""
        if self.lap.line is not None and self.lap.line.broken and code != "yarn":
            self.lap.faulty = True
            return
        if severity == "error" and code in STRUCTURAL:
            self.lap.faulty = self.lap.reported = True
        if (follows and self.tainted) or (key and (code, key) in self.told):
            return
        self.told.add((code, key))
        self.problems.append(Problem(code, severity, span, message[:1].upper() + message[1:], hint))
