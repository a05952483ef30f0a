"""A placed round as bodies that can be pushed: what ``relax`` moves, and what it must not move into.

Every body hangs on two points: a stem on its foot and its head, an oval on its tips, a picot on its dot and the middle of its ring. A point
of its ink at ``w`` (0 at the first point, 1 at the second, as complex numbers divide) moves by ``(1 - w)`` of the first point's move and
``w`` of the second's. Bodies that are images of each other are one class and move alike, each turned to its own place.
"""

from __future__ import annotations

from cmath import exp
from collections.abc import Iterable, Sequence
from dataclasses import field
from itertools import pairwise
from math import pi
from typing import TYPE_CHECKING

from motifold.render.fabric.model import Base
from motifold.render.motif.course import Course
from motifold.render.motif.crossings import over_and_under
from motifold.render.motif.extents import LENGTH_LEAST, LENGTH_MOST
from motifold.render.motif.feet import shared
from motifold.render.motif.ground import Ground
from motifold.render.motif.ink import Segment, segments_of, symbol_segments
from motifold.render.motif.parts import Stem
from motifold.render.motif.picots import picot_parts
from motifold.render.motif.rings import rings_of
from motifold.symbols.record import dataclass

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    ComplexArray = NDArray[np.complex128]
    FloatArray = NDArray[np.float64]
    IntArray = NDArray[np.int64]

_HEAD, _OVAL, _FOOT = 0.6, 0.6, 0.16
"""How far a head, an oval and a foot in a space may be moved at the most."""
_LOOSE, _FIRM, _SLIDE = 0.25, 0.1, 0.07
"""How easily a foot in a space slides, and one on a stitch; and how far this one does."""
_CORE_FROM, _CORE_HALF = 0.25, 0.12
"""The core of an oval: from where on it, and half how broad."""
_BELOW = 2
"""Rounds below that a round may touch."""
_PITCH_LEAST, _PITCH_MOST, _TO_HEAD = 0.806, 1.37, 1.05
"""Between the middles of neighbouring ovals, and from the last of them to the head that it hangs from."""


@dataclass(frozen=True, slots=True)
class Body:
    """``cls``: its class; ``turn``: from the class's own place to this one. ``ink``: the stitches drawn with it."""

    cls: int
    turn: complex
    first: complex
    second: complex
    ink: tuple[int, ...]
    tilts: bool = True


@dataclass(slots=True)
class Kind:
    """What all bodies of one class have in common. ``ease``: how easily each of its points moves (0: not at all); ``most``: how far;
    ``length``: the least and the most; ``rail``: the direction that the second point is bound to (0: free), or ``round`` the centre.
    ``held``: the class, and the part of it, that the first point is fixed to, if any.
    """

    first: complex
    second: complex
    ease: tuple[float, float]
    most: tuple[float, float]
    length: tuple[float, float]
    rail: complex = 0j
    round: bool = False
    held: tuple[int, float] | None = None


@dataclass(frozen=True, slots=True)
class Tie:
    """Two bodies of one run, or its end and a head: the parts of them, the turn of the second, and how far apart they may be."""

    one: int
    other: int
    parts: tuple[float, float]
    turn: complex
    least: float
    most: float


@dataclass(slots=True)
class Piece:
    """One symbol: its ink, the body that it moves with (None: it stays), and what it is looked up by."""

    segments: list[Segment]
    body: int | None
    key: object
    looked: bool = False


@dataclass(slots=True)
class Bodies:
    """A round laid out for pushing. ``level``: its heads stay on their outline; ``round``: which is a circle. ``stems``: so many classes,
    the first, are stems in order; their next images stand one ``lap`` on. ``runs``: of each run of chains the points from head to head, as
    class, which of its points, and turn. ``touching``: keys of symbols that meet by design.
    """

    level: bool
    round: bool
    stems: int
    lap: complex
    bodies: list[Body] = field(default_factory=list)
    kinds: list[Kind] = field(default_factory=list)
    pieces: list[Piece] = field(default_factory=list)
    ties: list[Tie] = field(default_factory=list)
    runs: list[list[tuple[int, int, complex]]] = field(default_factory=list)
    touching: set[tuple[object, object]] = field(default_factory=set)


def bodies_of(ground: Ground, course: Course, order: int, even: bool, corners: int) -> Bodies:
    """The bodies of a course, the symbols below that they may meet, and what may touch."""
    step = course.size // order
    found = Bodies(even, not corners, step, exp(2j * pi / order))
    looked = {(course.begins + i) % course.size for i in range(min(2 * step, course.size))}
    _stems(ground, course, found, step, even, corners, looked)
    _ovals(ground, course, found, step, looked)
    _picots(ground, course, found, step, looked)
    _rings(ground, course, found, looked)
    _below(ground, course, found)
    _design(ground, course, found)
    return found


def _turns(order: int) -> list[complex]:
    return [exp(2j * pi * k / order) for k in range(order)]


