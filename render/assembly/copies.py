"""The same again: a pair of cuffs is one cuff, twice."""

from __future__ import annotations

from dataclasses import replace

from motifold.render.assembly.model import Assembly, Gap, Seam
from motifold.render.assembly.sides import side_text
from motifold.render.pattern.model import SidePiece


def in_copies(one: Assembly, copies: int) -> Assembly:
    """The same again, ``copies`` times: panels of copy n are called "name n"."""
    if copies == 1:
        return one
    all_copies = [_renamed(one, copy) for copy in range(1, copies + 1)]
    return replace(
        one,
        panels=tuple(p for a in all_copies for p in a.panels),
        seams=tuple(s for a in all_copies for s in a.seams),
        openings=tuple(o for a in all_copies for o in a.openings),
        corners=tuple(c for a in all_copies for c in a.corners),
        passes=tuple(p for a in all_copies for p in a.passes),
        gaps=tuple(g for a in all_copies for g in a.gaps),
        pieces=one.pieces * copies,
        euler=one.euler * copies,
        least_passes=one.least_passes * copies,
        copies=copies,
    )


def _renamed(one: Assembly, copy: int) -> Assembly:
    suffix = "" if copy == 1 else f" {copy}"
    seams, corners, passes = (len(x) * (copy - 1) for x in (one.seams, one.corners, one.passes))

    def side(piece: SidePiece) -> SidePiece:
        return replace(piece, panel=piece.panel + suffix)

    def at(places: tuple[tuple[str, int], ...]) -> tuple[tuple[str, int], ...]:
        return tuple((name + suffix, i) for name, i in places)

    return replace(
        one,
        panels=tuple(replace(p, name=p.name + suffix, copy=copy) for p in one.panels),
        seams=tuple(_renamed_seam(s, side(s.a), None if s.b is None else side(s.b), corners) for s in one.seams),
        openings=tuple(replace(o, sides=tuple(side(s) for s in o.sides)) for o in one.openings),
        corners=tuple(replace(c, at=at(c.at), along=tuple(side(s) for s in c.along)) for c in one.corners),
        passes=tuple(
            replace(p, number=p.number + passes, steps=tuple(replace(s, seam=s.seam + seams) for s in p.steps)) for p in one.passes
        ),
        gaps=tuple(Gap(at(g.at), g.corner + corners) for g in one.gaps),
    )


def _renamed_seam(seam: Seam, a: SidePiece, b: SidePiece | None, shift: int) -> Seam:
    name = f"{side_text(a)} {'~' if seam.twist else '+'} {'itself' if b is None else side_text(b)}"
    return replace(seam, name=name, a=a, b=b, corners=(seam.corners[0] + shift, seam.corners[1] + shift))
