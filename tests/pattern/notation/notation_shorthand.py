"""Reads a line and writes its tree short, so that a test can say in one line what a line of a pattern means.

``2 dc@next sp2`` is two dc in the next ch-2 space; ``sc@next 3* st`` one sc in each of the next three; ``{=dc+ch1}`` what a chain
counts as; ``JOIN``, ``ATTACH`` and ``RING`` are joins; ``[a, b]x3`` a repeat, ``[a, b]~around`` one that goes so far.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from motifold.render.pattern.instructions import (
    ONE,
    Amount,
    Chain,
    CountsAs,
    Definition,
    Extent,
    FastenOff,
    Group,
    Join,
    Label,
    LeaveYarn,
    Line,
    MagicRing,
    Marker,
    Place,
    Repeat,
    RepeatRounds,
    Skip,
    Step,
    StitchSpec,
    Stop,
    Target,
    Turn,
    UseYarn,
    Words,
    Work,
)  # fmt: skip
from motifold.render.pattern.locator import plain_text
from motifold.render.pattern.notation import NotationContext, parse_definition, parse_instructions
from motifold.render.pattern.problem import Problem

Terms = Literal["US", "UK"]


def context(
    terms: Terms = "US", yarns: Sequence[str] = ("A", "B"), defined: Sequence[str] = (), sizes: int = 1, rows: bool = False
) -> NotationContext:
    return NotationContext(terms, tuple(yarns), {key: key for key in defined}, sizes, "rows" if rows else "rounds")


def read(text: str, terms: Terms = "US", *, yarns: Sequence[str] = ("A", "B"), defined: Sequence[str] = (), sizes: int = 1,
         rows: bool = False) -> tuple[tuple[Line, ...], tuple[Problem, ...]]:  # fmt: skip
    """The lines and problems of a text."""
    found, problems = parse_instructions(plain_text(text), context(terms, yarns, defined, sizes, rows))
    return found.lines, problems


def short(text: str, terms: Terms = "US", *, yarns: Sequence[str] = ("A", "B"), defined: Sequence[str] = (), sizes: int = 1,
          rows: bool = False) -> str:  # fmt: skip
    """The steps of a text that has no problem, in shorthand, without its label; a line that has none is given one."""
    begun = text if text[:3].lower() in ("rnd", "row", "rin", "cha", "fou", "fin", "rou") else f"{'Row' if rows else 'Rnd'} 1: {text}"
    lines, problems = read(begun, terms, yarns=yarns, defined=defined, sizes=sizes, rows=rows)
    assert not problems, [(problem.code, problem.message) for problem in problems]
    return " | ".join(line_short(line) for line in lines)


def counts(text: str, terms: Terms = "US", **more: int) -> str:
    """The counts that a line states, in shorthand."""
    lines, problems = read(text, terms, sizes=more.get("sizes", 1))
    assert not problems, [(problem.code, problem.message) for problem in problems]
    return ", ".join(
        f"{amount(claim.amount)} {target(claim.target)}{' a side' if claim.per_side else ''}" for line in lines for claim in line.counts
    )


def label(text: str, rows: bool = False) -> str:
    lines, problems = read(text, rows=rows)
    assert not problems, problems
    return " | ".join(label_short(line.label) for line in lines)


def problems(
    text: str, terms: Terms = "US", *, yarns: Sequence[str] = ("A", "B"), defined: Sequence[str] = (), sizes: int = 1
) -> list[tuple[str, str]]:
    """Code and underlined words of each problem."""
    source = text.split("\n")
    return [
        (problem.code, source[problem.span.line - 1][problem.span.column - 1 :][: problem.span.length])
        for problem in read(text, terms, yarns=yarns, defined=defined, sizes=sizes)[1]
        if problem.span is not None
    ]


def only_problem(text: str, terms: Terms = "US", *, sizes: int = 1, yarns: Sequence[str] = ("A", "B")) -> Problem:
    """The one problem of a text; fails where there are more, or none."""
    found = read(text, terms, sizes=sizes, yarns=yarns)[1]
    assert len(found) == 1, [(problem.code, problem.message) for problem in found]
    return found[0]


def define(key: str, means: str, terms: Terms = "US") -> tuple[Definition | None, tuple[Problem, ...]]:
    return parse_definition(key, plain_text(means), context(terms, defined=(key,)))


def steps_short(steps: Sequence[Step]) -> str:
    return ", ".join(step_short(step) for step in steps)


def line_short(line: Line) -> str:
    return "; ".join(step_short(step) for step in line.steps)


def label_short(given: Label) -> str:
    numbers = "" if given.first is None else f" {given.first}"
    if given.last is not None and given.last != given.first:
        numbers += f"-{given.last}"
    return given.kind + numbers + ("+" if given.following else "") + (f" {given.side}" if given.side else "")


def amount(given: Amount) -> str:
    return "/".join(map(str, given.values))


def target(given: Target) -> str:
    name = {"stitch": given.name, "between": f"gap of {given.name}"}.get(given.kind, given.kind) or "?"
    name += "" if given.chains is None else str(given.chains)
    return ("corner " if given.corner and given.kind != "corner" else "") + name + (" lp" if given.loop else "")


def extent(given: Extent | None) -> str:
    if given is None:
        return ""
    if given.kind == "to" and given.place is not None:
        return f"~to {place(given.place)}"
    if given.kind == "last" and given.count is not None and given.target is not None:
        return f"~last {amount(given.count)} {target(given.target)}"
    return f"~{given.kind}"


def place(given: Place) -> str:
    which = given.which + (str(given.ordinal) if given.ordinal else "")
    if given.count != ONE:
        which += f" {amount(given.count)}" + ("*" if given.each else "")
    said = f"{which} {target(given.target)}" + "".join(f"+{target(more)}" for more in given.also)
    said = said if given.manner == "in" else f"{given.manner} {said}"
    said += f" {given.loop}" if given.loop else ""
    said += " from hook" if given.from_hook else ""
    said += f" below{given.below}" if given.below else ""
    said += f" R{given.of_round}" if given.of_round else ""
    said += f" of <{place(given.of)}>" if given.of else ""
    said += f" '{given.words}'" if given.words else ""
    said += "".join(f" then <{place(more)}>" for more in given.then)
    return said + extent(given.extent)


def counts_as(given: CountsAs | None) -> str:
    if given is None:
        return ""
    parts = [*given.stitches, *([f"ch{given.chains}"] if given.chains else []), *([f"sp{given.space}"] if given.space else [])]
    return "{=" + ("+".join(parts) or "nothing") + (" throughout" if given.throughout else "") + "}"


def stitch(given: StitchSpec) -> str:
    name = f"{given.of} {given.name}" if given.of else given.name
    name = f"{given.size}-{name}" if given.size else name
    name = {"front": "FP", "back": "BP", None: ""}[given.post] + name
    name += f"{given.together}tog" if given.together > 1 else ""
    name += f" inc{given.increase}" if given.increase > 1 else ""
    marks = ("standing " if given.standing else "") + ("inv " if given.invisible else "") + ("beg " if given.beginning else "")
    return marks + name


def step_short(step: Step) -> str:
    match step:
        case Work():
            many = "" if step.count == ONE else f"{amount(step.count)} "
            return f"{many}{stitch(step.stitch)}" + (f"@{place(step.place)}" if step.place else "") + counts_as(step.counts_as)
        case Chain():
            return f"ch{amount(step.count)}{counts_as(step.counts_as)}"
        case Group():
            return f"({steps_short(step.steps)})@{place(step.place)}"
        case Skip():
            return f"sk {place(step.place)}"
        case Repeat():
            often = f"x{amount(step.times)}" if step.times else extent(step.extent)
            return f"[{steps_short(step.steps)}]{often}" + (f" omit{step.omit}" if step.omit else "")
        case Join():
            word = "RING" if step.ring else "ATTACH" if step.attach else "JOIN"
            inner = f"({steps_short(step.steps)})" if step.steps else ""
            return f"{word} {step.method}{inner}" + (f"@{place(step.place)}" if step.place else "")
        case RepeatRounds():
            until = f" until {step.until_sizes or step.until_cm}cm" if step.until_cm else ""
            return (
                f"AGAIN {step.rounds}"
                + (f" x{amount(step.times)}" if step.times else "")
                + until
                + (f" {step.ending}" if step.ending else "")
            )
        case _:
            return _small_step(step)


def _small_step(step: Step) -> str:
    match step:
        case Turn():
            return "TURN"
        case MagicRing():
            return "MR"
        case Stop():
            return "**"
        case UseYarn():
            return f"{step.manner} {step.yarn or 'other'}" + (" in yo" if step.in_last_yo else "")
        case LeaveYarn():
            return f"{step.manner} {step.yarn}"
        case FastenOff():
            return "FO" + "".join(f" {yarn}" for yarn in step.yarns) + (" all" if step.every else "")
        case Marker():
            return f"MARK {step.manner}" + (f"@{place(step.place)}" if step.place else "")
        case Words():
            quoted = f"{{{step.text}}}" if step.brace else f"'{step.text}'"
            return quoted + (f" behind {step.behind}" if step.behind else "") + (" LEAVE" if step.leave else "")
        case _:
            raise AssertionError(step)
