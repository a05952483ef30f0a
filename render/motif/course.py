"""One round as the engine sees it: stems in counter-clockwise order, the chains between them, and where the corners are."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from motifold.render.fabric.model import Fabric, Run, Stitch
from motifold.render.motif.branches import Branch, on_spine, spine_chains
from motifold.render.motif.corners import found_corners, marked_corners, set_apart
from motifold.render.motif.extents import body_of, head_half, root_half, stem_height
from motifold.render.motif.parts import Corner, Gap, Stem
from motifold.symbols.record import dataclass


@dataclass(frozen=True, slots=True)
class Course:
    """``gaps[i]`` follows ``stems[i]`` counter-clockwise; the last one closes the round. ``begins``: the stem worked first.
    ``open``: a row; then the last gap closes nothing.
    """

    round: int
    direction: int
    stems: tuple[Stem, ...]
    gaps: tuple[Gap, ...]
    corners: tuple[Corner, ...]
    begins: int
    open: bool = False
    branches: tuple[Branch, ...] = ()

    def gap_of(self, branch: Branch) -> int:
        """The gap that a branch grows in."""
        return (branch.after - 1 if self.direction > 0 else self.size - 1 - branch.after) % self.size

    @property
    def size(self) -> int:
        return len(self.stems)


def picots_of(fabric: Fabric) -> dict[int, tuple[Run, ...]]:
    """The picots that sit on each stitch or chain."""
    found: dict[int, tuple[Run, ...]] = {}
    for run in fabric.runs:
        if run.role == "picot" and run.before is not None:
            found[run.before] = (*found.get(run.before, ()), run)
    return found


def course_of(fabric: Fabric, round_index: int, picots: Mapping[int, tuple[Run, ...]]) -> Course:
    """Sort a round's stitches into stems and gaps."""
    worked = fabric.rounds[round_index]
    stems: list[Stem] = []
    pieces: list[list[Stitch]] = [[]]
    spines = spine_chains(fabric)
    leaves: dict[int, tuple[int, list[int]]] = {}
    closing = closing_slip(fabric, round_index)
    for stitch in fabric.round_stitches(round_index):
        spine = spines.get(stitch.id, on_spine(stitch, spines))
        if spine is not None:
            leaf = leaves.setdefault(spine, (len(stems), []))
            leaf[1].extend([] if stitch.id in spines else [stitch.id])
        elif _hangs(fabric, stitch):
            pieces[-1].append(stitch)
        elif stitch.role in ("stitch", "standing", "given") and stitch.id != closing:
            body, body_at = body_of(stitch)
            stems.append(
                Stem(stitch, stem_height(stitch), head_half(stitch), body, body_at, root_half(stitch), picots.get(stitch.id, ()))
            )
            pieces.append(_counted_after(stitch, pieces[-1]))
    if not stems:
        return Course(round_index, worked.direction, (), (), (), 0)
    first = pieces.pop(0)
    pieces[-1].extend(first)
    if worked.direction < 0:
        stems.reverse()
        pieces = [piece[::-1] for piece in pieces[-2::-1]] + [pieces[-1][::-1]]
    branches = tuple(Branch(run, tuple(made), after) for run, (after, made) in leaves.items())
    gaps = tuple(_gap(fabric, piece, picots) for piece in pieces)
    begins = 0 if worked.direction > 0 else len(stems) - 1
    corners = marked_corners(fabric, stems, gaps)
    return Course(round_index, worked.direction, tuple(stems), gaps, corners, begins, worked.kind == "row", branches)


def closing_slip(fabric: Fabric, round_index: int) -> int | None:
    """The slip stitch that ends a spiral on its last round ("sl st in next st"): it evens the step and takes no place in the round."""
    own = fabric.round_stitches(round_index)
    if round_index != len(fabric.rounds) - 1 or fabric.rounds[round_index].kind != "round" or len(own) < 3:
        return None
    slips = [stitch for stitch in own if stitch.kind == "sl st"]
    return own[-1].id if len(slips) == 1 and slips[0] is own[-1] and slips[0].role == "stitch" and slips[0].run is None else None


def _counted_after(stitch: Stitch, piece: list[Stitch]) -> list[Stitch]:
    """Chains worked on from a beginning chain ("counts as dc and ch 1") hang after the stitch that it stands for: taken out of
    ``piece``.
    """
    if stitch.role != "standing" or not stitch.chains:
        return []
    last = max(stitch.chains)
    after = [other for other in piece if other.id > last]
    piece[:] = [other for other in piece if other.id <= last]
    return after


def _hangs(fabric: Fabric, stitch: Stitch) -> bool:
    """A chain of a space, or a stitch that closes a space in place of chains."""
    if stitch.run is None or stitch.role == "standing":
        return False
    return fabric.runs[stitch.run].role in ("space", "given")


def _gap(fabric: Fabric, piece: Sequence[Stitch], picots: Mapping[int, tuple[Run, ...]]) -> Gap:
    if not piece:
        return Gap()
    runs: list[tuple[int, int, int]] = []
    rings: list[tuple[Run, int]] = []
    for index, stitch in enumerate(piece):
        run = stitch.run
        if run is not None:
            if runs and runs[-1][0] == run:
                runs[-1] = (run, runs[-1][1], index + 1)
            else:
                runs.append((run, index, index + 1))
        rings.extend((ring, index) for ring in picots.get(stitch.id, ()))
    corner = any(fabric.runs[run].corner for run, _, _ in runs)
    return Gap(tuple(s.id for s in piece), tuple(runs), tuple(rings), corner, any(s.behind for s in piece))


def with_corners(fabric: Fabric, course: Course, below: Course | None) -> Course:
    """The course with corners found by its own structure, where the Fabric marks none. A half motif has two of its shape's corners at
    its cut.
    """
    if not course.size:
        return course
    under = (below.stems, below.gaps, below.corners) if below is not None and below.corners else None
    if course.corners:
        real = course.open or len(course.corners) < 3 or set_apart(course.stems, course.gaps, course.corners, under)
        return course if real else replace(course, corners=())
    count = fabric.polygon - 2 if course.open else len(below.corners) if below is not None and len(below.corners) > 2 else 0
    if count < 1:
        return course
    return replace(course, corners=found_corners(course.stems, course.gaps, count, under, course.open))
