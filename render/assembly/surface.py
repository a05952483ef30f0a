"""Edges glued in pairs make a surface: its corners, openings, pieces, and whether it has two sides.

Edges are numbered; ``2 e`` is the start of edge e and ``2 e + 1`` its end (counter-clockwise round its panel). The facts used are those of
any text on the classification of surfaces: gluing opposite directions keeps the orientation, corners are the classes of edge ends.
"""

from __future__ import annotations

from motifold.symbols.record import dataclass


@dataclass(frozen=True, slots=True)
class Glue:
    """What edge e is joined to: the other edge, and whether with a twist (start to start)."""

    other: int
    twist: bool


@dataclass(frozen=True, slots=True)
class Rim:
    """One boundary: its edges in order, each with whether it is met backwards, and the seams crossed before each edge."""

    edges: tuple[int, ...]
    backwards: tuple[bool, ...]
    crossed: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Wheel:
    """What lies round one corner, in turning order. ``wedges``: one for each panel corner, the edge that starts there. ``spokes``: the
    joined edges' ends between them (one of the two glued). ``closed``: it goes all the way round.

    Open: wedge, spoke, wedge, ..., wedge. Closed: as many spokes as wedges, spoke i after wedge i.
    """

    wedges: tuple[int, ...]
    spokes: tuple[int, ...]
    closed: bool


@dataclass(frozen=True, slots=True)
class Surface:
    """``corner_of[end]``: the corner that an edge end belongs to; ``wheels[corner]`` what lies round it; ``piece_of[panel]``."""

    corner_of: tuple[int, ...]
    wheels: tuple[Wheel, ...]
    rims: tuple[Rim, ...]
    piece_of: tuple[int, ...]
    pieces: int
    orientable: bool


class _Classes:
    """Union-find with path halving."""

    def __init__(self, count: int) -> None:
        self.parent = list(range(count))

    def find(self, item: int) -> int:
        parent = self.parent
        while parent[item] != item:
            parent[item] = parent[parent[item]]
            item = parent[item]
        return item

    def join(self, a: int, b: int) -> None:
        a, b = self.find(a), self.find(b)
        if a != b:
            self.parent[max(a, b)] = min(a, b)

    def numbered(self) -> tuple[int, ...]:
        numbers: dict[int, int] = {}
        return tuple(numbers.setdefault(self.find(i), len(numbers)) for i in range(len(self.parent)))


def build_surface(panel_of: tuple[int, ...], glues: tuple[Glue | None, ...]) -> Surface:
    """Glue the edges: ``panel_of[e]`` is edge e's panel (a panel's edges stand together, counter-clockwise). Linear time."""
    following, before = _round_panels(panel_of)
    corners = _Classes(2 * len(panel_of))
    for edge, after in enumerate(following):
        corners.join(2 * edge + 1, 2 * after)
        glue = glues[edge]
        if glue is not None:
            corners.join(2 * edge, 2 * glue.other + (0 if glue.twist else 1))
            corners.join(2 * edge + 1, 2 * glue.other + (1 if glue.twist else 0))
    corner_of = corners.numbered()
    turn = _Turning(following, before, glues)
    pieces, piece_of, orientable = _pieces(panel_of, glues)
    return Surface(corner_of, _wheels(corner_of, turn), _rims(turn), piece_of, pieces, orientable)


def _round_panels(panel_of: tuple[int, ...]) -> tuple[list[int], list[int]]:
    following = list(range(1, len(panel_of) + 1))
    before = list(range(-1, len(panel_of) - 1))
    first = 0
    for edge, panel in enumerate(panel_of):
        if edge + 1 == len(panel_of) or panel_of[edge + 1] != panel:
            following[edge] = first
            before[first] = edge
            first = edge + 1
    return following, before


class _Turning:
    """Steps round a corner. A place is (edge, 0 or 1): an edge at its start or end, about to be left or crossed."""

    def __init__(self, following: list[int], before: list[int], glues: tuple[Glue | None, ...]) -> None:
        self.following, self.before, self.glues = following, before, glues

    def over_panel(self, edge: int, end: int) -> tuple[int, int]:
        """The other edge of the same panel at that corner."""
        return (self.following[edge], 0) if end else (self.before[edge], 1)

    def over_seam(self, edge: int, end: int) -> tuple[int, int] | None:
        """The same corner on the other side of the seam; None at an open edge."""
        glue = self.glues[edge]
        if glue is None:
            return None
        return glue.other, end if glue.twist else 1 - end


def _wheels(corner_of: tuple[int, ...], turn: _Turning) -> tuple[Wheel, ...]:
    count = max(corner_of, default=-1) + 1
    starts: list[tuple[int, int]] = [(-1, 0)] * count
    for end in range(len(corner_of) - 1, -1, -1):
        edge, at = divmod(end, 2)
        open_edge = turn.glues[edge] is None
        # Begin at an open edge where there is one (its start by preference), so that the walk meets everything.
        if open_edge or starts[corner_of[end]][0] < 0 or turn.glues[starts[corner_of[end]][0]] is not None:
            starts[corner_of[end]] = (edge, at)
    return tuple(_wheel(start, turn) for start in starts)


def _wheel(start: tuple[int, int], turn: _Turning) -> Wheel:
    wedges: list[int] = []
    spokes: list[int] = []
    edge, at = start
    while True:
        other, other_at = turn.over_panel(edge, at)
        wedges.append(other if at else edge)
        crossed = turn.over_seam(other, other_at)
        if crossed is None:
            return Wheel(tuple(wedges), tuple(spokes), False)
        spokes.append(2 * other + other_at)
        edge, at = crossed
        if (edge, at) == start:
            return Wheel(tuple(wedges), tuple(spokes), True)


def _rims(turn: _Turning) -> tuple[Rim, ...]:
    met: set[int] = set()
    rims = []
    for first, glue in enumerate(turn.glues):
        if glue is not None or first in met:
            continue
        edges, backwards, crossed = [], [], []
        edge, at = first, 0
        while edge not in met:
            met.add(edge)
            edges.append(edge)
            backwards.append(at == 1)
            seams = 0
            edge, at = turn.over_panel(edge, 1 - at)
            step = turn.over_seam(edge, at)
            while step is not None:
                seams += 1
                edge, at = turn.over_panel(*step)
                step = turn.over_seam(edge, at)
            crossed.append(seams)
        rims.append(Rim(tuple(edges), tuple(backwards), (crossed[-1], *crossed[:-1])))
    return tuple(rims)


def _pieces(panel_of: tuple[int, ...], glues: tuple[Glue | None, ...]) -> tuple[int, tuple[int, ...], bool]:
    """Pieces, and whether every panel can be turned so that all right sides face out."""
    count = max(panel_of, default=-1) + 1
    near: list[list[tuple[int, bool]]] = [[] for _ in range(count)]
    for edge, glue in enumerate(glues):
        if glue is not None:
            near[panel_of[edge]].append((panel_of[glue.other], glue.twist))
    piece_of, turned = [-1] * count, [False] * count
    pieces, orientable = 0, True
    for first in range(count):
        if piece_of[first] >= 0:
            continue
        piece_of[first] = pieces
        waiting = [first]
        while waiting:
            panel = waiting.pop()
            for other, twist in near[panel]:
                if piece_of[other] < 0:
                    piece_of[other], turned[other] = pieces, turned[panel] != twist
                    waiting.append(other)
                elif turned[other] != (turned[panel] != twist):
                    orientable = False
        pieces += 1
    return pieces, tuple(piece_of), orientable
