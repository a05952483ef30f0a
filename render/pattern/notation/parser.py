"""From a text to its instructions: lines, brackets matched, steps read, joins and attachments told apart."""

from __future__ import annotations

from dataclasses import replace

from motifold.render.pattern.instructions import (
    Chain,
    CountClaim,
    Group,
    Instructions,
    Join,
    Label,
    Line,
    Repeat,
    RepeatRounds,
    Step,
    UseYarn,
    Work,
)
from motifold.render.pattern.notation.brackets import match_brackets
from motifold.render.pattern.notation.context import NotationContext
from motifold.render.pattern.notation.finishing import finished_steps, makes_ring
from motifold.render.pattern.notation.lexicon import Lexeme, foreign_word, read_words, worked_names
from motifold.render.pattern.notation.lines import LabelledLine, split_lines
from motifold.render.pattern.notation.phrases import UK_WORDS, US_WORDS
from motifold.render.pattern.notation.problems import error, warning
from motifold.render.pattern.notation.reader import Located, Memory, Reader
from motifold.render.pattern.notation.steps import read_steps
from motifold.render.pattern.problem import Problem
from motifold.symbols.terms import abbreviation, full_name

_MOST_READ_AGAIN = 50_000
"""How many words may be read again for further rounds of their lines; far more than any pattern has in all."""


def parse_instructions(text: Located, context: NotationContext) -> tuple[Instructions, tuple[Problem, ...]]:
    """Reads the text of a motif or an edging. Gives everything that could be read, and every problem found."""
    items = read_words(text.text, context)
    memory = Memory(context.first_id)
    check_terms(items, text, context, memory)
    worked = worked_names(items)
    lines: list[Line] = []
    gaps, again = False, 0
    for labelled in split_lines(items):
        lines.extend(_read_line(items, labelled, text, context, memory, worked))
        for label in labelled.others:
            gaps = True
            again += labelled.body[1] - labelled.body[0]
            if again > _MOST_READ_AGAIN:
                span = text.span(items[labelled.start].start, items[labelled.body[0] - 1].end)
                memory.problems.append(error("round", span, "more rounds share this line than can be read", "give them lines of their own"))
                break
            said = len(memory.problems)
            lines.extend(_read_line(items, replace(labelled, label=label), text, context, memory, worked))
            del memory.problems[said:]  # said of the first of them already
    return Instructions(_in_their_order(lines) if gaps else tuple(lines)), in_order(memory.problems)


def _in_their_order(lines: list[Line]) -> tuple[Line, ...]:
    """The lines where "Rnds 2, 4 and 6" stood before "Rnd 3": numbered ones by their numbers, within the places that these have."""
    numbered = [at for at, line in enumerate(lines) if line.label.first is not None]
    ordered = sorted((lines[at] for at in numbered), key=lambda line: line.label.first or 0)
    found = list(lines)
    for at, line in zip(numbered, ordered, strict=True):
        found[at] = line
    return tuple(found)


def in_order(problems: list[Problem]) -> tuple[Problem, ...]:
    """Problems in the order of the text."""
    return tuple(sorted(problems, key=lambda problem: (problem.span.line, problem.span.column) if problem.span else (0, 0)))


def check_terms(items: list[Lexeme], text: Located, context: NotationContext, memory: Memory) -> None:
    """One problem where a word belongs to the other terms, at the first such word."""
    found = foreign_word(items, context.terms)
    if found is None:
        return
    other = "UK" if context.terms == "US" else "US"
    span = text.span(found.start, found.end)
    written = text.text[found.start : found.end]
    said = f'the file says terms = "{context.terms}", but "{written}" is a {other} word'
    if found.foreign:
        here = abbreviation(found.value, context.terms) if len(written) < _SHORT else full_name(found.value, context.terms)
        hint = f'in {context.terms} terms that stitch is {here}; if the whole text is in {other} terms, say terms = "{other}"'
        memory.problems.append(error("terms", span, said, hint))
    else:
        here = (US_WORDS if other == "US" else UK_WORDS)[found.raw]
        hint = f'it is read as "{here}"; are the names of the stitches in the terms that the file says?'
        memory.problems.append(warning("terms", span, said, hint))


_SHORT = 6
"""Abbreviations are shorter than this, names in full are not."""


