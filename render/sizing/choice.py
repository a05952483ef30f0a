"""How many rounds each size works in each motif."""

from __future__ import annotations

from collections.abc import Mapping
from difflib import get_close_matches

from motifold.render.pattern.model import MotifSource, Pattern
from motifold.render.pattern.problem import Problem
from motifold.render.sizing.model import BodyFit, Fit, SizeChoice, SizeTable
from motifold.render.sizing.own import own_of, pattern_of_size
from motifold.render.sizing.reading import ends_by_measure, grows, in_inches, last_labelled, numbers_in_brackets, sized_motif, varies
from motifold.render.sizing.ruler import MOST_ROUNDS, off, read_ease
from motifold.render.sizing.units import one_length, percent_text

ONE_SIZE = "One size"


def size_names(pattern: Pattern) -> tuple[str, ...]:
    """The sizes in the file's order: its bodies, else one for each number in the text's brackets, else "One size"."""
    if pattern.size is not None and pattern.size.bodies:
        return tuple(name for name, _ in pattern.size.bodies)
    count = numbers_in_brackets(pattern)
    return tuple(f"Size {i + 1}" for i in range(count)) if count > 1 else (ONE_SIZE,)


def choose_sizes(
    pattern: Pattern, table: SizeTable | None, rounds: int | None = None, size_name: str | None = None
) -> tuple[tuple[SizeChoice, ...], tuple[Problem, ...]]:
    """Each size's rounds: the table's choice, or the nearest with a warning where none lies within the ease; ``rounds`` overrides both.

    A motif that grows ("and following") follows the size unless it has a ``last_round``; any other works its last_round, or its whole text.
    """
    names = size_names(pattern)
    if size_name is not None and size_name not in names:
        return (), (_unknown(size_name, names),)
    problems: list[Problem] = []
    bodies = {body.name: body for body in table.bodies} if table else {}
    main = sized_motif(pattern)
    choices = []
    for index, name in enumerate(names):
        if size_name is not None and name != size_name:
            continue
        own = own_of(pattern, name)
        sized = rounds if rounds is not None else _sized(pattern_of_size(pattern, name), main, bodies.get(name), problems)
        if rounds is None and own is not None and own.rounds is not None:
            sized = own.rounds
        choices.append(SizeChoice(name, index, _rounds(pattern, main, sized, rounds is not None, problems)))
    return tuple(choices), tuple(dict.fromkeys(problems))


def _sized(pattern: Pattern, main: MotifSource | None, body: BodyFit | None, problems: list[Problem]) -> int | None:
    """The rounds that a body asks for; None where no table says, or where the text itself makes the size."""
    if body is None or main is None:
        return None
    if body.chosen is None:
        problems.append(_none_within(pattern, main, body))
    if ends_by_measure(main) or (varies(main) and not grows(main)):
        return None
    if body.chosen is not None:
        return body.chosen.rounds
    return _nearest(pattern, body).rounds


def _nearest(pattern: Pattern, body: BodyFit) -> Fit:
    own = own_of(pattern, body.name)
    fixed = next((fit for fit in body.fits if own is not None and fit.rounds == own.rounds), None)
    if fixed is not None:
        return fixed
    aim = read_ease(pattern.size.ease if pattern.size else None).aim(body.body_cm)
    return min(body.fits, key=lambda f: (off(f.girth_cm, aim), f.rounds))


def _rounds(
    pattern: Pattern, main: MotifSource | None, sized: int | None, forced: bool, problems: list[Problem]
) -> Mapping[str, int | None]:
    found: dict[str, int | None] = {}
    anything_grows = any(grows(motif) for motif in pattern.motifs)
    for motif in pattern.motifs:
        follows = grows(motif) and (motif.last_round is None or forced)
        is_main = main is not None and motif.name == main.name
        if sized is not None and (is_main or follows or (forced and not anything_grows)):
            found[motif.name] = _bounded(pattern, motif, sized, is_main, problems)
        else:
            found[motif.name] = motif.last_round
    return found


def _bounded(pattern: Pattern, motif: MotifSource, rounds: int, is_main: bool, problems: list[Problem]) -> int:
    """As many of these rounds as the text has; a motif asked for more is a problem if the size is about it."""
    most = MOST_ROUNDS if grows(motif) or ends_by_measure(motif) else last_labelled(motif) or rounds
    if 1 <= rounds <= most:
        return rounds
    if is_main:
        what = "row" if motif.worked == "rows" else "round"
        message = f"{rounds} {what}s cannot be worked"
        if rounds > 0:
            message = f'{rounds} {what}s of "{motif.name}" were asked for, but its text has {most}'
        hint = f'name the last {what} "Rnd {most} and following" to let it grow' if 1 <= most < rounds and not grows(motif) else None
        problems.append(Problem("size-rounds", "error", pattern.place("motif", motif.name, "rounds"), message, hint))
    return min(max(rounds, 1), most)


def _none_within(pattern: Pattern, main: MotifSource, body: BodyFit) -> Problem:
    fit = _nearest(pattern, body)
    if varies(main) and not grows(main):
        counted = "its stitches make"
    elif (own := own_of(pattern, body.name)) is not None and own.rounds is not None:
        counted = f"its {fit.rounds} {main.worked if fit.rounds != 1 else main.worked.removesuffix('s')} make"
    else:
        counted = f"the nearest, {fit.rounds} {main.worked if fit.rounds != 1 else main.worked.removesuffix('s')}, makes"
    imperial = in_inches(pattern)
    finished = f"{one_length(fit.girth_cm, imperial)} ({percent_text(fit.ease_pct)})"
    allowed = one_length(body.body_cm, imperial)
    message = f"{body.name}: nothing comes within the ease that is allowed for {allowed}; {counted} {finished}"
    hint = body.closer[0].reason if body.closer else None
    return Problem("size-fit", "warning", pattern.place("size", "bodies", body.name), message, hint)


def _unknown(size_name: str, names: tuple[str, ...]) -> Problem:
    near = get_close_matches(size_name, names, n=1, cutoff=0.4)
    hint = f'did you mean "{near[0]}"?' if near else None
    return Problem("size-name", "error", None, f'there is no size "{size_name}"; the sizes are {", ".join(names)}', hint)
