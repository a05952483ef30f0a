"""Runs of chains: along the outline where they fit, bowed where they are longer, round a corner, upright where they stand for a stitch."""

from __future__ import annotations

from itertools import pairwise

from motifold.render.motif.arc import Arc, arc_of, bezier, bulged, upright_loop
from motifold.render.motif.course import Course
from motifold.render.motif.extents import (
    CHAIN_DROP,
    CLEAR,
    FOOT_RISE,
    OVAL_HALF,
    OVAL_LEAST,
    PITCH,
    PITCH_LEAST,
    PITCH_MOST,
    SPACE_RISE,
    STEM_HALF,
    WHITE,
)
from motifold.render.motif.feet import shared
from motifold.render.motif.frame import Frame
from motifold.render.motif.ground import Ground
from motifold.render.motif.images import hung_again
from motifold.render.motif.ink import to_segment
from motifold.render.motif.line import Line
from motifold.render.motif.outline import Outline
from motifold.render.motif.over import Disc, obstacles, over
from motifold.render.motif.parts import Gap, Stem
from motifold.render.motif.picots import picot_place, picots_on, picots_on_chain
from motifold.render.motif.place import Standing
from motifold.render.motif.posts import pass_by
from motifold.render.motif.room import chain_least, part_length
from motifold.symbols.sizes import HEAD_WIDTH

_UPRIGHT, _UPRIGHT_PITCH = 0.75, 0.802
"""Ovals that stand for a stitch are as small and as close as they may be."""
_TALL = 1.4
"""Stitches at least so tall let a short run hang under their head line."""
_PASSING = 0.7 * OVAL_HALF
_STEEP = 0.5
"""A run that rises so much over its length stands beside the head that it leaves."""
_LEVEL = 1.0
"""Loops of a crowded row stand upright between heads that differ in height by less than this."""
_LYING = 0.6
"""A head lies over where the run from it goes so much more outward than along."""
_OVER_CHAINS = 0.2575
"""From the middle line of chains to the lowest point of a beginning chain that stands on them."""
_BLUNT, _ACUTE, _INTO_CORNER = 1.25, 1.6, 0.93
"""Between these a square's corner turns (the difference of the unit vectors along its sides); so far into it do chains reach that a
single stitch will stand on, out to the corner of the next round.
"""
_SHALLOW = 0.15
_BOW = 1.06
"""A run that must bow is drawn this much longer than its ovals need."""


def hang(ground: Ground, course: Course, standing: Standing, order: int = 1) -> None:
    """Place the parts of every gap of a round that repeats ``order`` times; record ovals, the arc of each space, and hairlines."""
    covers = obstacles(ground, course) if _covered(ground, course) else []
    for index, gap in enumerate(course.gaps):
        if gap.parts and not covers and hung_again(ground, course, index, order):
            continue
        if gap.parts and not (course.open and index == course.size - 1):
            over_petal = _over_petal(ground, course, standing, index, covers)
            string(ground, gap, over_petal or path_of(ground, course, standing, index), over_petal is not None)
            for ring_at in dict.fromkeys(place for _, place in gap.picots):
                picots_on_chain(ground, [run for run, place in gap.picots if place == ring_at], gap.parts[ring_at], course.direction)
    inner = _middle_stems(course)
    for index, stem in enumerate(course.stems):
        if stem.stitch.role == "standing":
            upright(ground, stem, index in inner, _freer_side(ground, course, index))
        if stem.picots:
            picots_on(ground, stem.picots, *picot_place(ground, course, index), 0.1, course.direction)


def _covered(ground: Ground, course: Course) -> bool:
    """Whether loops of this round may run under earlier work: worked behind it, into an older round, or over picots and petals."""
    if any(gap.behind for gap in course.gaps) or any(stem.stitch.behind for stem in course.stems):
        return True
    bases = [leg.base for stem in course.stems for leg in stem.stitch.legs if leg.base.kind == "stitch"]
    older = {ground.at[base.id][0] for base in bases if base.id in ground.at}
    if any(number < course.round - 1 for number in older):
        return True
    below = ground.courses.get(course.round - 1)
    return below is not None and any(stem.picots for stem in below.stems) | any(gap.picots for gap in below.gaps)


