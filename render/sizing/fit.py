"""The fit table: for each body, how many rounds, how wide, with what ease, and what would come closer."""

from __future__ import annotations

from motifold.render.pattern.model import MotifSource, Pattern, SizePlan
from motifold.render.pattern.problem import Problem
from motifold.render.sizing.closer import Question, closer
from motifold.render.sizing.gauge import stitch_width, width_line
from motifold.render.sizing.model import BodyFit, SizeTable
from motifold.render.sizing.own import pattern_of_size
from motifold.render.sizing.reading import last_labelled, sized_motif, stated_stitches
from motifold.render.sizing.report import gauge_report
from motifold.render.sizing.ruler import Ease, Ruler, fit, fit_of, nearest_rounds, read_ease, ruler_for
from motifold.render.sizing.swatch import worked_alone
from motifold.render.sizing.tables import known_names, look_up
from motifold.render.sizing.width import gauge_of, motif_width_cm
from motifold.symbols.record import dataclass


def size_table(pattern: Pattern) -> tuple[SizeTable | None, tuple[Problem, ...]]:
    """The table of a pattern with ``[size]``: None where it has none, or where its gauge does not measure what the size needs.

    ``fits``: the nearest round count to the middle of the ease, and two on either side; ``chosen``: within the ease, nearest to its middle,
    ties to the smaller. A motif whose own numbers differ by size (``116 (132, 148) sc``) is measured by its stitches: its size is fixed.
    """
    plan = pattern.size
    if plan is None or not plan.bodies:
        return None, ()
    problems: list[Problem] = []
    bodies = _bodies(pattern, plan, problems)
    motif = sized_motif(pattern)
    if motif is None or not bodies:
        return None, tuple(problems)
    ease = read_ease(plan.ease)
    fits = []
    for body in bodies:
        own = pattern_of_size(pattern, body.name)
        by_stitches = _by_stitches(own, motif, body.index)
        ruler = ruler_for(own, motif)
        if by_stitches is not None:
            rounds, girth = by_stitches
            only = fit(rounds, girth, girth, body.cm, ease)
            fits.append(BodyFit(body.name, body.cm, body.source, only if only.within else None, (only,), (), body.band_cm, body.caution))
        elif ruler is not None:
            fits.append(_by_rounds(own, motif, ruler, ease, body))
        else:
            return None, (*problems, _no_gauge(own, motif))
    return SizeTable(plan.measure, tuple(fits), gauge_report(pattern)), tuple(problems)


@dataclass(frozen=True, slots=True)
class _Body:
    """One body whose measurement is known; ``rounds``: those that its size has of its own."""

    index: int
    name: str
    cm: float
    source: str | None
    band_cm: tuple[float, float] | None
    caution: str | None
    rounds: int | None


def _bodies(pattern: Pattern, plan: SizePlan, problems: list[Problem]) -> list[_Body]:
    found: list[_Body] = []
    for index, (name, body) in enumerate(plan.bodies):
        span = pattern.place("size", "bodies", name)
        rounds = plan.own[name].rounds if name in plan.own else None
        if isinstance(body, str):
            value = look_up(body)
            if value is None:
                problems.append(Problem("body-table", "error", span, f'"{body}" is in no table of body sizes', known_names()))
                continue
            if value.warning:
                problems.append(Problem("body-table", "warning", span, f"{name}: {value.warning}"))
            found.append(_Body(index, name, value.cm, value.source, value.band_cm, value.warning, rounds))
        elif body > 0:
            found.append(_Body(index, name, body, None, None, None, rounds))
        else:
            problems.append(Problem("body-size", "error", span, f"{name} measures nothing: a body size must be more than 0"))
    return found


def _by_rounds(pattern: Pattern, motif: MotifSource, ruler: Ruler, ease: Ease, body: _Body) -> BodyFit:
    aim = ease.aim(body.cm)
    nearest = min(body.rounds, ruler.most) if body.rounds is not None else nearest_rounds(ruler, aim)
    counts = range(max(1, nearest - 2), min(ruler.most, nearest + 2) + 1)
    fits = tuple(fit_of(ruler, rounds, body.cm, ease) for rounds in counts)
    best = fit_of(ruler, nearest, body.cm, ease)
    suggestions = closer(Question(pattern, ruler, ease, body.cm, best, motif))
    scale = aim / best.girth_cm if best.girth_cm > 0 else None
    return BodyFit(body.name, body.cm, body.source, best if best.within else None, fits, suggestions, body.band_cm, body.caution, scale)


def _by_stitches(pattern: Pattern, motif: MotifSource, index: int) -> tuple[int, float] | None:
    """Rounds of one size, and its girth from its stitches and the width of one: those that the brackets state, in rows those worked.

    None where the text or the gauge lacks them.
    """
    gauge = gauge_of(pattern)
    width = stitch_width(gauge) if gauge is not None else None
    stated = stated_stitches(motif)
    if width is None or stated is None or not stated.varies:
        return None
    across = pattern.size.across if pattern.size and pattern.size.across else 1.0
    counted, rounds = width * stated.at(index), last_labelled(motif)
    if motif.worked == "rows":  # what a line states may be V-stitches, each several stitches wide
        fabric = worked_alone(pattern, motif, motif.last_round, index)
        counted = max(motif_width_cm(pattern, fabric) or 0.0, counted)
        rounds = sum(one.kind == "row" for one in fabric.rounds)
    return rounds, across * counted


def _no_gauge(pattern: Pattern, motif: MotifSource) -> Problem:
    if pattern.gauge is None:
        message = "there is no gauge, so no size can be worked out"
    elif _shrinks(pattern):
        message = "the measured rounds do not grow: the same motif cannot get narrower with more rounds"
    else:
        message = f'the gauge measures nothing that tells how wide "{motif.name}" is after so many rounds'
    hint = 'measure a swatch: [gauge] motif = "NAME", rounds = 5, width = "12 cm"'
    return Problem("size-gauge", "error", pattern.place("gauge" if pattern.gauge else "size"), message, hint)


def _shrinks(pattern: Pattern) -> bool:
    line = width_line(pattern.gauge) if pattern.gauge else None
    return line is not None and line.per_round_cm <= 0
