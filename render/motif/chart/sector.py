"""One repeat of rounds, cut out of the whole: each stitch of an orbit under the rotation is in it exactly once.

An orbit is a stitch with its images, found by counting along the round and not by angles, so that a stitch on the cut is neither lost nor
drawn at both edges. A beginning chain that counts as a stitch gives way to an image of it that is worked as a stitch; joining and walking
slip stitches, and chains that begin a round without counting, have no images and are left out.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from math import atan2, floor, hypot, pi, tau

from motifold.render.fabric.model import Fabric, Stitch
from motifold.render.motif.model import Layout, Link, Placed, Point
from motifold.symbols.record import dataclass

_LOOKED_AT = 120
"""How many cuts are compared within one repeat."""
_CHAIN_WEIGHT = 0.15
"""A chain that stands out over the cut disturbs less than a stitch."""
_CORNER_PULL = 0.5
"""What a cut costs, for each round, that does not pass through the corners of a polygon: where cuts are as good, a side is shown."""
_NARROW_COST = 0.6
"""What a cut costs in a round where 0.5 u are free between the stitches on its sides; in wider gaps less."""
_NEAR_CORNER = 1.5
"""How far from a corner, in u on the last round, a cut has to be to cost all of that."""


@dataclass(frozen=True, slots=True)
class _Piece:
    """What is never parted: stitches side by side in one place, a named group, one chain, a picot, one hairline of a run.

    ``images`` of it, each with its ids (of hairlines, see ``_with_links``). ``whole``: which images are worked as most are. ``sign``: +1
    where the next image lies counter-clockwise.
    """

    round: int
    images: tuple[tuple[int, ...], ...]
    whole: tuple[bool, ...]
    sign: int
    weight: float


@dataclass(frozen=True, slots=True)
class Sector:
    """One repeat or a few of them, from angle ``begin`` over ``width``; ``cut``: where it begins, from the inside outwards, in the gaps
    between stitches (angle and distance)."""

    layout: Layout
    begin: float
    width: float
    cut: tuple[tuple[float, float], ...]


def cut_out(fabric: Fabric, layout: Layout, times: int, count: int, corners: Sequence[float], avoid: float) -> Sector:
    """``count`` of ``times`` repeats. ``corners``: angles of a polygon's corners; ``avoid``: where rounds start; turned away from.

    The cut passes between groups in as many rounds as it can.
    """
    placed = _with_links(layout)
    pieces, once = _pieces(fabric, layout, placed, times)
    width = tau / times
    begin = _best_cut(pieces, placed, width, corners)
    turns = round((avoid + pi - begin - count * width / 2) / width)
    begin += turns * width
    chosen: list[Placed] = [placed[i] for i in once]
    links: list[Link] = []
    spans: list[tuple[int, float, float, float]] = []
    for piece in pieces:
        for k in range(count):
            image, turn = _image(piece, placed, begin + k * width, width)
            moved = [turned(placed[i], turn) for i in piece.images[image]]
            chosen += [p for p in moved if p.stitch >= 0]
            links += [Link(layout.links[~p.stitch].run, (*p.feet, *p.bend, p.head)) for p in moved if p.stitch < 0]
            low, high = _extent(moved, begin + (k + 0.5) * width)
            spans.append((piece.round, low - begin, high - begin, _far(moved)))
    cut = _cut_line(spans, begin, count * width)
    order = {p.stitch: i for i, p in enumerate(layout.placed)}
    chosen.sort(key=lambda p: order[p.stitch])
    return Sector(replace(layout, placed=tuple(chosen), links=tuple(links)), begin, count * width, cut)


def turned(p: Placed, angle: float) -> Placed:
    """The stitch turned about the centre."""
    if angle == 0.0:
        return p
    head, normal = spun((p.head, p.normal), angle)
    return Placed(p.stitch, spun(p.feet, angle), head, normal, spun(p.bend, angle), p.bars)


def spun(points: Iterable[Point], angle: float) -> tuple[Point, ...]:
    """Points turned about the centre."""
    from cmath import exp

    spin = exp(1j * angle)
    return tuple((z.real, z.imag) for z in (complex(*p) * spin for p in points))


def _with_links(layout: Layout) -> dict[int, Placed]:
    """What is placed by its stitch, and the hairlines as if they were: the first as number -1, the second -2, and so on."""
    placed = {p.stitch: p for p in layout.placed}
    for i, link in enumerate(layout.links):
        if len(link.points) > 1:
            placed[~i] = Placed(~i, link.points[:1], link.points[-1], (0.0, 1.0), link.points[1:-1])
    return placed


def _pieces(
    fabric: Fabric, layout: Layout, placed: dict[int, Placed], times: int
) -> tuple[list[_Piece], list[int]]:
    """What is repeated, and the stitches that are drawn as they are: those made before round 1."""
    of_run: dict[int, list[int]] = defaultdict(list)
    for i, link in enumerate(layout.links):
        if ~i in placed:
            of_run[link.run].append(~i)
    pieces: list[_Piece] = []
    once: list[int] = []
    for index, this in enumerate(fabric.rounds):
        members = [s for s in fabric.round_stitches(index) if s.id in placed]
        if this.kind == "ring":
            once += [s.id for s in members]
            continue
        segments = _segments(fabric, members)
        if segments and len(segments) % times == 0:
            pieces += _of_round(fabric, index, segments, times, this.direction, of_run, placed)
    return pieces, once


Segment = tuple[Stitch, ...]
"""A stitch, and the chains and picots up to the next one, in the order of work."""


def _segments(fabric: Fabric, members: Sequence[Stitch]) -> list[Segment]:
    """A round's segments; a stitch that a beginning chain stands for comes right after those chains that count as it."""
    counted = {chain for s in members for chain in s.chains}
    segments: list[list[Stitch]] = []
    for stitch in sorted(members, key=lambda s: max(s.chains, default=s.id) + (0.5 if s.role == "standing" else 0.0)):
        if stitch.role in ("stitch", "standing", "given") and not (stitch.role == "given" and stitch.kind == "ch"):
            segments.append([stitch])
        elif segments and stitch.role != "travel" and stitch.id not in counted:
            run = fabric.runs[stitch.run] if stitch.run is not None else None
            if run is None or run.role not in ("beginning", "standing"):
                segments[-1].append(stitch)
    return [tuple(segment) for segment in segments]


