"""The order of sewing: as few attachments of yarn as Euler's theorem allows, flat work before folds.

The seam graph has the surface's corners as points and the seams as lines. A pass is a trail in it. A connected part with 2 k corners
of odd degree needs max(1, k) trails (Euler 1736; any text on graphs), and this many are reached: at every corner the seam ends are
paired, straight on where panels lie flat (a chain over the seam that lies there) and never across a closed seam elsewhere, one end left
over where their number is odd; then rings are let into other trails.

Flat first: net seams are sewn as they lie on the table and go on only where panels meet there; corners that folding will bring together
don't meet yet. Each connected run of net seams is sewn whole before its yarn goes on into a fold. So a part takes the flat trails and the
fold trails together, less one for each run that can go on. No plan that keeps this order has fewer: each set of trails is as small as the
theorem allows, a run goes on once at most, a fold trail is come to from one run at most, and the corners where trails may start are dealt
out to as many runs as there can be (``motifold.render.assembly.onward``).
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from motifold.render.assembly.model import PassStep
from motifold.render.assembly.onward import goings
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
    parts = seam_parts(graph.ends)
    part_of = {seam: number for number, part in enumerate(parts) for seam in part}
    flats: list[list[list[Trail]]] = [[] for _ in parts]
    for run in _table_runs(graph):
        flats[part_of[run[0]]].append(_trails(graph.table, graph.order, run))
    for part, flat in zip(parts, flats, strict=True):
        flat.sort(key=lambda run: _first(graph.order, run[0]))
        trails += _go_on(graph, flat, [s for s in part if not graph.flat[s]])
    return tuple(trails)


def _table_runs(graph: SeamGraph) -> list[list[int]]:
    """The net seams that hang together while the net lies on the table."""
    flat = [s for s, is_flat in enumerate(graph.flat) if is_flat]
    return [[flat[i] for i in part] for part in seam_parts([graph.table.ends[s] for s in flat])]


def _first(order: Sequence[tuple[float, ...]], trail: Trail) -> tuple[float, ...]:
    return min(order[step.seam] for step in trail.steps)


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
    return _in_order(web, order, _walk(seams, _mates(web, seams)))


def _mates(web: Web, seams: list[int]) -> dict[int, int]:
    """For each seam end the one that it goes on into; none where a trail ends."""
    chosen = set(seams)
    mate: dict[int, int] = {}
    for corner in _corners(web, seams):
        for a, b in _pairing(web.hubs[corner], chosen):
            mate[a], mate[b] = b, a
    _let_rings_in(web, seams, chosen, mate)
    return mate


def _corners(web: Web, seams: list[int]) -> list[int]:
    return sorted({corner for seam in seams for corner in web.ends[seam]})


def _in_order(web: Web, order: Sequence[tuple[float, ...]], trails: Sequence[Trail]) -> list[Trail]:
    return sorted((_turned(web, order, trail) for trail in trails), key=lambda trail: _first(order, trail))


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


def _let_rings_in(web: Web, seams: list[int], chosen: set[int], mate: dict[int, int]) -> None:
    """Wherever a ring meets another trail, pair anew so that they are one. One sweep over the corners does it.

    Two trails that share a corner, one of them a ring, are joined when that corner is swept; open trails stay open.
    """
    label, closed = _labels(seams, mate)

    def root(item: int) -> int:
        while label[item] != item:
            label[item] = label[label[item]]
            item = label[item]
        return item

    for corner in _corners(web, seams):
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


def _go_on(graph: SeamGraph, flat: Sequence[Sequence[Trail]], seams: list[int]) -> list[Trail]:
    """Flat trails of every run, fold trails, and as many of the two made one as can be: flat ones first, folds by themselves last."""
    mate = _mates(graph.whole, seams)
    fold = _walk(seams, mate)
    met = {corner for run in flat for trail in run for corner in _ends(graph, trail)}
    # From an end that a run could come to, where only one is.
    open_trails = [_reversed(t) if _starts(graph, t)[0] not in met and _last_corner(graph, t) in met else t for t in fold if not t.closed]
    rings = {corner: -1 - i for i, trail in enumerate(t for t in fold if t.closed) for corner in _starts(graph, trail)}
    odd = {corner for trail in open_trails for corner in _ends(graph, trail)}
    through = _gone_through(graph, [*(trail for run in flat for trail in run), *fold])
    rank = {corner: _first(graph.order, trail) for trail in fold for corner in _ends(graph, trail)}
    reaches, passing = [], []
    folded = {corner for trail in open_trails for corner in _starts(graph, trail)}
    for run in flat:
        # Rather where no pass goes through yet (it would leave a gap), then in the order of work.
        ends = {corner for trail in run for corner in _ends(graph, trail)}
        corners = sorted(ends, key=lambda corner: (corner in through, rank.get(corner, ()), corner))
        reaches.append(list(dict.fromkeys(c if c in odd else rings[c] for c in corners if c in odd or c in rings)))
        passing.append([c for c in corners if c in folded and c not in odd])
    forward = {step.seam: step.forward for trail in open_trails for step in trail.steps}
    going = goings(graph.ends, forward, [_starts(graph, trail)[0] for trail in open_trails], reaches, passing)
    _turn_mates(graph.whole, seams, going.forward, forward, mate)
    fold = _in_order(graph.whole, graph.order, _walk(seams, mate))
    first: list[Trail] = []
    onward: list[Trail] = []
    for run, slot in zip(flat, going.slot, strict=True):
        if slot is None:
            first += run
            continue
        own = {corner for trail in run for corner in _ends(graph, trail)}
        corner = slot if slot >= 0 else next(c for c in sorted(own) if rings.get(c) == slot)
        head = next(trail for trail in run if corner in _ends(graph, trail))
        tail = next(trail for trail in fold if corner in _ends(graph, trail))
        fold.remove(tail)
        first += [trail for trail in run if trail is not head]
        onward.append(_joined(graph, head, tail, corner))
    return [*first, *onward, *fold]


def _joined(graph: SeamGraph, head: Trail, tail: Trail, corner: int) -> Trail:
    head = _ending_at(graph, head, corner)
    tail = _reversed(_ending_at(graph, _reversed(tail) if tail.closed else tail, corner))
    return Trail(head.steps + tail.steps, _starts(graph, head)[0] == _last_corner(graph, tail))


def _turn_mates(web: Web, seams: list[int], forward: Mapping[int, bool], before: Mapping[int, bool], mate: dict[int, int]) -> None:
    """Where seams are sewn the other way now, pair anew what comes to a corner with what leaves it; neighbours, so that none cross."""
    turned = [seam for seam, ahead in forward.items() if ahead != before[seam]]
    if not turned:
        return
    chosen = set(seams)
    for corner in _corners(web, turned):
        ring = [spoke.end for spoke in web.hubs[corner].spokes if spoke.end // 2 in chosen]
        for end in ring:
            mate.pop(end, None)
        waiting: list[int] = []
        for end in [*ring, *ring]:
            if end in mate or end in waiting:
                continue
            if waiting and _comes(waiting[-1], forward) != _comes(end, forward):
                mate[end] = waiting.pop()
                mate[mate[end]] = end
            else:
                waiting.append(end)
    _let_rings_in(web, seams, chosen, mate)


def _comes(end: int, forward: Mapping[int, bool]) -> bool:
    """Whether a seam comes to the corner at that end of it."""
    return forward[end // 2] == (end % 2 == 1)


def _ends(graph: SeamGraph, trail: Trail) -> list[int]:
    return _starts(graph, trail) if trail.closed else [_starts(graph, trail)[0], _last_corner(graph, trail)]


def _gone_through(graph: SeamGraph, trails: Sequence[Trail]) -> set[int]:
    return {corner for trail in trails for corner in _starts(graph, trail)[0 if trail.closed else 1 :]}


def _ending_at(graph: SeamGraph, trail: Trail, corner: int) -> Trail:
    if trail.closed:
        at = _starts(graph, trail).index(corner)
        return Trail(trail.steps[at:] + trail.steps[:at], True)
    return trail if _last_corner(graph, trail) == corner else _reversed(trail)
