"""The plan of the colourways: every panel where the net lays it, in its yarns, with the name of its colourway."""

from __future__ import annotations

from math import hypot

from motifold.render.assembly.model import Assembly, Panel
from motifold.render.drawing.display import Drawing, Operation, Point, StrokePath
from motifold.render.drawing.fonts import text_width_mm
from motifold.render.pattern.model import Colourway, Pattern
from motifold.render.sizing import paint
from motifold.render.sizing.colourways import place_colourways
from motifold.render.sizing.paint import INK, LETTER_PT, MM_PER_PT, PAPER, SMALL_PT

_LONGEST = 150.0   # mm of the longer side
_LARGEST = 30.0    # mm across a panel


def draw_placing(pattern: Pattern, assembly: Assembly | None) -> Drawing | None:
    """None where no panel has a colourway. The panels of the first copy; yarns from the middle outwards, in the order of the text."""
    placing = place_colourways(pattern, assembly)
    if assembly is None or not placing.ways:
        return None
    panels = [panel for panel in assembly.panels if panel.copy == 1]
    points = [point for panel in panels for point in panel.outline_cm]
    left, bottom = min(x for x, _ in points), min(y for _, y in points)
    width, height = max(x for x, _ in points) - left, max(y for _, y in points) - bottom
    across = max(_across(panel) for panel in panels)
    scale = min(_LONGEST / max(width, height, 1e-9), _LARGEST / max(across, 1e-9))
    ways = {way.name: way for motif in pattern.motifs for way in motif.colourways}
    letters = _letters(tuple(dict.fromkeys(placing.ways.values())))
    operations: list[Operation] = []
    for panel in panels:
        outline = [((x - left) * scale, (y - bottom) * scale) for x, y in panel.outline_cm]
        operations += _panel(pattern, outline, ways.get(placing.ways.get(panel.name, "")), letters)
    legend, reach, low = _legend(pattern, ways, letters, placing.ways)
    made = [f"{name} ({letter}) {sum(way == name for way in placing.ways.values())} times" for name, letter in letters.items()]
    return Drawing(
        (-1.0, low, max(width * scale, reach) + 1.0, height * scale + 1.0),
        (*operations, *legend),
        f"{pattern.title}: where each colourway goes",
        f"The plan of the colourways: {', '.join(made)}.",
    )


def _across(panel: Panel) -> float:
    xs = [x for x, _ in panel.outline_cm]
    return max(xs) - min(xs)


def _letters(names: tuple[str, ...]) -> dict[str, str]:
    """A letter or two for each colourway: its own first letter where that is free."""
    found: dict[str, str] = {}
    for place, name in enumerate(names, 1):
        wanted = name[:1].upper()
        free = wanted and wanted not in found.values()
        found[name] = wanted if free else str(place)
    return found


def _yarns(pattern: Pattern, way: Colourway | None) -> list[str]:
    """The colours of a colourway in the order of the yarns that the file has."""
    keys = list(way.yarns) if way is not None else []
    order = [yarn.key for yarn in pattern.yarns]
    colours = {yarn.key: yarn.hex or paint.GREYS[place % len(paint.GREYS)] for place, yarn in enumerate(pattern.yarns)}
    worked = [way.yarns[key] for key in sorted(keys, key=order.index)] if way is not None else []
    return [colours[key] for key in dict.fromkeys(worked)]


def _panel(pattern: Pattern, outline: list[Point], way: Colourway | None, letters: dict[str, str]) -> list[Operation]:
    """Its yarns as bands, the last outermost; its letter on a spot of paper."""
    found: list[Operation] = []
    centre = (sum(x for x, _ in outline) / len(outline), sum(y for _, y in outline) / len(outline))
    colours = _yarns(pattern, way)[::-1] or [PAPER]
    for place, colour in enumerate(colours):
        share = 1 - place / len(colours)
        found.append(paint.filled(paint.polygon([_toward(centre, point, share) for point in outline]), colour))
    found.append(StrokePath(paint.polygon(outline), INK, 0.3))
    if way is not None:
        inner = min(hypot(x - centre[0], y - centre[1]) for x, y in outline)
        radius = max(min(2.6, inner * 0.5), 1.2)
        found.append(paint.filled(paint.disc(*centre, radius), PAPER))
        size = min(LETTER_PT, 1.3 * radius / MM_PER_PT)
        found.append(paint.words(*centre, letters[way.name], size, INK, "middle", bold=True))
    return found


def _toward(centre: Point, point: Point, share: float) -> Point:
    return centre[0] + (point[0] - centre[0]) * share, centre[1] + (point[1] - centre[1]) * share


def _legend(
    pattern: Pattern, ways: dict[str, Colourway], letters: dict[str, str], placed: object
) -> tuple[list[Operation], float, float]:
    """A line for each colourway: its letter, its name, how many, and its yarns by name."""
    named = {yarn.key: yarn.name for yarn in pattern.yarns}
    counted = list(placed.values()) if isinstance(placed, dict) else []
    found: list[Operation] = []
    reach, y = 0.0, -5.0
    for name, letter in letters.items():
        yarns = [named.get(key, key) for key in dict.fromkeys(ways[name].yarns.values())]
        text = f"{name}: make {counted.count(name)}" + (f" ({', '.join(yarns)})" if yarns else "")
        found.append(paint.words(2.0, y, letter, LETTER_PT, INK, "middle", bold=True))
        found.append(paint.words(5.5, y, text, SMALL_PT))
        reach = max(reach, 5.5 + text_width_mm(text, "sans", SMALL_PT))
        y -= 4.8
    return found, reach, y + 1.0
