"""Works a whole text, round after round."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from motifold.render.fabric.bench import MENDABLE, STRUCTURAL, Hook, Lap, TooMuch, Workshop
from motifold.render.fabric.blocks import entered_lengths, in_its_space
from motifold.render.fabric.corners import sides_alike
from motifold.render.fabric.counts import uncounted, wrong_claim
from motifold.render.fabric.doubts import warn_of_the_whole
from motifold.render.fabric.edge import Cursor
from motifold.render.fabric.finish import finished
from motifold.render.fabric.flatness import warn_of_cup
from motifold.render.fabric.job import work_job
from motifold.render.fabric.lines import Job, lay_out, only_chains, split_beginning
from motifold.render.fabric.mend import Clues, Mend, clues_of, crooked, it_comes_out, mends
from motifold.render.fabric.model import Fabric
from motifold.render.fabric.trial import JobMark, mark_job, take_back_job
from motifold.render.fabric.turns import with_spaces_at_turns
from motifold.render.pattern.instructions import (
    Instructions,
    Step,
)
from motifold.render.pattern.model import MotifSource
from motifold.render.pattern.problem import Problem
from motifold.symbols.record import dataclass

MOST_TO_MEND = 30_000
"""Stitches made up to which a mistake is tried to be mended."""
MEND_COST = 10
"""What one trial costs at the least, in stitches."""


def new_hook(shop: Workshop, polygon: int) -> Hook:
    """A hook with the first yarn in hand and nothing made."""
    lap = Lap(-1, None, "", "finish", "RS", 1, None, Cursor())
    return Hook(shop, polygon, lap, yarn=shop.yarns[0] if shop.yarns else "A")


def work_motif(source: MotifSource, shop: Workshop) -> tuple[Fabric, tuple[Problem, ...]]:
    """Works a motif for one size. The Fabric is whole as far as it could be worked; every mistake is a problem, none is raised."""
    polygon = 0 if source.worked == "rows" else source.sides
    hook = new_hook(shop, polygon)
    work_text(hook, source.instructions)
    warn_of_the_whole(hook, source.shape)
    problems = hook.problems
    if has_mistakes(hook):
        again = new_hook(shop, polygon)
        work_text(again, source.instructions, mending=True)
        problems = again.problems
    return finished(hook, source.name, source.shape, source.sides, source.worked), tuple(problems)


def has_mistakes(hook: Hook) -> bool:
    """Whether anything makes the work come out wrong, and is worth trying to mend."""
    codes = {problem.code for problem in hook.problems}
    return "limit" not in codes and bool(codes & MENDABLE) and len(hook.stitches) <= MOST_TO_MEND


def work_text(hook: Hook, instructions: Instructions, mending: bool = False) -> None:
    """Works the lines of a text in order.

    ``mending``: a line with a mistake is also tried with one thing changed; what makes it come out becomes the hint, and
    the work goes on from there, so that the next mistake is found too. What is made then is not what the text says.
    """
    shop = hook.shop
    jobs, problems = lay_out(instructions, shop.rounds, shop.row_height_cm, shop.size)
    hook.problems.extend(problems)
    jobs = split_beginning(jobs) if not hook.laps else jobs
    cut_short = only_chains(jobs)
    hook.problems.extend(cut_short)
    hook.tainted = hook.tainted or bool(cut_short)
    jobs = with_spaces_at_turns(jobs)
    hook.entered = entered_lengths(jobs, shop.definitions)
    if hook.entered:
        jobs = tuple(replace(job, steps=in_its_space(job.steps)) for job in jobs)
    carried: tuple[Step, ...] = ()
    unproved: Unproved | None = None
    try:
        for index in range(len(jobs)):
            ahead = tuple(_as_mended(hook, job) for job in jobs[index : index + 3])
            job = ahead[0]
            begun = Unproved(ahead[:2], carried, mark_job(hook)) if mending else None
            carried = work_line(hook, ahead, carried, mending, unproved)
            unproved = begun if not job.line.counts or job.kind in ("ring", "foundation") else None
    except TooMuch as stop:
        hook.problems.append(
            Problem(
                "limit",
                "error",
                stop.span,
                f"this is more work than anyone would do, {stop.what}: it was given up here",
                "look for a number with too many digits",
            )
        )
        if hook.lap.index >= 0 and hook.lap not in hook.laps:
            hook.pending.clear()
            hook.laps.append(hook.lap)
    _tell_idle(hook)
    warn_of_cup(hook)
    hook.problems.sort(key=lambda problem: (problem.span.line, problem.span.column) if problem.span else (0, 0))


@dataclass(frozen=True, slots=True)
class Unproved:
    """A line that states no counts, and where the work on it began: a mistake in it shows in the next line only."""

    jobs: Sequence[Job]
    carried: tuple[Step, ...]
    mark: JobMark


def work_line(
    hook: Hook,
    jobs: Sequence[Job],
    carried: tuple[Step, ...],
    mending: bool,
    unproved: Unproved | None,
) -> tuple[Step, ...]:
    """Works the first of the jobs; where it does not come out, it is tried in another reading, and, ``mending``, with one thing changed."""
    job, following = jobs[0], jobs[1] if len(jobs) > 1 else None
    hook.tainted = hook.tainted or job.doubtful
    mark = mark_job(hook)
    left = work_job(hook, job, carried, following)
    if came_out(hook, mark):
        return left
    if any(lap.by_habit for lap in hook.laps[mark.laps :]) and job.judged and job.line.counts:
        take_back_job(hook, mark)
        hook.flip = True
        left = work_job(hook, job, carried, following)
        hook.flip = False
        if came_out(hook, mark):
            return left
        take_back_job(hook, mark)
        left = work_job(hook, job, carried, following)
    if mending and not mark.tainted:
        return _mended(hook, jobs, carried, mark, left, unproved)
    return left


def _as_mended(hook: Hook, job: Job) -> Job:
    """A line that serves several rounds is mended for all of them."""
    steps = hook.mended.get(job.steps)
    return job if steps is None else replace(job, steps=steps)


def came_out(hook: Hook, mark: JobMark) -> bool:
    """Whether nothing is wrong with what was made since the mark."""
    return not any(lap.faulty for lap in hook.laps[mark.laps :])


def _mended(
    hook: Hook,
    jobs: Sequence[Job],
    carried: tuple[Step, ...],
    mark: JobMark,
    left: tuple[Step, ...],
    unproved: Unproved | None,
) -> tuple[Step, ...]:
    """Looks for one change that makes the line come out, and the next line after it."""
    job = jobs[0]
    told = [problem for problem in hook.problems if problem not in mark.problems]
    mistake = next((problem for problem in told if problem.code in MENDABLE), None)
    if mistake is None or len(hook.stitches) > MOST_TO_MEND or hook.mending < 0:
        return left
    if mistake.code == "join" and wrong_claim(hook, hook.laps[-1], job.line.counts) is None:
        hook.tainted = False  # what is made is right: nothing follows from the join
        return left
    goes_on = mistake.code == "count" and _next_comes_out(hook, jobs, left, but_its_number=_count_is_wrong(hook, hook.laps[-1], job))
    if goes_on and _count_is_wrong(hook, hook.laps[-1], job):
        hook.tainted = False  # only the number is wrong: nothing follows from that
        return left
    found: list[tuple[int, int, int, Mend]] = []
    for mend in mends(job.steps, hook.shop.size, hook.shop.terms, clues_of(hook, job, mistake)):
        take_back_job(hook, mark)
        steps = hook.steps_done
        so = [replace(other, steps=mend.steps) if other.steps == job.steps else other for other in jobs[:3]]  # all that the line serves
        after = _tried(hook, so[0], carried, so)
        hook.mending -= _cost(len(hook.stitches) - mark.stitches, hook.steps_done - steps)
        doubtful = any(problem.code == "unstated" for problem in hook.problems[len(mark.problems) :]) or lopsided(hook)
        if after is not None and came_out(hook, mark) and not doubtful and _next_comes_out(hook, so, after):
            passed = sum(lap.passed + uncounted(lap, job.line.counts) for lap in hook.laps[mark.laps :])
            found.append((passed + crooked(mend.steps, hook.shop.size), mend.far, len(found), mend))
            if len(found) == 6:
                break
        if hook.mending < 0:
            break
    take_back_job(hook, mark)
    if not found:
        before = _mended_before(hook, jobs, unproved) if unproved is not None else None
        if before is not None and unproved is not None:
            hint = f"{it_comes_out([before[0].words])} in {unproved.jobs[0].label}"
            hook.problems = [*mark.problems, *(replace(problem, hint=hint) if problem is mistake else problem for problem in told)]
            return before[1]
        left = work_job(hook, job, carried, jobs[1] if len(jobs) > 1 else None)
        hook.tainted = hook.tainted and not goes_on
        return left
    # what passes over stitches that the line works elsewhere, or makes a group crooked, is the less likely
    found.sort(key=lambda one: one[:3])
    likely = [mend for *unlikely, _, mend in found if tuple(unlikely) == found[0][:2]]
    left = work_job(hook, replace(job, steps=likely[0].steps), carried, jobs[1] if len(jobs) > 1 else None)
    hook.mended[job.steps] = likely[0].steps
    hint = it_comes_out(mend.words for mend in likely)
    if mistake.code == "count" and mistake.hint is not None and mistake.hint.startswith("if the work"):
        hint = f"{hint}; {mistake.hint}"
    rest = [problem for problem in hook.problems[len(mark.problems) :] if problem.span != mistake.span]
    hook.problems = [*mark.problems, replace(mistake, hint=hint), *rest]
    return left


def _cost(stitches: int, steps: int) -> int:
    """What a trial took of ``hook.mending``: by its stitches, and by its steps where it made few ("sk 400 ch" a hundred times over)."""
    return 2 * stitches + MEND_COST + max(steps - 4 * stitches - MEND_COST, 0)


def lopsided(hook: Hook) -> bool:
    """Whether the last round has unlike sides though the one before has not: nobody means that."""
    return len(hook.laps) > 1 and sides_alike(hook.laps[-2]) is True and sides_alike(hook.laps[-1]) is False


def _mended_before(hook: Hook, jobs: Sequence[Job], unproved: Unproved) -> tuple[Mend, tuple[Step, ...]] | None:
    """Looks for a change in the line before, which states no counts. Leaves both lines worked with it, or the one before as it was."""
    first = unproved.jobs[0]
    again = (first, *jobs)
    was_even = sides_alike(hook.laps[-1]) is True
    for mend in mends(first.steps, hook.shop.size, hook.shop.terms, Clues()):
        if hook.mending < 0:
            break
        take_back_job(hook, unproved.mark)
        steps = hook.steps_done
        carried = _tried(hook, replace(first, steps=mend.steps), unproved.carried, again)
        hook.mending -= _cost(len(hook.stitches) - unproved.mark.stitches, hook.steps_done - steps)
        if carried is None or not came_out(hook, unproved.mark):
            continue
        middle = mark_job(hook)
        left = _tried(hook, jobs[0], carried, jobs)
        uneven = was_even and any(sides_alike(lap) is False for lap in hook.laps[unproved.mark.laps :])
        if left is not None and came_out(hook, middle) and not uneven and _next_comes_out(hook, jobs, left):
            return mend, left
    take_back_job(hook, unproved.mark)
    work_job(hook, first, unproved.carried, jobs[0])
    return None


def _count_is_wrong(hook: Hook, lap: Lap, job: Job) -> bool:
    """Whether it is the stated number that breaks the regular growth of the piece, not the number that was made."""
    wrong = wrong_claim(hook, lap, job.line.counts)
    if wrong is None:
        return False
    claim, made = wrong
    stated = claim.amount.at(hook.shop.size)
    regular = hook.polygon or next((one.met for one in hook.laps if one.kind == "round" and one.met and one is not lap), 1)
    if lap.linear or regular < 2:
        return False
    return made % regular == 0 and stated % regular != 0


def _tried(hook: Hook, job: Job, carried: tuple[Step, ...], jobs: Sequence[Job]) -> tuple[Step, ...] | None:
    try:
        return work_job(hook, job, carried, jobs[1] if len(jobs) > 1 else None)
    except TooMuch:
        return None


def _line_bears_out(hook: Hook, jobs: Sequence[Job], carried: tuple[Step, ...]) -> bool:
    """Whether a line with counts of its own comes out on what is made now, so that this is right whatever was said of it."""
    if not jobs or not jobs[0].line.counts or jobs[0].kind == "finish":
        return False
    mark = mark_job(hook)
    hook.tainted = False
    after = _tried(hook, jobs[0], carried, jobs)
    return after is not None and came_out(hook, mark)


def _next_comes_out(hook: Hook, jobs: Sequence[Job], carried: tuple[Step, ...], but_its_number: bool | None = None) -> bool:
    """Whether the line after this one comes out on what is made now. Leaves everything as it was.

    ``but_its_number``: or would, if the number that it states were not wrong in itself: where the line after that comes out on what
    is made, or, True, where it breaks the regular growth of the piece. None: its number must be right.
    """
    if len(jobs) < 2 or jobs[1].kind == "finish":
        return True
    mark = mark_job(hook)
    hook.tainted = False
    after = _tried(hook, jobs[1], carried, jobs[1:])
    good = after is not None and came_out(hook, mark)
    if after is not None and not good:
        new = {problem.code for problem in hook.problems[len(mark.problems) :]}
        if new & STRUCTURAL == {"count"}:
            good = but_its_number is True and _count_is_wrong(hook, hook.laps[-1], jobs[1])
            good = good or (but_its_number is not None and _line_bears_out(hook, jobs[2:], after))
    take_back_job(hook, mark)
    return good


def _tell_idle(hook: Hook) -> None:
    """Places and repeats that never found anything, in any of the rounds that their line serves."""
    for key, (span, message, hint) in sorted(hook.idle.items()):
        if key not in hook.busy and ("place", key) not in hook.told and not hook.tainted:
            hook.problems.append(Problem("place", "error", span, message, hint))
