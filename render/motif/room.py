"""Room along the outline: how far apart neighbouring heads must stand, and how far apart they like to."""

from __future__ import annotations

from collections import Counter
from math import cos, pi

from motifold.render.motif.branches import room_beside
from motifold.render.motif.course import Course
from motifold.render.motif.extents import CLEAR, OVAL, PITCH, PITCH_LEAST, STEM_HALF, WHITE, stem_height
from motifold.render.motif.ground import Ground
from motifold.render.motif.parts import Gap, Stem
from motifold.render.motif.posts import pass_by
from motifold.symbols.record import dataclass

_SOLID = 1.06
"""Neighbours without chains like to stand this much further apart than they must."""
_LOOSE = 1.42
"""Where there is room, up to so much: a group that is drawn wider falls apart."""
_BETWEEN_PETALS = 0.5
"""More room for a loop from a low head to a high one: it bows over towards its neighbour."""
_PETAL = 0.5
"""The chord of a loop over the width of all heads of the petal in it."""
_UPRIGHT = 0.62
"""The narrowest loop, from the middle of one of its legs to that of the other."""
_PASSING = 0.13
"""So much wider beside each crossbar that a leg passes."""
_ROUND = 0.3
"""The chord of a round loop over the length of its chains."""
_STRETCH = 1.25
"""How long stems may be drawn, over what they are, before loops give way."""
_FREE = 0.95
"""Where stitches are worked together over many, so much of the way round is shared out: what is left lets their heads stand over their
feet.
"""
_BROADER = 1.0
"""A row may be so much wider than its feet."""
_LOW = 0.8
"""A stitch so much shorter than its neighbours lies below their heads."""
_UNEVEN = 0.35
"""Heads whose heights differ by more pass each other."""
_APART = 0.8
"""Feet at least so far apart, over the room that their stitches take, belong to different places."""
_PICOT = 1.0
"""The room of two heads beside each other that both bear picots."""
_TILTED = 0.03
"""What the arms of stitches that lean take more."""


@dataclass(frozen=True, slots=True)
class Room:
    """For the gap after each stem: ``least``, ``like``, ``full`` (as wide as still looks held together), and ``slack`` where chains between
    different bases may give beyond that.

    ``corner``: the least and the liked distance from the corner to the stems before and after it, where the gap holds a corner.
    """

    least: tuple[float, ...]
    like: tuple[float, ...]
    full: tuple[float, ...]
    slack: tuple[bool, ...]
    corner: tuple[tuple[float, float, float, float] | None, ...]


def room_of(ground: Ground, course: Course, feet: list[list[complex]], straight: bool = False) -> Room:
    """Room for every gap of a course. ``feet`` as found by ``feet.stand``: legs that stand close need heads further apart.

    Where a circle, or a row (``straight``), would have to grow past what its stitches reach, its loops take less and stand the taller.
    """
    room = _room(ground, course, feet, 0.0)
    if (course.open and not straight) or course.corners:
        return room
    if straight:
        # A row is as wide as the one below, and a little.
        places = [foot.real for legs in feet for foot in legs]
        over = sum(room.least[:-1]) - (max(places) - min(places) + _BROADER)
    else:
        gathering = any(len({leg.base for leg in stem.stitch.legs}) > 2 for stem in course.stems)
        over = sum(room.least) - _reach(ground, course, feet) * (_FREE if gathering else 1.0)
    if over <= 0:
        return room
    narrow = _room(ground, course, feet, 1.0)
    gain = sum(room.least) - sum(narrow.least)
    if over > gain:
        ground.lacking[course.round] = (over - gain) / (2 * pi)
    return _room(ground, course, feet, min(over / gain, 1.0)) if gain > 1e-6 else room


def free_width(ground: Ground, course: Course, feet: list[list[complex]]) -> float:
    """How wide a row is whose loops bow as they like."""
    return sum(_room(ground, course, feet, 0.0).least[:-1])


