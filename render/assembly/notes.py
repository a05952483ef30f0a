"""What stands beside the finished thing at the end of a leader line, and the marks of its points."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from math import hypot

from motifold.render.assembly.measures import length_text
from motifold.render.assembly.model import Assembly, Rim
from motifold.render.assembly.sheet import Sheet, moved, toward, unit, words_box
from motifold.render.assembly.style import CAP_EM, INK, LETTER_PT, MM_PER_PT, PAPER, QUIET, THIN_MM
from motifold.render.drawing.display import Point
from motifold.render.drawing.fonts import text_width_mm

LEAD_MM = 4.2  # from one line of words to the next
NOTE_MM = 7.0  # what a note of one line takes
SIDE_MM = 1.0  # so near the side of what is drawn an edge is a side edge
RING_MM = 0.9  # radius of a point's mark
MOST_MARKED = 16
MOST_TOLD = 4  # marks that each have their angle beside them; of more, each angle once
MOST_OPENINGS = 4
CLEAR_MM = 1.5  # a note's words off all else


def note_room(lines: int) -> float:
    """How much of the height a note of so many lines takes, leader included."""
    return NOTE_MM + (lines - 1) * LEAD_MM if lines else 0.0


def rim_text(rim: Rim) -> str:
    turned = " turned back" if rim.turned else ""
    return f"{rim.name.replace('-', ' ').replace('_', ' ')}{turned}, {length_text(rim.depth_cm, rim.estimate)} deep"


def with_edgings(rims: Sequence[Rim]) -> str:
    """ " with its brim": said of measures that hold edgings."""
    names = list(dict.fromkeys(rim.name for rim in rims if not rim.turned))
    if not names:
        return ""
    return f" with its {names[0]}" if len(names) == 1 else " with its edgings"


def estimates_said(rims: Iterable[Rim]) -> str:
    """The sentence that marks what is an estimate; "" where all was measured."""
    names = list(dict.fromkeys(rim.name for rim in rims if rim.estimate))
    return f" How deep the {' and the '.join(names)} will be is an estimate: no rows of it were measured." if names else ""


def opening_lines(assembly: Assembly, rims: Iterable[Rim], opening: int, girth: bool = True) -> list[str]:
    """What is written at an opening: its girth, and its edgings."""
    cm = assembly.openings[opening].girth_cm
    lines = [f"opening {length_text(cm)} round"] if girth and cm is not None else []
    return lines + [rim_text(rim) for rim in rims if rim.opening == opening]


def note(sheet: Sheet, tips: Sequence[Point], lines: Sequence[str], up: bool) -> bool:
    """Words with a leader to one of ``tips``, above what is drawn (``up``) or below it, the other way where there is no room.

    It takes the nearest place where both stand clear; False where there is none.
    """
    if not lines or not tips or sheet.extent is None:
        return False
    # Broken in two, words may find room within what is narrow, beside its edge.
    ways_told = (list(lines), [part for line in lines for part in _broken(line)])
    found: list[tuple[float, Point, Point, Point, int]] = []
    for narrow, told in enumerate(ways_told):
        wide, high = _size(told)
        for tip in tips:
            places = [one for way in (up, not up) for one in _places(sheet.extent, tip, wide, high, way, way != up)]
            found += [(cost + narrow, at, foot, end, narrow) for cost, at, foot, end in places if not narrow or cost == 0.0]
    for _, (centre, low), foot, tip, narrow in sorted(found):
        told = ways_told[narrow]
        wide, high = _size(told)
        box = (centre - wide / 2, low, centre + wide / 2, low + high)
        if sheet.free(box, CLEAR_MM) and not _through_words(sheet, foot, tip) and not sheet.crosses_rule(foot, tip, "dimension"):
            sheet.begin("note", ", ".join(lines))
            for i, line in enumerate(told):
                sheet.words((centre, low + (len(told) - 1 - i) * LEAD_MM), line)
            sheet.rule(foot, tip, "leader")
            sheet.arrow(tip, unit(foot, tip), INK, 2.0, slim=True)
            sheet.end()
            return True
    return False


def _broken(line: str) -> list[str]:
    """ "opening" and "10 cm (4 in) round": the name of what is measured on a line of its own."""
    name, _, rest = line.partition(" ")
    return [name, rest] if name == "opening" and rest else [line]


def _size(lines: Sequence[str]) -> tuple[float, float]:
    """Width and height of lines of words."""
    return max(text_width_mm(line, "sans", LETTER_PT) for line in lines), (len(lines) - 1) * LEAD_MM + CAP_EM * LETTER_PT * MM_PER_PT


def _places(
    extent: tuple[float, float, float, float], tip: Point, wide: float, high: float, up: bool, other: bool
) -> list[tuple[float, Point, Point, Point]]:
    """Places for words of a size above or below what is drawn: cost, middle of the last line's foot, where the leader starts, its tip.

    At a side edge also within the thing, where a leader from above would run along that edge.
    """
    x0, y0, x1, y1 = extent
    half = min(wide, x1 - x0) / 2
    found = []
    inward = 1.0 if tip[0] - x0 < SIDE_MM else -1.0
    if (tip[0] - x0 < SIDE_MM or x1 - tip[0] < SIDE_MM) and wide + 8.0 < x1 - x0 and y0 + high < tip[1] < y1 - high:
        found.append((0.0, (tip[0] + inward * (5.0 + wide / 2), tip[1] - high / 2), (tip[0] + inward * 4.2, tip[1]), tip))
    for shift in (-0.8, -0.5, -0.25, 0.0, 0.25, 0.5, 0.8):
        centre = min(max(tip[0] + shift * wide, x0 + half), x1 - half)
        for gap in (3.5, 6.0, 9.0, 13.0):
            low = y1 + gap if up else y0 - gap - high
            foot = min(max(tip[0], centre - wide / 2 + 2.0), centre + wide / 2 - 2.0), low - 1.2 if up else low + high + 1.2
            cost = hypot(foot[0] - tip[0], foot[1] - tip[1]) + gap + 0.5 * abs(foot[0] - tip[0]) + (1000.0 if other else 0.0)
            found.append((round(cost, 3), (centre, low), foot, tip))
    return found


def _through_words(sheet: Sheet, a: Point, b: Point) -> bool:
    steps = max(2, int(hypot(b[0] - a[0], b[1] - a[1]) / 0.5))
    for i in range(steps + 1):
        x, y = toward(a, b, i / steps)
        if sheet.worded((x - 0.4, y - 0.4, x + 0.4, y + 0.4)):
            return True
    return False


def points_of(assembly: Assembly) -> dict[int, float]:
    """The corners of one copy where the thing makes a point (under 360 degrees) or ruffles (over), and how far round they are."""
    count = len(assembly.corners) // assembly.copies
    return {i: c.degrees for i, c in enumerate(assembly.corners[:count]) if not c.on_opening and abs(c.degrees - 360) > 1e-6}


def mark_points(sheet: Sheet, places: Sequence[tuple[Point, float]], middle: Point) -> None:
    """A ring at each, and its angle beside it where there is room; none where they are so many that marks would hide the thing."""
    if not places or len(places) > MOST_MARKED:
        return
    sheet.begin("points")
    for at, _ in places:
        sheet.disc(at, RING_MM, PAPER)
        sheet.ring(at, RING_MM, INK, THIN_MM)
    em = LETTER_PT * MM_PER_PT
    told: set[int] = set()
    for at, degrees in places:
        if round(degrees) in told and len(places) > MOST_TOLD:
            continue
        text = f"{degrees:.0f}°"
        out = unit(middle, at)
        wide = text_width_mm(text, "sans", LETTER_PT)
        ways = [out, (out[0], -out[1]), (-out[0], out[1]), (-out[0], -out[1]), (1.0, 0.0), (-1.0, 0.0), (0.0, 1.0), (0.0, -1.0)]
        for way in ways:
            x, y = moved(at, way, RING_MM + 1.0 + abs(way[0]) * wide / 2 + abs(way[1]) * CAP_EM / 2 * em)
            foot = x, y - CAP_EM / 2 * em
            if sheet.free(words_box(foot, text, LETTER_PT), 0.3):
                sheet.words(foot, text, color=QUIET)
                told.add(round(degrees))
                break
    sheet.end()


def points_said(assembly: Assembly) -> str:
    """ "; 4 points of 270 degrees": what the description says of them."""
    found: dict[int, int] = {}
    for degrees in points_of(assembly).values():
        found[round(degrees)] = found.get(round(degrees), 0) + 1
    said = [f"{n} {'point' if d < 360 else 'ruffle'}{'s' if n > 1 else ''} of {d} degrees" for d, n in sorted(found.items())]
    return "; " + ", ".join(said) if said else ""
