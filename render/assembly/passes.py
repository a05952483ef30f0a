"""The order of sewing: as few attachments of yarn as Euler's theorem allows, flat work before folds.

The seam graph has the surface's corners as points and the seams as lines. A pass is a trail in it. A connected part with 2 k corners
of odd degree needs max(1, k) trails (Euler 1736; any text on graphs), and this many are reached: at every corner the seam ends are
paired, straight on where panels lie flat (a chain over the seam that lies there) and never across a closed seam elsewhere, one end left
over where their number is odd; then rings are let into other trails.

Flat first: in each part all net seams are sewn before the first fold, so they go on only where panels meet on the table; corners that
folding will bring together don't meet yet. So a part takes the flat trails and the fold trails together, less one where a flat trail
ends at a corner from which a fold trail can go on. No plan that keeps this order has fewer: each set of trails is as small as the
theorem allows, only one pass can hold both kinds, and where trails end does not depend on how they were found.
"""

from __future__ import annotations

from collections.abc import Sequence

from motifold.render.assembly.model import PassStep
from motifold.symbols.record import dataclass


@dataclass(frozen=True, slots=True)
class Spoke:
    """A seam's end at a corner: ``end`` is 2 s where seam s starts, 2 s + 1 where it ends; ``degrees``: how far round the corner."""

    end: int
    degrees: float


@dataclass(frozen=True, slots=True)
class Hub:
    """A corner of the surface: its spokes in turning order, the whole angle, and whether panels lie all the way round."""

    spokes: tuple[Spoke, ...]
    degrees: float
    closed: bool


@dataclass(frozen=True, slots=True)
class Web:
    """Seams and where they meet. ``ends[s]``: corners at the start and end of seam s; ``first[c]``: a pass rather starts at a lower one."""

    ends: tuple[tuple[int, int], ...]
    hubs: tuple[Hub, ...]
    first: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class SeamGraph:
    """What the planner knows: ``table``, the seams of the net as they meet while it lies flat; ``whole``, all seams of the finished thing.

    ``flat[s]``: seam s is in the net. ``order[s]``: lower seams are sewn first if they can.
    """

    whole: Web
    table: Web
    flat: tuple[bool, ...]
    order: tuple[tuple[float, ...], ...]

    @property
    def ends(self) -> tuple[tuple[int, int], ...]:
        return self.whole.ends


@dataclass(frozen=True, slots=True)
class Trail:
    steps: tuple[PassStep, ...]
    closed: bool


def plan_trails(graph: SeamGraph) -> tuple[Trail, ...]:
    """The passes, in order of work."""
    trails: list[Trail] = []
    for part in seam_parts(graph.ends):
        flat = _trails(graph.table, graph.order, [s for s in part if graph.flat[s]])
        fold = _trails(graph.whole, graph.order, [s for s in part if not graph.flat[s]])
        trails += _go_on(graph, flat, fold)
    return tuple(trails)


def least_passes(ends: Sequence[tuple[int, int]]) -> int:
    """Euler's bound: max(1, k) for each connected part with 2 k odd corners."""
    return sum(_least(ends, part) for part in seam_parts(ends))


