"""What would mend a line: one number more or less, one step left out or put in, and what to say about it."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import replace
from functools import partial

from motifold.render.fabric.bench import Hook, Terms
from motifold.render.fabric.claims import worked_targets
from motifold.render.fabric.lines import Job
from motifold.render.fabric.missing import missing_at_end, missing_chains, missing_stitch, walks
from motifold.render.fabric.wording import height_in_chains, into, place_words, skip_word, spec_words, step_words, stitch_word
from motifold.render.pattern.instructions import Amount, Chain, Group, Join, Place, Repeat, Skip, Step, Stop, Target, Work
from motifold.render.pattern.problem import Problem, Span
from motifold.symbols.record import dataclass


@dataclass(frozen=True, slots=True)
class Mend:
    """A line's steps with one thing changed, and the words for it. ``far``: 0 for the likeliest slips, more for others."""

    steps: tuple[Step, ...]
    words: str
    far: int = 0


@dataclass(frozen=True, slots=True)
class Clues:
    """What the line and the round below it say about what may be meant.

    ``kinds`` and ``spaces``: stitches and lengths of spaces that the line's counts name; ``there``: what the round below has;
    ``beside``: what the line itself works into; ``begins``: the beginning chain that the join names and the round has not;
    ``misnamed``: a stitch or a place has a name that fits nothing, so that this is looked at first.
    """

    kinds: tuple[str, ...] = ()
    spaces: tuple[int, ...] = ()
    there: tuple[Target, ...] = ()
    begins: int | None = None
    misnamed: bool = False
    beside: tuple[Target, ...] = ()


def clues_of(hook: Hook, job: Job, mistake: Problem) -> Clues:
    """The clues for a line that was worked last and has a mistake."""
    lap = hook.laps[-1]
    targets = [claim.target for claim in job.line.counts]
    kinds = tuple(dict.fromkeys(target.name for target in targets if target.kind == "stitch" and target.name))
    spaces = tuple(dict.fromkeys(target.chains for target in targets if target.kind == "sp" and target.chains))
    below = [atom for cursor in (lap.cursor, *lap.others.values()) for atom in cursor.atoms]
    there = sorted({(atom.chains if atom.space else 0, "" if atom.space else atom.name) for atom in below})[:8]
    there += sorted({(0, atom.group_name) for atom in below if atom.group_name})[:4]
    others = [kind for kind in lap.counts if kind in _PLAIN and kind not in kinds]
    begins = None
    if mistake.code == "join" and lap.beginning is None:
        named = [step.place for step in job.steps if isinstance(step, Join) and not step.attach and step.place is not None]
        chains = [place.of.target.chains if place.of is not None else place.target.chains for place in named]
        begins = next((count for count in chains if count), None)
    return Clues(
        kinds,
        spaces,
        tuple(Target("sp", chains=chains) if chains else Target("stitch", name) for chains, name in there),
        begins,
        mistake.code in ("place", "join") or bool(kinds and others),
        worked_targets(job.steps),
    )


def it_comes_out(words: Iterable[str]) -> str:
    """A hint of one mend or two: "it comes out with 3 dc in ring instead of 2"."""
    two = list(dict.fromkeys(words))[:2]
    return "it comes out " + ", or ".join(one if one.startswith("without ") else f"with {one}" for one in two)


Change = Callable[[Step, Place | None], Iterator[tuple[Step, str]]]
"""Other ways to write one step, each with its words; the place is that of the group around it."""


