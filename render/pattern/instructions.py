"""Written instructions as a tree: what the notation says, before anything is worked.

Repeats stay repeats and sizes stay in their brackets here; both are unrolled in the fabric room only.
Stitch names are canonical: US abbreviations of the trade, whatever terms the file was written in.
Every node has an ``id`` (unique within one pattern file, counted in reading order) and the ``span`` of its words,
so that an error, a symbol and a printed word can all be traced to the same instruction.
"""

from __future__ import annotations

from typing import Literal

from motifold.render.pattern.problem import Span
from motifold.symbols.record import dataclass

Loop = Literal["back", "front"]
Post = Literal["front", "back"]
SideFacing = Literal["RS", "WS"]


@dataclass(frozen=True, slots=True)
class Amount:
    """A whole number, or one number for each size in the file's order: ``5`` or ``5 (6, 7)``."""

    values: tuple[int, ...]

    def at(self, size: int) -> int:
        """The number for the size with this index from 0; a single number serves all sizes."""
        return self.values[0] if len(self.values) == 1 else self.values[min(size, len(self.values) - 1)]

    @property
    def varies(self) -> bool:
        return len(self.values) > 1


ONE = Amount((1,))


@dataclass(frozen=True, slots=True)
class StitchSpec:
    """A stitch as the text names it.

    ``name`` is canonical: "ch", "sl st", "sc", "hdc", "dc", "tr", "dtr", "trtr", "quadtr" and taller by rule, "esc", "edc" ..
    (extended), "fsc", "fdc" (foundation), "ldc" (linked), "picot", "cl", "bobble", "pc", "puff", "shell", "V-st",
    "crossed dc" or the key of a ``[stitch.NAME]`` table. ``together`` is n of dc-n-tog (1: an ordinary stitch).
    ``size`` is the number in the name: 3 of "ch-3 picot", 5 of "5-dc cl"; ``of`` its stitch ("dc" of "5-dc cl").
    ``increase`` is 2 for "inc" / "sc inc" (two in one), 3 for "3-in-1 inc"; the name is then the stitch in hand.
    ``beginning``: "beg cl", "beg shell": its first stitch is a beginning chain of that height.
    """

    name: str
    together: int = 1
    post: Post | None = None
    size: int | None = None
    of: str | None = None
    increase: int = 1
    standing: bool = False
    invisible: bool = False  # "inv dec": worked in front loops, counts as the decrease
    beginning: bool = False


TargetKind = Literal[
    "st",        # any stitch
    "stitch",    # stitches of one name: next dc, next petal
    "sp",        # a chain space; chains says how long, None any
    "ch",        # a single chain (of a run, of the foundation)
    "ring",
    "group",     # a group of stitches worked into one place, "cluster" as people call a 3-dc group
    "between",   # the gap between two stitches or groups
    "tch",       # the turning or beginning chain of the row below
    "row end",
    "side",
    "foundation",  # other side of the foundation chain
    "unused loop",  # unused front / back loops of a round
    "missed",    # the missed chains at the start of a foundation ("top of 3 missed ch"); with which "same": the stitch just skipped
    "marker",    # the stitch in which a marker hangs; the name "sp": the space
    "corner",    # "in next corner", "4 corners": whatever the corner is, a space or a stitch
]


@dataclass(frozen=True, slots=True)
class Target:
    """What kind of thing a place or a count names."""

    kind: TargetKind
    name: str | None = None      # for "stitch", canonical; for "between" the name of what lies on either side
    chains: int | None = None    # for "sp" / "ch": 2 of "ch-2 sp", 4 of "beg ch-4"
    corner: bool = False         # corner sp, corner st, corner group
    loop: bool = False           # the text said "lp" where others say "sp" (words keep her word)


Which = Literal[
    "next", "same", "first", "last", "each", "any", "beg", "current", "nth", "center", "top", "corresponding", "evenly", "made",
]
"""``current``: "in ch-2 sp", the one just come to. ``beg``: "in beg sp", "in beg ch-3". ``nth``: see ``ordinal``.
``made``: the stitch just made ("sl st in top of dc just made")."""

Manner = Literal["in", "around", "between", "before", "behind", "over", "in front"]


