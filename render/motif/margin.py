"""What is worked but never met: joining and walking slip stitches, beginning chains that do not count. They take what room is left.

Each looks for the nearest free place to where it belongs, after every counted stitch has its own, so that symmetry is none of their
business.
"""

from __future__ import annotations

from cmath import exp
from collections.abc import Iterator
from functools import lru_cache
from math import floor

from motifold.render.fabric.model import Run, Stitch
from motifold.render.motif.course import Course, closing_slip
from motifold.render.motif.extents import CLEAR, OVAL_HALF, OVAL_LEAST, PITCH_LEAST
from motifold.render.motif.ground import Ground, point
from motifold.render.motif.ink import Ink, Segment, segments_of, symbol_segments, white_at
from motifold.render.motif.rings import rings_of
from motifold.symbols.glyphs import chain_oval
from motifold.symbols.record import dataclass
from motifold.symbols.sizes import DOT_RADIUS

_STEP = 0.08
_CHUNK = 60
_STACKED = ("beginning", "standing")
"""Runs that stand beside the first stitch: chains that do not count, and those that are the first leg of a beginning cluster."""
_LEANS = (0.0, 0.5, -0.5)
"""How far a stack of chains may lean to find room, in radians, tried in this order."""
_LEG = 0.45
"""How far beside the middle of a beginning cluster its chains stand."""
_NEAR = 3.5
"""Symbols further than this from a seam are none of its business."""


@dataclass(frozen=True, slots=True)
class _Spot:
    """Where a symbol belongs: a point, the way out there, and how far it may wander up (out), down (in) and sideways."""

    at: complex
    out: complex
    up: float
    down: float
    aside: float


def fill_margins(ground: Ground) -> None:
    """Place every travelling slip stitch and every beginning chain that does not count."""
    waiting = [stitch for stitch in ground.fabric.stitches if _waits(ground, stitch)]
    if not waiting:
        return
    ink = _ink_near(ground, [_near(ground, stitch) for stitch in waiting])
    done: set[int] = set()
    for stitch in waiting:
        run = ground.fabric.runs[stitch.run] if stitch.run is not None else None
        if run is not None and run.role in _STACKED:
            if run.id not in done:
                done.add(run.id)
                _beginning(ground, ink, run)
        elif stitch.role == "travel" or _closes(ground, stitch):
            _dot(ground, ink, stitch)
        if stitch.id not in ground.tips and stitch.id not in ground.heads:
            _stray(ground, ink, stitch)


def _near(ground: Ground, stitch: Stitch) -> complex:
    """About where a waiting symbol will lie."""
    course = ground.courses.get(stitch.round)
    if stitch.role == "travel" or _closes(ground, stitch):
        return _spot(ground, stitch).at
    if course is None or stitch.run is None or ground.fabric.runs[stitch.run].role not in _STACKED:
        return _before(ground, stitch)
    return ground.feet[course.stems[course.begins].stitch.id][0]


def _ink_near(ground: Ground, places: list[complex]) -> Ink:
    """The ink of everything that stands near one of these places: a large motif has a few seams and thousands of symbols."""
    close = {(floor(z.real / _NEAR) + i, floor(z.imag / _NEAR) + j) for z in places for i in (-1, 0, 1) for j in (-1, 0, 1)}

    def near(z: complex) -> bool:
        return (floor(z.real / _NEAR), floor(z.imag / _NEAR)) in close

    ink = Ink()
    rounds: set[int] = set()
    for stitch in ground.fabric.stitches:
        at = ground.heads.get(stitch.id) or (ground.tips[stitch.id][0] if stitch.id in ground.tips else None)
        if at is not None and near(at):
            ink.add(stitch.id, symbol_segments(ground, stitch))
            rounds.add(stitch.round)
    for number in sorted(rounds & set(ground.courses)):
        for ring in rings_of(ground, ground.courses[number], near).values():
            ink.add(-1, segments_of([ring]))
    return ink


def _waits(ground: Ground, stitch: Stitch) -> bool:
    """Everything that no rule has placed; what belongs to no round that could be laid (chains and nothing else) too."""
    return stitch.id not in ground.tips and stitch.id not in ground.heads


def _closes(ground: Ground, stitch: Stitch) -> bool:
    return stitch.kind == "sl st" and stitch.id == closing_slip(ground.fabric, stitch.round)


def _dot(ground: Ground, ink: Ink, stitch: Stitch) -> None:
    spot = _spot(ground, stitch)
    at = _free(ink, spot, [(0j, 0j, DOT_RADIUS)])
    ground.tips[stitch.id] = (at, at)
    ground.normals[stitch.id] = spot.out
    ink.add(stitch.id, [(at, at, DOT_RADIUS)])


def _before(ground: Ground, stitch: Stitch) -> complex:
    """Where the stitch worked before this one is."""
    for number in range(stitch.id - 1, max(stitch.id - 40, -1), -1):
        if number in ground.tips:
            return sum(ground.tips[number]) / 2
        if number in ground.heads:
            return ground.heads[number]
    return 0j


