"""Steps into words: "2 dc in next st", "[3 dc in ring, ch 2] 3 times", "*...; rep from * around, ending last rep at **"."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from motifold.render.pattern.instructions import (
    Amount,
    Chain,
    CountsAs,
    FastenOff,
    Group,
    Join,
    LeaveYarn,
    MagicRing,
    Marker,
    Place,
    Repeat,
    RepeatRounds,
    Skip,
    Step,
    Stop,
    Turn,
    UseYarn,
    Words,
    Work,
)
from motifold.render.sizing.units import convert, inches_text
from motifold.render.words.places import extent_text, noun_text, place_text, round_name
from motifold.render.words.used import nodes
from motifold.render.words.voice import NBSP, Voice, canonical_name, capitalised
from motifold.symbols.stitches import MAX_YARN_OVERS, stitch_name


def steps_text(voice: Voice, steps: tuple[Step, ...], depth: int = 0) -> str:
    """Steps in their order, with commas between and a semicolon before whatever closes, changes or turns the work.

    ``depth``: how many brackets they stand in already.
    """
    text, closed = "", False
    for index, step in enumerate(steps):
        voice = _from_now_on(voice, step)
        if _goes_without_saying(voice, steps, index):
            continue
        before = next((s for k in range(index - 1, -1, -1) if not _goes_without_saying(voice, steps, k) for s in (steps[k],)), None)
        if isinstance(step, Stop):
            text += "**"
            continue
        phrase = step_text(voice, step, depth, before)
        closes = (isinstance(step, Join) and not step.attach) or isinstance(step, FastenOff)
        if text:
            mark = _between(before, step, closed or closes, depth)
            phrase = capitalised(phrase) if mark == ". " and not phrase.startswith("{") else phrase
            text += mark
        text += phrase
        closed = closed or closes or isinstance(step, RepeatRounds)
        voice = replace(voice, hand=in_hand_after(step) or voice.hand)
    return text


def in_hand_after(steps: object) -> str | None:
    """The stitch that "inc" is one of after these steps; None where none of them is such a stitch."""
    found: str | None = None
    for node in nodes(steps):
        if isinstance(node, Work) and node.stitch.name in _IN_HAND:
            found = node.stitch.name
    return found


_IN_HAND = frozenset({"sc", "hdc", *(stitch_name(yarn_overs) for yarn_overs in range(1, MAX_YARN_OVERS + 1))})


_OTHER_SIDE = re.compile(r"working (?:(?:in|through|on|along|across|into) )?(?:the )?other side of (?:the )?(?:foundation )?(?:chain|ch)")
_OTHER_PLACES = re.compile(r"working .*\b(?:loops?|lps?|blo|flo|row|side|chain|ch)\b", re.IGNORECASE)


def _from_now_on(voice: Voice, step: Step) -> Voice:
    """The voice after words that say where all that follows is worked: "next ch" is then one of that side."""
    if not isinstance(step, Words) or step.brace or not _OTHER_PLACES.match(step.text):
        return voice
    return replace(voice, other_side=_OTHER_SIDE.fullmatch(step.text.lower()) is not None)


def _goes_without_saying(voice: Voice, steps: tuple[Step, ...], index: int) -> bool:
    """Whether nothing is worked here in the one size that is printed, or this is the beginning that a standing stitch makes by itself:
    "with B, standing dc in any st"; nothing is joined there."""
    step = steps[index]
    if voice.size is not None and _is_nothing(voice.size, step):
        return True
    if not (isinstance(step, Join) and step.method == "standing" and step.place is None):
        return False
    following = steps[index + 1] if index + 1 < len(steps) else None
    before = steps[:index]
    first = max((k + 1 for k, other in enumerate(before) if isinstance(other, FastenOff)), default=0)
    begins = all(isinstance(other, UseYarn | LeaveYarn | Words | Turn | Marker) for other in before[first:])
    return begins and isinstance(following, Work) and following.stitch.standing


def _is_nothing(size: int, step: Step) -> bool:
    """Such as "sc in next 0 sts", "[sc, inc] 0 times"."""
    amounts = {Work: ("count",), Chain: ("count",), Repeat: ("times",)}.get(type(step), ())
    found = [amount for name in amounts if (amount := getattr(step, name)) is not None]
    place = step.place if isinstance(step, Work | Skip | Group) else None
    return any(amount.at(size) == 0 for amount in (*found, *((place.count,) if place is not None else ())))


_GOES_ON = re.compile(r"(?:work|leav|keep|start|begin|carry|mak|push|tak|us)ing\b|behind|in front|loosely|tightly|as |so ", re.IGNORECASE)
"""Words that belong to the step before them, by a comma."""


def _is_chore(step: Words) -> bool:
    """Whether the words are a sentence of their own: "weave in ends", "stuff firmly"."""
    return not (step.brace or step.leave or step.behind or _GOES_ON.match(step.text) or step.text.lower().startswith(("do not", "not ")))


def _between(before: Step | None, step: Step, closing: bool, depth: int) -> str:
    """What parts two steps. ``closing``: the round is being closed, or is closed already."""
    if isinstance(before, Words) and before.brace:
        return " "
    if isinstance(step, Words) and step.brace:
        return ". "
    if isinstance(before, Join) and before.method == "standing":
        return " "
    if isinstance(step, Words):
        if step.text.startswith("working") and not depth and not isinstance(before, UseYarn | Words | None):
            return "; "
        if _GOES_ON.match(step.text) or depth:
            return ", "
        return ". " if _is_chore(step) or closing else ", " if step.leave else "; "
    if isinstance(before, Words) and _is_chore(before) and not depth:
        return ". "
    if isinstance(step, UseYarn) and step.manner == "each":
        return ", "
    ends = isinstance(step, Turn) and not isinstance(before, Chain)
    starred = isinstance(before, Repeat) and _style(before, 0) == "*"
    return "; " if closing or ends or (starred and isinstance(step, UseYarn)) else ", "


def step_text(voice: Voice, step: Step, depth: int = 0, before: Step | None = None) -> str:
    """One step. ``before``: the step just before it, for "inc" is of the stitch in hand."""
    match step:
        case Work():
            return _work(voice, step, before)
        case Chain():
            return f"{_ch(voice)}{NBSP}{voice.number(step.count)}{counts_as_text(voice, step.counts_as)}"
        case Group():
            inside = steps_text(voice, step.steps, depth + 1)
            return f"({inside}) {place_text(voice, step.place)}"
        case Skip():
            return f"{voice.term('sk')} {noun_text(voice, step.place, each=False)}"
        case Turn():
            return "turn"
        case Join():
            return _join(voice, step)
        case UseYarn():
            return _use_yarn(voice, step)
        case LeaveYarn():
            return f"{step.manner} {step.yarn}" if step.yarn else f"{step.manner} yarn"
        case FastenOff():
            return _fasten_off(step)
        case MagicRing():
            return "make a magic ring"
        case Marker():
            word = voice.craft("pm" if step.manner == "place" else "sm")
            return f"{word} {place_text(voice, step.place)}" if step.place is not None else word
        case Words():
            return "{" + voice.said(step.text) + "}" if step.brace else voice.spelt_out(voice.said(step.text))
        case Repeat():
            return _repeat(voice, step, depth)
        case RepeatRounds():
            return _repeat_rounds(voice, step)
        case Stop():
            return "**"


def _ch(voice: Voice) -> str:
    return "chain" if voice.plain else "ch"


def _work(voice: Voice, step: Work, before: Step | None) -> str:
    one = voice.is_one(step.count)
    alone = step.stitch.increase > 1 and not isinstance(before, Work)
    several_each = step.place is None and not one and (step.stitch.together > 1 or alone)
    noun = _stitch(voice, step, before, plural=not one and not several_each)
    if several_each:
        text = f"[{noun}] {_times(voice.number(step.count))}"
    else:
        text = noun if one else voice.counted(voice.number(step.count), noun)
    if step.place is not None:
        text += f" {place_text(voice, step.place)}"
    if step.place is not None and step.place.from_hook and step.counts_as is not None and step.counts_as.stitches:
        return f"{text} ({_missed(voice, step.place)} count as {_counted_as(voice, step.counts_as)})"
    return text + counts_as_text(voice, step.counts_as)


def _missed(voice: Voice, place: Place) -> str:
    """"skipped 3 ch": those that lie between the hook and the stitch's place."""
    return f"{voice.term('skipped')} {voice.counted(str((place.ordinal or 1) - 1), voice.stitch('ch', voice.plain))}"


