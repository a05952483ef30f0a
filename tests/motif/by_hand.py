"""Fabrics built by hand, so that the layout is tested by itself: rounds as lists of what is worked, in order.

``work`` takes items: ("dc", base) a stitch; ("ch", n) chains of one space, ("ch", n, "corner") of a corner space; ("standing", kind, n,
base).
A base is the id that an earlier item returned (a stitch), ("sp", run), "ring", or ("post", id).
"""

from __future__ import annotations

from motifold.render.fabric.model import Base, Fabric, Foot, Gather, Leg, Origin, Round, Run, RunRole, Stitch, StitchGroup, StitchRole
from motifold.render.pattern.problem import NOWHERE

ORIGIN = Origin(0, (), NOWHERE)
RING = Base("ring", 0, "ring")


def on(stitch: int, foot: Foot = "loops") -> Base:
    return Base("stitch", stitch, foot)


def space(run: int) -> Base:
    return Base("space", run, "space")


class Maker:
    """Grows a Fabric; each method returns the id of what it made."""

    def __init__(self, shape: str, polygon: int, worked: str = "rounds") -> None:
        self.shape, self.polygon, self.worked = shape, polygon, worked
        self.stitches: list[Stitch] = []
        self.runs: list[Run] = []
        self.groups: list[StitchGroup] = []
        self.rounds: list[Round] = []
        self.mine: list[int] = []

    def _stitch(self, kind: str, role: StitchRole, legs: tuple[Leg, ...] = (), gather: Gather | None = None, run: int | None = None,
                group: int | None = None, chains: tuple[int, ...] = ()) -> int:  # fmt: skip
        number = len(self.stitches)
        self.stitches.append(
            Stitch(number, kind, role, len(self.rounds), len(self.mine) + 1, "A", ORIGIN, legs, gather, chains, run, group)
        )
        self.mine.append(number)
        return number

    def st(self, kind: str, *bases: Base, gather: Gather | None = None, group: int | None = None, leg: str | None = None) -> int:
        return self._stitch(kind, "stitch", tuple(Leg(leg or kind, base) for base in bases), gather, None, group)

    def ch(self, count: int, corner: bool = False, role: RunRole = "space", before: int | None = None) -> int:
        run = len(self.runs)
        ids = tuple(self._stitch("ch", "chain", run=run) for _ in range(count))
        self.runs.append(Run(run, role, len(self.rounds), count, ids, before=before, corner=corner))
        return run

    def standing(self, kind: str, count: int, base: Base, group: int | None = None) -> int:
        run = self.ch(count, role="standing")
        return self._stitch(kind, "standing", (Leg(kind, base),), None, None, group, self.runs[run].stitches)

    def group(self, corner: bool = False, name: str | None = None) -> int:
        number = len(self.groups)
        self.groups.append(StitchGroup(number, name, len(self.rounds), (), (), None, ORIGIN, corner))
        return number

    def travel(self, base: Base) -> int:
        return self._stitch("sl st", "travel", (Leg("sl st", base),))

    def end(self, kind: str = "round", direction: int = 1, end: str = "joined") -> None:
        self.rounds.append(
            Round(len(self.rounds), f"Rnd {len(self.rounds)}", kind, "RS", direction, 0, tuple(self.mine), (), end, False, False, False,
                  ("A",), {}, {}, 0)  # type: ignore[arg-type]
        )  # fmt: skip
        self.mine = []

    def fabric(self) -> Fabric:
        return Fabric("by hand", self.shape, self.polygon, self.worked, tuple(self.stitches), tuple(self.runs), tuple(self.groups),  # type: ignore[arg-type]
                      tuple(self.rounds), ())  # fmt: skip


def open_square(rounds: int, sides: int = 4, cluster: int = 3, corner: int = 2, kind: str = "dc", chains: int = 3) -> Fabric:
    """Clusters in spaces, two with corner chains between in each corner; ``sides`` other than 4 give other polygons."""
    m = Maker("polygon", sides)
    m.ch(sides, role="ring")
    m.travel(on(0))
    m.end("ring")
    spaces: list[tuple[int, bool]] = []
    for number in range(rounds):
        below, spaces = spaces, []
        places: list[tuple[Base, bool]] = [(RING, False)] * sides if number == 0 else [(space(run), is_corner) for run, is_corner in below]
        first = None
        for index, (base, is_corner) in enumerate(places):
            group = m.group(corner=is_corner)
            for half in range(2 if is_corner else 1):
                for k in range(cluster):
                    if first is None and k == 0:
                        first = m.standing(kind, chains, base, group)
                    else:
                        m.st(kind, base, group=group)
                if half == 0 and is_corner:
                    spaces.append((m.ch(corner, corner=True), True))
            last = index == len(places) - 1
            if number == 0:
                spaces.append((m.ch(corner, corner=True), True))
            else:
                spaces.append((m.ch(1), False))
            del last
        assert first is not None
        m.travel(on(first))
        m.end()
    return m.fabric()


