"""The panels of one copy on a sheet: where each side lies in mm, and which seams lie closed already."""

from __future__ import annotations

import itertools
from collections.abc import Callable, Sequence
from dataclasses import replace
from math import hypot

from motifold.render.assembly.model import Assembly, Panel, Seam
from motifold.render.assembly.sides import interval
from motifold.render.assembly.style import FOLD_OFF_MM, LETTER_PT, TAG_MM
from motifold.render.drawing.display import Drawing, Point
from motifold.render.drawing.fonts import text_width_mm
from motifold.render.pattern.model import SidePiece
from motifold.symbols.record import dataclass

LARGEST_PANEL_MM = 40.0
SMALLEST_PANEL_MM = 4.3  # a figure of 9 pt fits beside each
NAME_CLEAR_MM = 0.8  # so much of a panel's width its name leaves free
MOST_GROWN = 1.2  # by so much a layout may outgrow its room so that every panel's name fits
MARGINS_MM = 3.0  # white round a drawing
WIDE_MM = 100.0  # in less room panels cannot shrink without crowding
LETTERED_MM = 8.5  # sides shorter than this have no room for a letter each beside the panel's name


@dataclass(frozen=True, slots=True)
class Rimline:
    """A line along a panel's rim; ``around``: it runs counter-clockwise, so that outside is on its right."""

    points: tuple[Point, ...]
    around: bool

    def turned(self) -> Rimline:
        return Rimline(self.points[::-1], not self.around)

    @property
    def length(self) -> float:
        return sum(hypot(b[0] - a[0], b[1] - a[1]) for a, b in zip(self.points, self.points[1:], strict=False))

    def outward(self, at: int) -> Point:
        """Unit vector off the panel at point ``at``."""
        a, b = self.points[max(at - 1, 0)], self.points[min(at + 1, len(self.points) - 1)]
        length = hypot(b[0] - a[0], b[1] - a[1]) or 1.0
        right = ((b[1] - a[1]) / length, (a[0] - b[0]) / length)
        return right if self.around else (-right[0], -right[1])

    def beside(self, off: float, low: float = 0.0, high: float = 1.0) -> Rimline:
        """The stretch between two shares of it, moved ``off`` outwards."""
        kept = Rimline(stretch(self.points, low, high), self.around)
        moved = []
        for i, (x, y) in enumerate(kept.points):
            out = kept.outward(i)
            moved.append((x + out[0] * off, y + out[1] * off))
        return Rimline(tuple(moved), self.around)


