"""What would come closer to a body: another hook, a round more or less, a plain round, another number across."""

from __future__ import annotations

from collections.abc import Iterator

from motifold.render.pattern.model import MotifSource, Pattern
from motifold.render.sizing.hooks import hook_text, nearest_hooks, sizes_apart
from motifold.render.sizing.loops import height_in_widths
from motifold.render.sizing.model import Closer, Fit
from motifold.render.sizing.reading import in_inches, last_stitch
from motifold.render.sizing.ruler import Ease, Ruler, nearest_rounds, off
from motifold.render.sizing.units import number_text, one_length, percent_text
from motifold.render.sizing.width import width_of_a_stitch
from motifold.symbols.record import dataclass
from motifold.symbols.terms import abbreviation

MOST_SUGGESTIONS = 6
MOST_HOOK_SIZES = 1.5
"""Farther from the hook of its swatch a yarn makes another fabric."""
_LEAST_SCALE, _MOST_SCALE = 0.87, 1.15
"""The same where no hook is named: a size and a half either way from a medium one."""
_EFFORT = {"hook": 0, "seam": 1, "plain round": 2, "edging": 2, "rounds": 3, "across": 4}
"""How much a change asks for: another hook is tried on a swatch, another number across is another piece of work."""
_WIDEST_SEAM_CM = 1.0
"""A seam that adds more is no seam but a strip between two panels."""
_MOST_EDGING_ROUNDS = 6


@dataclass(frozen=True, slots=True)
class Question:
    """One body that is not met exactly: what is measured, what is aimed at, and the best that the rounds alone give."""

    pattern: Pattern
    ruler: Ruler
    ease: Ease
    body_cm: float
    best: Fit
    motif: MotifSource

    @property
    def aim(self) -> float:
        return self.ease.aim(self.body_cm)


def closer(question: Question) -> tuple[Closer, ...]:
    """Changes that come closer to the middle of the ease than ``best`` does: those within it first, the closest first.

    What is equally close, to a hundredth of the body, is ranked by how little it changes the work.
    """
    before = off(question.best.girth_cm, question.aim)
    found = [c for c in _all(question) if off(c.girth_cm, question.aim) < before and c.girth_cm > 0]
    found.sort(key=lambda c: _rank(question, c))
    return tuple(found[:MOST_SUGGESTIONS])


def _rank(question: Question, change: Closer) -> tuple[bool, float, int, float, str]:
    distance = off(change.girth_cm, question.aim)
    return not change.within, round(distance / question.body_cm, 2), _EFFORT[change.change], distance, change.reason


def _all(question: Question) -> Iterator[Closer]:
    yield from _hooks(question)
    yield from _plain_rounds(question)
    yield from _seams(question)
    yield from _edging(question)
    yield from _across(question)


def _suggest(question: Question, change: str, words: str, girth: float, detail: dict[str, str | float | int]) -> Closer:
    percent = 100 * (girth - question.body_cm) / question.body_cm
    reason = f"{words}: about {one_length(girth, in_inches(question.pattern))}, an ease of {percent_text(percent)}."
    return Closer(change, reason, girth, percent, question.ease.allows(girth, question.body_cm), detail)


def _hooks(question: Question) -> Iterator[Closer]:
    """The same rounds with another hook, and a round more or fewer with one.

    Widths are taken to go with the hook, in proportion: a rule of thumb, to be proved by a new swatch.
    """
    hook = question.pattern.materials.hook
    hook_mm = float(hook.cm) * 10 if hook is not None and hook.kind == "length" else None
    best, ruler = question.best, question.ruler
    for rounds in (best.rounds, best.rounds - 1, best.rounds + 1):
        if not 1 <= rounds <= ruler.most or ruler.girth(rounds) <= 0:
            continue
        scale = question.aim / ruler.girth(rounds)
        change = "hook" if rounds == best.rounds else "rounds"
        if hook_mm is None:
            if _LEAST_SCALE <= scale <= _MOST_SCALE:
                yield _scaled(question, change, rounds, scale)
            continue
        real = nearest_hooks(hook_mm * scale)[0]
        if abs(real - hook_mm) > 1e-6 and sizes_apart(real, hook_mm) <= MOST_HOOK_SIZES:
            words = f"{_rounds(question, rounds).capitalize()} with a {hook_text(real)} hook instead of {hook_text(hook_mm)}"
            detail: dict[str, str | float | int] = {
                "rounds": rounds, "scale": round(scale, 4), "hook_mm": round(hook_mm * scale, 3), "nearest_hook_mm": real,
            }  # fmt: skip
            yield _suggest(question, change, words, ruler.girth(rounds) * real / hook_mm, detail)


def _scaled(question: Question, change: str, rounds: int, scale: float) -> Closer:
    way = "larger" if scale > 1 else "smaller"
    words = f"{_rounds(question, rounds).capitalize()} with a hook {number_text(abs(scale - 1) * 100)}\N{NO-BREAK SPACE}% {way}"
    return _suggest(question, change, words, question.aim, {"rounds": rounds, "scale": round(scale, 4)})


