"""Petals and shells: many stitches in one place beside shorter ones. Each is a fan of its own, whatever the round's outline.

Stems stand like spokes about the place that they are worked into, each as long as its stitch, as close to the next one as their shapes
allow.
"""

from __future__ import annotations

from cmath import exp
from itertools import pairwise

from motifold.render.fabric.model import Base
from motifold.render.motif.arc import bend
from motifold.render.motif.course import Course
from motifold.render.motif.extents import CLEAR, FOOT_RISE, SPACE_RISE, STEM_HALF, of_one_height
from motifold.render.motif.feet import shared
from motifold.render.motif.ground import Ground
from motifold.render.motif.ink import to_segment
from motifold.render.motif.over import Disc, obstacles
from motifold.render.motif.parts import Stem
from motifold.render.motif.room import chain_count, chain_least
from motifold.symbols.record import dataclass

_LEAST = 4
"""So many stitches in one place make a petal or a shell."""
_WIDEST = 2.3
"""The widest fan, in radians: a petal's edge stitches lie down, but not below the line they grow from."""
_AIRY = tuple(
    (airy, longer, widest)
    for widest in (_WIDEST, 1.9, 1.5)
    for airy, longer in ((1.25, 1.0), (1.15, 1.0), (1.05, 1.0), (1.03, 1.08), (1.03, 1.16), (1.03, 1.25))
)
"""A petal opens as far as its neighbours and the round below leave it room: how much over the least its spokes stand apart; then, crowded,
how much longer they are drawn; and how wide the fan may be.
"""
_LADEN, _ROOMY = 1.9, 1.5
_NARROW = tuple((1.0, longer, widest) for widest in (1.2, 1.0, 0.85, 0.7, 0.5) for longer in (1.0, 1.12, 1.25))
"""Petals side by side on a small circle. One that carries loops is no wider than ``_LADEN``; narrower than ``_ROOMY`` are only these, and
those that the round below would touch.
"""
_LOW = 1.1
"""A stitch no taller leaves the petals beside it to each other."""
_POST = 0.3
"""The breadth of a post stitch that comes up between two petals."""
_CLOSE, _OFF = 0.52, 0.9
"""No further from the head that it stands on than this does a petal begin, if it can be helped; and where it cannot."""
_ALIKE = 0.3
_ROUND_LOOP = 3.9
"""So far round a loop, in radians, do stitches stand: further down they would come back towards the round below."""


@dataclass(frozen=True, slots=True)
class Fan:
    """One petal: its stems in order, with foot, head and direction of each."""

    stems: list[int]
    feet: list[complex]
    heads: list[complex]
    ways: list[complex]


def petals_of(ground: Ground, course: Course, crowded: bool) -> list[Fan]:
    """The petals of a round whose stitches differ in height; in a ``crowded`` one, what stands in long loops follows each loop's own
    bow.
    """
    heights = [stem.height for stem in course.stems]
    if of_one_height(heights):
        return _on_loops(ground, course) if crowded else []
    found: list[tuple[Base, list[int]]] = []
    for base, members in shared(course).items():
        stems = list(dict.fromkeys(s for s, _ in members))
        if len(stems) >= _LEAST and base.kind in ("stitch", "space", "gap") and _plain(course, stems):
            found.append((base, stems))
    middles = [ground.anchor(base)[0] for base, _ in found]
    covers = obstacles(ground, course, 1) if found else []
    fans = []
    post = _POST if any(ground.at.get(number, (-1, 0))[0] == course.round - 1 for number in ground.posted) else 0.0
    for i, (base, stems) in enumerate(found):
        walls = _walls(course, found, middles, i)
        elbow = _beside(ground, course, stems, middles[i]) if walls else min(_elbow(middles, i), _beside(ground, course, stems, middles[i]))
        widest = _LADEN if _carries_loops(ground, course, stems) else _WIDEST
        fans.append(_fan(ground, course, base, stems, _Place(elbow, covers, walls, post, widest)))
    return fans


def _carries_loops(ground: Ground, course: Course, stems: list[int]) -> bool:
    """Whether the next round goes from stitch to stitch of a petal in loops: then its edges may not lie down."""
    if course.round + 1 >= len(ground.fabric.rounds):
        return False
    own = {course.stems[s].stitch.id for s in stems}
    above = ground.fabric.round_stitches(course.round + 1)
    on = [s.id for s in above if any(leg.base.kind == "stitch" and leg.base.id in own for leg in s.legs)]
    return sum(1 for a, b in pairwise(sorted(on)) if b - a > 2) >= _LEAST - 1


