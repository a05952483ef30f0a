"""The worked piece: every stitch, what it was worked into, and what the next round meets.

All references are small integers into the tuples of one ``Fabric``: ``stitches[i].id == i``, ``runs[i].id == i``.
Stitch kinds are US abbreviations ("dc", "FPdc", "dc3tog", "sl st", "ch") or the name of a defined stitch.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal

from motifold.render.pattern.problem import Span
from motifold.symbols.record import dataclass

Foot = Literal["loops", "back loop", "front loop", "front post", "back post", "space", "ring", "gap", "row end"]
"""How the hook went in. "space" also for a chain entered round the whole chain; "gap" between two stitches."""


@dataclass(frozen=True, slots=True)
class Origin:
    """Which instruction made a stitch: node id, the pass of each enclosing repeat (from 0), and where it stands."""

    instruction: int
    passes: tuple[int, ...]
    span: Span


@dataclass(frozen=True, slots=True)
class Base:
    """What one leg is worked into: a stitch, a run of chains (as a space), the ring (id 0), or the gap before stitch ``id``.

    "gap": between ``other`` and ``id``.
    """

    kind: Literal["stitch", "space", "ring", "gap"]
    id: int
    foot: Foot
    other: int | None = None


@dataclass(frozen=True, slots=True)
class Leg:
    """One stem of a stitch: its kind decides height and bars ("dc" for each leg of a dc3tog or of a popcorn)."""

    kind: str
    base: Base


Gather = Literal["together", "cluster", "bobble", "popcorn", "puff", "crossed"]
StitchRole = Literal["stitch", "chain", "standing", "travel", "picot", "given"]


@dataclass(frozen=True, slots=True)
class Stitch:
    """One stitch, or one chain.

    ``role``: "stitch" (worked, counted, part of the edge); "chain" (one chain of ``run``); "standing" (beginning chains that count as this
    stitch: no ink of its own, ``chains`` are drawn); "travel" (joining and walking slip stitches: never counted, never
    met); "picot" (the closing slip stitch of a picot); "given" (an edging's stand-in for a stitch of the panels).
    ``round`` indexes ``Fabric.rounds``; ``index`` counts from 1 within the round in the order of work, all roles.
    A chain has no legs; its run says what it hangs between. ``behind``: worked behind earlier work.
    """

    id: int
    kind: str
    role: StitchRole
    round: int
    index: int
    yarn: str
    origin: Origin
    legs: tuple[Leg, ...] = ()
    gather: Gather | None = None
    chains: tuple[int, ...] = ()
    run: int | None = None
    group: int | None = None
    behind: bool = False


RunRole = Literal["space", "standing", "beginning", "picot", "foundation", "ring", "spine", "given"]


@dataclass(frozen=True, slots=True)
class Run:
    """A run of chains. Role "space": worked into as one ch-n space (and also n single chains).

    ``chains`` is the nominal n: 3 for "ch 1, hdc in first sc (counts as ch-3 sp)", whose ``stitches`` are the chain and the
    hdc. ``before`` and ``after`` are the stitches that it hangs between (None at the ends of work). "beginning": a
    chain that does not count; "spine": worked back along; "picot": the ring of a picot on stitch ``before``.
    ``corner``: the space of a corner group of the round's shape.
    """

    id: int
    role: RunRole
    round: int
    chains: int
    stitches: tuple[int, ...]
    before: int | None = None
    after: int | None = None
    group: int | None = None
    corner: bool = False


@dataclass(frozen=True, slots=True)
class StitchGroup:
    """Stitches worked into one place by one instruction; ``name`` for defined and built-in special stitches.

    ``stitches`` and ``runs`` in order of work. ``named`` groups count once, under ``name``.
    """

    id: int
    name: str | None
    round: int
    stitches: tuple[int, ...]
    runs: tuple[int, ...]
    base: Base | None
    origin: Origin
    corner: bool = False


@dataclass(frozen=True, slots=True)
class EdgeItem:
    """One thing that the next round meets, in the order of this round's work."""

    kind: Literal["stitch", "space", "group"]
    id: int


@dataclass(frozen=True, slots=True)
class Round:
    """One round or row, worked.

    ``kind``: "ring" (what is made before round 1), "foundation" (a chain to work rows along), "round", "row",
    "finish", "edge" (the opening that
    an edging starts from). ``direction`` +1: counter-clockwise as the right side is seen (a right-handed worker, RS
    facing), or right to left in
    rows; -1: the other way. ``edge`` is in order of work; a following round in the same direction meets it in this order.
    ``end``: how it closes. ``started_at`` is what the first stitch of a later-joined round hangs on (None: goes on from the last).
    ``counts``: by kind, a named group once under its name, spaces as "ch-2 sp"; ``parts`` the same with groups taken apart.
    ``met``: how many stitches "each st" meets.
    """

    number: int | None
    label: str
    kind: Literal["ring", "foundation", "round", "row", "finish", "edge"]
    side: Literal["RS", "WS"]
    direction: int
    line: int
    stitches: tuple[int, ...]
    edge: tuple[EdgeItem, ...]
    end: Literal["joined", "open", "spiral"]
    turned: bool
    fastened: bool
    attached: bool
    yarns: tuple[str, ...]
    counts: Mapping[str, int]
    parts: Mapping[str, int]
    met: int


@dataclass(frozen=True, slots=True)
class Side:
    """One side of the finished motif, corner to corner, counter-clockwise as the right side is seen.

    ``items`` between the corners in that order; ``start`` and ``end`` are the corner places (a space run or a
    corner stitch; None for a circle's single side). ``stitches``: one for each stitch, each chain of the spaces
    between, and one chain of each
    corner space (4r + 1 for the r-round open square). ``counts`` leaves the corner spaces out.
    """

    name: str
    items: tuple[EdgeItem, ...]
    start: EdgeItem | None
    end: EdgeItem | None
    stitches: int
    counts: Mapping[str, int]


@dataclass(frozen=True, slots=True)
class GivenItem:
    """One stitch or space that an edging finds waiting for it: a stand-in for ``source`` in the Fabric of ``motif``.

    ``name`` is the stitch kind ("" for a space), ``chains`` the length of a space. ``corner``: the place at the end of a side (each panel
    brings its own at either end along an opening; a lone motif's corner is met once). ``starts_side``: first of its side.
    ``side`` names it: "north.top". ``group`` and ``group_name`` are those of the named group that it belongs to in that Fabric.
    ``passing``: such a place where the opening itself does not turn outward while it does so elsewhere: a blanket has four corners, not
    two at each seam that its edge passes.
    """

    kind: Literal["stitch", "space"]
    name: str
    chains: int
    corner: bool
    starts_side: bool
    side: str
    motif: str
    source: EdgeItem
    group: int = -1
    group_name: str = ""
    passing: bool = False


@dataclass(frozen=True, slots=True)
class Fabric:
    """One motif (or edging) worked for one size. ``polygon``: number of corners of its shape (0: circle; rows 4)."""

    name: str
    shape: str
    polygon: int
    worked: Literal["rounds", "rows"]
    stitches: tuple[Stitch, ...]
    runs: tuple[Run, ...]
    groups: tuple[StitchGroup, ...]
    rounds: tuple[Round, ...]
    sides: tuple[Side, ...]

    def named_group(self, item: EdgeItem) -> tuple[int, str]:
        """Number and name of the named group (a petal, a shell) that a stitch or space of an edge belongs to; (-1, "") for none."""
        group = self.runs[item.id].group if item.kind == "space" else self.stitches[item.id].group
        name = self.groups[group].name if group is not None else None
        return (group, name) if group is not None and name is not None and name != "picot" else (-1, "")

    def runs_along_row_ends(self, side: Side) -> bool:
        """Whether a side is made of the ends of rows: left and right of a piece in rows, and the cut of half a motif (its last side)."""
        if self.worked != "rows":
            return False
        return side.name in ("left", "right") or (side.name.isdigit() and side is self.sides[-1])

    def round_stitches(self, round_index: int) -> tuple[Stitch, ...]:
        return tuple(self.stitches[i] for i in self.rounds[round_index].stitches)