def needed(ground: Ground, gap: Gap) -> float:
    """The shortest length that the parts of a gap can be strung on."""
    sizes = [_size(ground, part) for part in gap.parts]
    return sum(sizes) + (len(sizes) - 1) * (PITCH_LEAST - OVAL_LEAST)


def _size(ground: Ground, part: int) -> float:
    stitch = ground.fabric.stitches[part]
    return OVAL_LEAST if stitch.role == "chain" or stitch.kind == "ch" else part_length(ground, part)


def _over_petal(ground: Ground, course: Course, standing: Standing, index: int, covers: list[Disc]) -> Arc | None:
    """The taut way from one head to the next outside the earlier work that ``covers`` the straight one, if any does."""
    gap = course.gaps[index]
    if not covers or _given(gap, ground) or (standing.outline.corners and any(c.at == index and not c.on_stem for c in course.corners)):
        return None
    least = needed(ground, gap)
    start, end = _ends_of(ground, standing, course, index, False)
    if abs(end - start) < least and len(gap.parts) > 2:
        start, end = _ends_of(ground, standing, course, index, True)
    run = gap.runs[0][0] if len(gap.runs) == 1 else -1
    wide = ground.loads[run] if run in ground.level and not course.open and not standing.outline.corners else 0.0
    path = over(start, end, covers, least * 1.03, wide)
    if path is not None and wide:
        ground.broad.add(run)
    return path


def path_of(ground: Ground, course: Course, standing: Standing, index: int) -> Arc:
    """The way from one head to the next."""
    after = (index + 1) % course.size
    gap = course.gaps[index]
    left, right = course.stems[index], course.stems[after]
    least = needed(ground, gap)
    start, end = _ends_of(ground, standing, course, index, False)
    if abs(end - start) < least and len(gap.parts) > 2:
        start, end = _ends_of(ground, standing, course, index, True)
    corner = next((n for n, c in enumerate(course.corners) if c.at == index and not c.on_stem), None)
    outline = standing.outline
    if corner is not None and outline.corners:
        number = corner + (1 if course.open else 0)
        tip = outline.corner(number)
        if isinstance(outline, Outline) and outline.rho:
            tip = 2 * outline.at(number * outline.side)[0] - (start + end) / 2
        single = any(run in ground.odd for run, _, _ in gap.runs)
        return _round_corner(start, end, tip, [_size(ground, part) for part in gap.parts], single, course.open)
    if _given(gap, ground):
        # Hung so low that what is worked into it stands level with what is worked into the stitches beside it.
        return _dropped(_along(outline, standing, index, after, start, end), SPACE_RISE - FOOT_RISE)
    if standing.even and (not outline.corners or abs(end - start) < 0.9 * outline.apothem):
        path = _along(outline, standing, index, after, start, end)
    else:
        path = arc_of([start, end])
    loaded = _loaded(ground, gap, path.length)
    if path.length >= least and not loaded and _has_room(path, [_size(ground, part) for part in gap.parts], 0.012):
        drop = CHAIN_DROP if len(gap.parts) <= 3 and min(left.height, right.height) >= _TALL else 0.0
        return _dropped(path, drop)
    sizes = [_size(ground, part) for part in gap.parts]
    rays = None
    crowded = not course.open or (abs(end - start) < chain_least(len(gap.parts)) - OVAL_HALF and abs((end - start).imag) < _LEVEL)
    if (course.gaps[index - 1].parts or course.gaps[after].parts) and crowded and not outline.corners:
        rays = (standing.normals[index], standing.normals[after])
        # Legs that go straight up pass the ends of a crossbar on either side.
        aside = [1j * way * _PASSING if stem.height > 1.1 else 0j for way, stem in zip(rays, (left, right), strict=True)]
        if abs(end - aside[1] - start - aside[0]) > OVAL_HALF * 3:
            start, end = start + aside[0], end - aside[1]
    return _bowed(start, end, max(least * _BOW, loaded), sizes, rays)


def _bowed(start: complex, end: complex, length: float, sizes: list[float], rays: tuple[complex, complex] | None = None) -> Arc:
    """A bow at least so long, and longer until its ovals, straight on a bent path, have room; between its heads' ``rays`` if given."""
    path = bulged(start, end, length)
    for _ in range(14):
        path = (upright_loop(start, end, *rays, length) if rays else None) or bulged(start, end, length)
        if _has_room(path, sizes):
            break
        length *= 1.03
    return path


