"""The lines of a motif or an edging as they are printed: label, instructions, counts."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from motifold.render.fabric.model import Fabric
from motifold.render.pattern.instructions import Instructions, Label, Line, RepeatRounds, Step, Turn, UseYarn, Words, Work
from motifold.render.words.counts import Counts, amount_of, claims_text, kind_text, kinds_of, last_round, number_text, worked_text
from motifold.render.words.model import Block, RoundText, Table
from motifold.render.words.places import round_name
from motifold.render.words.steps import in_hand_after, steps_text
from motifold.render.words.voice import Voice, capitalised, listed
from motifold.symbols.record import dataclass

_TITLES = {"ring": "Ring", "chain": "Chain", "foundation": "Foundation", "finish": "Finish"}


@dataclass(frozen=True, slots=True)
class Piece:
    """One text and what came of it in each printed size: ``sizes`` their names, ``fabrics`` in the same order (None: not worked)."""

    instructions: Instructions
    fabrics: tuple[Fabric | None, ...]
    sizes: tuple[str, ...]

    def lasts(self) -> tuple[int, ...]:
        """The last round or row worked in each size; what the text says where nothing was worked."""
        written = max((line.label.last or line.label.first or 0 for line in self.instructions.lines), default=0)
        return tuple(last_round(fabric) if fabric else written for fabric in self.fabrics)

    def counts(self, number: int) -> tuple[Counts, ...]:
        """The counts of one round in each size that works it."""
        return tuple(r.counts for fabric in self.fabrics if fabric for r in fabric.rounds if r.number == number)


@dataclass(frozen=True, slots=True)
class _Draft:
    """A line being written: what it covers, its words with braces, its counts."""

    line: Line
    first: int | None
    ends: tuple[int, ...]   # the last round it covers in each size; () for a line without a number
    text: str
    counts: str

    @property
    def last(self) -> int | None:
        return max(self.ends, default=None)


def piece_blocks(voice: Voice, piece: Piece) -> tuple[Block, ...]:
    """Every line that is worked in some printed size, identical ones joined; then a table where counts differ from round to round."""
    lasts = piece.lasts()
    drafts = [draft for line in piece.instructions.lines if (draft := _draft(voice, piece, line, lasts)) is not None]
    joined = _joined(drafts)
    # Tables stand after the last line, so that the lines can be read, and copied, in one piece.
    tables = [table for draft in joined if (table := _counts_table(voice, piece, draft)) is not None]
    return (*(_round_text(voice, piece, draft) for draft in joined), *tables)


def _draft(voice: Voice, piece: Piece, line: Line, lasts: tuple[int, ...]) -> _Draft | None:
    label = line.label
    before = piece.instructions.lines[: piece.instructions.lines.index(line)]
    rows = any(other.label.kind == "row" for other in piece.instructions.lines)
    voice = replace(voice, rows=rows, hand=in_hand_after(tuple(other.steps for other in before)) or "sc")
    if label.first is None:
        return _Draft(line, None, (), _sentence(steps_text(voice, line.steps)), claims_text(voice, line.counts))
    open_ended = label.following or _open_ended(line)
    after = _next_number(piece, line)
    ends = tuple((min(last, after - 1) if after else last) if open_ended else min(label.last or label.first, last) for last in lasts)
    if max(ends, default=0) < label.first:
        return None
    steps: tuple[Step, ...] = line.steps
    note: tuple[Step, ...] = ()
    if line.steps and isinstance(steps[-1], Turn | UseYarn) and _only_finish_follows(piece, line):
        steps, note = _at_the_end(piece, line, ends, lasts)
    only = _only_some(piece, label.first, ends, line)
    text = _sentence(steps_text(voice, (*only, *steps, *note)))
    return _Draft(line, label.first, ends, text, claims_text(voice, line.counts) or _worked(voice, piece, label.first, ends))


def _open_ended(line: Line) -> bool:
    """Whether rounds are repeated so far, or so often for each size, that the label cannot say which is the last."""
    return line.label.last is None and any(isinstance(step, RepeatRounds) for step in line.steps)


def _next_number(piece: Piece, line: Line) -> int | None:
    """The number that the line after an open-ended one begins with."""
    later = piece.instructions.lines[piece.instructions.lines.index(line) + 1 :]
    return next((other.label.first for other in later if other.label.first is not None), None)


def _sentence(text: str) -> str:
    """With a capital and a full stop."""
    head, brace, rest = text.partition("} ") if text.startswith("{") else ("", "", text)
    tail = "" if rest.endswith((".", "}")) or not rest else "."
    return head + brace + capitalised(rest) + tail


def _only_finish_follows(piece: Piece, line: Line) -> bool:
    """Whether what ends the last round has nothing to do: no stitch is worked after it."""
    lines = piece.instructions.lines
    after = lines[lines.index(line) + 1 :]
    return not any(isinstance(step, Work) for later in after if later.label.kind == "finish" for step in later.steps)


def _without_end(steps: tuple[Step, ...]) -> tuple[Step, ...]:
    while steps and isinstance(steps[-1], Turn | UseYarn):
        steps = steps[:-1]
    return steps


def _at_the_end(
    piece: Piece, line: Line, ends: tuple[int, ...], lasts: tuple[int, ...]
) -> tuple[tuple[Step, ...], tuple[Step, ...]]:
    """The steps without what has nothing to do after the last round, or with a note that says so where the line serves other rounds too."""
    first = line.label.first or 0
    working = [(name, end, last) for name, end, last in zip(piece.sizes, ends, lasts, strict=True) if end >= first]
    ending = [name for name, end, last in working if end == last]
    if not ending:
        return line.steps, ()
    if all(end == first for _, end, _ in working):
        if len(ending) == len(working):
            return _without_end(line.steps), ()
        return line.steps, (_not_now(line, f"{listed(ending)}: do not", "."),)
    rows = "row" if line.label.kind == "row" else "round"
    return line.steps, (_not_now(line, "Do not", f" after the last {rows}."),)


def _not_now(line: Line, start: str, end: str) -> Words:
    """Says that the yarn is not changed, nor the work turned."""
    dropped = line.steps[len(_without_end(line.steps)) :]
    named = ((UseYarn, "change yarn"), (Turn, "turn"))
    what = [name for kind, name in named if any(isinstance(step, kind) for step in dropped)]
    return Words(line.id, line.span, f"{start} {' or '.join(what)}{end}", brace=True)


def _only_some(piece: Piece, first: int, ends: tuple[int, ...], line: Line) -> tuple[Step, ...]:
    """Names the sizes, where some work no round of this line."""
    if line.label.following or all(end >= first for end in ends):
        return ()
    names = [name for name, end in zip(piece.sizes, ends, strict=True) if end >= first]
    return (Words(line.id, line.span, f"{listed(names)} only:", brace=True),)


def _worked(voice: Voice, piece: Piece, first: int, ends: tuple[int, ...]) -> str:
    """The counts of the rounds covered, where they are the same in all of them."""
    texts = {worked_text(voice, piece.counts(number)) for number in range(first, max(ends) + 1)}
    return texts.pop() if len(texts) == 1 else ""


def _joined(drafts: Sequence[_Draft]) -> list[_Draft]:
    """Identical neighbours as one: "Rnds 5–7"."""
    joined: list[_Draft] = []
    for draft in drafts:
        before = joined[-1] if joined else None
        if before is not None and _same(before, draft):
            joined[-1] = _Draft(before.line, before.first, draft.ends, before.text, before.counts)
        else:
            joined.append(draft)
    return joined


def _same(before: _Draft, after: _Draft) -> bool:
    a, b = before.line.label, after.line.label
    if a.first is None or a.kind != b.kind or a.side or b.side or a.following or b.following or len(set(before.ends)) != 1:
        return False
    adjoining = before.last is not None and after.first == before.last + 1 and len(set(after.ends)) == 1
    return adjoining and before.text == after.text and before.counts == after.counts


def _round_text(voice: Voice, piece: Piece, draft: _Draft) -> RoundText:
    label = label_text(voice, draft.line.label, draft.first, draft.ends)
    readable = _READ_AS_IT_IS.sub(r"\1", draft.text)
    plain = draft.text.replace("{", "").replace("}", "")
    read_label = label
    if draft.line.label.following and len(set(draft.ends)) > 1 and min(draft.ends) < (draft.first or 0):
        read_label = f"{label_text(voice, draft.line.label, draft.first, ())} and following"
    elif _open_ended(draft.line):
        read_label = label_text(voice, draft.line.label, draft.first, ())
    reads = f"{read_label}: {readable} {draft.counts}".rstrip() if read_label != label or plain != readable else ""
    return RoundText(label, plain, draft.counts, draft.line.id, draft.first, draft.last, reads)


_READ_AS_IT_IS = re.compile(r"\{(Do not [^{}]* after the last (?:round|row)\.)\}")


def label_text(voice: Voice, label: Label, first: int | None, ends: tuple[int, ...]) -> str:
    """"Rnd 1 (RS)", "Rnds 5–7", "Rnds 3–7 (8, 9)" for sizes that end at different rounds ("–" for one that works none)."""
    if first is None:
        return _TITLES[label.kind]
    rows = label.kind == "row"
    side = f" ({voice.craft(label.side)})" if label.side else ""
    shown = [str(end) if end >= first else "–" for end in ends]
    if set(shown) <= {str(first), "–"}:
        return round_name(voice, str(first), rows=rows) + side
    if len(set(shown)) == 1:
        return round_name(voice, f"{first}–{shown[0]}", True, rows) + side
    return round_name(voice, f"{first}–{shown[0]}\N{NO-BREAK SPACE}({', '.join(shown[1:])})", True, rows) + side


def _counts_table(voice: Voice, piece: Piece, draft: _Draft) -> Table | None:
    """Counts round by round, for a line that covers several rounds whose counts differ."""
    if draft.counts or draft.first is None or draft.last is None or draft.last <= draft.first:
        return None
    if any(isinstance(step, RepeatRounds) for step in draft.line.steps):
        return None  # the rounds that are worked again have told their own
    rounds = {number: counts for number in range(draft.first, draft.last + 1) if (counts := piece.counts(number))}
    kinds = kinds_of([count for counts in rounds.values() for count in counts])
    if not kinds:
        return None
    rows = tuple(
        (str(number), *(number_text(amount_of(kind, counts)) for kind in kinds)) for number, counts in rounds.items()
    )
    kind = "Row" if draft.line.label.kind == "row" else voice.craft("rnd").capitalize()
    header = (kind, *(kind_text(voice, name, True) for name in kinds))
    return Table(f"Counts of {round_name(voice, f'{draft.first}–{draft.last}', True, voice.rows or kind == 'Row')}", header, rows)
