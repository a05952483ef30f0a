"""Seam passes painted on a sheet, for the net and for each step."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence
from itertools import pairwise
from math import hypot

from motifold.render.assembly.flatlay import Flatlay, Rimline
from motifold.render.assembly.fold_paint import State, eased_in, paint_fold, paint_gathers
from motifold.render.assembly.legs import legs_of, seam_line_of
from motifold.render.assembly.model import PassStep, SeamPass
from motifold.render.assembly.sheet import Sheet, mean_point, moved, toward, unit
from motifold.render.assembly.steps import AssemblyStep
from motifold.render.assembly.style import (
    BOLD_MM,
    CAP_EM,
    DONE,
    FLAT,
    FOLD,
    LETTER_PT,
    MM_PER_PT,
    TAG_MM,
    THICK_MM,
)
from motifold.render.drawing.display import Point
from motifold.render.drawing.fonts import text_width_mm
from motifold.symbols.record import dataclass

GAP_MM = 2.6  # radius of the ring round a gap
ROUND_MM = 2.4  # a pass turns a corner in a curve
START_MM = 1.6  # a start or an end stays this far off its corner


@dataclass(frozen=True, slots=True)
class Start:
    """Where a run of one pass starts on the sheet, for its number: the place, the way on, how far off its corner it is, its first seam."""

    at: Point
    along: Point
    inset: float
    length: float
    name: str


def paint_pass(sheet: Sheet, flat: Flatlay, one: SeamPass, state: State, only: Sequence[int] | None = None) -> list[Start]:
    """The lines of one pass (``only``: just these of its steps), and where its numbers belong: see ``paint_numbers``."""
    starts: list[Start] = []
    chosen = set(range(len(one.steps)) if only is None else only)
    sheet.begin("pass", f"pass {one.number}", (("pass", str(one.number)),))
    for leg in legs_of(flat, one):
        run = [at for at in leg.steps if at in chosen]
        if not run:
            continue
        if not flat.touching[one.steps[run[0]].seam]:
            paint_fold(sheet, flat, one, run[0], state, leg.name)
            continue
        if state != "done":
            for at in run:
                _paint_eased(sheet, flat, one.steps[at])
        starts += _paint_run(sheet, flat, one, run, state, leg.name)
    sheet.end()
    return starts


def _paint_eased(sheet: Sheet, flat: Flatlay, step: PassStep) -> None:
    seam = flat.assembly.seams[step.seam]
    longer = eased_in(seam)
    if longer is not None and seam.b is not None:
        # Where the sides lie together the strokes stand within the panel that is eased in.
        paint_gathers(sheet, Rimline(flat.piece((seam.a, seam.b)[longer]), False), FLAT)


def _paint_run(sheet: Sheet, flat: Flatlay, one: SeamPass, run: Sequence[int], state: State, name: str) -> list[Start]:
    color, width = (DONE, THICK_MM) if state == "done" else (FLAT, BOLD_MM if state == "now" else THICK_MM)
    corners = [seam_line_of(flat, one.steps[run[0]])[0], *(seam_line_of(flat, one.steps[at])[-1] for at in run)]
    starts, ends = run[0] == 0, run[-1] == len(one.steps) - 1
    side = min(hypot(b[0] - a[0], b[1] - a[1]) for a, b in pairwise(corners))
    inset = min(START_MM, side * 0.18)
    corners[0] = moved(corners[0], unit(corners[0], corners[1]), inset)
    corners[-1] = moved(corners[-1], unit(corners[-1], corners[-2]), inset)
    rounded(sheet, corners, min(ROUND_MM, side * 0.3), color, width)
    if state == "done":
        return []
    size = min(2.2 if state == "plain" else 3.2, side * 0.3)
    for i, (a, b) in enumerate(pairwise(corners)):
        if i or not _number_on_line(flat, side):
            along = unit(a, b)
            sheet.arrow(moved(toward(a, b, 0.5), along, size / 2), along, color, size)
    last = unit(corners[-2], corners[-1])
    if starts:
        sheet.dot(corners[0], color)
    if ends:
        sheet.bar(corners[-1], last, color, width)
    else:
        # The pass goes on at another place of the sheet.
        sheet.arrow(moved(corners[-1], last, 0.8), last, color, size)
    first = unit(corners[0], corners[1])
    return [Start(corners[0], first, inset, hypot(corners[1][0] - corners[0][0], corners[1][1] - corners[0][1]), name)]


def _number_on_line(flat: Flatlay, side: float) -> bool:
    """Where letters stand close, a pass's number stands on its line."""
    return flat.dense and side > 2 * TAG_MM + 2.5