@dataclass(frozen=True, slots=True)
class Flatlay:
    """One copy, laid out. ``outlines`` in mm; ``touching[s]``: the two sides of seam s lie against each other; ``mm_per_cm``: the scale.

    ``fold_number[s]``: counts the seams that lie open, from 0; ``dense``: tags beside their sides would run into each other.
    """

    assembly: Assembly
    panels: tuple[Panel, ...]
    outlines: tuple[tuple[Point, ...], ...]
    seams: tuple[int, ...]
    touching: tuple[bool, ...]
    mm_per_cm: float
    number: dict[str, int]
    fold_number: dict[int, int]
    dense: bool = False

    @property
    def crammed(self) -> bool:
        """Whether there is no room for a letter at each open side: then the plan has none, and each step has those that it sews."""
        return self.dense and len(self.fold_number) > 6 and self.side_mm < LETTERED_MM

    def loose(self) -> list[list[int]]:
        """The panels in groups that lie together on the sheet, by numbers."""
        group = list(range(len(self.panels)))

        def root(i: int) -> int:
            while group[i] != i:
                group[i] = group[group[i]]
                i = group[i]
            return i

        for index in self.seams:
            seam = self.assembly.seams[index]
            if self.touching[index] and seam.b is not None:
                one, two = root(self.number[seam.a.panel]), root(self.number[seam.b.panel])
                group[max(one, two)] = min(one, two)
        found: dict[int, list[int]] = {}
        for i in range(len(self.panels)):
            found.setdefault(root(i), []).append(i)
        return list(found.values())

    @property
    def side_mm(self) -> float:
        """The shortest side."""
        return min(
            (
                hypot(b[0] - a[0], b[1] - a[1])
                for p, o in zip(self.panels, self.outlines, strict=True)
                if len(p.sides) > 2
                for a, b in _pairs(o)
            ),
            default=min((max(x for x, _ in o) - min(x for x, _ in o) for o in self.outlines), default=1.0),
        )

    def piece(self, piece: SidePiece) -> tuple[Point, ...]:
        """The line of a piece of a side, counter-clockwise round its panel."""
        at = self.number[piece.panel]
        panel, outline = self.panels[at], self.outlines[at]
        count = len(panel.sides)
        side = panel.sides.index(piece.side)
        if len(outline) == count:
            points: tuple[Point, ...] = (outline[side], outline[(side + 1) % count])
        elif count == 1:
            points = (*outline, outline[0])
        else:
            # Half a circle: the arc, then the cut.
            points = outline if side == 0 else (outline[-1], outline[0])
        if piece.parts == 1:
            return points
        low, high = interval(piece)
        return stretch(points, float(low), float(high))

    def seam_line(self, index: int) -> tuple[Point, ...]:
        """Where a touching seam lies: midway between its sides, in the direction of side a."""
        seam = self.assembly.seams[index]
        a = self.piece(seam.a)
        if seam.b is None:
            return a
        b = self.piece(seam.b)[::-1]
        return tuple(((p[0] + q[0]) / 2, (p[1] + q[1]) / 2) for p, q in zip(a, b, strict=True))

    def fold_lines(self, index: int) -> tuple[Rimline, Rimline]:
        """The two lines that a seam brings together, both in the direction of side a. A side folded on itself: its halves, to the fold."""
        seam = self.assembly.seams[index]
        whole = self.piece(seam.a)
        if seam.b is None:
            second = stretch(whole, 0.5, 1.0)
            return Rimline(stretch(whole, 0.0, 0.5), True), Rimline(second if seam.twist else second[::-1], seam.twist)
        b = self.piece(seam.b)
        return Rimline(whole, True), Rimline(b if seam.twist else b[::-1], seam.twist)

    def side_of(self, panel: int, side: int) -> tuple[Point, ...]:
        """The line of a whole side, by numbers."""
        return self.piece(SidePiece(self.panels[panel].name, self.panels[panel].sides[side]))


def _pairs(points: Sequence[Point]) -> list[tuple[Point, Point]]:
    return list(zip(points, [*points[1:], points[0]], strict=True))


def stretch(points: Sequence[Point], low: float, high: float) -> tuple[Point, ...]:
    """The part of a polyline between two shares of its length."""
    if low <= 0 and high >= 1:
        return tuple(points)
    steps = [hypot(b[0] - a[0], b[1] - a[1]) for a, b in itertools.pairwise(points)]
    total = sum(steps) or 1.0
    kept: list[Point] = []
    at = 0.0
    for (a, b), step in zip(itertools.pairwise(points), steps, strict=True):
        start, end = low * total - at, high * total - at
        if end > 0 and start < step:
            first, last = max(start, 0.0) / (step or 1.0), min(end, step) / (step or 1.0)
            if not kept:
                kept.append((a[0] + (b[0] - a[0]) * first, a[1] + (b[1] - a[1]) * first))
            kept.append((a[0] + (b[0] - a[0]) * last, a[1] + (b[1] - a[1]) * last))
        at += step
    return tuple(kept)