def _loaded(ground: Ground, gap: Gap, length: float) -> float:
    """How long a loop must be for what will be worked into it, as far as its ovals stretch; 0 where it has room as it is."""
    if len(gap.parts) < 4 or len(gap.runs) != 1:
        return 0.0
    load = ground.loads.get(gap.runs[0][0], 0.0)
    wish = min(load, PITCH_MOST * 0.92 * len(gap.parts), 1.5 * length)
    return wish if wish > length * 1.06 else 0.0


def _given(gap: Gap, ground: Ground) -> bool:
    return any(ground.fabric.stitches[part].role == "given" for part in gap.parts)


def _ends_of(ground: Ground, standing: Standing, course: Course, index: int, bowed: bool) -> tuple[complex, complex]:
    """Where the run after a stem begins and ends; a bow leaves its heads further out, so that two bows from one head do not touch."""
    after = (index + 1) % course.size
    left, right = course.stems[index], course.stems[after]
    start = _end_of(standing, index, left, 1.0, ground.posted.get(left.stitch.id, frozenset()), bowed)
    end = _end_of(standing, after, right, -1.0, ground.posted.get(right.stitch.id, frozenset()), bowed)
    # A run that climbs past a head needs room for its breadth as well, and leaves it to what will stand there.
    out = standing.normals[index] + standing.normals[after]
    way = _way(start, end)
    slope = (way / out).real * abs(out) if abs(out) > 0.2 else 0.0
    climb = min(abs(slope) * 1.2, 1.0)
    crowns = [ground.crowns.get(stem.stitch.id, 0.0) if up > _STEEP else 0.0 for stem, up in ((left, slope), (right, -slope))]
    places = ((start, index, crowns[0]), (end, after, crowns[1]))
    wide = [max(OVAL_HALF, crown + OVAL_HALF - abs(at - standing.heads[i])) * climb for at, i, crown in places]
    if abs(end - start) < sum(wide) + 3 * OVAL_HALF:
        wide = [OVAL_HALF * climb] * 2
    start, end = start + standing.normals[index] * 1j * wide[0], end - standing.normals[after] * 1j * wide[1]
    if course.open:
        start, end = _straight_on(standing, index, left, start, end), _straight_on(standing, after, right, end, start)
    return start, end


def _straight_on(standing: Standing, index: int, stem: Stem, here: complex, there: complex) -> complex:
    """Where a run from ``here`` to ``there`` leaves a head: from one that lies over, at the edge of a fan, it goes straight on."""
    head, normal = standing.heads[index], standing.normals[index]
    if stem.height <= 1.1 or (_way(here, there) / normal).real < _LYING:
        return here
    return head + normal * (HEAD_WIDTH / 2 + 2 * CLEAR)


def _end_of(standing: Standing, index: int, stem: Stem, side: float, posted: frozenset[float], bowed: bool) -> complex:
    """Where a run leaves a head: beside its bar."""
    half = STEM_HALF + (0.16 if bowed else 0.06) if stem.body_at < 0.7 and stem.half == stem.body and stem.height <= 1.1 else stem.half
    if stem.stitch.kind == "sl st":
        half += 0.1
    if side in posted:
        # A post stitch of a later round comes up between this head and its first chain.
        half = max(half, pass_by(stem.height) + 2 * STEM_HALF)
    return standing.heads[index] + side * 1j * standing.normals[index] * (half + CLEAR)


def _along(outline: Outline | Frame | Line, standing: Standing, index: int, after: int, start: complex, end: complex) -> Arc:
    """Along the outline itself."""
    first, last = standing.s[index], standing.s[after]
    if last < first:
        last += outline.perimeter
    steps = 2 if outline.corners and not outline.rho else max(2, int((last - first) / 0.4))
    inner = [outline.at(first + (last - first) * k / steps)[0] for k in range(1, steps)]
    along = (end - start) / (abs(end - start) or 1.0)
    inner = [p for p in inner if 0.25 < ((p - start) / along).real < abs(end - start) - 0.25]
    return arc_of([start, *inner, end])