def _of_round(
    fabric: Fabric, index: int, segments: list[Segment], times: int, direction: int,
    of_run: Mapping[int, list[int]], placed: dict[int, Placed],
) -> list[_Piece]:  # fmt: skip
    """The pieces of one round: its segments in orbits, each taken apart into what may be parted by a cut."""
    step = len(segments) // times
    shapes = [tuple((s.kind, s.role) for s in segment) for segment in segments]
    usual = [Counter(shapes[j::step]).most_common(1)[0][0] for j in range(step)]
    usual = [next((s for s in shapes[j::step] if s == best and s[0][1] != "standing"), best) for j, best in enumerate(usual)]
    sign = _sign(placed, segments, step, times, direction)
    pieces: list[_Piece] = []
    for stems in _glued(fabric, segments, step):
        rows = [[(j + m * step) % len(segments) for j in stems] for m in range(times)]
        whole = tuple(all(shapes[i] == usual[i % step] for i in row) for row in rows)
        inner = [_inside(fabric, segments, i) for i in rows[0][:-1]] + [False]
        parts = [[s for i, all_of in zip(row, inner, strict=True) for s in (segments[i] if all_of else segments[i][:1])] for row in rows]
        ids = tuple((*(s.id for s in part), *_links_of(part, of_run)) for part in parts)
        pieces.append(_Piece(index, ids, whole, sign, 1.0))
        for j in (j for j, all_of in zip(rows[0], inner, strict=True) if not all_of):
            images = [segments[(j + m * step) % len(segments)] for m in range(times)]
            fits = tuple(tuple((s.kind, s.role) for s in image[1:]) == usual[j % step][1:] for image in images)
            pieces += _between(fabric, index, images, fits, sign, of_run)
    return pieces


