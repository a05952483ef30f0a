"""The fit table: for each body, how many rounds, how wide, with what ease, and what would come closer."""

from __future__ import annotations

from motifold.render.pattern.model import MotifSource, Pattern, SizePlan
from motifold.render.pattern.problem import Problem
from motifold.render.sizing.closer import Question, closer
from motifold.render.sizing.gauge import stitch_width, width_line
from motifold.render.sizing.model import BodyFit, SizeTable
from motifold.render.sizing.reading import last_labelled, sized_motif, stated_stitches
from motifold.render.sizing.ruler import Ease, Ruler, fit, fit_of, nearest_rounds, read_ease, ruler_for
from motifold.render.sizing.swatch import worked_alone
from motifold.render.sizing.tables import known_names, look_up
from motifold.render.sizing.width import gauge_of, motif_width_cm


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
    by_stitches = _girths_by_stitches(pattern, motif, len(plan.bodies))
    ruler = ruler_for(pattern, motif)
    if by_stitches:
        fits = tuple(_fixed(motif, name, cm, source, by_stitches[index], ease) for index, name, cm, source in bodies)
    elif ruler is not None:
        fits = tuple(_by_rounds(pattern, motif, ruler, ease, name, cm, source) for _, name, cm, source in bodies)
    else:
        return None, (*problems, _no_gauge(pattern, motif))
    return SizeTable(plan.measure, fits), tuple(problems)


def _bodies(pattern: Pattern, plan: SizePlan, problems: list[Problem]) -> list[tuple[int, str, float, str | None]]:
    """Index, name, cm and source of every body whose measurement is known."""
    found: list[tuple[int, str, float, str | None]] = []
    for index, (name, body) in enumerate(plan.bodies):
        span = pattern.place("size", "bodies", name)
        if isinstance(body, str):
            value = look_up(body)
            if value is None:
                problems.append(Problem("body-table", "error", span, f'"{body}" is in no table of body sizes', known_names()))
                continue
            if value.warning:
                problems.append(Problem("body-table", "warning", span, f"{name}: {value.warning}"))
            found.append((index, name, value.cm, value.source))
        elif body > 0:
            found.append((index, name, body, None))
        else:
            problems.append(Problem("body-size", "error", span, f"{name} measures nothing: a body size must be more than 0"))
    return found


def _by_rounds(
    pattern: Pattern, motif: MotifSource, ruler: Ruler, ease: Ease, name: str, body_cm: float, source: str | None
) -> BodyFit:
    nearest = nearest_rounds(ruler, ease.aim(body_cm))
    counts = range(max(1, nearest - 2), min(ruler.most, nearest + 2) + 1)
    fits = tuple(fit_of(ruler, rounds, body_cm, ease) for rounds in counts)
    best = fit_of(ruler, nearest, body_cm, ease)
    suggestions = closer(Question(pattern, ruler, ease, body_cm, best, motif))
    return BodyFit(name, body_cm, source, best if best.within else None, fits, suggestions)


def _girths_by_stitches(pattern: Pattern, motif: MotifSource, sizes: int) -> tuple[float, ...]:
    """Girth of each size from its stitches and the width of one: those that the brackets state, in rows those that are worked.

    () where the text or the gauge lacks them.
    """
    gauge = gauge_of(pattern)
    width = stitch_width(gauge) if gauge is not None else None
    stated = stated_stitches(motif)
    if width is None or stated is None or not stated.varies:
        return ()
    across = pattern.size.across if pattern.size and pattern.size.across else 1.0
    counted = tuple(width * stated.at(index) for index in range(sizes))
    if motif.worked == "rows":  # what a line states may be V-stitches, each several stitches wide
        worked = tuple(motif_width_cm(pattern, worked_alone(pattern, motif, motif.last_round, index)) for index in range(sizes))
        counted = tuple(max(cm or 0.0, by_text) for cm, by_text in zip(worked, counted, strict=True))
    return tuple(across * cm for cm in counted)


def _fixed(motif: MotifSource, name: str, body_cm: float, source: str | None, girth: float, ease: Ease) -> BodyFit:
    only = fit(last_labelled(motif), girth, girth, body_cm, ease)
    return BodyFit(name, body_cm, source, only if only.within else None, (only,), ())


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
