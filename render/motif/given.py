"""The edge that an edging starts from: the sides of its opening as a regular polygon, their stitches evenly along straight lines."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from math import pi, tan

from motifold.render.motif.course import Course
from motifold.render.motif.extents import PITCH
from motifold.render.motif.frame import Frame, Wall
from motifold.render.motif.ground import Ground
from motifold.render.motif.outline import Outline
from motifold.render.motif.parts import Corner
from motifold.render.motif.place import Standing
from motifold.render.motif.room import chain_count

_STITCH = 1.0
"""Between two stitches of the edge."""
_BESIDE = 0.35
"""From a stitch to the chains beside it."""
_UNLIKE = 1.4
"""Sides that differ by more are not drawn as those of a regular outline."""
_DEPTH = 0.6
"""A stand-in's foot lies so far inside its head: it belongs to a motif that is not drawn."""


def turning_at_corners(ground: Ground, course: Course) -> Course:
    """The edge with only the corners at which it turns: where two panels meet, each with a corner space of its own, it goes straight on.

    All corners are kept where the sides between the turning ones would be too unlike for a regular outline (a scarf's frame).
    """
    turning = replace(course, corners=tuple(c for c in course.corners if c.on_stem or len(course.gaps[c.at].runs) < 2))
    at = [corner.at for corner in turning.corners]
    if len(at) < 3:
        return turning
    widths = [_width(ground, course, index) for index in range(course.size)]
    lengths = [_length(widths, _side(at[k], at[(k + 1) % len(at)], course.size)) for k in range(len(at))]
    return turning if max(lengths) < _UNLIKE * min(lengths) else course


def framed_edge(ground: Ground, course: Course) -> tuple[Course, Standing, Frame] | None:
    """The edge of a piece in rows, or of an oblong one, as a rectangle: the course with its four corners, its heads, and the frame that
    what is worked on it goes round. None where it is no such edge.
    """
    turns = _ends_of_rows(course)
    corners = tuple(Corner(at, False) for at in turns)
    if len(turns) != 4:
        corners = tuple(c for c in course.corners if not c.on_stem and len(course.gaps[c.at].runs) < 2)
        turns = [corner.at for corner in corners]
    if len(turns) != 4:
        return None
    worked = Counter(leg.base.id for stitch in ground.fabric.stitches for leg in stitch.legs if leg.base.foot == "row end")
    widths = [max(_width(ground, course, i), float(worked[course.stems[i].stitch.id])) for i in range(course.size)]
    sides = [_side(turns[k], turns[(k + 1) % 4], course.size) for k in range(4)]
    lengths = [_length(widths, stems) for stems in sides]
    wide, tall = max(lengths[0], lengths[2]), max(lengths[1], lengths[3])
    alike = max(wide, tall) < _UNLIKE * min(wide, tall)
    if (alike or max(wide / min(lengths[::2]), tall / min(lengths[1::2])) > _UNLIKE) and not _ends_of_rows(course):
        return None
    # What comes first lies on top: on a piece in rows its last row, on others the side from where the edge begins.
    first = next((k for k in range(4) if 0 in sides[k]), 0)
    if first % 2:
        wide, tall = tall, wide
    walls = (Wall(1j, tall / 2), Wall(-1 + 0j, wide / 2), Wall(-1j, tall / 2), Wall(1 + 0j, wide / 2))
    frame = Frame(walls[-first % 4 :] + walls[: -first % 4], 0.0)
    s = [0.0] * course.size
    for number, (stems, length) in enumerate(zip(sides, lengths, strict=True)):
        scale = frame.side_of(number) / length
        at = frame.start_of(number) + widths[stems[0] - 1] / 2 * scale
        for index, after in zip(stems, [*stems[1:], stems[0]], strict=True):
            s[index] = at
            at += (widths[index] + widths[after] if _is_row_end(course, stems[0]) else 2 * widths[index]) / 2 * scale
    return replace(course, corners=corners), _standing(frame, s), frame


def _is_row_end(course: Course, index: int) -> bool:
    return course.stems[index].stitch.kind == "row end"


def _ends_of_rows(course: Course) -> list[int]:
    """The gaps where row ends begin or end; four of them go round a piece in rows."""
    return [i for i in range(course.size) if _is_row_end(course, i) != _is_row_end(course, (i + 1) % course.size)]


def edge_standing(ground: Ground, course: Course) -> Standing:
    """Heads along the opening. Corners are its corner spaces; with fewer than three (the mouth of a ring of panels) it is a circle."""
    widths = [_width(ground, course, index) for index in range(course.size)]
    corners = [corner.at for corner in course.corners if not corner.on_stem]
    if len(corners) < 3:
        return _standing(Outline(0, sum(widths) / (2 * pi), 0.0), _running(widths))
    sides = [_side(corners[k], corners[(k + 1) % len(corners)], course.size) for k in range(len(corners))]
    lengths = [_length(widths, stems) for stems in sides]
    outline = Outline(len(corners), max(lengths) / (2 * tan(pi / len(corners))), 0.0)
    s = [0.0] * course.size
    for number, (stems, length) in enumerate(zip(sides, lengths, strict=True)):
        scale = outline.side / length
        at = number * outline.side + widths[stems[0] - 1] / 2 * scale
        for index in stems:
            s[index] = at
            at += widths[index] * scale
    return _standing(outline, s)


def _side(start: int, end: int, size: int) -> list[int]:
    """The stems after one corner gap up to the next."""
    count = (end - start) % size or size
    return [(start + 1 + k) % size for k in range(count)]


def _length(widths: list[float], stems: list[int]) -> float:
    return widths[stems[0] - 1] / 2 + sum(widths[index] for index in stems[:-1]) + widths[stems[-1]] / 2


def _width(ground: Ground, course: Course, index: int) -> float:
    chains = chain_count(ground, course.gaps[index])
    return 2 * _BESIDE + chains * PITCH if chains else _STITCH


def _running(widths: list[float]) -> list[float]:
    places = [0.0]
    for width in widths[:-1]:
        places.append(places[-1] + width)
    return places


def _standing(outline: Outline | Frame, s: list[float]) -> Standing:
    spots = [outline.at(x) for x in s]
    heads, normals = [p for p, _ in spots], [n for _, n in spots]
    feet = [[p - n * _DEPTH] for p, n in spots]
    return Standing(outline, s, heads, normals, feet, True)