def paint_numbers(sheet: Sheet, flat: Flatlay, starts: Sequence[Start]) -> None:
    """Each pass's number by its start, when all lines are there: behind it, else beside it, wherever nothing lies."""
    plain = flat.side_mm < 2 * TAG_MM + 0.6
    radius = 1.75 if plain else TAG_MM
    for start in starts:
        text = start.name
        if _number_on_line(flat, start.length):
            sheet.tag(moved(start.at, start.along, start.length / 2), text, FLAT, filled=True)
            continue
        across = (-start.along[1], start.along[0])
        places = [moved(start.at, start.along, -start.inset - radius - 1.0)]
        for aside in (1.5, 2.6, 4.0):
            for far in (radius + 0.6, radius + 2.0, radius + 4.0, radius + 7.0):
                places += [moved(moved(start.at, start.along, far), across, sign * (radius + aside)) for sign in (1, -1)]
        wide = max(radius, text_width_mm(text, "sans-bold", LETTER_PT) / 2 + (0.0 if plain else 0.7))
        free = [p for p in places if sheet.free((p[0] - wide, p[1] - radius, p[0] + wide, p[1] + radius), 0.15)]
        if not free:
            # No room beside it: the number stands on its line.
            shares = (0.3, 0.7, 0.5)
            on_line = [moved(start.at, start.along, start.length * share) for share in shares]
            clear = [p for p in on_line if not sheet.worded((p[0] - TAG_MM, p[1] - TAG_MM, p[0] + TAG_MM, p[1] + TAG_MM))]
            sheet.tag(clear[0] if clear else on_line[-1], text, FLAT, filled=True)
            continue
        at = free[0]
        if plain:
            sheet.words((at[0], at[1] - CAP_EM / 2 * LETTER_PT * MM_PER_PT), text, LETTER_PT, "sans-bold", FLAT)
        else:
            sheet.tag(at, text, FLAT, filled=True)


def rounded(sheet: Sheet, corners: Sequence[Point], radius: float, color: str, width: float) -> None:
    """A polyline that turns its corners in curves."""
    start = corners[0]
    for before, corner, after in zip(corners, corners[1:], corners[2:], strict=False):
        into, out = unit(before, corner), unit(corner, after)
        if abs(into[0] * out[1] - into[1] * out[0]) < 1e-6:
            continue
        one, two = moved(corner, into, -radius), moved(corner, out, radius)
        sheet.line([start, one], color, width)
        sheet.curve(one, toward(one, corner, 0.6), toward(two, corner, 0.6), two, color, width)
        start = two
    sheet.line([start, corners[-1]], color, width)


def paint_gap(sheet: Sheet, flat: Flatlay, corners: Iterable[tuple[str, int]]) -> None:
    """A ring round every place of the sheet that is one of the corners."""
    places = {flat.side_of(flat.number[name], index)[0] for name, index in corners}
    kept: list[Point] = []
    for place in sorted(places):
        if all(hypot(place[0] - x, place[1] - y) > 1.0 for x, y in kept):
            kept.append(place)
            sheet.ring(place, GAP_MM, FOLD, THICK_MM)


# --- motifs joined as they are worked -----------------------------------------------------------------------------------


def paint_joined(sheet: Sheet, flat: Flatlay, step: AssemblyStep, state: State) -> None:
    """The sides along which the motifs of a step are joined to those before them."""
    sheet.begin("joined", ", ".join(step.made), (("panel", step.made[0]),))
    one = SeamPass(step.number, step.steps, 0, False)
    for at, sewn in enumerate(step.steps):
        if flat.touching[sewn.seam]:
            line = flat.seam_line(sewn.seam)
            sheet.line([toward(line[0], line[-1], 0.08), toward(line[0], line[-1], 0.92)], FLAT, BOLD_MM if state == "now" else THICK_MM)
        else:
            paint_fold(sheet, flat, one, at, state, str(one.number))
    sheet.end()


def paint_order(sheet: Sheet, flat: Flatlay, order: Sequence[str], only: Collection[str] | None = None) -> bool:
    """The number of each motif (``only``: of these) in the order of work: in a corner of its panel, else plain figures below its name.

    All of them or, where one finds no room, none; whether they were painted.
    """
    wanted = [(str(number), flat.outlines[flat.number[name]]) for number, name in enumerate(order, start=1) if only is None or name in only]
    places = [_order_place(sheet, text, outline) for text, outline in wanted]
    if any(place is None for place in places):
        return False
    for (text, _), place in zip(wanted, places, strict=True):
        if place is not None and place[1]:
            sheet.tag(place[0], text, FLAT, filled=True)
        elif place is not None:
            sheet.words(place[0], text, LETTER_PT, "sans-bold", FLAT)
    return True


def _order_place(sheet: Sheet, text: str, outline: Sequence[Point]) -> tuple[Point, bool] | None:
    """Where the number of a panel has room, and whether as a tag."""
    half = CAP_EM / 2 * LETTER_PT * MM_PER_PT
    middle = mean_point(outline)
    corner = min(outline, key=lambda p: (round(p[0] - p[1], 6), p))
    inward = unit(corner, middle)
    for far in (4.4, 3.9, 5.5):
        x, y = moved(corner, inward, far)
        if sheet.free((x - TAG_MM, y - TAG_MM, x + TAG_MM, y + TAG_MM), 0.1):
            return (x, y), True
    wide = text_width_mm(text, "sans-bold", LETTER_PT)
    low = min(y for _, y in outline)
    for down in (0.0, 2.5, 2.9, 3.6):
        at = middle[0], middle[1] - down
        if at[1] - half > low + 0.6 and sheet.free((at[0] - wide / 2, at[1] - half, at[0] + wide / 2, at[1] + half), 0.0):
            return (at[0], at[1] - half), False
    return None