def _between(
    fabric: Fabric, index: int, images: list[Segment], fits: tuple[bool, ...], sign: int, of_run: Mapping[int, list[int]]
) -> list[_Piece]:
    """What stands between two stitches: each chain and each hairline by itself, a picot whole."""
    first = images[fits.index(True)] if True in fits else images[0]
    parts: dict[int, list[int]] = {}
    for k, stitch in enumerate(first[1:], 1):
        run = fabric.runs[stitch.run] if stitch.run is not None else None
        parts.setdefault(-1 - run.id if run is not None and run.role == "picot" else k, []).append(k)
    found = []
    for part in parts.values():
        ids = tuple(tuple(image[k].id for k in part if k < len(image)) for image in images)
        found.append(_Piece(index, ids, fits, sign, _CHAIN_WEIGHT))
    lines = [_links_of(image[1:], of_run) for image in images]
    most = max((len(line) for line, fit in zip(lines, fits, strict=True) if fit), default=0)
    fits = tuple(fit and len(line) == most for line, fit in zip(lines, fits, strict=True))
    return found + [_Piece(index, tuple(line[k : k + 1] for line in lines), fits, sign, 0.0) for k in range(most)]


def _links_of(stitches: Iterable[Stitch], of_run: Mapping[int, list[int]]) -> tuple[int, ...]:
    """The hairlines of the runs that these chains belong to."""
    runs = dict.fromkeys(s.run for s in stitches if s.role == "chain" and s.run is not None)
    return tuple(i for run in runs for i in of_run.get(run, ()))


def _glued(fabric: Fabric, segments: list[Segment], step: int) -> list[list[int]]:
    """Orbits of stitches, those together that stand side by side in one place or belong to one named group."""
    joins = [_together(fabric, segments, j) for j in range(len(segments))]
    tied = [sum(joins[j::step]) * 2 > len(joins[j::step]) for j in range(step)]
    if all(tied):
        return [[j] for j in range(step)]
    first = next(j for j in range(step) if not tied[j - 1])
    groups: list[list[int]] = []
    for k in range(step):
        j = first + k
        if groups and tied[(j - 1) % step]:
            groups[-1].append(j)
        else:
            groups.append([j])
    return groups


def _together(fabric: Fabric, segments: list[Segment], j: int) -> bool:
    """Whether a stitch and the one after it are never parted."""
    a, b = segments[j][0], segments[(j + 1) % len(segments)][0]
    if _inside(fabric, segments, j):
        return True
    return len(segments[j]) == 1 and bool(a.legs) and bool(b.legs) and a.legs[-1].base == b.legs[0].base and a.legs[-1].base.kind != "ring"


def _inside(fabric: Fabric, segments: list[Segment], j: int) -> bool:
    """Whether what follows a stitch lies inside a named group of this pattern."""
    a, b = segments[j][0], segments[(j + 1) % len(segments)][0]
    return a.group is not None and a.group == b.group and fabric.groups[a.group].name is not None


def _sign(placed: dict[int, Placed], segments: list[Segment], step: int, times: int, direction: int) -> int:
    """Whether the next image of a stitch lies counter-clockwise (+1) or clockwise (-1)."""
    if times == 2:
        return direction
    turn = atan2(*reversed(placed[segments[step][0].id].head)) - atan2(*reversed(placed[segments[0][0].id].head))
    return 1 if (turn % tau) < pi else -1


def _angle(members: Sequence[Placed]) -> float:
    """Where a piece stands: the direction of the middle of its heads, of a chain of its middle."""
    points = [p.head for p in members if len(p.feet) != 1 or hypot(p.head[0] - p.feet[0][0], p.head[1] - p.feet[0][1]) > 0.95]
    points = points or [q for p in members for q in (p.head, *p.feet)]
    return atan2(sum(y for _, y in points), sum(x for x, _ in points))


def _best_image(piece: _Piece) -> int:
    return piece.whole.index(True) if True in piece.whole else 0


def _place(piece: _Piece, placed: dict[int, Placed]) -> float:
    """The angle of its first whole image."""
    return _angle([placed[i] for i in piece.images[_best_image(piece)]])