def _least(ends: Sequence[tuple[int, int]], part: Sequence[int]) -> int:
    degree: dict[int, int] = {}
    for seam in part:
        for corner in ends[seam]:
            degree[corner] = degree.get(corner, 0) + 1
    return max(1, sum(d % 2 for d in degree.values()) // 2)


def seam_parts(ends: Sequence[tuple[int, int]]) -> tuple[tuple[int, ...], ...]:
    """The connected parts of the seam graph, as seams in rising order."""
    at: dict[int, list[int]] = {}
    for seam, corners in enumerate(ends):
        for corner in corners:
            at.setdefault(corner, []).append(seam)
    met: set[int] = set()
    parts = []
    for first in range(len(ends)):
        if first in met:
            continue
        met.add(first)
        part, waiting = [], [first]
        while waiting:
            seam = waiting.pop()
            part.append(seam)
            for corner in ends[seam]:
                for other in at.pop(corner, ()):
                    if other not in met:
                        met.add(other)
                        waiting.append(other)
        parts.append(tuple(sorted(part)))
    return tuple(parts)


# --- pairing seam ends at each corner ------------------------------------------------------------------------------

Pair = tuple[int, int]


def _trails(web: Web, order: Sequence[tuple[float, ...]], seams: list[int]) -> list[Trail]:
    if not seams:
        return []
    chosen = set(seams)
    corners = sorted({corner for seam in seams for corner in web.ends[seam]})
    mate: dict[int, int] = {}
    for corner in corners:
        for a, b in _pairing(web.hubs[corner], chosen):
            mate[a], mate[b] = b, a
    _let_rings_in(web, corners, seams, chosen, mate)
    trails = _walk(seams, mate)
    turned = [_turned(web, order, trail) for trail in trails]
    return sorted(turned, key=lambda trail: min(order[step.seam] for step in trail.steps))


def _pairing(hub: Hub, chosen: set[int]) -> list[Pair]:
    """Which seam end goes on into which: straight on over a flat meeting, elsewhere neighbours (these never cross)."""
    spokes = [spoke for spoke in hub.spokes if spoke.end // 2 in chosen]
    count = len(spokes)
    if count < 2:
        return []
    if count % 2 == 0 and hub.closed and count == len(hub.spokes) and abs(hub.degrees - 360) < 1e-6:
        return [(spokes[i].end, spokes[i + count // 2].end) for i in range(count // 2)]
    best: list[Pair] = []
    best_turn = None
    for shift in range(count if count % 2 else 2):
        ring = spokes[shift:] + spokes[:shift]
        pairs = [(ring[i], ring[i + 1]) for i in range(count % 2, count - 1, 2)]
        turn = sum(_turn(hub, a, b) for a, b in pairs)
        if best_turn is None or turn < best_turn - 1e-9:
            best, best_turn = [(a.end, b.end) for a, b in pairs], turn
    return best


def _turn(hub: Hub, a: Spoke, b: Spoke) -> float:
    """How far a pass turns aside, in degrees, going on from one spoke to the other."""
    between = abs(a.degrees - b.degrees)
    if hub.closed:
        between = min(between, hub.degrees - between)
        return hub.degrees / 2 - between
    return abs(180 - between)


def _walk(seams: list[int], mate: dict[int, int]) -> list[Trail]:
    """Follow the pairs: open trails from their free ends first, then rings."""
    done: set[int] = set()
    trails = []
    free = [end for seam in seams for end in (2 * seam, 2 * seam + 1) if end not in mate]
    for start in free + [2 * seam for seam in seams]:
        if start // 2 in done:
            continue
        steps, end = [], start
        while end // 2 not in done:
            done.add(end // 2)
            steps.append(PassStep(end // 2, end % 2 == 0))
            far = end ^ 1
            if far not in mate:
                break
            end = mate[far]
        trails.append(Trail(tuple(steps), start in mate))
    return trails


def _let_rings_in(web: Web, corners: list[int], seams: list[int], chosen: set[int], mate: dict[int, int]) -> None:
    """Wherever a ring meets another trail, pair anew so that they are one. One sweep over the corners does it.

    Two trails that share a corner, one of them a ring, are joined when that corner is swept; open trails stay open.
    """
    label, closed = _labels(seams, mate)

    def root(item: int) -> int:
        while label[item] != item:
            label[item] = label[label[item]]
            item = label[item]
        return item

    for corner in corners:
        hub = web.hubs[corner]
        here = [spoke.end for spoke in hub.spokes if spoke.end // 2 in chosen]
        place = {spoke.end: spoke.degrees for spoke in hub.spokes}
        again = True
        while again:
            again = False
            for a in here:
                for b in here:
                    one, two = root(a // 2), root(b // 2)
                    if one == two or not closed[one]:
                        continue
                    _splice(a, b, mate, here, place)
                    label[one] = two
                    again = True
                    break
                if again:
                    break


def _labels(seams: list[int], mate: dict[int, int]) -> tuple[dict[int, int], dict[int, bool]]:
    label, closed = {}, {}
    for trail in _walk(seams, mate):
        first = trail.steps[0].seam
        closed[first] = trail.closed
        for step in trail.steps:
            label[step.seam] = first
    return label, closed


def _splice(ring: int, other: int, mate: dict[int, int], here: list[int], place: dict[int, float]) -> None:
    """Join the ring through ``ring`` to the trail through ``other`` at one corner, the way that crosses fewest passes."""
    a, b = ring, mate[ring]
    c, d = other, mate.get(other)
    if d is None:
        # A trail that ends here goes on round the ring and ends here again.
        near, far = (a, b) if abs(place[a] - place[c]) <= abs(place[b] - place[c]) else (b, a)
        mate[c], mate[near] = near, c
        del mate[far]
        return
    ways = (((a, c), (b, d)), ((a, d), (b, c)))
    others = [(end, mate[end]) for end in here if end in mate and end < mate[end] and end not in (a, b, c, d)]
    rank = {end: i for i, end in enumerate(here)}
    best = min(ways, key=lambda way: _crossings([*way, *others], rank))
    for x, y in best:
        mate[x], mate[y] = y, x


def _crossings(pairs: Sequence[Pair], rank: dict[int, int]) -> int:
    count = 0
    for i, (a, b) in enumerate(pairs):
        low, high = sorted((rank[a], rank[b]))
        for c, d in pairs[i + 1 :]:
            count += (low < rank[c] < high) != (low < rank[d] < high)
    return count


# --- where a trail starts, and going on from flat work into a fold ---------------------------------------------------


def _starts(graph: SeamGraph, trail: Trail) -> list[int]:
    return [graph.ends[step.seam][0 if step.forward else 1] for step in trail.steps]


def _reversed(trail: Trail) -> Trail:
    return Trail(tuple(PassStep(step.seam, not step.forward) for step in reversed(trail.steps)), trail.closed)


def _last_corner(graph: SeamGraph, trail: Trail) -> int:
    last = trail.steps[-1]
    return graph.ends[last.seam][1 if last.forward else 0]


def _turned(web: Web, order: Sequence[tuple[float, ...]], trail: Trail) -> Trail:
    """The trail from the better of its ends; a ring from its best corner, its first seam by order."""
    starts = [web.ends[step.seam][0 if step.forward else 1] for step in trail.steps]
    if trail.closed:
        best = min(range(len(starts)), key=lambda i: (web.first[starts[i]], order[trail.steps[i].seam]))
        return Trail(trail.steps[best:] + trail.steps[:best], True)
    last = trail.steps[-1]
    end = web.ends[last.seam][1 if last.forward else 0]
    return _reversed(trail) if web.first[end] < web.first[starts[0]] else trail


def _go_on(graph: SeamGraph, flat: list[Trail], fold: list[Trail]) -> list[Trail]:
    """All flat trails, then all fold trails; the last flat one goes on into the first fold where one corner allows it."""
    through = _gone_through(graph, [*flat, *fold])
    ends_at: dict[int, int] = {}
    for number, trail in enumerate(flat):
        for corner in _ends(graph, trail):
            ends_at.setdefault(corner, number)
    best: tuple[tuple[bool, int, int], int, int, int] | None = None
    for number, trail in enumerate(fold):
        for corner in _ends(graph, trail):
            if corner in ends_at:
                # Rather where no pass goes through yet (it would leave a gap), then in the order of work.
                key = (corner in through, number, corner)
                if best is None or key < best[0]:
                    best = (key, ends_at[corner], number, corner)
    if best is None:
        return [*flat, *fold]
    _, one, two, corner = best
    head = _ending_at(graph, flat[one], corner)
    tail = _reversed(_ending_at(graph, _reversed(fold[two]) if fold[two].closed else fold[two], corner))
    round_again = _starts(graph, head)[0] == _last_corner(graph, tail)
    joined = Trail(head.steps + tail.steps, round_again)
    return [*flat[:one], *flat[one + 1 :], joined, *fold[:two], *fold[two + 1 :]]


def _ends(graph: SeamGraph, trail: Trail) -> list[int]:
    return _starts(graph, trail) if trail.closed else [_starts(graph, trail)[0], _last_corner(graph, trail)]


def _gone_through(graph: SeamGraph, trails: Sequence[Trail]) -> set[int]:
    return {corner for trail in trails for corner in _starts(graph, trail)[0 if trail.closed else 1 :]}


def _ending_at(graph: SeamGraph, trail: Trail, corner: int) -> Trail:
    if trail.closed:
        at = _starts(graph, trail).index(corner)
        return Trail(trail.steps[at:] + trail.steps[:at], True)
    return trail if _last_corner(graph, trail) == corner else _reversed(trail)
