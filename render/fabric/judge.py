"""Judges a finished round: what it leaves over, wants too much, and states wrongly."""

from __future__ import annotations

from collections.abc import Sequence

from motifold.render.fabric.bench import Hook, Lap
from motifold.render.fabric.claims import named_and_not_worked, passed_by_chains
from motifold.render.fabric.counts import check_claims, warn_unstated, wrong_claim
from motifold.render.fabric.edge import Atom, any_of, matcher
from motifold.render.fabric.flatness import warn_of_shape
from motifold.render.fabric.left import left_between
from motifold.render.fabric.lines import Job
from motifold.render.fabric.wording import key_of, listed, round_word, step_words, target_word
from motifold.render.pattern.instructions import Target


def judge(hook: Hook, lap: Lap, job: Job) -> None:
    """What the round leaves over, wants too much, and states wrongly: the first of these that holds."""
    claims = job.line.counts if job.judged and not job.line.broken else ()
    wrong = not lap.faulty and wrong_claim(hook, lap, claims) is not None
    if not lap.faulty and not wrong:
        _note_came_twice(hook, lap)
    if not lap.faulty and lap.excess == 0:
        _note_left_over(hook, lap)
        if not lap.left and not lap.leave:
            _note_forgotten(hook, lap)
    below = round_word(hook.laps[lap.cursor.round]) if 0 <= lap.cursor.round < len(hook.laps) else "there"
    if lap.reported:
        pass
    elif lap.doubts and (lap.excess or lap.left or wrong):
        span, message, hint = lap.doubts[0]
        lap.faulty = True
        hook.complain("uneven", span, message, hint, key=key_of(span), follows=True)
    elif lap.excess and _not_known(hook, lap.excess_round):
        lap.faulty = lap.reported = hook.tainted = True
    elif lap.excess:
        under = round_word(hook.laps[lap.excess_round]) if 0 <= lap.excess_round < len(hook.laps) else below
        if lap.cursor.wrapped and not lap.cursor.atom(lap.cursor.start).space and lap.excess_round == lap.cursor.round:
            lap.excess += 1  # the place that the round began in was taken for one of them
        word = target_word(lap.excess_target or Target("st"), hook.shop.terms, lap.excess)
        hook.complain(
            "beyond",
            lap.excess_span,
            f"{round_word(lap)} wants {lap.excess} {word} more than {under} has",
            "work fewer, or give the round before it more",
            follows=True,
        )
    elif lap.left and not lap.faulty:
        _complain_of_left_over(hook, lap, below)
    elif wrong:
        check_claims(hook, lap, claims, None)
    if lap.no_join is not None and not lap.faulty:
        span, message, hint = lap.no_join
        hook.complain("join", span, message, hint, key=key_of(span), follows=not lap.made)
        hook.tainted = hook.tainted or not lap.made
    if claims and not lap.faulty:
        warn_unstated(hook, lap, claims)
        warn_of_shape(hook, lap)
    if claims and not lap.faulty and lap.habit_of:
        hook.borne_out.add(lap.habit_of)
    if claims:
        hook.tainted = wrong_claim(hook, lap, claims) is not None
    else:
        hook.tainted = hook.tainted or lap.faulty


def _not_known(hook: Hook, number: int) -> bool:
    """Whether an earlier round, named by its number, could not be read."""
    line = hook.laps[number].line if 0 <= number < len(hook.laps) - 2 else None
    return line is not None and line.broken


def _note_left_over(hook: Hook, lap: Lap) -> None:
    cursor = lap.cursor
    if lap.earlier and lap.kind == "round" and lap.end == "joined" and not lap.leave and len(lap.others) == 1:
        _note_left_earlier(lap)
    if lap.leave or (lap.kind == "finish" and not lap.made) or not lap.claims or not cursor.size or lap.under is not None:
        return
    left = list(left_between(lap, cursor, cursor.following, cursor.end + 1))
    if not _walked_over(lap, left) and not _under_last_chain(hook, lap, left):
        lap.left.extend(left)


def _note_forgotten(hook: Hook, lap: Lap) -> None:
    """What the line works up to, and nothing goes into."""
    cursor = lap.cursor
    forgotten = named_and_not_worked(hook.rest, hook.shop.size)
    if forgotten is not None and forgotten.kind in ("st", "stitch", "sp") and cursor.size:
        match = matcher(forgotten)
        lap.left.extend(index for index in range(cursor.following, cursor.end + 1) if match(cursor.atom(index)))