def mends(steps: tuple[Step, ...], size: int, terms: Terms, clues: Clues) -> Iterator[Mend]:
    """One-step changes, the likeliest first: what is misnamed, numbers by one, a step missing, numbers by two, a step too many."""
    if clues.misnamed:
        yield from misnamed(steps, size, terms, clues)
    if clues.begins:
        yield _begun(steps, clues.begins)
    first = next((step for step in steps if isinstance(step, Chain)), None)
    for by in (1, -1, 2, -2):
        if by == 2:
            yield from (Mend(new, words, 1) for new, words in missing_stitch(steps, size, terms))
            yield from (Mend(new, words) for new, words in missing_at_end(steps, size, terms))
            yield from (Mend(new, words, 1) for new, words in changed(steps, lambda step, _: _shorter_last(step, size, terms)))
            yield from (Mend(new, words, 1) for new, words in changed(steps, lambda step, _: _same_or_next(step, size, terms)))
            if not clues.misnamed:
                yield from misnamed(steps, size, terms, clues)
            yield from (Mend(new, words) for new, words in missing_chains(steps, clues.spaces, size, terms))
        for new, words in changed(steps, partial(_by_number, by=by, size=size, terms=terms)):
            yield Mend(new, words, 2 if first is not None and first not in new else abs(by) - 1)
    for index, step in enumerate(steps):
        if isinstance(step, Skip):
            yield Mend((*steps[:index], *steps[index + 1 :]), f"without {skip_word(terms)} {place_words(step.place, terms, size)}", 1)


def crooked(steps: Sequence[Step], size: int) -> int:
    """How many groups are not the same read from either end, as (3 dc, ch 2, 2 dc) is not: such a mend is the less likely.

    What goes into the place of the beginning chain is left out: the chain is a part of it.
    """
    total = 0
    for step in steps:
        if isinstance(step, Repeat):
            total += crooked(step.steps, size)
        elif isinstance(step, Group) and step.place.which not in ("same", "beg"):
            marks = [_mark(inner, size) for inner in step.steps]
            total += marks != marks[::-1]
    return total


def _mark(step: Step, size: int) -> tuple[str, int]:
    if isinstance(step, Work):
        return step.stitch.name, step.count.at(size)
    return (type(step).__name__, step.count.at(size)) if isinstance(step, Chain) else (type(step).__name__, 0)


def changed(steps: Sequence[Step], change: Change, around: Place | None = None) -> Iterator[tuple[tuple[Step, ...], str]]:
    """The steps with one of them changed, at any depth."""
    for index, step in enumerate(steps):
        others = list(change(step, around))
        if isinstance(step, Group):
            others += [(replace(step, steps=inner), words) for inner, words in changed(step.steps, change, step.place)]
        elif isinstance(step, Repeat):
            others += [(replace(step, steps=inner), words) for inner, words in changed(step.steps, change, around)]
        for new, words in others:
            yield (*steps[:index], new, *steps[index + 1 :]), words


def _by_number(step: Step, around: Place | None, *, by: int, size: int, terms: Terms) -> Iterator[tuple[Step, str]]:
    if isinstance(step, Work):
        yield from _of_work(step, by, size, terms, around)
    elif isinstance(step, Chain):
        more = _more(step.count, by, size)
        if more is not None:
            yield replace(step, count=more), f"ch {more.at(size)} instead of ch {step.count.at(size)}"
    elif isinstance(step, Skip):
        more = _more(step.place.count, by, size)
        if more is not None and step.place.which in ("next", "last"):
            place = replace(step.place, count=more, each=more.at(size) > 1)
            words = f"{place_words(place, terms, size)} instead of {place_words(step.place, terms, size)}"
            yield replace(step, place=place), f"{skip_word(terms)} {words}"
    elif isinstance(step, Repeat):
        more = _more(step.times, by, size) if step.times is not None else None
        if more is not None and step.times is not None:
            yield replace(step, times=more), f"the repeat worked {_times(more.at(size))} instead of {_times(step.times.at(size))}"


def _shorter_last(step: Step, size: int, terms: Terms) -> Iterator[tuple[Step, str]]:
    """A repeat whose last pass leaves its last step out, where the round began with what it would work."""
    if not isinstance(step, Repeat) or step.times is None or step.omit or len(step.steps) < 2:
        return
    steps = tuple(inner for inner in step.steps if not isinstance(inner, Stop))
    last = steps[-1] if len(steps) > 1 else None
    if isinstance(last, Work | Group):
        yield replace(step, steps=steps, omit=1), f'"{step_words(last, terms, size)}" left out of the last repeat'


