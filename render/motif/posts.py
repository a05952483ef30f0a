"""Stems that do not run straight: round a post they leave on the hook's side of the head above it; over a whole round they pass between
heads.
"""

from __future__ import annotations

from motifold.render.fabric.model import Base
from motifold.render.motif.course import Course
from motifold.render.motif.ground import Ground
from motifold.render.motif.parts import Stem
from motifold.symbols.sizes import HEAD_SPAN, HEAD_WIDTH, STEM_WIDTH

POSTS = ("front post", "back post")


def pass_by(height: float) -> float:
    """How far beside the middle of a head a stem passes it: round a crossbar, or close by the bare head of a single crochet."""
    return (HEAD_SPAN / 2 + HEAD_WIDTH / 2 if height > 1.1 else STEM_WIDTH / 2) + STEM_WIDTH / 2 + 0.06


def post_of(stem: Stem) -> Base | None:
    """The post that a stem hooks round, if it does."""
    legs = stem.stitch.legs
    return legs[0].base if len(legs) == 1 and legs[0].base.foot in POSTS else None


def bend_posts(ground: Ground, course: Course) -> None:
    """Give every post stitch, and every stitch that reaches over a round, its inner points."""
    for stem in course.stems:
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
                bend.extend(_passing(ground, between, stem))
        if bend:
            ground.bends[stem.stitch.id] = tuple(bend)


def _passing(ground: Ground, number: int, stem: Stem) -> list[complex]:
    """Between which two heads of a round a stem passes: the middle that lies nearest to its straight way; none where it does not cross."""
    course = ground.courses[number]
    foot, head = ground.feet[stem.stitch.id][0], ground.heads[stem.stitch.id]
    heads = [ground.heads[other.stitch.id] for other in course.stems]
    middles = [(a + b) / 2 for a, b in zip(heads, heads[1:] + heads[:1], strict=True)]
    along = head - foot
    crossing = [z for z in middles if 0.15 < ((z - foot) / along).real < 0.9]
    if not crossing:
        return []
    nearest = min(crossing, key=lambda z: (round(abs(((z - foot) / along).imag) * abs(along), 9), z.real, z.imag))
    return [nearest] if abs(((nearest - foot) / along).imag) * abs(along) < 1.2 else []
