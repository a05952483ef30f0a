"""The growth curve: girth, or width, by round, with the bodies to fit and what their ease allows."""

from __future__ import annotations

from collections.abc import Callable

from motifold.render.drawing.display import Drawing, Operation, StrokePath
from motifold.render.drawing.fonts import text_width_mm
from motifold.render.pattern.model import MotifSource, Pattern
from motifold.render.sizing import paint
from motifold.render.sizing.model import BodyFit, SizeTable
from motifold.render.sizing.own import own_of
from motifold.render.sizing.paint import INK, LETTER_PT, QUIET, SMALL_PT, THICK_MM, THIN_MM
from motifold.render.sizing.reading import in_inches, sized_motif
from motifold.render.sizing.ruler import Ruler, read_ease, ruler_for
from motifold.render.sizing.units import convert, length_text, number_text, one_length
from motifold.render.sizing.width import gauge_of
from motifold.symbols.record import dataclass

_WIDE, _HIGH = 100.0, 80.0  # the plot itself
_CURVE = "#0072b2"
_MOST_BODIES = 14  # more lines could not be told apart
_LABEL_GAP = 4.6
_LANE = 2.2        # from one bar of ease to the next, where they overlap


@dataclass(frozen=True, slots=True)
class _Plot:
    """Where rounds and centimetres stand in the plot."""

    first: int
    last: int
    low: float
    high: float

    def x(self, rounds: float) -> float:
        return _WIDE * (rounds - self.first) / max(self.last - self.first, 1)

    def y(self, cm: float) -> float:
        return _HIGH * (cm - self.low) / (self.high - self.low)


def draw_growth(pattern: Pattern, table: SizeTable) -> Drawing | None:
    """None where sizes are not made by rounds: their stitches are their size, and nothing grows."""
    motif = sized_motif(pattern)
    ruler = ruler_for(pattern, motif) if motif is not None else None
    bodies = tuple(body for body in table.bodies if len(body.fits) > 1)[:_MOST_BODIES]
    if motif is None or ruler is None or not bodies:
        return None
    plot = _plot(pattern, ruler, bodies)
    imperial = in_inches(pattern)
    said = "girth" if ruler.across != 1 else "width"
    operations = [
        *_grid(plot, motif, said, imperial), *_bodies(pattern, plot, bodies, imperial), *_line(plot, ruler),
        *_measured(pattern, plot, ruler), *_chosen(pattern, plot, bodies), *_legend(pattern),
    ]  # fmt: skip
    labels = [f"{body.name}, {one_length(body.body_cm, imperial)}" for body in bodies]
    lanes = max(_lanes(pattern, bodies), default=0) + 1
    right = _WIDE + 7 + _LANE * lanes + max(text_width_mm(label, "sans", LETTER_PT) for label in labels)
    title = f"{pattern.title}: {said} by {motif.worked.removesuffix('s')}"
    return Drawing((-16.0, -19.0, right + 1, _HIGH + 7.0), tuple(operations), title, _told(table, bodies, motif, said, imperial))


def _plot(pattern: Pattern, ruler: Ruler, bodies: tuple[BodyFit, ...]) -> _Plot:
    counts = [fit.rounds for body in bodies for fit in body.fits]
    last = min(max(counts), ruler.most)
    first = 0 if min(counts) <= 12 else min(counts) - 1
    tops = [ruler.girth(last), *(body.body_cm for body in bodies)]
    tops += [fit.girth_cm for body in bodies for fit in body.fits if fit == body.chosen]
    lows = [max(ruler.girth(max(first, 1)), 0.0), *(body.body_cm for body in bodies)] if first else [0.0]
    return _Plot(first, max(last, first + 1), 0.0 if not first else min(lows) * 0.96, max(tops) * 1.04)