def _counted_as(voice: Voice, counts: CountsAs) -> str:
    parts = [voice.one(name) for name in counts.stitches]
    if counts.chains:
        parts.append(f"{_ch(voice)}{NBSP}{counts.chains}")
    if counts.space is not None:
        parts.append(voice.chains(counts.space, "sp"))
    return " and ".join(parts)


def _stitch(voice: Voice, step: Work, before: Step | None, plural: bool) -> str:
    spec = step.stitch
    name = canonical_name(spec)
    standing = "standing " if spec.standing else ""
    if spec.increase > 1:
        in_hand = voice.hand == name and not voice.plain
        stem = "" if in_hand else f"{voice.stitch(name)} "
        several = f"{spec.increase}-in-1 " if spec.increase > 2 else ""
        return f"{stem}{several}{voice.craft('inc')}{'s' if plural and voice.plain else ''}"
    return standing + voice.stitch(name, plural)


def counts_as_text(voice: Voice, counts: CountsAs | None) -> str:
    """`` (counts as dc and ch 1)``, with a space before it; empty where nothing is said."""
    if counts is None:
        return ""
    what = _counted_as(voice, counts)
    if not what:
        return f" (does not count as a {voice.craft('st')}{_throughout(counts)})"
    return f" (counts as {what}{_throughout(counts)})"