def _walls(course: Course, found: list[tuple[Base, list[int]]], middles: list[complex], index: int) -> tuple[complex, ...]:
    """The two rays half way to the petals on either side, where these follow in a round at once or after a low stitch; none where chains
    lie between.
    """
    if course.open or len(found) < 3:
        return ()
    stems = found[index][1]
    walls = []
    for end, step in ((stems[0], -1), (stems[-1], 1)):
        beside = (end + step) % course.size
        other = next((k for k, (_, own) in enumerate(found) if beside in own and k != index), None)
        chains = course.gaps[end if step > 0 else beside].parts
        if other is None and not chains and course.stems[beside].height < _LOW:
            after = (beside + step) % course.size
            chains = course.gaps[beside if step > 0 else after].parts
            other = next((k for k, (_, own) in enumerate(found) if after in own and k != index), None)
        if other is None or chains:
            return ()
        half = middles[index] / abs(middles[index]) + middles[other] / abs(middles[other])
        walls.append(half / (abs(half) or 1.0))
    return tuple(walls)


@dataclass(frozen=True, slots=True)
class _Place:
    """The room of a petal: half the width that it may have, what stands below it, the rays that part it from its neighbours,
    the breadth of what will come up between (a later round's post stitches), and how wide it may open.
    """

    elbow: float
    covers: list[Disc]
    walls: tuple[complex, ...]
    post: float
    widest: float


def _on_loops(ground: Ground, course: Course) -> list[Fan]:
    """Stitches square to the bow of the loop that they are worked into."""
    fans = []
    for base, members in shared(course).items():
        stems = list(dict.fromkeys(s for s, _ in members))
        arc = ground.arcs.get(base.id) if base.kind == "space" else None
        if arc is None or len(stems) < _LEAST or not _plain(course, stems):
            continue
        places = [0.0]
        for a, b in pairwise(stems):
            places.append(places[-1] + course.stems[a].body + course.stems[b].body + CLEAR)
        # Spokes on the outside of a bow stand closer at its chains than where they are widest.
        turn = abs(bend(arc))
        level = SPACE_RISE + course.stems[stems[0]].body_at * course.stems[stems[0]].height
        wish = min(places[-1] * arc.length / (arc.length + turn * level), arc.length, arc.length * _ROUND_LOOP / max(turn, 1e-9))
        spots = [arc.at(arc.length / 2 + (place / places[-1] - 0.5) * wish) for place in places]
        feet = [on + way * SPACE_RISE for on, way in spots]
        heads = [foot + way * course.stems[s].height for foot, (_, way), s in zip(feet, spots, stems, strict=True)]
        needs = (course.stems[a].half + course.stems[b].half for a, b in pairwise(stems))
        if any(abs(b - a) < need for (a, b), need in zip(pairwise(heads), needs, strict=True)):
            # A bow too flat to part their heads: these stand along the round like all others.
            continue
        fans.append(Fan(stems, feet, heads, [way for _, way in spots]))
    return fans


def _plain(course: Course, stems: list[int]) -> bool:
    """Stitches of one leg each and no corner among them; side by side, or with chains at the tip of a petal whose stitches rise to it."""
    corners = {corner.at for corner in course.corners}
    heights = [course.stems[s].height for s in stems]
    if any(course.gaps[s].parts for s in stems[:-1]) and max(heights) - min(heights) < 1.0 and not course.open:
        return False
    return all(len(course.stems[s].stitch.legs) == 1 and s not in corners for s in stems)


def _beside(ground: Ground, course: Course, stems: list[int], middle: complex) -> float:
    """How far a petal may reach to the stitch beside it and the chains between."""
    room = 1e9
    for index, step in ((stems[0], -1), (stems[-1], 1)):
        other = course.stems[(index + step) % course.size]
        gap = course.gaps[index if step > 0 else index - 1]
        if not gap.parts or not other.stitch.legs or (index + step) % course.size in stems:
            continue
        away = abs(ground.anchor(other.stitch.legs[0].base)[0] - middle)
        room = min(room, away - other.half - 0.6 * chain_least(chain_count(ground, gap)))
    return max(room, 1.2)


def _elbow(middles: list[complex], index: int) -> float:
    """Half the way to the next petal's middle."""
    others = [abs(z - middles[index]) for i, z in enumerate(middles) if i != index]
    return min(others, default=1e9) / 2