def _grid(plot: _Plot, motif: MotifSource, said: str, imperial: bool) -> list[Operation]:
    """Axes with their numbers; the unit that the pattern is written in stands at the left."""
    found: list[Operation] = []
    low, high = (convert(cm, "cm", "in") for cm in (plot.low, plot.high)) if imperial else (plot.low, plot.high)
    for value in paint.steps(low, high, 7):
        y = plot.y(convert(value, "in", "cm") if imperial else value)
        found.append(paint.line(((0, y), (_WIDE, y)), paint.HAIR))
        found.append(paint.words(-1.8, y, number_text(value), SMALL_PT, QUIET, "end"))
    step = max(1, round((plot.last - plot.first) / 16))
    for rounds in range(plot.first, plot.last + 1, step):
        x = plot.x(rounds)
        found.append(paint.line(((x, 0), (x, -1.2))))
        found.append(paint.words(x, -3.8, str(rounds), SMALL_PT, QUIET, "middle"))
    found += [paint.line(((0, _HIGH), (0, 0), (_WIDE, 0)), INK, THIN_MM)]
    found.append(paint.words(-14, _HIGH + 4.4, f"{said.capitalize()}, {'in' if imperial else 'cm'}", LETTER_PT, INK))
    found.append(paint.words(_WIDE / 2, -9.6, motif.worked.capitalize(), LETTER_PT, INK, "middle"))
    return found


def _bodies(pattern: Pattern, plot: _Plot, bodies: tuple[BodyFit, ...], imperial: bool) -> list[Operation]:
    """What each body's ease allows as a bar at the right, the body itself as a dashed line, its name beside it."""
    ease = read_ease(pattern.size.ease if pattern.size else None)
    found: list[Operation] = []
    heights = [plot.y(body.body_cm) for body in bodies]
    places = paint.pushed_apart(heights, _LABEL_GAP, 1.0, _HIGH + 1.0)
    lanes = _lanes(pattern, bodies)
    end = _WIDE + 0.6 + _LANE * (max(lanes, default=0) + 1)
    for body, height, place, lane in zip(bodies, heights, places, lanes, strict=True):
        found.append(paint.line(((0, height), (end, height)), QUIET, THIN_MM, (1.6, 1.2)))
        if ease.limits:
            low, high = (plot.y(min(max(cm, plot.low), plot.high)) for cm in ease.bounds(body.body_cm))
            x = _WIDE + 0.6 + _LANE * lane
            found += _allowed(x, low, max(high, low + 0.3))
        found.append(paint.line(((end, height), (end + 2.7, place), (end + 4.0, place)), QUIET, THIN_MM))
        found.append(paint.words(end + 4.8, place, f"{body.name}, {one_length(body.body_cm, imperial)}"))
    return found


def _allowed(x: float, low: float, high: float) -> list[Operation]:
    bar = paint.box(x, low, x + 1.5, high)
    return [paint.filled(bar, "#56b4e9"), StrokePath(bar, INK, 0.15, (), "butt", "miter")]


def _lanes(pattern: Pattern, bodies: tuple[BodyFit, ...]) -> list[int]:
    """A lane for each body's bar of ease, so that no two overlap in one."""
    ease = read_ease(pattern.size.ease if pattern.size else None)
    tops: list[float] = []  # of each lane, in the order of the bodies from small to large
    order = sorted(range(len(bodies)), key=lambda i: ease.bounds(bodies[i].body_cm))
    lanes = [0] * len(bodies)
    for i in order:
        low, high = ease.bounds(bodies[i].body_cm)
        lane = next((place for place, top in enumerate(tops) if top <= low), len(tops))
        tops[lane : lane + 1] = [high]
        lanes[i] = lane
    return lanes