@dataclass(frozen=True, slots=True)
class Place:
    """Where stitches go. ``count`` with ``each`` false: all of them lie in one place unless count is over 1.

    "in next 3 sts": which next, count 3, each True. "in each st around": which each, extent around.
    "in center ch of ch-5 lp": which center, target ch, of = Place(current, sp 5).
    "in each dc and each ch-1 sp to next corner sp": which each, target dc, also (sp 1,), extent to next corner sp.
    "in 4th ch from hook": which nth, ordinal 4, from_hook. "around next sc of Rnd 2": manner around, of_round 2.
    "in st 2 rnds below": below 2. "between next 2 dc": manner between, target between named dc, count 2.
    "in sp before next dc": manner before, target between named dc.
    "dc2tog over next 2 sts": manner over, count 2, each False; "dc2tog over same st and next st": ``then`` has the further places.
    """

    span: Span
    which: Which
    target: Target
    count: Amount = ONE
    each: bool = False
    also: tuple[Target, ...] = ()
    extent: Extent | None = None
    ordinal: int | None = None
    from_hook: bool = False
    of: Place | None = None
    loop: Loop | None = None
    manner: Manner = "in"
    below: int = 0
    of_round: int | None = None
    words: str | None = None     # free words that say more: "at right end of any side", "of previous motif"
    then: tuple[Place, ...] = ()  # where the further legs of stitches worked together go
    as_where: Place | None = None  # "same ch as first hdc": the stitch of this round that went there (``words`` has it as written)


@dataclass(frozen=True, slots=True)
class Extent:
    """How far an "each" or a repeat runs."""

    kind: Literal["around", "across", "end", "to", "last"]
    place: Place | None = None       # for "to": the place that is not passed
    count: Amount | None = None      # for "last": to last 2 sts; for "to": so many before the place
    target: Target | None = None     # for both: what is counted


@dataclass(frozen=True, slots=True)
class CountsAs:
    """``(counts as dc and ch 1)``: ``stitches`` ("dc",) and ``chains`` 1; "does not count": no stitches, chains 0.

    ``(counts as ch-3 sp)`` on a joining stitch: ``space`` 3.
    """

    stitches: tuple[str, ...] = ()
    chains: int = 0
    space: int | None = None
    throughout: bool = False


@dataclass(frozen=True, slots=True)
class Node:
    id: int
    span: Span


@dataclass(frozen=True, slots=True)
class Work(Node):
    """Stitches: ``3 dc in ring``, ``dc in next st``, ``5 sc`` (no place: one in each of the next five).

    A place with each=False takes all ``count`` of them; with each=True, ``count`` go into each one.
    """

    stitch: StitchSpec
    count: Amount = ONE
    place: Place | None = None
    counts_as: CountsAs | None = None


@dataclass(frozen=True, slots=True)
class Chain(Node):
    """``ch 3``; ``counts_as`` as written in brackets after it (None: nothing is said)."""

    count: Amount
    counts_as: CountsAs | None = None


@dataclass(frozen=True, slots=True)
class Group(Node):
    """``(3 dc, ch 2, 3 dc) in next ch-2 sp``: several steps into one place (or into each of several)."""

    steps: tuple[Step, ...]
    place: Place


@dataclass(frozen=True, slots=True)
class Skip(Node):
    """``sk next 2 sts``, ``sk ch-1 sp``, ``sk first st``: the place, with its count, is passed."""

    place: Place


@dataclass(frozen=True, slots=True)
class Turn(Node):
    pass


@dataclass(frozen=True, slots=True)
class Join(Node):
    """An end of round, or (``attach``) a beginning: a new yarn joined before anything else is worked in the line.

    ``method``: "sl st"; "usual" (plain "join"); "invisible"; "none" ("do not join"); "work": ``steps`` close the round, as
    "join with ch 1, hdc in first sc (counts as ch-3 sp)"; "standing" (a standing stitch: then no place of its own).
    ``ring``: "join ... to form a ring".
    """

    method: Literal["sl st", "usual", "invisible", "none", "work", "standing", "sc"]
    place: Place | None = None
    steps: tuple[Step, ...] = ()
    attach: bool = False
    ring: bool = False


@dataclass(frozen=True, slots=True)
class UseYarn(Node):
    """``with A``, ``change to B``, ``pick up B``. ``yarn`` None: "the other yarn".

    ``each``: "changing color every row", said beside rows that are repeated: each of them begins with the other yarn.
    """

    yarn: str | None
    manner: Literal["with", "change", "pick up", "each"] = "with"
    in_last_yo: bool = False


@dataclass(frozen=True, slots=True)
class LeaveYarn(Node):
    """``drop A``, ``carry A``."""

    manner: Literal["drop", "carry"]
    yarn: str | None = None


