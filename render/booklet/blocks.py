"""The blocks of the written pattern as boxes of one column: paragraphs, headings, lists, rounds."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import field, replace
from typing import Any

from motifold.render.booklet.boxes import Box, BoxMark, Destination, LineOfWords, Rectangle, Tag, Tags, stacked, words_line
from motifold.render.booklet.inline import Type, Word, typeset, width_of
from motifold.render.booklet.linebreak import broken
from motifold.render.booklet.paper import Grid
from motifold.render.booklet.styles import HAIR, Styles
from motifold.render.words.model import Items, Paragraph, RoundText
from motifold.symbols.record import dataclass

# How many lines of the grid a shorter column may cost to avoid a break in these places.
IN_PARAGRAPH = 3.0
BETWEEN_ITEMS = 1.5
BETWEEN_ROUNDS = 0.5
BETWEEN_BLOCKS = 2.0  # of one section


@dataclass(frozen=True, slots=True)
class Setting:
    """All that setting a block needs: the grid, the types, the width, and the colours of yarns by the words they are named with.

    ``done``: what has been set, by what it is and its width: plans are compared, and lines are the same in all of them.
    ``arranged``: the ways found of placing a part's chart and rounds, by the part, the kind of way and the room.
    """

    grid: Grid
    styles: Styles
    width: float
    swatches: Mapping[str, str]
    done: dict[tuple[str, float, bool], list[Box]] = field(default_factory=dict, compare=False, repr=False)
    arranged: dict[tuple[str, str, float, bool], list[Any]] = field(default_factory=dict, compare=False, repr=False)

    def narrowed(self, width: float) -> Setting:
        return Setting(self.grid, self.styles, width, self.swatches, self.done, self.arranged)


def line_boxes(lines: Sequence[tuple[Word, ...]], x: float, first_x: float, leading: float, tags: Tags) -> list[Box]:
    """Each line a box of the grid; two lines at either end of a paragraph are kept together (no widows, no orphans)."""
    boxes = []
    for index, line in enumerate(lines):
        last = index == len(lines) - 1
        mark = LineOfWords(x if index else first_x, baseline(leading), line, tags, ends=last)
        keep = not last and (index == 0 or index == len(lines) - 2)
        boxes.append(Box(leading, (mark,), keep=keep, reluctance=0.0 if last else IN_PARAGRAPH))
    return boxes


def baseline(leading: float) -> float:
    """Where the baseline lies in a line of the grid: the same for every size, so that neighbouring columns stand level."""
    return leading * 0.74


def set_words(spans: Sequence[tuple[str, Type]], setting: Setting, tags: Tags, x: float = 0.0, first_indent: float = 0.0) -> list[Box]:
    """A paragraph as line boxes; an empty line where there are no words."""
    room = max(setting.width - x, 1.0)
    lines = broken(tuple(spans), room, first_indent)
    return line_boxes(lines, x, x + first_indent, setting.grid.leading, tags) or [Box(setting.grid.leading)]


def heading(text: str, level: int, setting: Setting, tags: Tags, destination: Destination | None = None) -> list[Box]:
    """H2 in the columns: two lines of the grid, a hairline above it; H3: one line. Kept with the two lines that follow."""
    styles, leading = setting.styles, setting.grid.leading
    kind = styles.section if level == 2 else styles.small_section
    lines = broken(((typeset(text), kind),), setting.width)
    first = leading * (1.36 if level == 2 else 0.74)
    marks = [LineOfWords(0.0, first + index * leading * 1.15, line, tags, ends=line is lines[-1]) for index, line in enumerate(lines)]
    height = setting.grid.snapped(leading * (1.15 * len(lines) + (0.5 if level == 2 else -0.2)))
    rule: tuple[BoxMark, ...] = (Rectangle(0.0, 0.0, setting.width, 0.6, styles.accent),) if level == 2 else ()
    return [Box(height, (*rule, *marks), before=leading if level == 2 else leading * 0.5, keep=True, destination=destination)]


def paragraph(block: Paragraph, setting: Setting, tags: Tags) -> list[Box]:
    """Body text; a note in italics; a caution in a washed panel with a bar."""
    kind = setting.styles.italic if block.kind == "note" else setting.styles.body
    if block.kind == "address":
        return set_words([(block.text, replace(setting.styles.body, color=setting.styles.accent, leads_to=block.text))], setting, tags)
    if block.kind != "caution":
        return set_words([(typeset(block.text), kind)], setting, tags)
    inset = setting.grid.leading * 0.6
    boxes = set_words([(typeset(block.text), kind)], setting.narrowed(setting.width - inset), tags, x=inset)
    panel = stacked(boxes)
    height = panel.height + setting.grid.leading
    inside = tuple(replace(mark, y=mark.y + setting.grid.leading / 2) for mark in panel.marks)
    ground = Rectangle(0.0, 0.0, setting.width, height, setting.styles.wash)
    return [Box(height, (ground, Rectangle(0.0, 0.0, 2.2, height, setting.styles.accent), *inside))]


def items(block: Items, setting: Setting, tags: Tags, key: str) -> list[Box]:
    """A list: numbers or dots hang in the margin of its text; each item is kept as whole as a paragraph."""
    leading = setting.grid.leading
    list_tag = Tag("L", key, numbering="Decimal" if block.numbered else "Disc")
    numbers = [f"{number}." for number in range(1, len(block.items) + 1)]
    dot = max(11.0, 0.95 * setting.grid.body)
    indent = max(width_of(number, setting.styles.label) for number in numbers) + 6 if block.numbered and numbers else dot
    boxes: list[Box] = []
    for index, text in enumerate(block.items):
        item = Tag("LI", f"{key}/{index}")
        inner = (*tags, list_tag, item, Tag("LBody", f"{key}/{index}"))
        label = numbers[index] if block.numbered else "•"
        mark = words_line(label, setting.styles.label, 0.0, baseline(leading), (*tags, list_tag, item, Tag("Lbl", f"{key}/{index}")))
        spot = swatch(text, setting)
        lines = set_words([(typeset(text), setting.styles.body)], setting, inner, x=indent, first_indent=leading if spot else 0.0)
        marks = (mark, *(replace(yarn, x=yarn.x + indent) for yarn in spot), *lines[0].marks)
        boxes += [replace(lines[0], marks=marks), *lines[1:-1], replace(lines[-1], reluctance=BETWEEN_ITEMS)] if len(lines) > 1 else [
            replace(lines[0], marks=marks, reluctance=BETWEEN_ITEMS)
        ]
    return _ends_kept(boxes)


def _ends_kept(boxes: list[Box]) -> list[Box]:
    """A list of five lines is not torn; of a longer one, two lines stay together at either end."""
    together = range(len(boxes)) if len(boxes) <= 5 else (0, len(boxes) - 2)
    kept = [replace(box, keep=box.keep or place in together) for place, box in enumerate(boxes)]
    return [*kept[:-1], replace(kept[-1], keep=False, reluctance=0.0)] if kept else kept


def swatch(text: str, setting: Setting) -> tuple[Rectangle, ...]:
    """A spot of yarn beside words that begin with that yarn's name."""
    size = setting.grid.body * 0.78
    for name, color in setting.swatches.items():
        if text == name or text.startswith((name + " ", name + ":", name + ",")):
            return (Rectangle(0.0, baseline(setting.grid.leading) - size + 0.6, size, size, color, outline=HAIR),)
    return ()