def _fan(ground: Ground, course: Course, base: Base, stems: list[int], place: _Place) -> Fan:
    arc = ground.arcs.get(base.id) if base.kind == "space" else None
    middle, out = ground.anchor(base)
    rise = SPACE_RISE if arc else FOOT_RISE
    fan, best, least = None, None, -9.0
    needs = [_needs(ground, course, a, b) for a, b in pairwise(stems)]
    for airy, longer, widest in _AIRY + _NARROW:
        if widest < _ROOMY and not place.walls and (least >= CLEAR or arc):
            break
        if widest > place.widest:
            continue
        radius, angles = _angles(needs, rise, (airy, longer, widest), arc.length if arc else 0.0)
        if fan and not arc and radius > _OFF:
            continue
        ways = [out * exp(1j * angle) for angle in angles]
        feet = [middle + way * radius for way in ways]
        if arc:
            # In a loop the feet stand along its chains, as far as they turn; the spokes meet below it.
            centre = middle + out * (rise - radius)
            feet = [centre + way * radius for way in ways]
            inner = (feet[(len(feet) - 1) // 2] + feet[len(feet) // 2]) / 2
            feet = [foot + out * (rise - ((inner - middle) / out).real) for foot in feet]
        heads = [foot + way * _tall(course.stems[s], longer) for foot, way, s in zip(feet, ways, stems, strict=True)]
        fan = Fan(stems, feet, heads, ways)
        white = min(_white(fan, place.covers, middle), _within(course, fan, place.walls) - place.post)
        if best is None or white > least + 1e-9:
            best, least = fan, white
        wide = max(abs(((head - middle) / out).imag) for head in heads) + 0.6
        if white >= CLEAR and wide <= place.elbow and (arc or radius <= _CLOSE or widest < _WIDEST):
            return fan
    assert best is not None
    return best


def _within(course: Course, fan: Fan, walls: tuple[complex, ...]) -> float:
    """White between a fan and twice the way to its walls: that to its neighbours, if these are alike."""
    found = 9.0
    for wall, side in zip(walls, (1.0, -1.0), strict=False):
        for s, foot, head, way in zip(fan.stems, fan.feet, fan.heads, fan.ways, strict=True):
            stem = course.stems[s]
            at = foot + (head - foot) * stem.body_at
            tips = [head + 1j * way * stem.half, head - 1j * way * stem.half, at + 1j * way * stem.body, at - 1j * way * stem.body]
            found = min(found, *(2 * side * (tip / wall).imag for tip in tips))
    return found


def _tall(stem: Stem, longer: float) -> float:
    """How long a spoke is drawn; beginning chains need their ovals' room whatever they stand for."""
    return max(stem.height * longer, 0.81 * len(stem.stitch.chains) - 0.2)


def _white(fan: Fan, covers: list[Disc], middle: complex) -> float:
    """White between the outermost spokes of a fan and the round below, but for the place that it stands on."""
    found = 9.0
    for foot, head, way in ((fan.feet[k], fan.heads[k], fan.ways[k]) for k in (0, -1)):
        arm = 1j * way * 0.36
        body = foot + (head - foot) * 0.55
        for centre, radius in covers:
            if abs(centre - middle) < 0.5 or abs(centre - middle) > 4.0:
                continue
            lines = ((foot, head), (body - arm, body + arm), (head - arm, head + arm))
            near = min(to_segment(centre, a, b) for a, b in lines)
            found = min(found, near - radius - STEM_HALF)
    return found


_Needs = tuple[tuple[float, float], ...]
"""What two neighbouring spokes need between them, and how far from their feet."""


def _angles(needs: list[_Needs], rise: float, room: tuple[float, float, float], loop: float) -> tuple[float, list[float]]:
    """The radius of the bow that the feet stand on, and the direction of each spoke from the middle, counter-clockwise."""
    airy, longer, widest = room
    radius = max(rise, 0.3) if not loop else max(0.6, 0.35 * loop)
    steps: list[float] = []
    for _ in range(40):
        steps = [max(need / (radius + at * longer) for need, at in two) * airy for two in needs]
        if sum(steps) <= widest:
            break
        radius *= 1.08
    angles = [0.0]
    for step in steps:
        angles.append(angles[-1] + step)
    half = angles[-1] / 2
    return radius, [angle - half for angle in angles]


def _needs(ground: Ground, course: Course, first: int, second: int) -> _Needs:
    """The room that the roots, bodies and heads of two neighbouring spokes need."""
    a, b = course.stems[first], course.stems[second]
    gap = course.gaps[first]
    chains = chain_least(chain_count(ground, gap)) + CLEAR if gap.parts and (first + 1) % course.size == second else 0.0
    short, tall = (a, b) if a.height <= b.height else (b, a)
    roots = (a.root + b.root + CLEAR, 0.0)
    if tall.height - short.height < _ALIKE:
        return roots, (a.half + b.half + CLEAR + chains, short.height), (a.body + b.body + CLEAR, short.body_at * short.height)
    return (
        roots,
        (short.half + _width(tall, short.height) + CLEAR + chains, short.height),
        (short.body + _width(tall, short.body_at * short.height) + CLEAR, short.body_at * short.height),
    )


def _width(stem: Stem, at: float) -> float:
    """Half the width of a stem at a height: its bars where they sit."""
    return stem.body if abs(at - stem.body_at * stem.height) < 0.55 else STEM_HALF