def _same_or_next(step: Step, size: int, terms: Terms) -> Iterator[tuple[Step, str]]:
    """Another stitch in the place just worked into, or one further on."""
    if not isinstance(step, Work | Group):
        return
    place = step.place
    if place is None or place.which not in ("same", "next") or place.each or place.count.at(size) != 1 or place.of is not None:
        return
    if place.of_round is not None or place.manner != "in" or place.target.kind not in ("st", "stitch", "sp"):
        return
    if place.target.kind == "stitch" and place.target.name not in _PLAIN:
        return  # the middle of one shell is not come to twice
    other = replace(place, which="next" if place.which == "same" else "same")
    new = replace(step, place=other)
    yield new, f"{step_words(new, terms, size)} instead of {place_words(place, terms, size)}"


def _begun(steps: tuple[Step, ...], chains: int) -> Mend:
    """A beginning chain that was forgotten."""
    at = next((i for i, step in enumerate(steps) if isinstance(step, Work | Group | Repeat) and not walks(step)), 0)
    span = steps[at].span if steps else Span(1, 1)
    return Mend((*steps[:at], Chain(0, span, Amount((chains,))), *steps[at:]), f"ch {chains} at the beginning")


def misnamed(steps: tuple[Step, ...], size: int, terms: Terms, clues: Clues) -> Iterator[Mend]:
    """Another stitch, of those that the counts name, or another place, of those that there are."""
    places = partial(_other_place, there=clues.there, beside=clues.beside, size=size, terms=terms)
    for new, words in changed(steps, places):
        yield Mend(new, words)
    for new, words in changed(steps, partial(_other_stitch, kinds=clues.kinds, spaces=clues.spaces, size=size, terms=terms)):
        yield Mend(new, words)


def _other_stitch(
    step: Step, around: Place | None, *, kinds: Sequence[str], spaces: Sequence[int], size: int, terms: Terms
) -> Iterator[tuple[Step, str]]:
    if isinstance(step, Work) and step.stitch.name in _PLAIN and not step.stitch.standing and step.stitch.together <= 1:
        for kind in kinds:
            if kind in _PLAIN and kind != step.stitch.name:
                new = replace(step, stitch=replace(step.stitch, name=kind))
                where = "" if step.place is not None or around is None else f" {into(around, terms, size)}"
                yield new, f"{step_words(new, terms, size)}{where} instead of {spec_words(step.stitch, terms)}"
    elif isinstance(step, Chain) and step.counts_as is not None and len(step.counts_as.stitches) == 1:
        said = step.counts_as.stitches[0]
        for kind in kinds:
            if kind != said:
                counts = replace(step.counts_as, stitches=(kind,))
                words = f"ch {step.count.at(size)} (counts as {stitch_word(kind, terms)}) instead of {stitch_word(said, terms)}"
                yield replace(step, counts_as=counts), words
            more = step.count.at(size) - height_in_chains(kind)
            if more > 0 and (kind, more) != (said, step.counts_as.chains):
                counts = replace(step.counts_as, stitches=(kind,), chains=more)
                words = f"(counts as {stitch_word(kind, terms)} and ch {more}) instead of {stitch_word(said, terms)}"
                yield replace(step, counts_as=counts), f"ch {step.count.at(size)} {words}"
    elif isinstance(step, Join) and len(step.steps) and isinstance(step.steps[-1], Work):
        closing = step.steps[-1]
        said_space = closing.counts_as.space if closing.counts_as is not None else None
        for chains in spaces if said_space is not None else ():
            if chains != said_space and closing.counts_as is not None:
                other = replace(closing, counts_as=replace(closing.counts_as, space=chains))
                words = f"the join counted as ch-{chains} sp instead of ch-{said_space} sp"
                yield replace(step, steps=(*step.steps[:-1], other)), words


def _other_place(
    step: Step, _around: Place | None, *, there: Sequence[Target], beside: Sequence[Target], size: int, terms: Terms
) -> Iterator[tuple[Step, str]]:
    extent = step.extent if isinstance(step, Repeat) else None
    if isinstance(step, Repeat) and extent is not None and extent.place is not None:
        for place, words in _renamed(extent.place, there, (), size, terms):
            yield replace(step, extent=replace(extent, place=place)), f"the repeat worked to {words}"
    if isinstance(step, Work | Group | Skip) and step.place is not None:
        for place, words in _renamed(step.place, there, beside, size, terms):
            yield replace(step, place=place), words