def lay(assembly: Assembly, width_mm: float, height_mm: float) -> Flatlay:
    """One copy scaled to fit the room, its lower left corner at the origin."""
    panels = tuple(panel for panel in assembly.panels if panel.copy == 1)
    points = [p for panel in panels for p in panel.outline_cm]
    left, low = min(x for x, _ in points), min(y for _, y in points)
    wide, high = max(x for x, _ in points) - left, max(y for _, y in points) - low
    reach = max(max(x for x, _ in p.outline_cm) - min(x for x, _ in p.outline_cm) for p in panels)
    least = min(max(x for x, _ in p.outline_cm) - min(x for x, _ in p.outline_cm) for p in panels)
    scale = min(width_mm / (wide or 1), height_mm / (high or 1), LARGEST_PANEL_MM / (reach or 1))
    scale = max(scale, SMALLEST_PANEL_MM / (least or 1))
    named = 0.0 if assembly.passes else max(_named_scale(panel) for panel in panels)
    scale = named if scale < named < MOST_GROWN * scale else scale
    outlines = tuple(tuple(((x - left) * scale, (y - low) * scale) for x, y in panel.outline_cm) for panel in panels)
    seams = tuple(range(len(assembly.seams) // assembly.copies))
    number = {panel.name: i for i, panel in enumerate(panels)}
    flat = Flatlay(assembly, panels, outlines, seams, (), scale, number, {})
    slack = 0.05 + assembly.adds_cm * scale * 1.01
    touching = tuple(_touches(flat, assembly.seams[i], slack) for i in seams)
    apart = {seam: i for i, seam in enumerate(seam for seam in _as_sewn(assembly, seams) if not touching[seam])}
    flat = Flatlay(assembly, panels, outlines, seams, touching, scale, number, apart)
    return replace(flat, dense=_crowded(flat))


def fitted(draw: Callable[[float], tuple[Drawing, ...]], width_mm: float) -> tuple[tuple[Drawing, ...], float]:
    """The drawings, all as wide, that ``draw`` lays out for a width, and that width.

    What stands outside the panels is known only once it is drawn, and may need more: then they are laid out narrower.
    """
    drawings = draw(width_mm)
    over = drawings[0].width_mm - width_mm - MARGINS_MM if drawings else 0.0
    if width_mm >= WIDE_MM and 0 < over < width_mm / 4:
        again = draw(width_mm - over)
        if again[0].width_mm < drawings[0].width_mm:
            return again, width_mm - over
    return drawings, width_mm


def _as_sewn(assembly: Assembly, seams: Sequence[int]) -> list[int]:
    """The seams of one copy in the order of sewing, so that letters run on as the work does; those that no pass sews as written."""
    sewn = (step.seam for one in assembly.passes for step in one.steps)
    return list(dict.fromkeys([*(seam for seam in sewn if seam < len(seams)), *seams]))


def _named_scale(panel: Panel) -> float:
    """From which scale on a panel's name fits into it, mm per cm."""
    xs, ys = [x for x, _ in panel.outline_cm], [y for _, y in panel.outline_cm]
    across = min(max(xs) - min(xs), max(ys) - min(ys)) * (0.58 if len(panel.outline_cm) == 3 else 1.0)
    return (text_width_mm(panel.name, "sans-bold", LETTER_PT) + NAME_CLEAR_MM + 0.01) / (across or 1.0)


def _crowded(flat: Flatlay) -> bool:
    """Whether tags in the middle of every open seam's sides, or tags and panels, would run into each other."""
    centres = []
    for seam in flat.fold_number:
        for line in flat.fold_lines(seam):
            centres.append(line.beside(min(FOLD_OFF_MM, line.length * 0.22), 0.49, 0.51).points[0])
    if len(centres) > 150:
        return True
    shortest = min((line.length for seam in flat.fold_number for line in flat.fold_lines(seam)), default=0.0)
    # On short sides the number of the pass stands outside the letter, and takes room too.
    near = 2 * TAG_MM + (0.5 if shortest > 4 * TAG_MM + 7 else 2.0)
    if any(hypot(a[0] - b[0], a[1] - b[1]) < near for i, a in enumerate(centres) for b in centres[:i]):
        return True
    return any(_inside(centre, outline) for centre in centres for outline in flat.outlines)


def _inside(point: Point, outline: Sequence[Point]) -> bool:
    """Whether a point lies in a convex outline (counter-clockwise)."""
    return all((b[0] - a[0]) * (point[1] - a[1]) - (b[1] - a[1]) * (point[0] - a[0]) > 0 for a, b in _pairs(outline))


def _touches(flat: Flatlay, seam: Seam, slack: float) -> bool:
    if seam.b is None or seam.twist:
        return False
    a, b = flat.piece(seam.a), flat.piece(seam.b)
    if len(a) != 2 or len(b) != 2:
        return False
    return all(hypot(p[0] - q[0], p[1] - q[1]) <= slack for p, q in zip(a, b[::-1], strict=True))