def _plain_rounds(question: Question) -> Iterator[Closer]:
    """A plain round of single or half double crochet after the last round, or in its place: narrower than a round of taller stitches."""
    last = last_stitch(question.motif)
    if last is None:
        return
    ruler, best = question.ruler, question.best
    for stitch in ("sc", "hdc"):
        share = height_in_widths(stitch) / last[1]
        if share >= 1:
            continue
        called = abbreviation(stitch, question.pattern.terms)
        for rounds, how in ((best.rounds, "after"), (best.rounds - 1, "in place of")):
            if rounds < 1:
                continue
            girth = ruler.girth(rounds) + ruler.across * ruler.line.per_round_cm * share
            one = question.motif.worked.removesuffix("s")
            words = f"{_rounds(question, best.rounds).capitalize()}, with a plain {one} of {called} {how} the last"
            yield _suggest(question, "plain round", words, girth, {"stitch": stitch, "rounds": rounds, "where": how})


def _seams(question: Question) -> Iterator[Closer]:
    """Seams that add more, or nothing: between motifs that go round."""
    ruler, best, assembly = question.ruler, question.best, question.pattern.assembly
    seamed = assembly is not None and bool(len(assembly.net) > 1 or assembly.join)
    if ruler.across < 2 or not (seamed or ruler.adds_cm):
        return
    wanted = round(ruler.adds_cm + (question.aim - best.girth_cm) / ruler.across, 1)
    adds = min(max(wanted, 0.0), _WIDEST_SEAM_CM)
    if abs(adds - ruler.adds_cm) < 0.1:
        return
    same = f"{_rounds(question, best.rounds).capitalize()}, with seams that "
    if adds == 0:
        words = f"{same}add nothing, edge to edge"
    else:
        words = f"{same}add about {one_length(adds, in_inches(question.pattern))} each, as a ridge or a joining row does"
    yield _suggest(question, "seam", words, ruler.across * (best.width_cm + adds), {"rounds": best.rounds, "adds_cm": adds})


def _edging(question: Question) -> Iterator[Closer]:
    """An edging all round what lies flat: rounds of single crochet, each one row higher at either side."""
    pattern, best = question.pattern, question.best
    width = width_of_a_stitch(pattern)
    if question.ruler.across != 1 or pattern.assembly is not None or width is None or question.motif.worked != "rounds":
        return
    each = width * height_in_widths("sc")
    called = abbreviation("sc", pattern.terms)
    for rounds in (best.rounds, best.rounds - 1):
        if rounds < 1:
            continue
        short = question.aim - question.ruler.girth(rounds)
        number = round(short / (2 * each))
        if not 1 <= number <= _MOST_EDGING_ROUNDS:
            continue
        plain = f"{number} round{'s' if number > 1 else ''} of {called}"
        words = f"{_rounds(question, rounds).capitalize()}, with an edging of {plain} all round"
        detail: dict[str, str | float | int] = {
            "rounds": rounds, "stitch": "sc", "edging_rounds": number, "depth_cm": round(number * each, 2),
        }  # fmt: skip
        yield _suggest(question, "edging", words, question.ruler.girth(rounds) + 2 * number * each, detail)


def _is_ring(pattern: Pattern) -> bool:
    """Whether the net is a plain rectangle whose ends meet: then a column more or fewer is the same piece of work."""
    assembly, plan = pattern.assembly, pattern.size
    if assembly is None or plan is None or not assembly.net or assembly.panels:
        return False
    columns = {cell.column for cell in assembly.net}
    rows = {cell.row for cell in assembly.net}
    names = {(cell.row, cell.column): cell.panel for cell in assembly.net}
    whole = len(names) == len(columns) * len(rows) and len(columns) == plan.across
    ends = {frozenset((names[row, min(columns)], names[row, max(columns)])) for row in rows} if whole else set()
    joined = {frozenset((join.a.panel, join.b.panel)) for join in assembly.join if join.b is not None}
    return whole and ends == joined


def _across(question: Question) -> Iterator[Closer]:
    plan, ruler = question.pattern.size, question.ruler
    if plan is None or plan.across is None or (question.pattern.assembly is not None and not _is_ring(question.pattern)):
        return  # the panels of a folded net are as many as they are: another number would be another net
    step = 1.0 if float(plan.across).is_integer() else 0.5
    for number in (plan.across - step, plan.across + step):
        if number < 1:
            continue
        other = Ruler(ruler.line, number, ruler.adds_cm, ruler.most)
        rounds = nearest_rounds(other, question.aim)
        words = f"{number_text(number)} motifs across instead of {number_text(plan.across)}, {_rounds(question, rounds)} each"
        yield _suggest(question, "across", words, other.girth(rounds), {"across": number, "rounds": rounds})


def _rounds(question: Question, number: int) -> str:
    return f"{number} {question.motif.worked if number != 1 else question.motif.worked.removesuffix('s')}"
