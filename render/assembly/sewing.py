"""The seams of an assembly put in order: planned, or as the pattern says, with their stitches and the gaps that they leave."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from motifold.render.assembly.joint import Joint, seam_ends, wedge_degrees
from motifold.render.assembly.model import Corner, Gap, SeamPass
from motifold.render.assembly.own_passes import prove_passes
from motifold.render.assembly.passes import Hub, SeamGraph, Spoke, Trail, Web, plan_trails
from motifold.render.assembly.reading import SeamPlan, resolve
from motifold.render.assembly.shapes import Point
from motifold.render.assembly.sides import stitch_range
from motifold.render.assembly.surface import Glue, Wheel, build_surface
from motifold.render.pattern.model import AssemblySource, SidePiece
from motifold.render.pattern.problem import Problem

AS_YOU_GO = ("join as you go", "joined as you go", "joining as you go", "jayg")


def joins_as_it_goes(method: str) -> bool:
    """Whether motifs are joined in their last round, so that nothing is left to sew."""
    return " ".join(method.lower().replace("-", " ").split()) in AS_YOU_GO


def sew(source: AssemblySource, joint: Joint, outlines: tuple[tuple[Point, ...], ...]) -> tuple[tuple[Trail, ...], tuple[Problem, ...]]:
    if joins_as_it_goes(source.seam.method):
        return (), ()
    ends = [seam_ends(joint, i) for i in range(len(joint.seams))]
    if source.seam.passes:
        written, problems = _written_passes(source, joint)
        if not problems:
            return prove_passes(written, [seam.name for seam in joint.seams], ends, source.span)
        return plan_trails(_graph(joint, ends, outlines)), problems
    return plan_trails(_graph(joint, ends, outlines)), ()


def _written_passes(source: AssemblySource, joint: Joint) -> tuple[list[list[int]], tuple[Problem, ...]]:
    """The seams that the pattern's passes name, each by itself ("north.left + west.top") or by one of its sides."""
    number = {panel.name: i for i, panel in enumerate(joint.panels)}
    by_side = {piece: i for i, plan in enumerate(joint.seams) for piece in (plan.a, plan.b) if piece is not None}
    problems: list[Problem] = []
    written: list[list[int]] = []
    for one in source.seam.passes:
        seams: list[int] = []
        for text in one:
            seam = _named_seam(text, by_side, joint, number)
            if seam is None:
                hint = "write the seam as in `join`, or one of its sides: base.top"
                problems.append(Problem("pass-unknown", "error", source.span, f"passes: no seam is called {text}", hint))
            else:
                seams.append(seam)
        written.append(seams)
    return written, tuple(problems)


def _named_seam(text: str, by_side: Mapping[SidePiece, int], joint: Joint, number: Mapping[str, int]) -> int | None:
    found = set()
    for part in text.replace("~", "+").split("+"):
        word = part.strip()
        if word == "itself":
            continue
        panel, dot, side = word.partition(".")
        name, _, fraction = side.rstrip("]").partition("[")
        over, _, under = (fraction or "1/1").partition("/")
        if not dot or not (over.isdecimal() and under.isdecimal()):
            return None
        piece = resolve(SidePiece(panel, name, int(over), int(under)), joint.panels, number)
        if isinstance(piece, str) or piece not in by_side:
            return None
        found.add(by_side[piece])
    return found.pop() if len(found) == 1 else None


def _graph(joint: Joint, ends: list[tuple[int, int]], outlines: tuple[tuple[Point, ...], ...]) -> SeamGraph:
    flat = tuple(seam.kind == "flat" for seam in joint.seams)
    glues: list[Glue | None] = [None] * len(joint.edges)
    for seam, at in zip(joint.seams, joint.first_edge, strict=True):
        if seam.kind == "flat":
            other = joint.number[seam.edge_b]
            glues[at], glues[other] = Glue(other, False), Glue(at, False)
    table = build_surface(tuple(edge.panel for edge in joint.edges), tuple(glues))
    flat_ends = tuple((table.corner_of[2 * at], table.corner_of[2 * at + 1]) for at in joint.first_edge)
    from_above = []
    for wheel in table.wheels:
        first = joint.edges[min(wheel.wedges)]
        x, y = outlines[first.panel][joint.shapes[first.panel].shape.starts[first.side]]
        from_above.append(-(x + y))
    from_inside = tuple(0.0 if wheel.closed else 1.0 for wheel in joint.surface.wheels)
    return SeamGraph(
        whole=Web(tuple(ends), _hubs(joint, joint.surface.wheels), from_inside),
        table=Web(flat_ends, _hubs(joint, table.wheels), tuple(from_above)),
        flat=flat,
        order=tuple(_order(joint, i) for i in range(len(joint.seams))),
    )


