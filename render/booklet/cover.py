"""The front page: who made it, what it is called, what it looks like, and what a buyer looks for."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from motifold.render.booklet.boxes import Box, BoxMark, Destination, LineOfWords, Picture, Rectangle, Tag, Tags, moved
from motifold.render.booklet.inline import Type, typeset, words_of
from motifold.render.booklet.linebreak import break_lines, broken
from motifold.render.booklet.model import Cover
from motifold.render.booklet.paper import Grid
from motifold.render.booklet.styles import INK, QUIET, Styles
from motifold.render.drawing.display import Drawing
from motifold.render.drawing.numbers import MM_PER_PT

_FACTS_IN_A_ROW = 4
_LARGEST_TITLE = 52.0


def _lines(text: str, kind: Type, x: float, y: float, width: float, leading: float, tags: Tags) -> tuple[list[BoxMark], float]:
    """Lines of ``text`` from the first baseline ``y`` on, and where the next baseline would be."""
    lines = broken(((typeset(text), kind),), width)
    marks: list[BoxMark] = [LineOfWords(x, y + number * leading, line, tags, line is lines[-1]) for number, line in enumerate(lines)]
    return marks, y + len(lines) * leading


def title_size(title: str, width: float, scale: float) -> float:
    """The largest of a few sizes at which the title stands on three lines at most and no word is cut."""
    scale = min(scale, _LARGEST_TITLE / 44.0)  # large print has no larger titles: its text is nearer to them
    for size in (44.0, 38.0, 32.0, 27.0, 22.0, 18.0):
        kind = Type("serif-bold", size * scale)
        words = words_of([(typeset(title), kind)], width)
        if len(break_lines(words, width)) <= (2 if size > 32 else 3) and not any(word.glued for word in words):
            return size * scale
    return 16.0 * scale


def cover_box(cover: Cover, grid: Grid, styles: Styles, tags: Tags) -> Box:
    """The whole cover as one box, as high as the text of a page and the room for its foot."""
    height = grid.text_height + grid.leading * 1.5
    marks, y = _names(cover, grid, styles, tags)
    facts, facts_height = _facts(cover.facts, grid, styles, height, tags)
    contents, contents_height = _contents(cover.contents, grid, styles, height - facts_height, tags)
    marks += _pictures(cover, y + grid.leading * 0.5, height - facts_height - contents_height - grid.leading * 2, grid.text_width, tags)
    return Box(height, (*marks, *contents, *facts), destination=Destination("cover", cover.title, 0))


def title_box(cover: Cover, grid: Grid, styles: Styles, tags: Tags, picture: float) -> Box:
    """What the cover says as the head of a first page, for a leaf that needs no cover; its pictures ``picture`` points high, if at all."""
    marks, y = _names(cover, grid, styles, tags)
    if picture:
        marks += _pictures(cover, y + grid.leading * 0.5, y + picture, grid.text_width, tags)
        y += picture + grid.leading
    facts, facts_height = _facts(cover.facts, grid, styles, 0.0, tags)
    foot = y + facts_height
    height = grid.snapped(foot + grid.leading * 0.5)
    return Box(height, (*marks, *(moved(mark, 0.0, foot) for mark in facts)), destination=Destination("cover", cover.title, 0))


def _names(cover: Cover, grid: Grid, styles: Styles, tags: Tags) -> tuple[list[BoxMark], float]:
    """A rule, who made it, what it is called and what is said of it; and where the next line would stand."""
    width, scale = grid.text_width, grid.scale
    marks: list[BoxMark] = [Rectangle(0.0, -grid.leading, width, 4.5 * scale, styles.accent)]
    y = grid.leading * 1.2
    size = title_size(cover.title, width, scale)
    y += grid.leading * 1.5 + size * 0.75
    title, y = _lines(cover.title, Type("serif-bold", size, INK), 0.0, y, width, size * 1.12, (*tags, Tag("H1", "title")))
    marks += title
    if cover.summary:
        kind = Type("serif-italic", 13.5 * scale, QUIET)
        summary, y = _lines(cover.summary, kind, 0.0, y - size * 0.4 + 12 * scale, width * 0.84, 19 * scale, (*tags, Tag("P", "summary")))
        marks += summary
    if cover.author:
        kind = Type("sans-bold", 9.5 * scale, styles.accent, tracking=40)
        author, _ = _lines(cover.author, kind, 0.0, grid.leading * 1.2, width, grid.leading, (*tags, Tag("P", "author")))
        marks += author
    return marks, y


def _pictures(cover: Cover, top: float, bottom: float, width: float, tags: Tags) -> list[BoxMark]:
    """The hero in the room between the summary and the facts; the second picture right of it, where both feet are level."""
    if cover.hero is None:
        return []
    if cover.second is None:
        return [_picture(cover.hero, "hero", (0.0, top, width, bottom), 0.5, tags, cover.finest)]
    hero = _picture(cover.hero, "hero", (0.0, top, width * 0.72, bottom), 0.0, tags, cover.finest)
    foot = hero.y + cover.hero.height_mm / MM_PER_PT * hero.scale
    second = _picture(cover.second, "second", (width * 0.77, top, width, foot), 1.0, tags, 3.0)
    return [hero, replace(second, y=foot - cover.second.height_mm / MM_PER_PT * second.scale)]


def _picture(
    drawing: Drawing, key: str, room: tuple[float, float, float, float], side: float, tags: Tags, largest: float
) -> Picture:
    """As large as its room (left, top, right, bottom); ``side``: 0 at its left edge, 1 at its right; a little above the middle."""
    left, top, right, bottom = room
    own_width, own_height = drawing.width_mm / MM_PER_PT, drawing.height_mm / MM_PER_PT
    scale = min((right - left) / own_width, (bottom - top) / own_height, largest)
    x = left + (right - left - own_width * scale) * side
    y = top + (bottom - top - own_height * scale) * 0.45
    return Picture(x, y, drawing, scale, (*tags, Tag("Figure", key, alt=drawing.description or drawing.title)))


def _contents(
    contents: Sequence[tuple[str, int, str]], grid: Grid, styles: Styles, bottom: float, tags: Tags
) -> tuple[list[BoxMark], float]:
    """The parts with their pages, run on as one paragraph that ends above ``bottom``; its marks and its height."""
    if not contents:
        return [], 0.0
    scale = grid.scale
    leading, kind = 13.0 * scale, Type("sans", 9.4 * scale, QUIET)
    number_kind = Type("sans-bold", 9.4 * scale, styles.accent)
    spans: list[tuple[str, Type]] = []
    for place, (title, number, key) in enumerate(contents):
        leading_there = f"#{key}"
        spans += [(typeset(title).replace(" ", "\u00a0") + "\u00a0", replace(kind, leads_to=leading_there))]
        spans += [(str(number), replace(number_kind, leads_to=leading_there))]
        spans += [(",  ", kind)] if place < len(contents) - 1 else []
    lines = broken(tuple(spans), grid.text_width)
    above = (len(lines) + 0.4) * leading
    return [
        LineOfWords(0.0, bottom - above + number * leading, line, (*tags, Tag("P", "contents")), line is lines[-1])
        for number, line in enumerate(lines)
    ], above + leading


def _facts(facts: Sequence[tuple[str, str]], grid: Grid, styles: Styles, bottom: float, tags: Tags) -> tuple[list[BoxMark], float]:
    """A strip of labelled facts at the foot, four in a row; their marks and how high they stand."""
    if not facts:
        return [], 0.0
    scale = grid.scale
    label_kind = Type("sans-bold", 8.2 * scale, styles.accent)
    value_kind = Type("sans", 10.2 * scale, INK)
    rows_needed = -(-len(facts) // (_FACTS_IN_A_ROW if grid.columns > 1 else 3))
    in_row = -(-len(facts) // rows_needed)  # even rows: six facts as three and three
    width = (grid.text_width - (in_row - 1) * 14) / in_row
    leading = 13.0 * scale
    list_tag = Tag("L", "facts", numbering="None")
    rows = [facts[start : start + in_row] for start in range(0, len(facts), in_row)]
    marks: list[BoxMark] = [Rectangle(0.0, 0.0, grid.text_width, 0.8, styles.accent)]
    y = 0.0
    for row_number, row in enumerate(rows):
        lowest = y
        for place, (label, value) in enumerate(row):
            key = f"facts/{row_number}/{place}"
            item = (*tags, list_tag, Tag("LI", key))
            x = place * (width + 14)
            label_marks, value_y = _lines(label, label_kind, x, y + 17 * scale, width, leading, (*item, Tag("Lbl", key)))
            value_marks, end = _lines(value, value_kind, x, value_y + 1.5, width, leading, (*item, Tag("LBody", key)))
            marks += label_marks + value_marks
            lowest = max(lowest, end - leading)
        y = lowest + 8 * scale
    return [moved(mark, 0.0, bottom - y) for mark in marks], y
