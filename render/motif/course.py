"""One round as the engine sees it: stems in counter-clockwise order, the chains between them, and where the corners are."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from motifold.render.fabric.model import Fabric, Run, Stitch
from motifold.render.motif.extents import body_of, head_half, root_half, stem_height


@dataclass(frozen=True, slots=True)
class Stem:
    """A stitch that stands on the round below. ``half``, ``body``, ``root``: half its room at its head, on its stem (at the part
    ``body_at`` of its length) and at its foot; ``picots``: rings on its head.
    """

    stitch: Stitch
    height: float
    half: float
    body: float
    body_at: float
    root: float
    picots: tuple[Run, ...] = ()


@dataclass(frozen=True, slots=True)
class Gap:
    """What hangs between one stem and the next, counter-clockwise: chains, and stitches that stand in for chains (``parts``).

    ``runs``: each space with its range of parts. ``picots``: each ring with the part that it sits on. ``behind``: worked behind earlier work.
    """

    parts: tuple[int, ...] = ()
    runs: tuple[tuple[int, int, int], ...] = ()
    picots: tuple[tuple[Run, int], ...] = ()
    corner: bool = False
    behind: bool = False


@dataclass(frozen=True, slots=True)
class Corner:
    """A corner lies on stem ``at`` (``on_stem``), or in the gap after it."""

    at: int
    on_stem: bool


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
    for stitch in fabric.round_stitches(round_index):
        if _hangs(fabric, stitch):
            pieces[-1].append(stitch)
        elif stitch.role in ("stitch", "standing", "given"):
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
    gaps = tuple(_gap(fabric, piece, picots) for piece in pieces)
    begins = 0 if worked.direction > 0 else len(stems) - 1
    return Course(round_index, worked.direction, tuple(stems), gaps, _corners(fabric, stems, gaps), begins, worked.kind == "row")


def _counted_after(stitch: Stitch, piece: list[Stitch]) -> list[Stitch]:
    """Chains worked on from a beginning chain ("counts as dc and ch 1") hang after the stitch that it stands for: taken out of ``piece``."""
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


def _corners(fabric: Fabric, stems: Sequence[Stem], gaps: Sequence[Gap]) -> tuple[Corner, ...]:
    """Corner spaces are corners; so is the middle of a corner group without a corner space of its own."""
    found = {index: Corner(index, False) for index, gap in enumerate(gaps) if gap.corner}
    members: dict[int, list[int]] = {}
    for index, stem in enumerate(stems):
        group = stem.stitch.group
        if group is not None and fabric.groups[group].corner:
            members.setdefault(group, []).append(index)
    for group, indices in members.items():
        if any(gaps[index].corner or gaps[index - 1].corner for index in indices):
            continue
        ordered = cyclic_order(indices, len(stems))
        middle = ordered[(len(ordered) - 1) // 2]
        found.setdefault(middle, Corner(middle, len(ordered) % 2 == 1))
    return tuple(found[index] for index in sorted(found))


def cyclic_order(indices: Sequence[int], size: int) -> list[int]:
    """Sorted round the circle, cut at the largest gap: what lies together stays together where the round starts in its midst.

    >>> cyclic_order([0, 1, 11], 12)
    [11, 0, 1]
    """
    ordered = sorted(indices)
    if len(ordered) < 2:
        return ordered
    leaps = [(ordered[i] - ordered[i - 1]) % size for i in range(len(ordered))]
    cut = max(range(len(ordered)), key=lambda i: (leaps[i], -i))
    return ordered[cut:] + ordered[:cut]