def _throughout(counts: CountsAs) -> str:
    return " here and throughout" if counts.throughout else ""


def _join(voice: Voice, step: Join) -> str:
    place = f" {place_text(voice, step.place)}" if step.place is not None else ""
    to_ring = " to form a ring" if step.ring else ""
    match step.method:
        case "none":
            return "do not join"
        case "usual":
            return f"join{place}{to_ring}"
        case "invisible":
            return f"invisible join{place}"
        case "sl st" | "sc":
            return f"join with {voice.one(step.method)}{place}{to_ring}"
        case "standing":
            return "join with"  # the standing stitch follows
        case "work":
            inside = steps_text(voice, step.steps)
            return f"join with {inside}{place}"


def _use_yarn(voice: Voice, step: UseYarn) -> str:
    yarn = step.yarn or "the other yarn"
    if step.manner == "with":
        return f"with {yarn}"
    if step.manner == "each":
        return f"changing {voice.term('color')} every {'row' if voice.rows else voice.craft('rnd')}"
    if step.manner == "pick up":
        return f"pick up {yarn}"
    return f"changing to {yarn} in {voice.the}last {voice.term('yo')}" if step.in_last_yo else f"change to {yarn}"


def _fasten_off(step: FastenOff) -> str:
    if step.every:
        return "fasten off both yarns"
    if step.yarns:
        return f"fasten off {' and '.join(step.yarns)}"
    return "fasten off"


def _style(repeat: Repeat, depth: int) -> str:
    """A star outside all brackets where the source has one or its last pass stops early; brackets and parentheses by turns inside."""
    stops = any(isinstance(step, Stop) for step in repeat.steps)
    if depth == 0 and (stops or repeat.style == "*"):
        return "*"
    return "[" if depth % 2 == 0 else "("


