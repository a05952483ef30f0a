"""What can be sewn and is hardly meant: a surface with handles, corners that ruffle, twists that twist nothing, pieces that nothing joins.

Every test is Euler's: of each piece, corners - edges + panels, and one more for every opening, is 2 for what could be blown up like a
ball. Where it is less, the cloth runs through itself like a handle: two panels joined 1 to 1, 2 to 2 ..., as if neither were turned over.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from motifold.render.assembly.joint import Joint, cut_edges, wedge_degrees
from motifold.render.assembly.reading import PanelPlan, SeamPlan
from motifold.render.assembly.sides import NAMED, Edge, corner_of, listed, pieces_between
from motifold.render.assembly.surface import build_surface
from motifold.render.pattern.model import AssemblySource, SidePiece
from motifold.render.pattern.problem import Problem
from motifold.symbols.record import dataclass

BALL = 2
RUFFLES = 450.0  # degrees round a corner: five squares still lie in soft folds (our own judgement)
MOST_TRIALS = 600  # other ways to join that are tried for a hint
MOST_EDGES = 36_000  # sides, and parts of sides, that are put together for them


@dataclass(frozen=True, slots=True)
class _Judged:
    """``holes``: for each piece how much its Euler number lacks of a ball's; ``ruffled``: corners with far too much cloth."""

    holes: tuple[int, ...]
    ruffled: tuple[int, ...]

    @property
    def sound(self) -> bool:
        return not any(self.holes) and not self.ruffled


def surface_doubts(source: AssemblySource, joint: Joint) -> list[Problem]:
    """At most one warning on how the panels close, one on twists, one on pieces that stay apart."""
    return [*_apart(source, joint), *(_idle_twist(joint) or _closing(joint))]


def _judge(joint: Joint) -> _Judged:
    surface = joint.surface
    count = [0] * surface.pieces
    for piece in surface.piece_of:
        count[piece] += 1
    for edge, one in enumerate(joint.edges):
        if edge not in joint.seam_of or joint.seam_of[edge][1]:  # a seam's two edges are one
            count[surface.piece_of[one.panel]] -= 1
    for wheel in surface.wheels:
        count[surface.piece_of[joint.edges[wheel.wedges[0]].panel]] += 1
    for rim in surface.rims:
        count[surface.piece_of[joint.edges[rim.edges[0]].panel]] += 1
    ruffled = tuple(i for i in range(len(surface.wheels)) if _degrees(joint, i) > RUFFLES)
    return _Judged(tuple(BALL - found for found in count), ruffled)


def _degrees(joint: Joint, corner: int) -> float:
    return sum(wedge_degrees(joint, wedge) for wedge in joint.surface.wheels[corner].wedges)


def _closing(joint: Joint) -> list[Problem]:
    judged = _judge(joint)
    one_sided = 0 if joint.surface.orientable else 1  # a twisted cowl lacks one of a ball, and is meant
    through = any(lack > one_sided for lack in judged.holes)
    if not judged.ruffled and (not through or (not one_sided and _runs_straight(joint))):
        return []
    said = []
    if through:
        said.append("the joins leave a hole right through, as in a ring or a cup's handle: it can be neither filled nor laid flat")
    if judged.ruffled:
        first = joint.surface.wheels[judged.ruffled[0]]
        more = f" (and so at {len(judged.ruffled) - 1} more)" if len(judged.ruffled) > 1 else ""
        degrees = f"{_degrees(joint, judged.ruffled[0]):.0f} degrees, where 360 lie flat"
        said.append(f"{len(first.wedges)} corners meet at {_corner_text(joint, first.wedges[0])}{more}, {degrees}: it ruffles there")
    better = _mended(joint) if through or not joint.surface.rims else None
    at = better[1] if better is not None else next((s for s in reversed(joint.seams) if s.kind == "fold"), joint.seams[-1])
    hint = better[0] if better is not None else _LOOK if through else _RUFFLED
    return [Problem("surface", "warning", at.span, "; ".join(said), hint)]