def _dropped(path: Arc, drop: float) -> Arc:
    if not drop:
        return path
    points = []
    for p, mark in zip(path.points, path.marks, strict=True):
        points.append(p - path.at(mark)[1] * drop)
    return arc_of(points)


def _round_corner(start: complex, end: complex, corner: complex, sizes: list[float], single: bool, shallow: bool) -> Arc:
    """Round a corner by a curve with the true corner as its control; drawn further out until its ovals have room. ``single``: a stitch
    will stand in its middle. ``shallow``: no further out than they must be, as rows that lie close to one another need it.
    """
    least = sum(sizes) + (len(sizes) - 1) * (PITCH_LEAST - OVAL_LEAST)
    if least > 1.5 * (abs(start - corner) + abs(end - corner)):
        return bulged(start, end, least * _BOW)
    # The sharper the corner, the further into it the chains reach, or they would cut it off.
    turn = abs(_way(start, corner) - _way(corner, end))
    low, high = _INTO_CORNER if single and _BLUNT < turn < _ACUTE else min(0.9, 0.3 + 0.32 * turn), 1.0
    low = _SHALLOW if shallow else low
    for step in range(9):
        reach = low + (high - low) * step / 8
        path = bezier(start, start + reach * (corner - start), end + reach * (corner - end), end)
        if _has_room(path, sizes):
            return path
    return _bowed(start, end, least, sizes)


def _way(start: complex, end: complex) -> complex:
    return (end - start) / (abs(end - start) or 1.0)


def _has_room(path: Arc, sizes: list[float], more: float = 0.03) -> bool:
    """Whether the middles of neighbouring ovals stay a pitch apart, straight across a bend."""
    if path.length < sum(sizes) + (len(sizes) - 1) * (PITCH_LEAST - OVAL_LEAST):
        return False
    middles = [path.at((start + end) / 2)[0] for start, end in _threaded(path.length, sizes)]
    white = PITCH_LEAST - OVAL_LEAST + more
    return all(abs(b - a) >= (p + q) / 2 + white for (a, b), (p, q) in zip(pairwise(middles), pairwise(sizes), strict=True))


def _threaded(length: float, sizes: list[float], together: bool = False) -> list[tuple[float, float]]:
    """Where each part begins and ends along a path: evenly, no further apart than the widest pitch, centred; or ``together``, as close as
    they like, hairlines at either end.
    """
    count = len(sizes)
    over = length - sum(sizes)
    even = over / (count + 1)
    most = PITCH * 1.03 if together else PITCH_MOST
    between = min(max(even, min(PITCH * 1.1 - OVAL_LEAST, over / count)), most - OVAL_LEAST)
    if count > 1 and over < 0:
        between = over / (count - 1)
    s = (length - sum(sizes) - (count - 1) * between) / 2
    spans = []
    for size in sizes:
        spans.append((s, s + size))
        s += size + between
    return spans


def string(ground: Ground, gap: Gap, arc: Arc, together: bool = False) -> None:
    """Thread the parts of a gap on an arc, evenly; beyond the widest pitch (or, ``together``, the liked one) hairlines take up the rest."""
    sizes = [_size(ground, part) for part in gap.parts]
    spans = _threaded(arc.length, sizes, together)
    between = spans[1][0] - spans[0][1] if len(spans) > 1 else spans[0][0]
    grow = min(0.03, max(between - 0.06, 0.0) / 2)
    spans = [(a - grow, b + grow) for a, b in spans]
    for part, (start, end) in zip(gap.parts, spans, strict=True):
        _lay(ground, part, arc, start, end)
    for run, first, last in gap.runs:
        margin = between / 2
        ground.arcs[run] = arc.part(max(spans[first][0] - margin, 0.0), min(spans[last - 1][1] + margin, arc.length))
    _hairlines(ground, gap, arc, spans)


