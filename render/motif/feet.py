"""Feet: where each leg of a round stands on what it was worked into, before anyone knows how large the round will be."""

from __future__ import annotations

from cmath import exp
from itertools import pairwise
from math import pi

from motifold.render.fabric.model import Base
from motifold.render.motif.course import Course
from motifold.render.motif.extents import CLEAR, FOOT_RISE, OVAL_HALF, SPACE_RISE
from motifold.render.motif.ground import Ground
from motifold.render.motif.parts import Stem, cyclic_order

_FAN = 0.2
"""How far apart the feet of an increase like to stand."""
_IN_SPACE = 0.42
"""The same in a chain space."""
_IN_CORNER = 0.3
"""And where the space bends round a corner: feet further apart would sink in."""
_BESIDE, _OVER_CHAIN = 0.8, 1.02
"""As many as there are chains, or fewer, fill the space: from the stitch before it to the one after they stand evenly, a pitch apart."""
_LEAN, _SHORT = 1.75, 0.7
"""Heads over a space may reach so much further than feet do, both ends together, for what their stitches are taller than short ones."""
_APART = 1.3
"""Over a straight loop heads stand so much further apart than they must."""
_FAN_ANGLE = 0.42
_FAN_WIDEST = 2.1
"""Feet of four or more on one head stand on a bow: so much angle between them, and at most so much in all."""
_ON_CHAIN = 0.055
"""More than its clearance above a chain does the foot of a stem stand."""
_LONG, _GENTLE = 3.5, 1.2
"""A longer loop that four or more stitches of one height fill, bent no more than this, has them all along it."""
_CAP = 0.8
_TO_CORNER = 0.08
_NEAR_SIDE = 0.26
_CROWDED = 1.5
"""Stitches over a row end whose heads take more than so much of its height fan out from its middle."""
_POST_AT, _ASIDE = 0.84, 0.08
"""How far up the post a post stitch hooks, and how far beside its head's column at the most."""

Member = tuple[int, int]
"""A leg: its stem in the course, and which of the stem's legs it is."""


def stand(ground: Ground, course: Course) -> list[list[complex]]:
    """The foot of every leg of every stem. Legs that share a base are fanned over it in the order of the round."""
    feet: list[list[complex]] = [[0j] * max(len(stem.stitch.legs), 1) for stem in course.stems]
    for base, members in shared(course).items():
        for (stem, leg), foot in zip(members, _feet_on(ground, course, base, [s for s, _ in members]), strict=True):
            feet[stem][leg] = foot
    for standing, legs in zip(course.stems, feet, strict=True):
        if len({leg.base for leg in standing.stitch.legs}) > 1:
            legs[:] = _together(legs)
    return feet


def _together(feet: list[complex]) -> list[complex]:
    """Legs from different places stand at the near side of each: their stitch is drawn no longer than it must be."""
    middle = sum(feet) / len(feet)
    return [foot + (middle - foot) * min(0.3, _NEAR_SIDE / (abs(middle - foot) or 1.0)) for foot in feet]


def shared(course: Course) -> dict[Base, list[Member]]:
    """All legs by what they are worked into, those of one base in the order of the round though it may start in their midst."""
    found: dict[Base, list[Member]] = {}
    for index, stem in enumerate(course.stems):
        legs = range(len(stem.stitch.legs))
        for leg in legs if course.direction > 0 else reversed(legs):
            found.setdefault(_key(stem.stitch.legs[leg].base), []).append((index, leg))
    for members in found.values():
        if len(members) > 1:
            rank = {stem: i for i, stem in enumerate(cyclic_order(sorted({s for s, _ in members}), course.size))}
            members.sort(key=lambda member: rank[member[0]])
    return found


def _key(base: Base) -> Base:
    """One base whichever loop of it was taken; a post is another place than a head."""
    if base.foot in ("back loop", "front loop"):
        return Base(base.kind, base.id, "loops", base.other)
    return base


def _feet_on(ground: Ground, course: Course, base: Base, members: list[int]) -> list[complex]:
    stems = [course.stems[i] for i in members]
    if base.kind == "ring":
        return _in_ring(ground, stems, pi if course.open else 2 * pi)
    if base.kind == "space" and base.id in ground.arcs:
        return _in_space(ground, base, stems, not any(course.gaps[i].parts for i in members[:-1]))
    anchor, normal = ground.anchor(base)
    if base.foot in ("front post", "back post"):
        return _on_post(ground, base, stems)
    if base.foot == "row end" and (base.id, True) in ground.edges:
        return _on_row_end(ground, base, stems)
    if base.id in ground.tips:
        return _in_row(anchor + normal * (OVAL_HALF + CLEAR + _ON_CHAIN), normal, stems, _FAN)
    if len(stems) < 4 or len({stem.stitch.id for stem in stems}) == 1:
        return _in_row(anchor + normal * FOOT_RISE, normal, stems, _FAN)
    return _bow(anchor, normal, stems)


def _in_ring(ground: Ground, stems: list[Stem], angle: float) -> list[complex]:
    """Even round the ring; turned to their heads once these are known. Many stitches stand on a wider circle than the ring's own."""
    count = len(stems)
    need = max((a.root + b.root + CLEAR for a, b in pairwise(stems)), default=0.0)
    radius = max(ground.ring, 1.06 * need * count / angle)
    return [radius * exp(1j * angle * i / count) for i in range(count)]