def flat_circle(rounds: int, kind: str = "dc", start: int = 12, chains: int = 3, end: str = "joined") -> Fabric:
    """Grows by ``start`` a round, increases at the end of each sector."""
    m = Maker("circle", 0)
    m.end("ring")
    below: list[int] = []
    for number in range(rounds):
        bases = [RING] * start if number == 0 else []
        if number:
            for k, stitch in enumerate(below):
                bases += [on(stitch)] * (2 if k % number == number - 1 else 1)
        below = []
        for k, base in enumerate(bases):
            if k == 0 and end == "joined" and kind != "sc":
                below.append(m.standing(kind, chains, base))
            else:
                below.append(m.st(kind, base))
        if end == "joined":
            m.travel(on(below[0]))
        m.end(end=end)
    return m.fabric()


def solid_square(rounds: int, sides: int = 4) -> Fabric:
    """3 dc a side, then (2 dc, ch 2, 2 dc) in each corner."""
    m = Maker("polygon", sides)
    m.end("ring")
    edge: list[tuple[Base, bool]] = []
    for number in range(rounds):
        below, edge = edge, []
        first = None
        if number == 0:
            below = [(RING, False)] * sides
        for base, is_corner in below:
            stack = [3] if number == 0 else [2, 2] if is_corner else [1]
            group = m.group(corner=is_corner)
            for half, count in enumerate(stack):
                for _ in range(count):
                    stitch = m.standing("dc", 3, base, group) if first is None else m.st("dc", base, group=group)
                    first = stitch if first is None else first
                    edge.append((on(stitch), False))
                if number == 0 or (is_corner and half == 0):
                    edge.append((space(m.ch(2, corner=True)), True))
        m.travel(on(first or 0))
        m.end()
    return m.fabric()


def petalled(rounds: int = 3) -> Fabric:
    """A flat circle of 36 with nine petals round it."""
    fabric = flat_circle(rounds)
    m = Maker("circle", 0)
    m.stitches, m.runs, m.groups, m.rounds = list(fabric.stitches), list(fabric.runs), list(fabric.groups), list(fabric.rounds)
    last = [s for s in fabric.round_stitches(len(fabric.rounds) - 1) if s.role in ("stitch", "standing")]
    first = None
    for k in range(0, len(last), 4):
        slip = m.st("sl st", on(last[k].id))
        first = slip if first is None else first
        group = m.group(name="petal")
        for kind in ("sc", "hdc", "dc", "dc", "dc", "hdc", "sc"):
            m.st(kind, on(last[k + 2].id), group=group)
    m.travel(on(first or 0))
    m.end()
    return m.fabric()


def swatch(stitches: int = 20, rows: int = 8, kind: str = "dc", chains: int = 3) -> Fabric:
    """Rows to and fro over a foundation chain, turning chains standing for the first stitch."""
    m = Maker("swatch", 4, "rows")
    run = m.ch(stitches, role="foundation")
    below = list(m.runs[run].stitches)[::-1]
    m.end("foundation", -1, "open")
    for number in range(rows):
        made = []
        for k, stitch in enumerate(below):
            base = on(stitch)
            made.append(m.standing(kind, chains, base) if k == 0 else m.st(kind, base))
        below = made[::-1]
        m.end("row", 1 if number % 2 == 0 else -1, "open")
    return m.fabric()


def half_motif(rows: int = 3, corners: int = 2, first: int = 3) -> Fabric:
    """A half polygon in turned rows, (2 dc, ch 2, 2 dc) in each inner corner; without corners a half circle that grows by doubling its
    ends.
    """
    m = Maker("half", corners + 2, "rows")
    m.end("ring")
    edge: list[tuple[Base, bool]] = []
    for number in range(rows):
        below, edge = edge[::-1], []
        if number == 0:
            below = [item for k in range(corners + 1) for item in ([(RING, False)] * first + ([(RING, True)] if k < corners else []))]
        started = False
        for index, (base, is_corner) in enumerate(below):
            group = m.group(corner=is_corner)
            if number == 0 and is_corner:
                edge.append((space(m.ch(2, corner=True)), True))
                continue
            halves = [2, 2] if is_corner else [2] if not corners and index % 2 == 0 else [1]
            for half, count in enumerate(halves):
                for _ in range(count):
                    edge.append((on(m.st("dc", base, group=group) if started else m.standing("dc", 3, base, group)), False))
                    started = True
                if is_corner and half == 0:
                    edge.append((space(m.ch(2, corner=True)), True))
        m.end("row", 1 if number % 2 == 0 else -1, "open")
    return m.fabric()