def _read_line(
    items: list[Lexeme], labelled: LabelledLine, text: Located, context: NotationContext, memory: Memory, worked: frozenset[str]
) -> list[Line]:
    """The line with this label; two or more where "Rep Rnd 2 until ..." goes on after the work of a round."""
    number = memory.next_id
    memory.next_id += 1
    first, stop = labelled.body
    body, closers, lone = match_brackets(items[first:stop], text)
    r = Reader(body, text, context, memory, closers, worked=worked, end=len(body), broken=bool(lone))
    r.unread = any(lexeme.foreign for lexeme in body)  # which stitch is meant is not known
    memory.ring_fresh = False
    memory.problems.extend(lone)
    span = text.span(items[labelled.start].start, items[stop - 1].end)
    named: tuple[Step, ...] = ()
    if labelled.yarn is not None:
        yarn = items[labelled.yarn]
        named = (UseYarn(r.new_id(), text.span(yarn.start, yarn.end), yarn.value),)
    steps = named + read_steps(r)
    label = _label(items, labelled, steps, context, memory)
    if labelled.problem:
        memory.problems.append(
            error("round", text.span(items[labelled.start].start, items[max(labelled.start, first - 1)].end), labelled.problem)
        )
    if labelled.slip is not None:
        index, meant = labelled.slip
        word = items[index]
        said = f'"{text.text[word.start : word.end]}" cannot be read'
        memory.problems.append(error("word", text.span(word.start, word.end), said, f'did you mean "{meant}"?'))
    if r.facing is not None and label.side is None:
        label = replace(label, side=r.facing)
    if label.last is not None or label.first is not None:
        memory.last_number = label.last or label.first or 0
    finished = finished_steps(steps, label, r.new_id)
    claims, broken = tuple(r.claims), r.broken or r.unread
    if labelled.repeats:
        return _with_claims(_repeat_lines(finished, label, memory, broken), claims)
    split = next((at for at, step in enumerate(finished) if isinstance(step, RepeatRounds)), None)
    if split is None or not any(isinstance(step, Work | Chain | Group | Repeat | Join) for step in finished[:split]):  # "With B, rep Row 2"
        return [Line(number, span, label, finished, claims, broken)]
    return [Line(number, span, label, finished[:split], claims, broken), *_repeat_lines(finished[split:], label, memory, broken)]


def _with_claims(lines: list[Line], claims: tuple[CountClaim, ...]) -> list[Line]:
    """What a line of repeated rows says it has is said of its last row."""
    return [*lines[:-1], *(replace(line, counts=claims) for line in lines[-1:])]


def _repeat_lines(steps: tuple[Step, ...], label: Label, memory: Memory, broken: bool) -> list[Line]:
    """Such as "Rep Rows 2-3 until ..." behind the work of a row is a line of its own: the rows that come next. None if it was not read."""
    starts = [at for at, step in enumerate(steps) if isinstance(step, RepeatRounds)]
    lines: list[Line] = []
    for start, stop in zip(starts, [*starts[1:], len(steps)][: len(starts)], strict=True):
        repeat = steps[start]
        assert isinstance(repeat, RepeatRounds)
        first = memory.last_number + 1
        known = repeat.times.values[0] if repeat.times is not None and not repeat.times.varies else 1
        last = (
            None
            if repeat.until_cm is not None or (repeat.times is not None and repeat.times.varies)
            else first + len(repeat.rounds) * known - 1
        )
        kind = label.kind if label.kind in ("rnd", "row") else "rnd"
        memory.last_number = last or first
        number = memory.next_id
        memory.next_id += 1
        lines.append(Line(number, repeat.span, Label(kind, first, last), steps[start:stop], broken=broken))
    return lines


def _label(items: list[Lexeme], labelled: LabelledLine, steps: tuple[Step, ...], context: NotationContext, memory: Memory) -> Label:
    """The label as written, or what goes without saying: the next number, or the ring or chain that a text begins with."""
    label = labelled.label
    if label is None:
        return Label("ring" if makes_ring(steps) else "chain")
    if items[labelled.start].raw == "r" and context.worked == "rows":
        label = replace(label, kind="row")
    if labelled.unnumbered:
        label = replace(label, first=memory.last_number + 1, last=memory.last_number + 1)
    return label
