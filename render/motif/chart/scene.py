"""A placed Fabric as symbols: one for each stitch, with its ink in u and what it belongs to. Nothing is coloured here."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence
from itertools import product
from math import dist

from motifold.render.fabric.model import Base, Fabric, Stitch
from motifold.render.motif.chart.broken import behind, broken
from motifold.render.motif.chart.tones import number_of
from motifold.render.motif.chart.touches import crossings, touches_of
from motifold.render.motif.model import Layout, Placed, Point
from motifold.symbols.feet import space_ring
from motifold.symbols.glyphs import LegAt, head_bar, stitch_marks
from motifold.symbols.ink import Mark, Stroke
from motifold.symbols.own import OwnSymbol
from motifold.symbols.record import dataclass
from motifold.symbols.sizes import OVAL_LENGTH, STEM_WIDTH

_SIDE_BY_SIDE = 1.1
"""Feet of two stitches that stand upright beside each other in a space, each over a chain: the ring lies between them."""


@dataclass(frozen=True, slots=True)
class Symbol:
    """One stitch of a chart. ``round``: the number it goes by (0 before round 1); ``round_index`` into the Fabric's rounds.

    ``into``: ids of what its legs are worked into, "ring" and spaces among them. ``touches``: ids of the symbols that it meets by design.
    ``marks``: its ink; none for a beginning chain that stands for a stitch, whose chains are symbols of their own. ``given``: a stand-in
    for a stitch of the edge that an edging is worked into.
    """

    id: str
    stitch: str
    round: int
    round_index: int
    index: int
    yarn: str
    into: tuple[str, ...]
    foot: Point
    head: Point
    normal: Point
    group: str | None
    touches: tuple[str, ...]
    marks: tuple[Mark, ...]
    instruction: int
    behind: bool
    given: bool = False

    @property
    def number(self) -> int:
        """Which stitch of the Fabric it is."""
        return int(self.id[1:])

    @property
    def place(self) -> Point:
        """Where it stands: what is worked into something at its head, a chain in its middle."""
        return self.head if self.into else ((self.head[0] + self.foot[0]) / 2, (self.head[1] + self.foot[1]) / 2)


def symbols_of(fabric: Fabric, layout: Layout, left_handed: bool, own: Mapping[str, OwnSymbol]) -> tuple[Symbol, ...]:
    """The symbols of all placed stitches in the order of the Fabric; ``left_handed`` mirrors every point (x -> -x)."""
    placed = {p.stitch: _mirrored(p) if left_handed else p for p in layout.placed}
    rings, ring_touches = _space_rings(fabric, placed)
    crossed = crossings(fabric, placed)
    touches = touches_of(fabric, placed, ring_touches, crossed)
    out: list[Symbol] = []
    drawn_by_group, drawn_for = _own_groups(fabric, placed, own)
    under = behind(crossed)
    for number, place in placed.items():
        stitch = fabric.stitches[number]
        if number in drawn_by_group:
            marks = drawn_by_group[number]
        elif stitch.group in drawn_for:
            marks = ()
        else:
            over = [_marks(fabric.stitches[i], placed[i], own) for i in under.get(number, ())]
            marks = broken(_marks(stitch, place, own), over) + rings.get(number, ())
        feet = place.feet or (place.head,)
        foot = (sum(p[0] for p in feet) / len(feet), sum(p[1] for p in feet) / len(feet))
        out.append(
            Symbol(
                id=f"s{number}",
                stitch=stitch.kind,
                round=number_of(stitch.round, fabric.rounds),
                round_index=stitch.round,
                index=stitch.index,
                yarn=stitch.yarn,
                into=tuple(dict.fromkeys(i for leg in stitch.legs for i in base_ids(leg.base))),
                foot=foot,
                head=place.head,
                normal=place.normal,
                group=None if stitch.group is None else f"g{stitch.group}",
                touches=tuple(f"s{i}" for i in sorted(touches.get(number, ()))),
                marks=marks,
                instruction=stitch.origin.instruction,
                behind=stitch.behind,
                given=stitch.role == "given",
            )
        )
    return tuple(out)


def base_ids(base: Base) -> tuple[str, ...]:
    """What a leg is worked into, by id: a stitch, a space, the ring, or the two stitches on either side of a gap."""
    if base.kind == "ring":
        return ("ring",)
    if base.kind == "space":
        return (f"sp{base.id}",)
    if base.kind == "gap" and base.other is not None:
        return (f"s{base.other}", f"s{base.id}")
    return (f"s{base.id}",)


def _marks(stitch: Stitch, place: Placed, own: Mapping[str, OwnSymbol]) -> tuple[Mark, ...]:
    if stitch.role == "standing":
        return ()
    feet = place.feet or (place.head,)
    if stitch.role == "given":
        return given_marks(stitch, place.head, place.normal, feet[0])
    if stitch.kind in own:
        return own[stitch.kind].marks(feet[len(feet) // 2], place.head)
    if not stitch.legs:
        return stitch_marks(stitch.kind, [LegAt(stitch.kind, feet[0])], place.head, place.normal)
    legs = [LegAt(leg.kind, feet[min(i, len(feet) - 1)], leg.base.foot) for i, leg in enumerate(stitch.legs)]
    return stitch_marks(stitch.kind, legs, place.head, place.normal, stitch.gather, place.bend, place.bars)


def given_marks(stitch: Stitch, head: Point, normal: Point, foot: Point) -> tuple[Mark, ...]:
    """A stand-in: a chain as it is, of a stitch its head and the top of its stem."""
    if stitch.kind == "ch" and stitch.run is None:  # one chain of a foundation, whose other side is worked into
        x, y = -normal[1] * OVAL_LENGTH / 2, normal[0] * OVAL_LENGTH / 2
        return stitch_marks("ch", [LegAt("ch", (head[0] - x, head[1] - y))], (head[0] + x, head[1] + y), normal)
    if stitch.kind == "ch":
        return stitch_marks("ch", [LegAt("ch", foot)], head, normal)
    return (head_bar(head, normal), Stroke(((head[0] - 0.4 * normal[0], head[1] - 0.4 * normal[1]), head), STEM_WIDTH))


def _own_groups(
    fabric: Fabric, placed: Mapping[int, Placed], own: Mapping[str, OwnSymbol]
) -> tuple[dict[int, tuple[Mark, ...]], set[int]]:
    """Groups that a pattern's own symbol replaces: its ink at their middle stitch, and which groups those are."""
    ink: dict[int, tuple[Mark, ...]] = {}
    replaced: set[int] = set()
    for group in fabric.groups:
        members = [i for i in group.stitches if i in placed]
        symbol = own.get(group.name) if group.name else None
        if symbol is None or not members:
            continue
        heads = [placed[i].head for i in members]
        feet = [p for i in members for p in placed[i].feet] or heads
        foot, head = _mean(feet), _mean([heads[(len(heads) - 1) // 2], heads[len(heads) // 2]])
        ink[members[len(members) // 2]] = symbol.marks(foot, head)
        replaced.add(group.id)
    return ink, replaced


def _mean(points: Sequence[Point]) -> Point:
    return (sum(p[0] for p in points) / len(points), sum(p[1] for p in points) / len(points))


def _space_rings(fabric: Fabric, placed: Mapping[int, Placed]) -> tuple[dict[int, tuple[Mark, ...]], dict[int, set[int]]]:
    """One ring for all stitches of a round in one space: drawn with the middle one, touching the others' feet."""
    members: dict[tuple[int, int], list[int]] = defaultdict(list)
    for number in placed:
        stitch = fabric.stitches[number]
        if stitch.role == "travel" or stitch.kind == "sl st" or not stitch.legs:
            continue
        base = stitch.legs[len(stitch.legs) // 2].base
        if base.kind == "space" and base.foot == "space" and placed[number].feet:
            members[(stitch.round, base.id)].append(number)
    rings: dict[int, tuple[Mark, ...]] = {}
    touching: dict[int, set[int]] = {}
    for (_, run), numbers in members.items():
        ordered = _in_place_order(numbers, placed)
        middle = ordered[(len(ordered) - 1) // 2 : len(ordered) // 2 + 1]
        inked = [i for i in ordered if fabric.stitches[i].role != "standing"]
        if not inked:
            continue
        bearer = next((i for i in middle if i in inked), inked[len(inked) // 2])
        feet = [placed[i].feet[len(placed[i].feet) // 2] for i in middle]
        if len(middle) == 2:
            # Of stitches with many legs in one space, the two legs that stand beside each other.
            feet = list(min(product(*(placed[i].feet for i in middle)), key=lambda pair: round(dist(*pair), 6)))
        if len(feet) == 2 and (feet[0][0] - feet[1][0]) ** 2 + (feet[0][1] - feet[1][1]) ** 2 > _SIDE_BY_SIDE**2:
            feet, middle = feet[:1], middle[:1]
        rings[bearer] = (*rings.get(bearer, ()), space_ring(feet, [placed[i].head for i in middle]))
        chains = [c for i in numbers for c in fabric.stitches[i].chains]
        touching.setdefault(bearer, set()).update(i for i in [*numbers, *chains, *fabric.runs[run].stitches] if i != bearer)
    return rings, touching


def _in_place_order(numbers: list[int], placed: Mapping[int, Placed]) -> list[int]:
    """Stitches of one space from one end of it to the other: along the line between the two feet that are furthest apart."""
    if len(numbers) < 3:
        return numbers
    feet = {i: placed[i].feet[len(placed[i].feet) // 2] for i in numbers}
    first = feet[numbers[0]]

    def far(p: Point) -> int:
        return max(numbers, key=lambda i: (feet[i][0] - p[0]) ** 2 + (feet[i][1] - p[1]) ** 2)

    a = feet[far(first)]
    b = feet[far(a)]
    return sorted(numbers, key=lambda i: ((feet[i][0] - a[0]) * (b[0] - a[0]) + (feet[i][1] - a[1]) * (b[1] - a[1]), i))


def _mirrored(place: Placed) -> Placed:
    def flip(p: Point) -> Point:
        return (-p[0], p[1])

    feet, bend = tuple(flip(p) for p in place.feet), tuple(flip(p) for p in place.bend)
    return Placed(place.stitch, feet, flip(place.head), flip(place.normal), bend, place.bars)