def _stems(ground: Ground, course: Course, found: Bodies, step: int, even: bool, corners: int, looked: set[int]) -> None:
    turns = _turns(course.size // step)
    on_corner = {corner.at for corner in course.corners if corner.on_stem}
    for index in range(step):
        images = [course.stems[k] for k in range(index, course.size, step)]
        found.kinds.append(_stem_kind(ground, images, even, bool(corners), index in on_corner))
    for index, stem in enumerate(course.stems):
        number = stem.stitch.id
        feet = ground.feet[number]
        foot, head = sum(feet) / len(feet), ground.heads[number]
        ink = (number, *stem.stitch.chains)
        found.bodies.append(Body(index % step, turns[index // step], foot, head, ink, len(feet) == 1))
        for drawn in ink:
            _draw(ground, found, drawn, index in looked)


def _ink(ground: Ground, number: int) -> list[Segment]:
    """The strokes of a stitch; an oval also has a core, so that one lying in another is known to be in it, and how deep."""
    segments = symbol_segments(ground, ground.fabric.stitches[number])
    first, last = ground.tips.get(number, (0j, 0j))
    if segments and first != last:
        inset = (last - first) * _CORE_FROM
        segments.append((first + inset, last - inset, _CORE_HALF))
    return segments


def _draw(ground: Ground, found: Bodies, number: int, looked: bool) -> None:
    """The ink of a stitch that moves with the body made last."""
    segments = _ink(ground, number)
    if segments:
        found.pieces.append(Piece(segments, len(found.bodies) - 1, number, looked))


def _stem_kind(ground: Ground, images: Sequence[Stem], even: bool, cornered: bool, on_corner: bool) -> Kind:
    stem = images[0]
    number = stem.stitch.id
    feet = ground.feet[number]
    foot, head = sum(feet) / len(feet), ground.heads[number]
    length = abs(head - foot)
    least, most = min(LENGTH_LEAST * stem.height, length), max(LENGTH_MOST * stem.height, length)
    if any(one.stitch.chains for one in images):
        least = length
    base = stem.stitch.legs[0].base if stem.stitch.legs else None
    in_space = base is not None and base.kind == "space"
    slides = 0.0 if base is None or len(feet) > 1 or base.kind == "ring" else _LOOSE if in_space else _FIRM
    fixed = number in ground.bends or (even and on_corner)
    rail = 1j * ground.normals[number] if even and cornered else 0j
    return Kind(
        foot, head, (slides, 0.0 if fixed else 1.0), (_FOOT if in_space else _SLIDE, _HEAD), (least, most), rail, even and not cornered
    )  # fmt: skip


def _ovals(ground: Ground, course: Course, found: Bodies, step: int, looked: set[int]) -> None:
    turns = _turns(course.size // step)
    for index, gap in enumerate(course.gaps):
        if index >= step or not gap.parts or any(part not in ground.tips for part in gap.parts):
            continue
        after, lap = (index + 1) % step, turns[((index + 1) // step) % len(turns)]
        chain = [(index, 1, 1 + 0j)]
        for part in gap.parts:
            first, last = ground.tips[part]
            cls = len(found.kinds)
            found.kinds.append(Kind(first, last, (1.0, 1.0), (_OVAL, _OVAL), (abs(last - first),) * 2))
            chain += [(cls, 0, 1 + 0j), (cls, 1, 1 + 0j)]
        chain.append((after, 1, lap))
        found.runs.append(chain)
        _tie(found, chain)
        for k, turn in enumerate(turns):
            place = (index + k * step) % course.size
            for offset, part in enumerate(course.gaps[place].parts):
                cls = chain[1 + 2 * offset][0]
                first, last = ground.tips[part]
                found.bodies.append(Body(cls, turn, first, last, (part,)))
                _draw(ground, found, part, place in looked)


def _tie(found: Bodies, chain: list[tuple[int, int, complex]]) -> None:
    """An oval to the next one, and the first and the last to their heads."""
    ovals = [(cls, 0.5, turn) for cls, _, turn in chain[1:-1:2]]
    (first, _, _), (last, _, lap) = chain[0], chain[-1]
    for (one, part, _), (other, part_other, turn) in pairwise([(first, 1.0, 1 + 0j), *ovals, (last, 1.0, lap)]):
        parts = (part, part_other)
        a, b = found.kinds[one], found.kinds[other]
        away = abs((b.first + (b.second - b.first) * parts[1]) * turn - a.first - (a.second - a.first) * parts[0])
        least, most = (_PITCH_LEAST, _PITCH_MOST) if parts == (0.5, 0.5) else (0.0, _TO_HEAD)
        found.ties.append(Tie(one, other, parts, turn, min(least, away), max(most, away)))


def _picots(ground: Ground, course: Course, found: Bodies, step: int, looked: set[int]) -> None:
    turns = _turns(course.size // step)
    by_ink = {number: k for k, body in enumerate(found.bodies) for number in body.ink}
    made: dict[tuple[int, int], int] = {}
    for index, (stem, gap) in enumerate(zip(course.stems, course.gaps, strict=True)):
        rings = [(ring, stem.stitch.id) for ring in stem.picots] + [(ring, gap.parts[at]) for ring, at in gap.picots]
        for number, (ring, bearer) in enumerate(rings):
            chains, closers = picot_parts(ground.fabric, ring)
            if bearer not in by_ink or not chains or chains[0] not in ground.tips:
                continue
            middle = sum(sum(ground.tips[s]) / 2 for s in chains) / len(chains)
            foot = ground.tips[closers[0]][0] if closers else middle - ground.normals[bearer]
            body = found.bodies[by_ink[bearer]]
            key = (index % step, number)
            if key not in made:
                made[key] = len(found.kinds)
                part = 1.0 if bearer == stem.stitch.id else 0.5
                back = 1 / turns[index // step]
                length = (abs(middle - foot),) * 2
                found.kinds.append(Kind(foot * back, middle * back, (0.0, 1.0), (9.0, _OVAL), length, held=(body.cls, part)))
            ink = (*closers, *chains)
            found.bodies.append(Body(made[key], turns[index // step], foot, middle, ink))
            for drawn in ink:
                _draw(ground, found, drawn, index in looked)


def _rings(ground: Ground, course: Course, found: Bodies, looked: set[int]) -> None:
    """The ring of each space moves with the foot that it lies under."""
    marks = rings_of(ground, course)
    for base, members in shared(course).items():
        if base.id in marks and base.kind == "space":
            bearer = members[(len(members) - 1) // 2][0]
            segments = segments_of([marks[base.id]])
            foot = ground.feet[course.stems[bearer].stitch.id][0]
            found.pieces.append(Piece(segments, bearer, ("ring", base.id, foot), bearer in looked))


def _below(ground: Ground, course: Course, found: Bodies) -> None:
    """The symbols of the rounds below, where any that is looked at is near."""
    import numpy as np

    spots = np.array([s[0] for piece in found.pieces if piece.looked for s in piece.segments[:1]])
    for number in range(max(course.round - _BELOW, 0), course.round):
        below = ground.courses.get(number)
        if below is None:
            continue
        drawn: list[int] = []
        for stem, gap in zip(below.stems, below.gaps, strict=True):
            rings = [*stem.picots, *(ring for ring, _ in gap.picots)]
            drawn += [stem.stitch.id, *stem.stitch.chains, *gap.parts]
            drawn += [s for ring in rings for s in (*ring.stitches, *picot_parts(ground.fabric, ring)[1])]
        near = [s for s in dict.fromkeys(drawn) if _is_near(ground, s, spots)]
        for s in near:
            segments = _ink(ground, s)
            if segments:
                found.pieces.append(Piece(segments, None, s))


def _is_near(ground: Ground, number: int, spots: ComplexArray) -> bool:
    import numpy as np

    if number in ground.tips:
        at = ground.tips[number][0]
    elif number in ground.heads:
        at = ground.heads[number]
    else:
        return False
    return bool(len(spots)) and float(np.abs(spots - at).min()) < 3.0


def _design(ground: Ground, course: Course, found: Bodies) -> None:
    """What meets by design: a foot and its base, a ring and what stands in it, stems that cross, what passes over other rounds."""
    stitches, runs = ground.fabric.stitches, ground.fabric.runs
    for front, back in over_and_under(ground.fabric, [stem.stitch.id for stem in course.stems]):
        _meet(found, front, (back,))
    crossed = [stem.stitch for stem in course.stems if stem.stitch.gather == "crossed" and stem.stitch.group is not None]
    for one in crossed:
        _meet(found, one.id, (other.id for other in crossed if other.group == one.group))
    for stem in course.stems:
        stitch = stem.stitch
        _meet(found, stitch.id, (c for leg in stitch.legs if leg.base.kind == "space" for c in runs[leg.base.id].stitches))
        for leg in stitch.legs:
            if leg.base.kind == "stitch":
                _meet(found, stitch.id, (leg.base.id, *stitches[leg.base.id].chains))
        lowest = min((_round_of(ground, leg.base) for leg in stitch.legs), default=course.round)
        if stitch.behind or lowest < course.round - 1:
            _meet(found, stitch.id, (p.key for p in found.pieces if p.body is None and isinstance(p.key, int)))
    for piece in found.pieces:
        if isinstance(piece.key, tuple):
            run = piece.key[1]
            inside = [s.stitch for s in course.stems if any(leg.base.kind == "space" and leg.base.id == run for leg in s.stitch.legs)]
            _meet(found, piece.key, (n for s in inside for n in (s.id, *s.chains)))
            _meet(found, piece.key, runs[run].stitches)


def _round_of(ground: Ground, base: Base) -> int:
    if base.kind == "space":
        return ground.fabric.runs[base.id].round
    return 0 if base.kind == "ring" else ground.fabric.stitches[base.id].round


def _meet(found: Bodies, one: object, others: Iterable[int]) -> None:
    for other in others:
        found.touching.add((one, other))
        found.touching.add((other, one))
