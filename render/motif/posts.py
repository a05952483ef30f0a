"""Stems that do not run straight: round a post they leave on the hook's side of the head above it; over a whole round they pass between
heads.
"""

from __future__ import annotations

from motifold.render.fabric.model import Base
from motifold.render.motif.course import Course
from motifold.render.motif.extents import CLEAR
from motifold.render.motif.ground import Ground
from motifold.render.motif.parts import Stem
from motifold.symbols.sizes import HEAD_SPAN, HEAD_WIDTH, STEM_WIDTH

POSTS = ("front post", "back post")
_ASIDE = 0.2
"""How far beside the middle of its base a stem starts that reaches over a round."""


def pass_by(height: float) -> float:
    """How far beside the middle of a head a stem passes it: round a crossbar, or close by the bare head of a single crochet."""
    return (HEAD_SPAN / 2 + HEAD_WIDTH / 2 if height > 1.1 else STEM_WIDTH / 2) + STEM_WIDTH / 2 + CLEAR


def post_of(stem: Stem) -> Base | None:
    """The post that a stem hooks round, if it does."""
    legs = stem.stitch.legs
    return legs[0].base if len(legs) == 1 and legs[0].base.foot in POSTS else None


def column_of(ground: Ground, stem: Stem, foot: complex) -> complex:
    """Where a stitch belongs along a row: over its foot; round a post that leans, as in a cable, over that stitch's head."""
    post = post_of(stem)
    return complex(ground.heads[post.id].real, foot.imag) if post is not None and post.id in ground.heads else foot


def bend_posts(ground: Ground, course: Course) -> None:
    """Give every post stitch, and every stitch that reaches over a round, its inner points."""
    for stem in course.stems if course.round not in ground.lifted else ():
        legs = stem.stitch.legs
        if len(legs) != 1 or legs[0].base.id not in ground.at or legs[0].base.kind != "stitch":
            continue
        base = legs[0].base
        number = ground.at[base.id][0]
        bend: list[complex] = []
        if base.foot in POSTS and base.id in ground.heads:
            side = 1.0 if base.foot == "front post" else -1.0
            below = ground.courses[number].stems[ground.at[base.id][1]]
            bend.append(ground.heads[base.id] + side * 1j * ground.normals[base.id] * pass_by(below.height))
        for between in range(number + 1, course.round):
            if between in ground.courses:
                bend.extend(_passing(ground, between, stem, bend[-1] if bend else ground.feet[stem.stitch.id][0]))
        if not bend:
            continue
        ground.bends[stem.stitch.id] = tuple(bend)
        if base.foot not in POSTS and base.id in ground.heads:
            # A stem that leaves its base to one side starts on that side.
            aside = 1j * ground.normals[base.id]
            foot = ground.feet[stem.stitch.id][0]
            side = 1.0 if ((bend[0] - foot) / aside).real > 0 else -1.0
            ground.feet[stem.stitch.id] = (foot + side * _ASIDE * aside,)


def _passing(ground: Ground, number: int, stem: Stem, foot: complex) -> list[complex]:
    """Between which two stitches of a round a stem passes, beside the arms or bars on their stems and beside their heads: the gap whose
    middle lies nearest to its straight way from ``foot`` on; none where it does not cross.
    """
    course = ground.courses[number]
    along = ground.heads[stem.stitch.id] - foot
    best: tuple[complex, ...] = ()
    nearest = 1.2
    for i in range(course.size - (1 if course.open else 0)):
        pair = [course.stems[i], course.stems[(i + 1) % course.size]]
        tops = [ground.heads[one.stitch.id] for one in pair]
        place = ((tops[0] + tops[1]) / 2 - foot) / along
        aside = round(abs(place.imag) * abs(along), 9)
        if 0.15 < place.real < 0.9 and aside < nearest and not course.gaps[i].parts:
            arms = [ground.feet[one.stitch.id][0] * (1 - one.body_at) + top * one.body_at for one, top in zip(pair, tops, strict=True)]
            best, nearest = ((arms[0] + arms[1]) / 2, (tops[0] + tops[1]) / 2), aside
    return list(best)