_LOOK = "look at each join: of two panels that lie on each other one is turned over, so that its sides run back"
_RUFFLED = "look at the joins that meet there: does one name a wrong side? If a saddle is meant, all is well"


def _corner_text(joint: Joint, wedge: int) -> str:
    edge = joint.edges[wedge]
    plan = joint.panels[edge.panel]
    return f"{plan.name}.{corner_of(plan.sides, edge.side)}"


def _runs_straight(joint: Joint) -> bool:
    """Whether every seam joins a side to the one across from it, so that the net goes on over it: a tube closed to a ring is meant."""
    for seam in joint.seams:
        sides = len(joint.panels[seam.edge_a.panel].sides)
        if sides != len(joint.panels[seam.edge_b.panel].sides) or 2 * ((seam.edge_b.side - seam.edge_a.side) % sides) != sides:
            return False
    return True


_TURNED_OVER = "is the second one meant turned over, its sides running back"
_CROSSED = "is it meant the other way round"


# --- what would mend it ------------------------------------------------------------------------------------------------------------


def _mended(joint: Joint) -> tuple[str, SeamPlan] | None:
    """The other way to join that changes the fewest joins and leaves nothing to doubt, in words, and the first join that it changes."""
    best: tuple[tuple[int, bool, int, tuple[int, ...]], str, SeamPlan] | None = None
    used = {edge for seam in joint.seams for edge in (seam.edge_a, seam.edge_b)}
    for trial, (how, changed) in enumerate(_other_ways(joint)):
        if trial == MOST_TRIALS or trial * len(joint.edges) > MOST_EDGES:
            break
        # Sides that are free stay free, a panel turned over goes first; then the fewest joins, and the last ones, are changed.
        newly_used = sum(edge not in used for seam in changed.values() for edge in (seam.edge_a, seam.edge_b))
        key = (newly_used, how != _TURNED_OVER, len(changed), tuple(-i for i in changed))
        if best is not None and best[0] <= key:
            continue
        other = _joined(joint, changed)
        if other.surface.pieces == joint.surface.pieces and _judge(other).sound:
            words = listed([f'"{seam.name}"' for seam in changed.values()])
            best = (key, f"{how}: {words}?", joint.seams[min(changed)])
    return (best[1], best[2]) if best is not None else None


def _other_ways(joint: Joint) -> Iterator[tuple[str, dict[int, SeamPlan]]]:
    """A panel turned over; then two joins that change their second sides."""
    # The net stays as it is laid, and so does a panel that is joined to itself or with a twist.
    fixed = {
        edge.panel
        for seam in joint.seams
        if seam.kind == "flat" or seam.twist or seam.edge_a.panel == seam.edge_b.panel
        for edge in (seam.edge_a, seam.edge_b)
    }
    folds = [i for i, seam in enumerate(joint.seams) if seam.kind == "fold" and seam.b is not None and not seam.twist]
    for panel in range(len(joint.panels) - 1, -1, -1):
        if panel in fixed:
            continue
        own = [i for i in folds if panel in (joint.seams[i].edge_a.panel, joint.seams[i].edge_b.panel)]
        for shift in range(len(joint.panels[panel].sides)):
            changed = _turned(joint, panel, own, shift)
            if changed:
                yield _TURNED_OVER, changed
    for at, one in enumerate(folds):
        for two in folds[at + 1 :]:
            a, b = joint.seams[one], joint.seams[two]
            to_itself = a.edge_a.panel == b.edge_b.panel or b.edge_a.panel == a.edge_b.panel
            if not to_itself and _same_side_length(joint, a.edge_b, b.edge_b):
                yield _CROSSED, {one: replace(a, b=b.b, edge_b=b.edge_b), two: replace(b, b=a.b, edge_b=a.edge_b)}


