"""Where the corners of a round are: as the Fabric marks them, or, where a round is built on a cornered one without saying so, above its
corners.
"""

from __future__ import annotations

from collections.abc import Sequence

from motifold.render.fabric.model import Base, Fabric
from motifold.render.motif.parts import Corner, Gap, Stem, cyclic_order

Below = tuple[Sequence[Stem], Sequence[Gap], Sequence[Corner]]
"""The round below: its stems, gaps and corners."""


def marked_corners(fabric: Fabric, stems: Sequence[Stem], gaps: Sequence[Gap]) -> tuple[Corner, ...]:
    """Corner spaces are corners; so is the middle of a corner group without a corner space of its own."""
    found = {index: Corner(index, False) for index, gap in enumerate(gaps) if gap.corner}
    members: dict[int, list[int]] = {}
    for index, stem in enumerate(stems):
        group = stem.stitch.group
        if group is not None and fabric.groups[group].corner:
            members.setdefault(group, []).append(index)
    for indices in members.values():
        if any(gaps[index].corner or gaps[index - 1].corner for index in indices):
            continue
        ordered = cyclic_order(indices, len(stems))
        middle = ordered[(len(ordered) - 1) // 2]
        found.setdefault(middle, Corner(middle, len(ordered) % 2 == 1))
    return tuple(found[index] for index in sorted(found))


def found_corners(
    stems: Sequence[Stem], gaps: Sequence[Gap], count: int, below: Below | None, is_open: bool
) -> tuple[Corner, ...]:
    """Corners that nobody marked, if exactly ``count`` can be found: chains in the midst of one place, three or more stitches in one
    place, or what stands over the corners of the round ``below``.
    """
    spaces = _chains_in_one_place(stems, gaps, is_open)
    longest = max((len(gaps[corner.at].parts) for corner in spaces), default=0)
    widest = [corner for corner in spaces if len(gaps[corner.at].parts) == longest]
    for found in (spaces, widest, _increases(stems, is_open), _above(stems, below) if below else []):
        if len(found) == count:
            return tuple(sorted(found, key=lambda corner: corner.at))
    return ()


def _bases(stem: Stem) -> set[Base]:
    return {Base(leg.base.kind, leg.base.id, "loops") for leg in stem.stitch.legs}


def _chains_in_one_place(stems: Sequence[Stem], gaps: Sequence[Gap], is_open: bool) -> list[Corner]:
    last = len(stems) - 1 if is_open else len(stems)
    return [
        Corner(i, False) for i in range(last) if gaps[i].parts and _bases(stems[i]) & _bases(stems[(i + 1) % len(stems)])
    ]


def _increases(stems: Sequence[Stem], is_open: bool) -> list[Corner]:
    """Three or more in one place, which in a row is neither its first nor its last."""
    members: dict[Base, list[int]] = {}
    for index, stem in enumerate(stems):
        for base in _bases(stem):
            if base.kind != "ring":
                members.setdefault(base, []).append(index)
    found = []
    for indices in members.values():
        if len(indices) >= 3 and not (is_open and (0 in indices or len(stems) - 1 in indices)):
            ordered = cyclic_order(indices, len(stems))
            found.append(Corner(ordered[(len(ordered) - 1) // 2], len(ordered) % 2 == 1))
    return found


def _above(stems: Sequence[Stem], below: Below) -> list[Corner]:
    under, between, corners = below
    found = []
    standing: dict[tuple[str, int], list[int]] = {}
    for index, stem in enumerate(stems):
        for leg in stem.stitch.legs:
            places = standing.setdefault((leg.base.kind, leg.base.id), [])
            if not places or places[-1] != index:
                places.append(index)
    for corner in corners:
        if corner.on_stem:
            bases = [("stitch", under[corner.at].stitch.id)]
        else:
            gap = between[corner.at]
            bases = [*(("space", run) for run, _, _ in gap.runs), *(("stitch", part) for part in gap.parts)]
        over = sorted({index for base in bases for index in standing.get(base, ())})
        between_stems = not corner.on_stem and not over
        if between_stems:
            # Two stitches side by side in a corner, or chains that nothing is worked into: it lies after what stands on the first.
            over = standing.get(("stitch", under[corner.at].stitch.id), [])
        if over and between_stems:
            found.append(Corner(cyclic_order(over, len(stems))[-1], False))
        elif over:
            ordered = cyclic_order(over, len(stems))
            found.append(Corner(ordered[(len(ordered) - 1) // 2], len(ordered) % 2 == 1))
    return found


def set_apart(stems: Sequence[Stem], gaps: Sequence[Gap], corners: Sequence[Corner], below: Below | None) -> bool:
    """Whether corners are more than a choice among places that look alike: told from the others by what they are, or by standing on
    corners.
    """
    if below is not None and len(below[2]) == len(corners):
        over = {(corner.at + k) % len(stems) for corner in _above(stems, below) for k in (-1, 0, 1)}
        if over and all(any((corner.at + k) % len(stems) in over for k in (0, 1)) for corner in corners):
            return True
    looks = {_look(stems, gaps, corner) for corner in corners}
    others = [Corner(i, corner.on_stem) for i in range(len(stems)) for corner in corners[:1]]
    alike = sum(1 for other in others if _look(stems, gaps, other) in looks)
    return alike <= len(corners)


def _look(stems: Sequence[Stem], gaps: Sequence[Gap], corner: Corner) -> tuple[object, ...]:
    after = stems[(corner.at + 1) % len(stems)]
    here, before = stems[corner.at], stems[corner.at - 1]
    if corner.on_stem:
        return (here.stitch.kind, bool(_bases(before) & _bases(here)), bool(_bases(here) & _bases(after)), len(gaps[corner.at].parts))
    return (len(gaps[corner.at].parts), bool(_bases(here) & _bases(after)), any(b.kind == "ring" for b in _bases(here)))