@dataclass(frozen=True, slots=True)
class FastenOff(Node):
    """``fasten off``, ``fasten off A``, ``fasten off both yarns`` (``every``)."""

    yarns: tuple[str, ...] = ()
    every: bool = False


@dataclass(frozen=True, slots=True)
class MagicRing(Node):
    pass


@dataclass(frozen=True, slots=True)
class Marker(Node):
    """``pm`` (place) or ``sm`` (slip) with where, if said."""

    manner: Literal["place", "slip"]
    place: Place | None = None


@dataclass(frozen=True, slots=True)
class Words(Node):
    """Words in braces, or known free words ("working behind petals"): printed, not worked.

    ``behind`` is what the following stitches are worked behind, or, after "front ", in front of, if the words say so; ``brace`` true
    for words that stood in braces; ``leave`` true for "leave remaining sts unworked".
    """

    text: str
    brace: bool = False
    leave: bool = False
    behind: str | None = None


@dataclass(frozen=True, slots=True)
class Stop(Node):
    """``**``: where the last pass of the enclosing star repeat ends."""


@dataclass(frozen=True, slots=True)
class Repeat(Node):
    """``[ ... ] 3 times``, ``* ... ; rep from * around, ending last rep at **``.

    ``times`` is the total number of passes (``2 more times`` is 3); ``extent`` says how far instead. ``style`` is how the
    source marked it; "each": its steps are met in turn as their places come, "sc in each dc, 2 sc in each ch-1 sp and 3 sc in each corner
    around". ``omit`` counts the steps at the end that the last pass leaves out ("omitting last ch 1").
    """

    steps: tuple[Step, ...]
    times: Amount | None = None
    extent: Extent | None = None
    style: Literal["[", "(", "*", "each"] = "["
    omit: int = 0


@dataclass(frozen=True, slots=True)
class RepeatRounds(Node):
    """``Rep Rnds 3 and 4 twice``: ``rounds`` in order; ``times`` None: once, or as often as the label's range asks.

    ``until_cm``: by measure, in cm, through the gauge; ``ending`` the side of the last row. ``until_sizes``: one measure a size
    ("until piece measures 15 (16, 17) cm"), then ``until_cm`` is the first.
    """

    rounds: tuple[int, ...]
    times: Amount | None = None
    until_cm: float | None = None
    ending: SideFacing | None = None
    until_sizes: tuple[float, ...] = ()


Step = (
    Work | Chain | Group | Skip | Turn | Join | UseYarn | LeaveYarn | FastenOff | MagicRing | Marker | Words | Stop
    | Repeat | RepeatRounds
)


@dataclass(frozen=True, slots=True)
class CountClaim:
    """One number that the line states: ``36 dc``, ``8 ch-1 sps``, ``36 sts``, ``8 groups``, ``4 corners``.

    ``per_side``: "9 dc on each side", not in the whole round.
    """

    span: Span
    amount: Amount
    target: Target
    per_side: bool = False


@dataclass(frozen=True, slots=True)
class Label:
    """``Rnds 4-6``: first 4, last 6. ``Rnd 4 and following``: following. Ring, Chain, Foundation, Finish: no numbers.

    ``ends``: the last round of each size, "Rnds 4-6 (7, 8)"; then it is following too.
    """

    kind: Literal["ring", "chain", "foundation", "rnd", "row", "finish"]
    first: int | None = None
    last: int | None = None
    following: bool = False
    side: SideFacing | None = None
    ends: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class Line(Node):
    """One labelled line of a motif's text. ``broken``: not all of it could be read, so that what it makes is not known."""

    label: Label
    steps: tuple[Step, ...]
    counts: tuple[CountClaim, ...] = ()
    broken: bool = False


@dataclass(frozen=True, slots=True)
class Instructions:
    """The whole text of one motif or edging."""

    lines: tuple[Line, ...]


@dataclass(frozen=True, slots=True)
class Definition:
    """``[stitch.petal] means``: the steps of a special stitch, and whether they are gathered into one head.

    ``gather``: "popcorn" for "gathered", else the kind that the words name. The place in ``means`` ("in same st") only says that
    all of it goes into one place; where it is used decides which. ``spread`` is true where ``means`` covers
    several stitches of its own ("dc in next st, dc in same st") instead of one place. ``called``: the kind of gathering that its own name
    speaks of ("mini bobble").
    """

    key: str
    steps: tuple[Step, ...]
    gather: Literal["popcorn", "cluster", "bobble", "puff"] | None = None
    spread: bool = False
    called: Literal["popcorn", "cluster", "bobble", "puff"] | None = None