def _renamed(
    place: Place, there: Sequence[Target], beside: Sequence[Target], size: int, terms: Terms
) -> Iterator[tuple[Place, str]]:
    """A place, what it is a part of, or the one that it goes on to, by another name.

    A name that is there may still be a slip: for another ``beside`` it in the line, or one special stitch for another.
    """
    target = place.target
    is_there = any(other.kind == target.kind and other.name == target.name and other.chains == target.chains for other in there)
    if target.kind in ("stitch", "sp") and (target.name or target.chains):
        for other in there:
            special = other.kind == "stitch" and other.name not in _PLAIN
            if special and place.of is not None:
                continue  # a part of a shell is no shell
            likely = other in beside or (special and target.name not in _PLAIN)
            if is_there and place.of_round is None and not likely:
                continue
            if other.kind == target.kind and (other.name, other.chains) != (target.name, target.chains):
                new = replace(place, target=replace(target, name=other.name, chains=other.chains))
                yield new, f"{place_words(new, terms, size)} instead of {place_words(place, terms, size)}"
    if place.of is not None:
        for inner, words in _renamed(place.of, there, beside, size, terms):
            yield replace(place, of=inner), words
    if place.extent is not None and place.extent.place is not None:
        for inner, words in _renamed(place.extent.place, there, (), size, terms):
            yield replace(place, extent=replace(place.extent, place=inner)), words


_PLAIN = ("sc", "hdc", "dc", "tr", "dtr", "trtr")


def _of_work(step: Work, by: int, size: int, terms: Terms, around: Place | None) -> Iterator[tuple[Step, str]]:
    place = step.place
    word = spec_words(step.stitch, terms)
    if place is not None and _counts_places(step, place, size):
        more = _more(place.count, by, size)
        if more is not None:
            new = replace(place, count=more, each=more.at(size) > 1)
            yield replace(step, place=new), f"{word} {into(new, terms, size)} instead of {place_words(place, terms, size)}"
    if place is not None and place.from_hook and place.ordinal is not None and place.ordinal + by >= 2:
        nearer = replace(place, ordinal=place.ordinal + by)
        yield replace(step, place=nearer), f"{word} {into(nearer, terms, size)} instead of {place_words(place, terms, size)}"
    if step.stitch.name == "sl st" or (place is not None and place.from_hook):
        return
    if place is not None and place.each and place.which in ("next", "last") and place.count.at(size) > 1 and step.count.at(size) == 1:
        return  # nobody meant three in each of the next two corners
    more = _more(step.count, by, size)
    if more is not None and _likely(step.count.at(size), by):
        outer = place if place is not None else around
        where = f" {into(outer, terms, size)}" if outer is not None else ""
        yield replace(step, count=more), f"{more.at(size)} {word}{where} instead of {step.count.at(size)}"


def _counts_places(step: Work, place: Place, size: int) -> bool:
    """Whether the number in the place says how many stitches are worked: "dc in next 3 sts", "dc in next st"."""
    if place.each:
        return place.which in ("next", "last")
    one = place.count.at(size) == 1 and step.count.at(size) == 1
    return one and place.which == "next" and place.target.kind in ("st", "stitch", "ch")


def _likely(now: int, by: int) -> bool:
    """A number is two off only where it is no small one: 1 for 3 is no slip of the pen."""
    return abs(by) < 2 or now > 2


def _more(amount: Amount, by: int, size: int) -> Amount | None:
    now = amount.at(size)
    if now + by < 1:
        return None
    if not amount.varies:
        return Amount((now + by,))
    at = min(size, len(amount.values) - 1)
    return Amount((*amount.values[:at], now + by, *amount.values[at + 1 :]))


def _times(count: int) -> str:
    return {1: "once", 2: "twice"}.get(count, f"{count} times")