def _hubs(joint: Joint, wheels: tuple[Wheel, ...]) -> tuple[Hub, ...]:
    hubs = []
    for wheel in wheels:
        at, spokes = 0.0, []
        for i, wedge in enumerate(wheel.wedges):
            at += wedge_degrees(joint, wedge)
            if i < len(wheel.spokes):
                spokes.append(Spoke(_seam_end(joint, wheel.spokes[i]), at))
        hubs.append(Hub(tuple(spokes), at, wheel.closed))
    return tuple(hubs)


def _seam_end(joint: Joint, spoke: int) -> int:
    edge, end = divmod(spoke, 2)
    seam, first = joint.seam_of[edge]
    return 2 * seam + (end if first or joint.seams[seam].twist else 1 - end)


def _order(joint: Joint, index: int) -> tuple[float, ...]:
    """Net seams that lie across first, from the top; then those that stand, from the left; folds as written."""
    seam = joint.seams[index]
    cell = joint.panels[seam.edge_a.panel].cell
    if seam.kind == "fold" or cell is None:
        return (2.0, float(index))
    standing = seam.a.side in ("left", "right")
    return (1.0, float(cell[1]), float(cell[0])) if standing else (0.0, float(cell[0]), float(cell[1]))


def seam_passes(trails: tuple[Trail, ...], joint: Joint) -> tuple[SeamPass, ...]:
    """Each pass with its stitches. Pieces of the same two sides that follow each other are one stretch: no panels meet between them."""
    passes = []
    for number, trail in enumerate(trails, start=1):
        run: list[SeamPlan] = []
        each: list[int] = []
        meetings = int(trail.closed)
        for step in trail.steps:
            seam = joint.seams[step.seam]
            met = bool(each) and not _goes_on(run[-1], seam)
            run = [seam] if met or not run else [*run, seam]
            each.append(_run_stitches(run, joint) - _run_stitches(run[:-1], joint) + met)
            meetings += met
        passes.append(SeamPass(number, trail.steps, sum(each) + trail.closed, trail.closed, meetings, tuple(each)))
    return tuple(passes)


def _goes_on(one: SeamPlan, two: SeamPlan) -> bool:
    """Whether the second seam joins the next stretch of the same two sides."""
    if one.b is None or two.b is None or one.twist or two.twist:
        return False
    a, b, c, d = one.edge_a, one.edge_b, two.edge_a, two.edge_b
    same = (a.panel, a.side, b.panel, b.side) == (c.panel, c.side, d.panel, d.side)
    return same and ((a.high == c.low and b.low == d.high) or (a.low == c.high and b.high == d.low))


def _run_stitches(run: Sequence[SeamPlan], joint: Joint) -> int:
    """Of one seam its own; of stretches together what they make as one, for halves of an odd side must not both be rounded up."""
    if len(run) < 2 or any(seam.eased for seam in run):
        return sum(seam.stitches for seam in run)
    most = []
    for edges in ([seam.edge_a for seam in run], [seam.edge_b for seam in run]):
        side = joint.panels[edges[0].panel].fabric.sides[edges[0].side]
        most.append(stitch_range(side, min(edge.low for edge in edges), max(edge.high for edge in edges))[1])
    return min(most)


def find_gaps(joint: Joint, trails: tuple[Trail, ...], corners: tuple[Corner, ...]) -> tuple[Gap, ...]:
    """Corners inside the work where several seams end and no pass goes through. At an opening nothing is left open: its edge runs there."""
    seams_at = [0] * len(corners)
    through: set[int] = set()
    for trail in trails:
        starts = []
        for step in trail.steps:
            ends = seam_ends(joint, step.seam)
            starts.append(ends[0 if step.forward else 1])
            for corner in ends:
                seams_at[corner] += 1
        through.update(starts if trail.closed else starts[1:])
    return tuple(Gap(corner.at, i) for i, corner in enumerate(corners) if seams_at[i] > 1 and i not in through and not corner.on_opening)