def _lay(ground: Ground, part: int, arc: Arc, start: float, end: float) -> None:
    first, _ = arc.at(start)
    last, _ = arc.at(end)
    _, normal = arc.at((start + end) / 2)
    if len(arc.points) > 2 and end > start:
        # A straight oval on a bent path: its middle on the path, its tips along the path's own direction there.
        middle, normal = arc.at((start + end) / 2)
        half = abs(end - start) / 2
        first, last = middle - 1j * normal * half, middle + 1j * normal * half
    stitch = ground.fabric.stitches[part]
    ground.normals[part] = normal
    if stitch.role == "chain" or stitch.kind == "ch" or not stitch.legs:
        ground.tips[part] = (first, last)
        return
    base, _ = ground.anchor(stitch.legs[0].base)
    foot, head = (first, last) if abs(first - base) < abs(last - base) else (last, first)
    ground.feet[part], ground.heads[part] = (foot,) * len(stitch.legs), head


def _hairlines(ground: Ground, gap: Gap, arc: Arc, spans: list[tuple[float, float]]) -> None:
    """Hairlines wherever more than a little white would show between tips, or between a tip and the head beside it."""
    stretches = [(0.0, spans[0][0]), *((a[1], b[0]) for a, b in pairwise(spans)), (spans[-1][1], arc.length)]
    for i, (start, end) in enumerate(stretches):
        if end - start > WHITE and gap.runs:
            run = gap.runs[min(i, len(gap.runs) - 1)][0]
            line = arc.part(start + 0.05, end - 0.05)
            ground.links.setdefault(run, []).append(line.points)


def _middle_stems(course: Course) -> set[int]:
    """Stems that stand in the middle of what is worked into a space, over its ring."""
    found: set[int] = set()
    for base, members in shared(course).items():
        if base.kind == "space":
            found.update(members[i][0] for i in ((len(members) - 1) // 2, len(members) // 2))
    return found


def _freer_side(ground: Ground, course: Course, index: int) -> float:
    """On which side of a stem (+1 counter-clockwise) its neighbour stands further off, half way up."""
    middles = []
    for step in (-1, 0, 1):
        stitch = course.stems[(index + step) % course.size].stitch.id
        middles.append((ground.feet[stitch][0] + ground.heads[stitch]) / 2)
    return 1.0 if abs(middles[2] - middles[1]) > abs(middles[0] - middles[1]) else -1.0


def upright(ground: Ground, stem: Stem, over_ring: bool, free: float) -> None:
    """Beginning chains that count as a stitch: stacked where that stitch would stand."""
    stitch = stem.stitch
    foot, head = ground.feet[stitch.id][0], ground.heads[stitch.id]
    count = len(stitch.chains)
    if not count:
        return
    up = (head - foot) / (abs(head - foot) or 1.0)
    least = (count - 1) * _UPRIGHT_PITCH + _UPRIGHT
    # A column may begin lower than a foot, at the base's own ink, and rise as high as a head's ink does.
    lower = -0.03 if over_ring else 0.08
    deeper = 0.0
    arc = ground.arcs.get(stitch.legs[0].base.id) if stitch.legs[0].base.kind == "space" and not over_ring else None
    if arc is not None:
        # How much nearer it may come to the chains that it stands on.
        nearest = min(arc.points, key=lambda p: abs(foot - p))
        free_below = min(to_segment(foot, a, b) for a, b in pairwise(arc.points)) - _OVER_CHAINS
        free_below /= max((up / _way(nearest, foot)).real, 0.5) if free_below > 0 and len(arc.points) > 3 else 1.0
        lower, deeper = min(lower, free_below), min(max(free_below - lower, 0.0), 0.21)
    low, high = foot - up * lower, head + up * 0.065
    low -= up * min(max(least - abs(high - low), 0.0), deeper)
    high += up * min(max(least - abs(high - low), 0.0), 0.02)
    path = arc_of([low, high])
    if path.length < least - 1e-9:
        # Straight across a bow ovals stand nearer to each other than along it.
        least += 0.5 * (least - path.length)
        path = bulged(low, high, least) if free < 0 else arc_of(bulged(high, low, least).points[::-1])
    size = min(OVAL_LEAST + 0.03, max(_UPRIGHT, path.length / count - 0.06))
    between = (path.length - count * size) / max(count - 1, 1) if count > 1 else 0.0
    s = 0.0 if count > 1 else (path.length - size) / 2
    for chain in stitch.chains:
        first, last = path.at(s)[0], path.at(s + size)[0]
        ground.tips[chain] = (first, last)
        ground.normals[chain] = ground.normals[stitch.id]
        s += size + between