def _legend(pattern: Pattern) -> list[Operation]:
    """What rings, squares and bars stand for."""
    y, x = -15.6, 0.0
    found: list[Operation] = [StrokePath(paint.disc(x + 1.4, y, 1.4), INK, THICK_MM), paint.words(x + 4.2, y, "worked", SMALL_PT, QUIET)]
    x += 4.2 + text_width_mm("worked", "sans", SMALL_PT) + 5
    if pattern.gauge is not None and pattern.gauge.points:
        mark = paint.polygon(((x, y), (x + 1.5, y - 1.5), (x + 3, y), (x + 1.5, y + 1.5)))
        found += [StrokePath(mark, INK, 0.35), paint.words(x + 4.2, y, "measured", SMALL_PT, QUIET)]
        x += 4.2 + text_width_mm("measured", "sans", SMALL_PT) + 5
    if read_ease(pattern.size.ease if pattern.size else None).limits:
        found += [*_allowed(x, y - 1.6, y + 1.6), paint.words(x + 3, y, "what the ease allows", SMALL_PT, QUIET)]
    return found


def _line(plot: _Plot, ruler: Ruler) -> list[Operation]:
    start = max(plot.first, 1)
    points = [(plot.x(r), plot.y(max(ruler.girth(r), plot.low))) for r in (start, plot.last)]
    dots: list[Operation] = [
        paint.filled(paint.disc(plot.x(r), plot.y(ruler.girth(r)), 0.55), _CURVE)
        for r in range(start, plot.last + 1)
        if plot.last - start <= 60 and ruler.girth(r) >= plot.low
    ]
    return [paint.line(points, _CURVE, THICK_MM), *dots]


def _measured(pattern: Pattern, plot: _Plot, ruler: Ruler) -> list[Operation]:
    """The swatch's own points, as squares standing on a corner."""
    gauge = gauge_of(pattern)
    found: list[Operation] = []
    for point in gauge.points if gauge is not None and pattern.gauge is not None else ():
        cm = ruler.across * (point.width_cm * (gauge.after_wash or 1.0 if gauge else 1.0) + ruler.adds_cm)
        x, y = plot.x(point.rounds), plot.y(cm)
        if plot.first <= point.rounds <= plot.last and 0 <= y <= _HIGH:
            mark = paint.polygon(((x - 1.5, y), (x, y - 1.5), (x + 1.5, y), (x, y + 1.5)))
            found += [paint.filled(mark, paint.PAPER), StrokePath(mark, INK, 0.35)]
    return found


def _chosen(pattern: Pattern, plot: _Plot, bodies: tuple[BodyFit, ...]) -> list[Operation]:
    """A ring round the count that each body's size works, with its number."""
    found: list[Operation] = []
    told: set[tuple[int, float]] = set()
    for body in bodies:
        own = own_of(pattern, body.name)
        fit = body.chosen or next((f for f in body.fits if own is not None and f.rounds == own.rounds), None)
        if fit is None or (fit.rounds, round(fit.girth_cm, 3)) in told:
            continue
        told.add((fit.rounds, round(fit.girth_cm, 3)))
        x, y = plot.x(fit.rounds), plot.y(fit.girth_cm)
        found.append(StrokePath(paint.disc(x, y, 1.9), INK, THICK_MM))
        number = str(fit.rounds)
        wide = text_width_mm(number, "sans-bold", LETTER_PT)
        found.append(paint.filled(paint.box(x - 3.2 - wide, y + 1.0, x - 2.4, y + 4.6), paint.PAPER))
        found.append(paint.words(x - 2.8, y + 2.8, number, LETTER_PT, INK, "end", bold=True))
    return found


def _told(table: SizeTable, bodies: tuple[BodyFit, ...], motif: MotifSource, said: str, imperial: bool) -> str:
    """The picture in words."""
    name: Callable[[int], str] = lambda n: f"{n} {motif.worked if n != 1 else motif.worked.removesuffix('s')}"  # noqa: E731
    parts = []
    for body in bodies:
        if body.chosen is not None:
            parts.append(f"{body.name}, {length_text(body.body_cm, imperial)}: {name(body.chosen.rounds)}")
        else:
            parts.append(f"{body.name}, {length_text(body.body_cm, imperial)}: no count lies within the ease")
    return f"How the {said} grows with every {motif.worked.removesuffix('s')}, for {table.measure}. {'; '.join(parts)}."