def _image(piece: _Piece, placed: dict[int, Placed], begin: float, width: float) -> tuple[int, float]:
    """The image that stands between ``begin`` and ``begin + width``, or another one and how far it has to be turned to stand there."""
    first, times = _best_image(piece), len(piece.images)
    steps = floor((_place(piece, placed) - begin) / width + 1e-9)
    there = (first - piece.sign * steps) % times
    if piece.whole[there]:
        return there, 0.0
    return first, -steps * width


def _extent(members: Sequence[Placed], about: float) -> tuple[float, float]:
    """The angles between which it stands, without jumps near ``about``."""
    if not members:
        return about, about
    far = max(_far(members), 0.5)
    ways = [about + (atan2(p.head[1], p.head[0]) - about + pi) % tau - pi for p in members]
    pad = 0.35 / far
    return min(ways) - pad, max(ways) + pad


def _far(members: Sequence[Placed]) -> float:
    return max((hypot(*p.head) for p in members), default=0.0)


def _best_cut(pieces: Sequence[_Piece], placed: dict[int, Placed], width: float, corners: Sequence[float]) -> float:
    """The angle of the cut that passes between pieces in most rounds, or through the least of them."""
    import numpy as np

    if not pieces:
        return 0.0
    at = np.asarray([_place(piece, placed) for piece in pieces])
    members = [[placed[i] for i in piece.images[_best_image(piece)]] for piece in pieces]
    spans = np.asarray([_extent(m, a) for m, a in zip(members, at, strict=True)]) - at[:, None]
    far = np.asarray([max(_far(m), 0.5) for m in members])
    weight = np.asarray([piece.weight for piece in pieces])
    reach, rounds = float(far.max()), len({piece.round for piece in pieces})
    stems = weight == 1.0
    numbers, row = np.unique(np.asarray([piece.round for piece in pieces])[stems], return_inverse=True)
    reaches = np.zeros(len(numbers))
    np.maximum.at(reaches, row, far[stems])
    best, found = float("inf"), 0.0
    tries = [c % width for c in corners] + [k * width / _LOOKED_AT for k in range(_LOOKED_AT)]
    for cut in tries:
        stands = (at - cut) % width
        stands[stands > width - 1e-9] = 0.0
        over = np.maximum(stands + spans[:, 1] - width, 0.0) + np.maximum(-(stands + spans[:, 0]), 0.0)
        cost = float((over * far * weight).sum())
        low, high = np.full(len(numbers), width), np.full(len(numbers), width)
        np.minimum.at(low, row, (stands + spans[:, 0])[stems])
        np.minimum.at(high, row, (width - stands - spans[:, 1])[stems])
        room = np.maximum((low + high) * reaches, 0.0)
        cost += float((_NARROW_COST / (0.5 + room)).sum())
        if corners:
            off = min(abs((c - cut + width / 2) % width - width / 2) for c in corners) * reach
            cost += _CORNER_PULL * rounds * min(off / _NEAR_CORNER, 1.0)
        if cost < best - 1e-6:
            best, found = cost, cut
    return found


def _cut_line(spans: Sequence[tuple[int, float, float, float]], begin: float, width: float) -> tuple[tuple[float, float], ...]:
    """The cut from the inside outwards: straight where nothing is in the way, else between the last stitch of one repeat and the first."""
    lows: dict[int, float] = defaultdict(lambda: float("inf"))
    highs: dict[int, float] = defaultdict(lambda: float("-inf"))
    fars: dict[int, float] = defaultdict(float)
    for index, low, high, far in spans:
        lows[index], highs[index] = min(lows[index], low), max(highs[index], high - width)
        fars[index] = max(fars[index], far)
    line: list[tuple[float, float]] = []
    for index in sorted(fars, key=lambda i: (fars[i], i)):
        low, high = lows[index], highs[index]
        off = (low + high) / 2 if high > low else min(max(0.0, high), low)
        if fars[index] > 0.5:
            line.append((begin + off, fars[index]))
    return tuple(line)
