"""Words that lead somewhere: the parts of lines that are links, and where on the page they are touched."""

from __future__ import annotations

from collections.abc import Collection, Iterable
from dataclasses import replace
from itertools import groupby

from motifold.render.booklet.boxes import BoxMark, LineOfWords, Tag, Tags
from motifold.render.booklet.inline import Word
from motifold.render.booklet.linebreak import line_width
from motifold.render.booklet.paper import Grid
from motifold.symbols.record import dataclass


@dataclass(frozen=True, slots=True)
class Link:
    """On page ``page`` (from 0) the rectangle (left, bottom, right, top) in points, y up.

    ``target``: an address, or "#" and the key of a destination.
    """

    page: int
    rectangle: tuple[float, float, float, float]
    target: str
    words: str
    tags: Tags


def linked_parts(mark: BoxMark, known: Collection[str]) -> list[BoxMark]:
    """A line cut where a link begins or ends, each link below an element of its own; what leads to no known place is left as words."""
    if not isinstance(mark, LineOfWords) or not any(target_of(word) for word in mark.words):
        return [mark]
    parts: list[BoxMark] = []
    x = mark.x
    runs = [(target, tuple(words)) for target, words in groupby(mark.words, target_of)]
    for place, (target, words) in enumerate(runs):
        last = place == len(runs) - 1
        leads = target and (not target.startswith("#") or target[1:] in known)
        tags = (*mark.tags, Tag("Link", target)) if leads and mark.tags else mark.tags
        parts.append(replace(mark, x=x, words=words, tags=tags, ends=mark.ends and last))
        x += line_width(words) + (0.0 if words[-1].glued else words[-1].space)
    return parts


def target_of(word: Word) -> str:
    return next((kind.leads_to for _, kind in word.pieces if kind.leads_to), "")


def links_of(marks: Iterable[BoxMark], page: int, grid: Grid) -> list[Link]:
    """The links among the marks of one page."""
    found = []
    for mark in marks:
        if isinstance(mark, LineOfWords) and mark.tags and mark.tags[-1].name == "Link":
            size = max(kind.size for word in mark.words for _, kind in word.pieces)
            foot = grid.height - mark.y - 0.25 * size
            words = " ".join("".join(text for text, _ in word.pieces) for word in mark.words)
            rectangle = (mark.x, foot, mark.x + line_width(mark.words), foot + 1.15 * size)
            found.append(Link(page, rectangle, mark.tags[-1].key, words, mark.tags))
    return found