def rounds(blocks: Sequence[RoundText], setting: Setting, tags: Tags, key: str) -> list[Box]:
    """The rounds as a list: the label in colour, the instructions, the counts in small sans at the end. Half a line between rounds."""
    styles, leading = setting.styles, setting.grid.leading
    list_tag = Tag("L", key, numbering="None")
    boxes: list[Box] = []
    for index, block in enumerate(blocks):
        item = Tag("LI", f"{key}/{index}")
        label_tags = (*tags, list_tag, item, Tag("Lbl", f"{key}/{index}"))
        body_tags = (*tags, list_tag, item, Tag("LBody", f"{key}/{index}"))
        label = typeset(block.label).replace(" ", "\u00a0") + ":"
        indent = width_of(label, styles.label) + 4.5
        if indent > setting.width * 0.6:
            indent = 0.0
        spans = [(typeset(block.text), styles.body)]
        if block.counts:
            spans += [(" ", styles.body), (typeset(block.counts), styles.counts)]
        lines = set_words(spans, setting, body_tags, first_indent=indent)
        mark = words_line(label, styles.label, 0.0, baseline(leading), label_tags)
        if indent:
            lines[0] = replace(lines[0], marks=(mark, *lines[0].marks))
        else:
            lines.insert(0, Box(leading, (mark,), keep=True))
        lines[0] = replace(lines[0], before=leading / 2 if index else 0.0)
        lines[-1] = replace(lines[-1], reluctance=BETWEEN_ROUNDS)
        boxes += lines
    return boxes
