"""What is placed so far: the ground that the next round stands on. Points are complex numbers."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field

from motifold.render.fabric.model import Base, Fabric, Run
from motifold.render.motif.arc import Arc
from motifold.render.motif.course import Course, picots_of
from motifold.render.motif.extents import CLEAR, FOOT_RISE, body_of, head_half, of_one_height, stem_height
from motifold.render.motif.frame import Frame
from motifold.render.motif.gores import gores_of
from motifold.render.motif.model import RoundShape
from motifold.symbols.record import dataclass

CHANGED_MOST = 1.57
"""How long the stems of a round that changes shape are drawn at the most, over what they are."""
_FILLED = 4
"""So many stitches fill a space."""


@dataclass(slots=True)
class Ground:
    """Grows round by round inside one call of the engine; nobody else sees it.

    ``at``: of each stem its round and place in it, counter-clockwise; ``gap_at`` the same of each space. ``order``: how many times each
    course repeats round the centre. Looking ahead: ``loads``, the width of all that will be worked into a space; ``posted``, on which sides
    of a stitch (+1 counter-clockwise) a later post stitch will come up; ``gores``, which gore of a ball a stitch is in. ``crowns``,
    half the width of what will be worked into a stitch; ``level``, spaces that four or more stitches of one height and nothing else will
    fill, ``odd``, those that will hold an odd number, and ``broad``, those whose chains were laid as wide as that asks. ``lacking``: how
    much further out a round would have to be for all its heads to have their room; ``crowded``, how much white its symbols lack all the
    same; ``rounded``: the rounds with rounded corners; ``last``: the last round; ``stretch``: how long stems may be drawn, over what they
    are, in a round that changes shape; ``strain``: how far out of their bounds the stems of such rounds are (1: not);
    ``broadest``: how much broader than the row below a row must be, at the most; ``columns``: of each row that stands stitch on stitch, how
    far apart these must be at the least. ``crossed``: for the shape of each crossing, where its bars stand clear.
    ``frame``: what a border goes round; ``edges``: where it stands on the ends of rows (stitch, True) and on the other side of a
    foundation (stitch, False), and which way is out there. ``again``: what is shown a second time, for which round, where, and its way
    out; ``lifted``: the rounds that stand on such.
    """

    fabric: Fabric
    picots: Mapping[int, tuple[Run, ...]]
    ring: float = 0.0
    spine: float = 0.0
    heads: dict[int, complex] = field(default_factory=dict)
    normals: dict[int, complex] = field(default_factory=dict)
    feet: dict[int, tuple[complex, ...]] = field(default_factory=dict)
    bends: dict[int, tuple[complex, ...]] = field(default_factory=dict)
    bars: dict[int, float] = field(default_factory=dict)
    crossed: dict[tuple[complex, ...], float] = field(default_factory=dict)
    arcs: dict[int, Arc] = field(default_factory=dict)
    tips: dict[int, tuple[complex, complex]] = field(default_factory=dict)
    links: dict[int, list[tuple[complex, ...]]] = field(default_factory=dict)
    courses: dict[int, Course] = field(default_factory=dict)
    at: dict[int, tuple[int, int]] = field(default_factory=dict)
    gap_at: dict[int, tuple[int, int]] = field(default_factory=dict)
    order: dict[int, int] = field(default_factory=dict)
    shapes: list[RoundShape] = field(default_factory=list)
    loads: Mapping[int, float] = field(default_factory=dict)
    posted: Mapping[int, frozenset[float]] = field(default_factory=dict)
    gores: Mapping[int, int] = field(default_factory=dict)
    crowns: Mapping[int, float] = field(default_factory=dict)
    level: frozenset[int] = frozenset()
    odd: frozenset[int] = frozenset()
    broad: set[int] = field(default_factory=set)
    fullness: Mapping[int, float] = field(default_factory=dict)
    wider: float = 0.0
    lacking: dict[int, float] = field(default_factory=dict)
    crowded: dict[int, float] = field(default_factory=dict)
    rounded: set[int] = field(default_factory=set)
    last: int = 0
    stretch: float = CHANGED_MOST
    strain: float = 0.0
    broadest: float = 1.0
    columns: dict[int, tuple[float, ...]] = field(default_factory=dict)
    frame: Frame | None = None
    edges: dict[tuple[int, bool], tuple[complex, complex]] = field(default_factory=dict)
    again: list[tuple[int, int, complex, complex]] = field(default_factory=list)
    lifted: set[int] = field(default_factory=set)

    @staticmethod
    def of(fabric: Fabric, fullness: Mapping[int, float] | None = None, wider: float = 0.0, stretch: float = CHANGED_MOST) -> Ground:
        """Nothing placed yet, but what is coming known. ``fullness``: of each round whose stitches are drawn longer than others, how long
        over what they are, to make room for a later one; ``wider``: how much wider a magic ring is drawn for the same.
        """
        loads: dict[int, float] = {}
        posted: dict[int, frozenset[float]] = {}
        crowns: dict[int, float] = {}
        heights: dict[int, list[float]] = {}
        for stitch in fabric.stitches:
            for leg in stitch.legs[:1]:
                if leg.base.kind == "space" and stitch.role in ("stitch", "standing"):
                    heights.setdefault(leg.base.id, []).append(stem_height(stitch))
                    loads[leg.base.id] = loads.get(leg.base.id, 0.0) + 2 * max(head_half(stitch), body_of(stitch)[0]) + CLEAR
                elif leg.base.kind == "stitch":
                    crowns[leg.base.id] = max(crowns.get(leg.base.id, 0.0), body_of(stitch)[0] + CLEAR)
                if leg.base.foot in ("front post", "back post"):
                    side = 1.0 if leg.base.foot == "front post" else -1.0
                    posted[leg.base.id] = posted.get(leg.base.id, frozenset()) | {side}
        level = frozenset(run for run, own in heights.items() if len(own) >= _FILLED and of_one_height(own))
        odd = frozenset(run for run, own in heights.items() if len(own) % 2)
        return Ground(
            fabric, picots_of(fabric), loads=loads, posted=posted, crowns=crowns, level=level, odd=odd, gores=gores_of(fabric),
            fullness=fullness or {}, wider=wider, stretch=stretch,
            last=max((stitch.round for stitch in fabric.stitches if stitch.role in ("stitch", "standing")), default=0),
        )  # fmt: skip

    def anchor(self, base: Base) -> tuple[complex, complex]:
        """The point that a base offers, and the way out of the work there."""
        if self.edges and base.kind == "stitch" and (base.id, base.foot == "row end") in self.edges:
            return self.edges[base.id, base.foot == "row end"]
        if base.kind == "space" and base.id in self.arcs:
            arc = self.arcs[base.id]
            return arc.at(arc.length / 2)
        if base.kind == "gap" and base.other is not None and base.id in self.heads and base.other in self.heads:
            middle = (self.heads[base.id] + self.heads[base.other]) / 2
            normal = self.normals[base.id] + self.normals[base.other]
            return middle, normal / (abs(normal) or 1.0)
        if base.kind == "gap" and base.id in self.tips:
            # Beside the first chain that a row works into: where the chains that stand for its first stitch begin.
            start, end = self.tips[base.id]
            return (start + end) / 2 + (end - start) / abs(end - start), self.normals[base.id]
        if base.id in self.tips:
            start, end = self.tips[base.id]
            return (start + end) / 2, self.normals.get(base.id, 1 + 0j)
        if base.kind != "ring" and base.id in self.heads:
            return self.heads[base.id], self.normals[base.id]
        legs = self.fabric.stitches[base.id].legs if base.kind == "stitch" else ()
        if legs and legs[0].base.id < base.id:
            # A stitch of the round that is being placed, which a spiral ends in: over what that stands on.
            under, normal = self.anchor(legs[0].base)
            return under + normal * (FOOT_RISE + stem_height(self.fabric.stitches[base.id])), normal
        return 0j, 1 + 0j


def point(z: complex) -> tuple[float, float]:
    return (z.real, z.imag)


