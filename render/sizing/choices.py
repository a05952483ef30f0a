"""Other ways to buy the same yarn: another ball, and the other colour first."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import pairwise
from math import ceil

from motifold.render.fabric.model import Fabric
from motifold.render.pattern.model import Pattern
from motifold.render.pattern.quantity import PerLength
from motifold.render.sizing.model import YarnNeed
from motifold.render.sizing.yarn import TAIL_CM, Scale, ends_by_yarn, margin_of, widths_by_yarn
from motifold.symbols.record import dataclass


@dataclass(frozen=True, slots=True)
class OtherBall:
    """What a yarn of another label takes for the same length: whole balls of the mass that the label gives its length for."""

    yarn: str
    label: PerLength
    grams: float
    balls: int
    left_metres: float


def other_ball(need: YarnNeed, label: PerLength) -> OtherBall:
    """By length, the only measure that two yarns share: metres over metres for a gram."""
    each = float(label.length.metres)
    balls = ceil(round(need.metres / each, 6))
    return OtherBall(need.yarn, label, need.metres / float(label.metres_per_gram), balls, balls * each - need.metres)


@dataclass(frozen=True, slots=True)
class ColourOrder:
    """A motif whose two yarns take turns by round. ``metres`` of both in all as the text begins it, ``swapped`` begun with the other.

    With the margin; ``balls`` of both together where the labels say, likewise.
    """

    motif: str
    first: str
    second: str
    metres: tuple[float, float]
    swapped: tuple[float, float]
    balls: tuple[int, int] | None

    @property
    def less(self) -> str:
        """The yarn of which less is needed as the text begins it."""
        return self.first if self.metres[0] <= self.metres[1] else self.second


def colour_orders(
    pattern: Pattern, fabrics: Mapping[str, Fabric], copies: Mapping[str, int], scale: Scale, needs: Sequence[YarnNeed]
) -> tuple[ColourOrder, ...]:
    """For each motif worked in two yarns by turns; a motif in colourways has an order in each, and is left out."""
    plain = {motif.name for motif in pattern.motifs if not motif.colourways}
    known = {need.yarn: need for need in needs}
    first_yarn = pattern.yarns[0].key if pattern.yarns else ""
    found = []
    for name, fabric in fabrics.items():
        turns = _turns(fabric, first_yarn)
        if name not in plain or len(turns) < 3 or len(set(turns)) != 2 or any(a == b for a, b in pairwise(turns)):
            continue
        first, second = turns[0], turns[1]
        if first not in known or second not in known:
            continue
        length = {yarn: widths * scale.cm for yarn, widths in widths_by_yarn(fabric, scale.diameter, first_yarn).items()}
        ends = ends_by_yarn(fabric, first_yarn)
        more = length.get(second, 0.0) - length.get(first, 0.0) + TAIL_CM * (ends.get(second, 0) - ends.get(first, 0))
        delta = more * copies.get(name, 1) * (1 + margin_of(pattern)) / 100
        metres = known[first].metres, known[second].metres
        swapped = metres[0] + delta, metres[1] - delta
        balls = [_balls(pattern, yarn, cm) for yarn, cm in zip((first, second) * 2, (*metres, *swapped), strict=True)]
        counted = [number for number in balls if number is not None]
        both = (sum(counted[:2]), sum(counted[2:])) if len(counted) == 4 else None
        found.append(ColourOrder(name, first, second, metres, swapped, both))
    return tuple(found)


def _turns(fabric: Fabric, first: str) -> list[str]:
    """The yarn of each numbered round; () where a round has two."""
    turns = []
    for one in fabric.rounds:
        if one.kind != "round":
            continue
        yarns = {fabric.stitches[i].yarn or first for i in one.stitches if fabric.stitches[i].role in ("stitch", "standing")}
        if len(yarns) != 1:
            return []
        turns.append(yarns.pop())
    return turns


def _balls(pattern: Pattern, key: str, metres: float) -> int | None:
    yarn = next((yarn for yarn in pattern.yarns if yarn.key == key), None)
    if yarn is None or yarn.length is None:
        return None
    ball = float(yarn.ball.grams) if yarn.ball is not None else float(yarn.length.mass.grams)
    return ceil(round(metres / float(yarn.length.metres_per_gram) / ball, 6))