def _repeat(voice: Voice, repeat: Repeat, depth: int) -> str:
    if repeat.style == "each":
        *parts, last = [step_text(voice, step, depth + 1) for step in repeat.steps]
        return f"{', '.join(parts)} and {last} {_how_often(voice, repeat)}"
    if repeat.times is not None and voice.is_one(repeat.times) and not repeat.omit:
        return steps_text(voice, tuple(step for step in repeat.steps if not isinstance(step, Stop)), depth)
    style = _style(repeat, depth)
    stops = any(isinstance(step, Stop) for step in repeat.steps)
    tail = _omitted(voice, repeat) + (f", ending {voice.the}last {voice.craft('rep')} at **" if stops else "")
    if style != "*":
        inside = steps_text(voice, repeat.steps, depth + 1)
        close = {"[": "]", "(": ")"}[style]
        return f"{style}{inside}{close} {_how_often(voice, repeat)}{tail}"
    # Inside a star nothing else is marked with one: brackets begin there anew.
    inside = steps_text(voice, repeat.steps, 2)
    return f"*{inside}; {voice.craft('rep')} from * {_again(voice, repeat)}{tail}"


def _how_often(voice: Voice, repeat: Repeat) -> str:
    if repeat.extent is not None:
        return extent_text(voice, repeat.extent)
    return _times(voice.number(repeat.times)) if repeat.times is not None else "around"


def _times(number: str) -> str:
    return {"1": "once", "2": "twice"}.get(number, f"{number}{NBSP}times")


def _again(voice: Voice, repeat: Repeat) -> str:
    """How often a star's words are worked again: one pass fewer than in all."""
    if repeat.extent is not None or repeat.times is None:
        return _how_often(voice, repeat)
    number = voice.number(Amount(tuple(max(n - 1, 0) for n in repeat.times.values)))
    return "once more" if number == "1" else f"{number} more times"


def _omitted(voice: Voice, repeat: Repeat) -> str:
    if not repeat.omit:
        return ""
    return f", omitting {voice.the}last {steps_text(voice, repeat.steps[-repeat.omit :], 1)}"


def _repeat_rounds(voice: Voice, step: RepeatRounds) -> str:
    numbers = list(step.rounds)
    if len(numbers) > 2 and numbers == list(range(numbers[0], numbers[-1] + 1)):
        text = f"{numbers[0]}–{numbers[-1]}"
    else:
        text = ", ".join(map(str, numbers[:-1])) + (" and " if len(numbers) > 1 else "") + str(numbers[-1])
    phrase = f"{voice.craft('rep')} {round_name(voice, text, len(numbers) > 1, voice.rows)}"
    if step.until_cm is not None:
        ending = f", ending with a {voice.craft(step.ending)} row" if step.ending else ""
        lengths = step.until_sizes if voice.size is None else step.until_sizes[voice.size : voice.size + 1]
        return f"{phrase} until piece measures {_lengths(voice, lengths or (step.until_cm,))}{ending}"
    return f"{phrase} {_times(voice.number(step.times))}" if step.times is not None else phrase


def _lengths(voice: Voice, cm: Sequence[float]) -> str:
    """"20 cm (7⅞ in)", "15 (16, 17) cm (5⅞ (6¼, 6¾) in)"; where the pattern is in inches those come first, to the last digit."""
    metric = _for_sizes([f"{value:g}" for value in cm])
    if voice.imperial:
        return f"{_for_sizes([_exact_inches(value) for value in cm])}{NBSP}in ({_for_sizes([f'{value:.3g}' for value in cm])}{NBSP}cm)"
    return f"{metric}{NBSP}cm ({_for_sizes([inches_text(value).removesuffix(f'{NBSP}in') for value in cm])}{NBSP}in)"


def _for_sizes(numbers: Sequence[str]) -> str:
    first, *rest = numbers
    return f"{first}{NBSP}({', '.join(rest)})" if rest and len(set(numbers)) > 1 else first


def _exact_inches(cm: float) -> str:
    """With a real fraction where it is one of eighths, so that it is the designer's own number."""
    inches = convert(cm, "cm", "in")
    eighths = abs(8 * inches - round(8 * inches)) < 1e-4
    return inches_text(cm).removesuffix(f"{NBSP}in") if eighths else f"{inches:.4g}"