def _offsets(stems: list[Stem], wish: float) -> list[float]:
    """Places along a line, centred: neighbours as far apart as they wish, and as their roots need."""
    places = [0.0]
    for before, after in pairwise(stems):
        same = before.stitch.id == after.stitch.id
        places.append(places[-1] + (0.07 if same else max(wish, before.root + after.root + CLEAR)))
    middle = (places[0] + places[-1]) / 2
    return [place - middle for place in places]


def _in_row(anchor: complex, normal: complex, stems: list[Stem], wish: float) -> list[complex]:
    return [anchor + 1j * normal * offset for offset in _offsets(stems, wish)]


def _bow(anchor: complex, normal: complex, stems: list[Stem]) -> list[complex]:
    """On a bow about the head, so that short stems at the edge of a shell start clear of it."""
    offsets = _offsets(stems, _FAN)
    width = offsets[-1] - offsets[0]
    angle = min(_FAN_WIDEST, _FAN_ANGLE * (len(stems) - 1))
    radius = max(FOOT_RISE, width / angle)
    return [anchor + radius * normal * exp(1j * offset / width * angle) for offset in offsets]


def _on_row_end(ground: Ground, base: Base, stems: list[Stem]) -> list[complex]:
    """Evenly along the side of a row's last stitch, which they stand out from; more than it has room for are a shell in its middle."""
    anchor, normal = ground.anchor(base)
    foot, head = ground.feet[base.id][0], ground.heads[base.id]
    given = ground.fabric.stitches[base.id].role == "given"
    tall = float(len(stems)) if given else abs(((head - foot) / normal).imag) + FOOT_RISE
    if len(stems) >= 4 and sum(2 * stem.half for stem in stems) > _CROWDED * tall:
        return _bow(anchor, normal, stems)
    return _in_row(anchor, normal, stems, tall / len(stems))


def _in_space(ground: Ground, base: Base, stems: list[Stem], together: bool) -> list[complex]:
    """Along the chains' own arc, over their middle; ``together``, no more than there are chains, each over one of them."""
    arc = ground.arcs[base.id]
    turn = abs(arc.at(0.0)[1] - arc.at(arc.length)[1])
    broad = base.id in ground.broad
    along = together and (broad or (base.id in ground.level and arc.length > _LONG and turn < _GENTLE))
    bent = turn > 0.5 and not along
    wish = min(_IN_CORNER if bent else _IN_SPACE + 0.06 * max(arc.length - 2.0, 0.0), (arc.length + 0.25) / max(len(stems), 2))
    if together and not bent and 1 < len(stems) <= len(ground.fabric.runs[base.id].stitches):
        wish = max(wish, min((arc.length + _BESIDE) / (len(stems) + 1), _OVER_CHAIN))
    if len(stems) > 1:
        # Many short stitches in a long loop stand along it, or those at its ends would lie down.
        heads = sum(a.half + b.half + CLEAR for a, b in pairwise(stems)) * (1.0 if bent else _APART)
        upright = (heads - _LEAN * (min(stem.height for stem in stems) - _SHORT)) / (len(stems) - 1)
        wish = max(wish, min(upright, (arc.length - 0.5) / (len(stems) - 1)))
    if along:
        # The ends of a broad loop go down beside what it runs behind.
        wish = max(wish, _CAP * arc.length / (len(stems) - 1) if broad else arc.length / len(stems))
    spots = [arc.at(arc.length / 2 + offset) for offset in _offsets(stems, wish)]
    places = [on + normal * SPACE_RISE for on, normal in spots]
    # The ring of the space lies under the middle of the feet: on a bent run the feet are moved out until it is clear of the chains.
    top, out = arc.at(arc.length / 2)
    middle = (places[(len(places) - 1) // 2] + places[len(places) // 2]) / 2
    sunk = SPACE_RISE - ((middle - top) / out).real
    # A single stem in the middle reaches out to the corner itself: it starts further out, or it would be drawn too long.
    cornered = bent and _on_corner(ground, base)
    lift = max(sunk, 0.0) + (_TO_CORNER if cornered and len(places) % 2 and len(places) > 1 else 0.0)
    moved = [place + out * lift for place in places]
    if not cornered:
        return moved
    # Only the middle needs that; beside it the corner's other feet stand close on the chains, or their stems would be drawn too short.
    ringed = range((len(places) - 1) // 2, len(places) // 2 + 1)
    drop = SPACE_RISE - (OVAL_HALF + CLEAR + _ON_CHAIN)
    low = [place - way * drop for place, (_, way) in zip(places, spots, strict=True)]
    return [moved[i] if i in ringed else low[i] for i in range(len(places))]


def _on_corner(ground: Ground, base: Base) -> bool:
    """Whether a space goes round a corner of a polygon."""
    number, index = ground.gap_at.get(base.id, (-1, 0))
    corners = ground.courses[number].corners if number in ground.courses else ()
    return len(corners) > 2 and any(corner.at == index and not corner.on_stem for corner in corners)


def _on_post(ground: Ground, base: Base, stems: list[Stem]) -> list[complex]:
    feet = ground.feet.get(base.id)
    if not feet:
        anchor, normal = ground.anchor(base)
        return _in_row(anchor + normal * FOOT_RISE, normal, stems, _FAN)
    head, normal = ground.heads[base.id], ground.normals[base.id]
    start = sum(feet) / len(feet)
    up = head - start
    places = [start + up * (_POST_AT - 0.2 * i) for i in range(len(stems))]
    # On a post that leans, as one in a cable does, hooks keep to the column of its head, or they would meet their neighbours'.
    asides = [((head - place) / normal).imag for place in places]
    return [place + 1j * normal * (aside - max(-_ASIDE, min(_ASIDE, aside))) for place, aside in zip(places, asides, strict=True)]