def _reach(ground: Ground, course: Course, feet: list[list[complex]]) -> float:
    """The longest outline that half the stitches of a circle or oval still reach."""
    ends = []
    for stem, legs in zip(course.stems, feet, strict=True):
        middle = sum(legs) / len(legs)
        ends.append(abs(middle - max(-ground.spine, min(ground.spine, middle.real))) + _STRETCH * stem.height)
    return 2 * pi * sorted(ends)[len(ends) // 2] + 4 * ground.spine


def _room(ground: Ground, course: Course, feet: list[list[complex]], tight: float) -> Room:
    """``room_of`` for loops that are so ``tight``: from 0, as they like to bow, to 1, upright."""
    least: list[float] = []
    like: list[float] = []
    full: list[float] = []
    slack: list[bool] = []
    corner: list[tuple[float, float, float, float] | None] = []
    turn = pi / max(2 * len(course.corners) + 2 if course.open else len(course.corners), 3)
    cornered = {c.at for c in course.corners if not c.on_stem}
    alone = _alone(course)
    for i, stem in enumerate(course.stems):
        after, gap = course.stems[(i + 1) % course.size], course.gaps[i]
        if gap.parts:
            chains = chain_count(ground, gap)
            least.append(_ends(stem) + _ends(after) + 2 * CLEAR + _chord(chains, stem, after, tight))
            if all(leg.base.kind == "ring" for leg in stem.stitch.legs):
                least[-1] = max(least[-1], _loaded(ground, gap))
            if abs(stem.height - after.height) > 0.6:
                least[-1] += _BETWEEN_PETALS * (1.0 - tight)
            like.append(max(_ends(stem) + _ends(after) + 2 * CLEAR + chains * PITCH, least[-1]))
            slack.append(not _same_base(stem, after))
            full.append(max(_ends(stem) + _ends(after) + chains * OVAL + (chains + 1) * WHITE, like[-1]))
            if chains > 2.5 and not course.corners and not slack[-1] and max(stem.height, after.height) <= 1.1:
                # A loop that begins and ends in one place is round, and draws its ends together.
                like[-1] = max(least[-1], _ends(stem) + _ends(after) + 2 * CLEAR + _ROUND * chains * PITCH)
                full[-1] = like[-1] * _LOOSE
        else:
            beside = (feet[i], feet[(i + 1) % course.size])
            least.append(max(_beside(stem, after, *beside), _posted(ground, stem, after), _rings(stem, after)))
            like.append(max(least[-1] * _SOLID, _over_feet(*beside) if {i, (i + 1) % course.size} <= alone else 0.0))
            slack.append(False)
            full.append(max(least[-1] * _LOOSE, like[-1]))
        corner.append(_corner_room(ground, stem, after, gap, turn) if i in cornered else None)
    if course.open:
        for i in range(1, course.size - 1):
            more = _over_low(ground, course, i, least[i - 1] + least[i])
            for k in (i - 1, i) if more > 0 else ():
                least[k], like[k], full[k] = least[k] + more / 2, max(like[k], least[k] + more / 2), max(full[k], least[k] + more / 2)
        for branch in course.branches:
            at, more = course.gap_of(branch), room_beside(ground, course, branch)
            least[at], like[at], full[at] = least[at] + more, like[at] + more, full[at] + more
    return Room(tuple(least), tuple(like), tuple(full), tuple(slack), tuple(corner))


def _over_low(ground: Ground, course: Course, index: int, have: float) -> float:
    """What two tall stitches lack between them that meet over a low one: room for their heads, and for what will stand on the low one."""
    before, stem, after = course.stems[index - 1], course.stems[index], course.stems[index + 1]
    if course.gaps[index - 1].parts or course.gaps[index].parts or min(before.height, after.height) - stem.height < _LOW:
        return 0.0
    return before.half + after.half + CLEAR + 2 * ground.crowns.get(stem.stitch.id, 0.0) - have


def chain_count(ground: Ground, gap: Gap) -> float:
    """How long the parts of a gap are, in chains; a stitch that stands in for chains counts by its own length."""
    total = 0.0
    for part in gap.parts:
        stitch = ground.fabric.stitches[part]
        total += 1.0 if stitch.role == "chain" or stitch.kind == "ch" else part_length(ground, part) / PITCH
    return total


def part_length(ground: Ground, part: int) -> float:
    """Length in u of a stitch that lies in a loop in place of chains."""
    return stem_height(ground.fabric.stitches[part])


def _ends(stem: Stem) -> float:
    """Half the room of a head that chains hang from: those of a single crochet leave from its bare top."""
    return stem.half if stem.height > 1.1 else min(stem.half, STEM_HALF + 0.16)


def chain_least(chains: float, tight: bool = False) -> float:
    """The shortest chord that so many chains can span: up to two lie flat, longer ones bow, up to about half a circle; nearly a
    whole one where both ends stand in one place (``tight``).
    """
    flat = chains * PITCH_LEAST
    if chains <= 2:
        return flat
    return max(0.62, 0.24 * flat) if tight else max(1.3, 0.55 * flat)


def _chord(chains: float, stem: Stem, after: Stem, tight: float) -> float:
    """``chain_least``, or less of it the more upright a loop may stand."""
    free = chain_least(chains, _same_base(stem, after))
    narrow = _UPRIGHT + sum(_PASSING for end in (stem, after) if end.height > 1.1)
    return free - tight * max(free - narrow, 0.0) if chains > 2.5 else free


def _loaded(ground: Ground, gap: Gap) -> float:
    """The room that a loop in the ring takes for the petal that will be worked into it: a ring too small for its petals is drawn wider."""
    if len(gap.runs) != 1 or len(gap.parts) < 2:
        return 0.0
    load = ground.loads.get(gap.runs[0][0], 0.0)
    return min(_PETAL * load, 3.2) if load > 4.0 else 0.0


def _beside(stem: Stem, after: Stem, feet: list[complex], feet_after: list[complex]) -> float:
    """Two stems side by side: at their heads, and where bars, arms or bulges sit, given how far apart they stand."""
    if abs(stem.height - after.height) > _UNEVEN:
        apart = abs(sum(feet) / len(feet) - sum(feet_after) / len(feet_after))
        short, tall = (stem, after) if stem.height < after.height else (after, stem)
        width = max(short.half, short.body) + max(tall.body if short.height > 0.5 else STEM_HALF, STEM_HALF) + CLEAR
        if short.body >= short.half and width > apart > _APART * width:
            # Arms half way up are less far apart than heads are.
            return (width + _TILTED - (1 - short.body_at) * apart) / short.body_at
        return width
    heads = stem.half + after.half + CLEAR
    apart = min(abs(a - b) for a in feet for b in feet_after)
    bodies = stem.body + after.body + CLEAR
    at = min(stem.body_at, after.body_at)
    return max(heads, (bodies - (1 - at) * apart) / at)


def _posted(ground: Ground, stem: Stem, after: Stem) -> float:
    """The room that post stitches of a later round need where they come up between two heads."""
    before, behind = (1.0 in ground.posted.get(stem.stitch.id, ())), (-1.0 in ground.posted.get(after.stitch.id, ()))
    if not before and not behind:
        return 0.0
    passing = [pass_by(one.height) + STEM_HALF + CLEAR for one, used in ((stem, before), (after, behind)) if used]
    return sum(passing) - CLEAR if before and behind else passing[0] + (after if before else stem).half


def _rings(stem: Stem, after: Stem) -> float:
    """The room that picots take on two neighbouring heads."""
    return _PICOT if stem.picots and after.picots else 0.0


def _over_feet(feet: list[complex], feet_after: list[complex]) -> float:
    """Over spaces further apart than heads must be, as on the edge of a fan, heads do not draw together: they stand over their feet."""
    return abs(sum(feet) / len(feet) - sum(feet_after) / len(feet_after))


def _alone(course: Course) -> set[int]:
    """The stems of a circle that have a space each to themselves."""
    bases = [stem.stitch.legs[0].base if stem.stitch.legs else None for stem in course.stems]
    many = Counter(base for base in bases if base is not None)
    return set() if course.corners else {i for i, base in enumerate(bases) if base is not None and base.kind == "space" and many[base] == 1}


def _same_base(stem: Stem, after: Stem) -> bool:
    bases = {leg.base for leg in stem.stitch.legs}
    return any(leg.base in bases for leg in after.stitch.legs)


def _corner_room(ground: Ground, stem: Stem, after: Stem, gap: Gap, turn: float) -> tuple[float, float, float, float]:
    """From the corner to the stem before it and to the one after: least, then liked. ``turn``: half the angle that the corner turns by."""
    chains = chain_count(ground, gap)
    if not chains:
        before, behind = stem.half + CLEAR, after.half + CLEAR
        return before * 1.05, behind * 1.05, before * 1.15, behind * 1.15
    # Ovals either side of a corner come nearer to each other, straight across, than along their path.
    across = PITCH_LEAST / 2 / cos(turn)
    least = across + OVAL / 2 + 0.02 + max(chain_least(chains) / 2 - PITCH_LEAST, 0.0) if chains >= 2 else OVAL / 2 / cos(turn) + 0.12
    like = max(chains * PITCH / 2, least * 1.03)
    like = min(like, max(1.5, least)) if chains > 3 else like
    return stem.half + CLEAR + least, after.half + CLEAR + least, stem.half + CLEAR + like, after.half + CLEAR + like
