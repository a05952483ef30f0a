"""What would mend a line: one number more or less, one step left out or put in, and what to say about it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from motifold.render.fabric.bench import Terms
from motifold.render.fabric.wording import place_words, spec_words, stitch_word
from motifold.render.pattern.instructions import Amount, Chain, Group, Join, Place, Repeat, Skip, Step, StitchSpec, Target, Work
from motifold.symbols.record import dataclass


@dataclass(frozen=True, slots=True)
class Mend:
    """A line's steps with one thing changed, and the words for it."""

    steps: tuple[Step, ...]
    words: str


def mends(steps: tuple[Step, ...], size: int, terms: Terms) -> Iterator[Mend]:
    """One-step changes, the likeliest first: numbers by one, a step missing before the join, numbers by two, a step too many."""
    for by in (1, -1):
        yield from (Mend(new, words) for new, words in _within(steps, by, size, terms))
    yield from _missing_at_end(steps, size, terms)
    for by in (2, -2):
        yield from (Mend(new, words) for new, words in _within(steps, by, size, terms))
    for index, step in enumerate(steps):
        if isinstance(step, Skip):
            yield Mend((*steps[:index], *steps[index + 1 :]), f"without sk {place_words(step.place, terms, size)}")


def crooked(steps: Sequence[Step], size: int) -> int:
    """How many groups are not the same read from either end, as (3 dc, ch 2, 2 dc) is not: such a mend is the less likely."""
    total = 0
    for step in steps:
        if isinstance(step, Repeat):
            total += crooked(step.steps, size)
        elif isinstance(step, Group):
            marks = [_mark(inner, size) for inner in step.steps]
            total += marks != marks[::-1]
    return total


def _mark(step: Step, size: int) -> tuple[str, int]:
    if isinstance(step, Work):
        return step.stitch.name, step.count.at(size)
    return (type(step).__name__, step.count.at(size)) if isinstance(step, Chain) else (type(step).__name__, 0)


def _within(
    steps: tuple[Step, ...],
    by: int,
    size: int,
    terms: Terms,
    around: Place | None = None,
) -> Iterator[tuple[tuple[Step, ...], str]]:
    for index, step in enumerate(steps):
        for new, words in _of_step(step, by, size, terms, around):
            yield (*steps[:index], new, *steps[index + 1 :]), words


def _of_step(step: Step, by: int, size: int, terms: Terms, around: Place | None) -> Iterator[tuple[Step, str]]:
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
            yield replace(step, place=place), f"sk {place_words(place, terms, size)} instead of {place_words(step.place, terms, size)}"
    elif isinstance(step, Group):
        for inner, words in _within(step.steps, by, size, terms, step.place):
            yield replace(step, steps=inner), words
    elif isinstance(step, Repeat):
        more = _more(step.times, by, size) if step.times is not None else None
        if more is not None and step.times is not None:
            yield replace(step, times=more), f"the repeat worked {_times(more.at(size))} instead of {_times(step.times.at(size))}"
        for inner, words in _within(step.steps, by, size, terms, around):
            yield replace(step, steps=inner), words


def _of_work(step: Work, by: int, size: int, terms: Terms, around: Place | None) -> Iterator[tuple[Step, str]]:
    place = step.place
    word = spec_words(step.stitch, terms)
    if place is not None and _counts_places(step, place, size):
        more = _more(place.count, by, size)
        if more is not None:
            new = replace(place, count=more, each=more.at(size) > 1)
            yield replace(step, place=new), f"{word} in {place_words(new, terms, size)} instead of {place_words(place, terms, size)}"
    if place is not None and place.from_hook and place.ordinal is not None and place.ordinal + by >= 1:
        nearer = replace(place, ordinal=place.ordinal + by)
        yield replace(step, place=nearer), f"{word} in {place_words(nearer, terms, size)} instead of {place_words(place, terms, size)}"
    if step.stitch.name == "sl st":
        return
    if place is not None and place.each and place.which in ("next", "last") and place.count.at(size) > 1 and step.count.at(size) == 1:
        return  # nobody meant three in each of the next two corners
    more = _more(step.count, by, size)
    if more is not None and _likely(step.count.at(size), by):
        outer = place if place is not None else around
        where = f" in {place_words(outer, terms, size)}" if outer is not None else ""
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


def _missing_at_end(steps: tuple[Step, ...], size: int, terms: Terms) -> Iterator[Mend]:
    """Stitches in the beginning space, forgotten before the join."""
    join = next((index for index, step in enumerate(steps) if isinstance(step, Join) and not step.attach), len(steps))
    at = join
    while at and isinstance(steps[at - 1], Chain):
        at -= 1
    works = [step for step in _flat(steps[:join]) if isinstance(step, Work) and step.stitch.name not in ("sl st", "picot")]
    if not works:
        return
    last = works[-1]
    for count in (1, 2, 3, 4, 5):
        place = Place(last.span, "beg", Target("sp"))
        new = Work(last.id, last.span, StitchSpec(last.stitch.name), Amount((count,)), place)
        words = f"{count} {stitch_word(last.stitch.name, terms, count)} in beg sp before the join"
        yield Mend((*steps[:at], new, *steps[at:]), words)


def _flat(steps: Sequence[Step]) -> Iterator[Step]:
    for step in steps:
        if isinstance(step, Group | Repeat):
            yield from _flat(step.steps)
        else:
            yield step


def _times(count: int) -> str:
    return {1: "once", 2: "twice"}.get(count, f"{count} times")