def _turned(joint: Joint, panel: int, seams: Sequence[int], shift: int) -> dict[int, SeamPlan]:
    """The joins that change when a panel's sides are taken the other way round, so that side s becomes side ``shift - s``."""
    plan = joint.panels[panel]
    changed = {}
    for i in seams:
        seam = joint.seams[i]
        own = seam.edge_a if seam.edge_a.panel == panel else seam.edge_b
        back = Edge(panel, (shift - own.side) % len(plan.sides), 1 - own.high, 1 - own.low)
        if not _same_side_length(joint, own, back):
            return {}
        piece = _piece(plan, back)
        if back != own:
            changed[i] = replace(seam, a=piece, edge_a=back) if own is seam.edge_a else replace(seam, b=piece, edge_b=back)
    return changed


def _piece(plan: PanelPlan, edge: Edge) -> SidePiece:
    return pieces_between(plan.name, plan.sides[edge.side], edge.low, edge.high)[0]


def _same_side_length(joint: Joint, one: Edge, two: Edge) -> bool:
    a, b = (joint.panels[edge.panel].fabric.sides[edge.side] for edge in (one, two))
    return a.stitches == b.stitches and one.high - one.low == two.high - two.low


def _joined(joint: Joint, changed: dict[int, SeamPlan]) -> Joint:
    seams = tuple(changed.get(i, seam) for i, seam in enumerate(joint.seams))
    edges, glues = cut_edges(joint.panels, seams)
    surface = build_surface(tuple(edge.panel for edge in edges), glues)
    return Joint(joint.panels, seams, joint.shapes, edges, surface)


# --- twists and pieces -----------------------------------------------------------------------------------------------------------


def _idle_twist(joint: Joint) -> list[Problem]:
    """A twisted join of what still has two sides: its panel only lies wrong side up. A surface with one side and no edge is no garment."""
    twisted = [seam for seam in joint.seams if seam.twist]
    if not twisted:
        return []
    if joint.surface.orientable and len(twisted) == 1:  # two in one ring are a whole turn
        seam = twisted[0]
        message = f"{seam.name} twists nothing: what it joins still has two sides, and only lies with its wrong side up"
        hint = f'write "{seam.name.replace("~", "+")}"; ~ is for the join that closes a twisted band'
        return [Problem("surface", "warning", seam.span, message, hint)]
    if not joint.surface.orientable and not joint.surface.rims:
        message = f"{twisted[-1].name} leaves one side and no edge at all: nobody can sew that shut"
        return [Problem("surface", "warning", twisted[-1].span, message, "leave an edge open, or join without the twist: +")]
    return []


def _apart(source: AssemblySource, joint: Joint) -> list[Problem]:
    """Pieces that no seam joins, unless ``open`` says what stays open of each, or they are single panels (told by themselves)."""
    surface = joint.surface
    if surface.pieces < 2 or source.open is not None:
        return []
    groups: list[list[int]] = [[] for _ in range(surface.pieces)]
    for panel, piece in enumerate(surface.piece_of):
        groups[piece].append(panel)
    alone = {group[0] for group in groups if len(group) == 1}
    if alone and not any(panel in alone for seam in joint.seams for panel in (seam.edge_a.panel, seam.edge_b.panel)):
        return []
    named = "; ".join(listed([joint.panels[i].name for i in group]) for group in groups[:NAMED]) + ("; ..." if len(groups) > NAMED else "")
    alike = len({tuple(sorted(joint.panels[i].fabric.name for i in group)) for group in groups}) == 1
    hint = f"if they are {len(groups)} alike, write one of them and `copies = {len(groups)}`; " if alike else ""
    hint += "if they belong together, join them; if they stay apart, list their sides in `open`"
    message = f"the panels make {len(groups)} pieces that nothing joins: {named}"
    return [Problem("pieces", "warning", joint.panels[groups[1][0]].span, message, hint)]