def _stray(ground: Ground, ink: Ink, stitch: Stitch) -> None:
    """What hangs nowhere lies near what was worked before it, where there is room."""
    near = _before(ground, stitch)
    out = _unit(near) if abs(near) > 0.1 else 1j
    half = OVAL_LEAST / 2
    at = _free(ink, _Spot(near + out, out, 2.4, 2.0, 2.4), [(-half * out, half * out, OVAL_HALF)])
    ground.normals[stitch.id] = 1j * out
    if stitch.kind == "ch" or len(stitch.legs) < 1:
        ground.tips[stitch.id] = (at - half * out, at + half * out)
    else:
        ground.feet[stitch.id], ground.heads[stitch.id] = (at - half * out,) * len(stitch.legs), at + half * out
        ground.normals[stitch.id] = out
    ink.add(stitch.id, symbol_segments(ground, stitch))


def _spot(ground: Ground, stitch: Stitch) -> _Spot:
    """A joining stitch lies between the last stitch and the first; a walking one on what it walks over."""
    course = ground.courses.get(stitch.round)
    base = stitch.legs[0].base if stitch.legs else None
    if course is not None and (stitch.round in ground.lifted or _closes(ground, stitch)):
        return _joint(ground, course)
    if course is not None and base is not None and ground.at.get(base.id, (-1, 0))[0] == stitch.round and base.kind == "stitch":
        return _joint(ground, course)
    if base is not None and base.kind != "ring":
        at, out = ground.anchor(base)
        return _Spot(at + out * 0.3, out, 1.2, 1.2, 1.0)
    if course is not None:
        return _joint(ground, course)
    return _Spot(complex(ground.ring, 0.0), 1 + 0j, 1.0, 1.0, 1.0)


def _joint(ground: Ground, course: Course) -> _Spot:
    """Between the stem worked last and the one worked first, at the height of their heads."""
    first = course.begins
    last = (first - course.direction) % course.size
    heads = [ground.heads[course.stems[i].stitch.id] for i in (first, last)]
    normals = [ground.normals[course.stems[i].stitch.id] for i in (first, last)]
    out = _unit(normals[0] + normals[1])
    away = abs(heads[1] - heads[0])
    at = heads[0] + (heads[1] - heads[0]) / (away or 1.0) * min(away / 2, 0.55)
    return _Spot(at, out, 0.6, 2.2, min(1.0, away / 2))


def _beginning(ground: Ground, ink: Ink, run: Run) -> None:
    """A stack of ovals beside the first stitch, on the side that the round comes to its end."""
    course = ground.courses.get(run.round)
    count = len(run.stitches)
    length = count * PITCH_LEAST - (PITCH_LEAST - OVAL_LEAST)
    if course is None or not count:
        return
    first = course.stems[course.begins].stitch.id
    foot, head = ground.feet[first][0], ground.heads[first]
    up = _unit(head - foot)
    aside = -course.direction * 1j * ground.normals[first]
    if run.role == "standing":
        spot = _Spot((foot + head) / 2 + aside * _LEG, up, 0.3, 0.3, 0.9)
    else:
        spot = _Spot(foot + up * min(0.45, length / 2) + aside * 0.4, up, 1.6, 0.8, 0.9)

    # Ovals are narrower than these round-ended bars at their tips, so a place that suits the bars suits them.
    core = OVAL_LEAST / 2 - OVAL_HALF
    tries = []
    for lean in _LEANS:
        way = up * exp(1j * lean)
        middles = [way * (k * PITCH_LEAST - length / 2 + OVAL_LEAST / 2) for k in range(count)]
        found, white = _freest(ink, spot, [(z - way * core, z + way * core, OVAL_HALF) for z in middles])
        tries.append((white, way, found))
        if white >= CLEAR:
            break
    _, up, at = max(tries, key=lambda one: round(one[0], 9))
    for k, chain in enumerate(run.stitches):
        low = at + up * (k * PITCH_LEAST - length / 2)
        ground.tips[chain] = (low, low + up * OVAL_LEAST)
        ground.normals[chain] = ground.normals[first]
        ink.add(chain, segments_of([chain_oval(point(low), point(low + up * OVAL_LEAST))]))


def _free(ink: Ink, spot: _Spot, shape: list[Segment]) -> complex:
    """The nearest place where a shape has white all round; the whitest there is where none has enough."""
    return _freest(ink, spot, shape)[0]


def _freest(ink: Ink, spot: _Spot, shape: list[Segment]) -> tuple[complex, float]:
    """The same, and how much white there is."""
    places = list(_places(spot))
    reach = max(spot.up, spot.down, spot.aside) + max(abs(s[0]) for s in shape) + 0.3
    others = ink.near(spot.at, reach)
    best, most = places[0], -9.0
    for start in range(0, len(places), _CHUNK):
        some = places[start : start + _CHUNK]
        for place, left in zip(some, white_at(some, shape, others), strict=True):
            if left >= CLEAR:
                return place, left
            if left > most:
                best, most = place, left
    return best, most


def _places(spot: _Spot) -> Iterator[complex]:
    """Places about a spot, nearest first; sideways costs more than up or down."""
    for step in _steps(int(spot.aside / _STEP), int(spot.down / _STEP), int(spot.up / _STEP)):
        yield spot.at + spot.out * step


@lru_cache(maxsize=64)
def _steps(across: int, down: int, up: int) -> tuple[complex, ...]:
    steps: list[tuple[float, float, float]] = []
    for i in range(-across, across + 1):
        for j in range(-down, up + 1):
            x, y = i * _STEP, j * _STEP
            steps.append((1.5 * x * x + y * y * (1.0 if y <= 0 else 1.3), x, y))
    return tuple(complex(y, x) for _, x, y in sorted(steps))


def _unit(z: complex) -> complex:
    return z / (abs(z) or 1.0)