def _note_came_twice(hook: Hook, lap: Lap) -> None:
    """A "next" that came round to where the round began wanted one more, if more goes in there now than into any other of its kind."""
    cursor = lap.cursor
    if cursor.came_back is None or not cursor.cyclic:
        return
    start = cursor.atom(cursor.start)
    into: dict[int, int] = {}
    for base in (leg.base for ident in lap.stitches for leg in hook.stitches[ident].legs[:1] if hook.stitches[ident].role != "travel"):
        if (base.kind == "space") == start.space:
            into[base.id] = into.get(base.id, 0) + 1
    alike = [atom for atom in cursor.atoms if (atom.space, atom.chains, atom.name) == (start.space, start.chains, start.name)]
    others = [into[atom.id] for atom in alike if atom is not start and atom.id in into]
    if others and into.get(start.id, 0) > max(others) and (max(others) > 1 or cursor.came_round is not None):
        lap.excess_span, lap.excess_target = cursor.came_back
        lap.excess_round, lap.excess = cursor.round, 1


def _walked_over(lap: Lap, left: Sequence[int]) -> bool:
    """Whether all that is left was walked over with slip stitches to where the round begins, and its like is passed elsewhere."""
    cursor = lap.cursor
    if not left or lap.walked_from is None or not lap.passed or not cursor.cyclic or lap.attached:
        return False
    return all(lap.walked_from <= index % cursor.size < cursor.start % cursor.size for index in left)


def _under_last_chain(hook: Hook, lap: Lap, left: Sequence[int]) -> bool:
    """Whether a closed round ends in chains over as many stitches as its chains pass elsewhere: "[sk next 2 sts, dc, ch 2] ..."."""
    if not left or lap.kind != "round" or lap.end != "joined" or lap.walked_from is not None or not lap.made or not lap.made[-1][0]:
        return False
    if any(hook.stitches[ident].kind != "ch" for ident in hook.runs[lap.made[-1][1]].stitches):
        return False  # a stitch closes the round
    if any(lap.cursor.atom(index).space for index in left):
        return False
    return len(left) in passed_by_chains(hook.rest, hook.shop.size)


def _note_left_earlier(lap: Lap) -> None:
    """A round worked on an earlier one alone leaves nothing of the kinds that it names there either."""
    cursor = next(iter(lap.others.values()))
    targets = [Target("st") if place.target.kind == "unused loop" else place.target for place in lap.earlier]
    claimed = any_of(targets)
    lap.left_on = cursor
    lap.left.extend(index for index in range(cursor.following, cursor.end + 1) if claimed(cursor.atom(index)))


def _complain_of_left_over(hook: Hook, lap: Lap, below: str) -> None:
    words: dict[str, int] = {}
    cursor = lap.left_on if lap.left_on is not None else lap.cursor
    if lap.left_on is not None and 0 <= cursor.round < len(hook.laps):
        below = round_word(hook.laps[cursor.round])
    atoms: list[Atom] = [cursor.atom(index) for index in lap.left]
    named = {target.name for target in lap.claims if target.kind == "stitch"}
    groups: set[int] = set()
    for atom in atoms:
        if atom.group >= 0 and atom.group_name in named:
            if atom.group in groups:
                continue
            groups.add(atom.group)
        key = f"sp {atom.chains}" if atom.space else atom.group_name if atom.group_name in named and atom.group >= 0 else atom.name
        words[key] = words.get(key, 0) + 1
    total = sum(words.values())
    said = listed([f"{number} {_left_word(hook, key, number)}" for key, number in words.items()])
    lap.faulty = True
    step = lap.last_step
    since = f', from "{step_words(step, hook.shop.terms, hook.shop.size)}" on' if step is not None else ""
    if lap.left_at is not None:
        since = ""
    hook.complain(
        "left-over",
        lap.left_at if lap.left_at is not None else step.span if step is not None else lap.line.span if lap.line is not None else None,
        f"{round_word(lap)}: {said} of {below} {'is' if total == 1 else 'are'} never worked into{since}",
        "work into them, skip them in so many words, or say: leave remaining sts unworked",
        follows=True,
    )


def _left_word(hook: Hook, key: str, number: int) -> str:
    target = Target("sp", chains=int(key[3:])) if key.startswith("sp ") else Target("stitch", key)
    return target_word(target, hook.shop.terms, number)
