"""Where everything stands in a pattern file: key path -> place, and offset in a text value -> line and column.

Offsets count characters of the decoded source; lines and columns count from 1, in characters.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Mapping
from typing import TypeVar

from motifold.render.pattern.problem import Span
from motifold.render.pattern.scan import Bounds, Path, scan
from motifold.render.pattern.scan_texts import TextPlaces
from motifold.symbols.record import dataclass

Place = TypeVar("Place")


@dataclass(frozen=True, slots=True)
class Lines:
    """A source and where its lines start. A line ends before its LF, or before its CR LF."""

    source: str
    starts: tuple[int, ...]

    @staticmethod
    def of(source: str) -> Lines:
        starts = [0]
        at = source.find("\n")
        while at >= 0:
            starts.append(at + 1)
            at = source.find("\n", at + 1)
        return Lines(source, tuple(starts))

    def text(self, line: int) -> str:
        """The line with this number from 1, without its line ending; "" where there is none."""
        if not 1 <= line <= len(self.starts):
            return ""
        return self.source[self.starts[line - 1] : self._end(line)]

    def span(self, start: int, end: int) -> Span:
        """The place of ``source[start:end]``, cut at the end of the line that it starts in."""
        line = bisect_right(self.starts, start)
        column = start - self.starts[line - 1] + 1
        return Span(line, column, max(0, min(end, self._end(line)) - start))

    def _end(self, line: int) -> int:
        if line == len(self.starts):
            return len(self.source)
        end = self.starts[line] - 1
        return end - 1 if end > self.starts[line - 1] and self.source[end - 1] == "\r" else end


@dataclass(frozen=True, slots=True)
class LocatedText:
    """A text value and the place of each of its characters.

    ``pieces``: (offset in the text, offset in the source, width) of each stretch: character i of the text stands at
    ``source + (i - text) * width`` and is ``width`` characters wide there. Plain text is one long piece of width 1; an escape
    ("\\u00bd") is a piece of its own. ``end`` is the source offset just after the last character.
    """

    text: str
    lines: Lines
    pieces: tuple[tuple[int, int, int], ...]
    end: int

    def span(self, start: int, end: int) -> Span:
        """The place of ``text[start:end]``; what runs over a line's end in the file is cut there."""
        first, after_first = self._char(start)
        if end <= start:
            return self.lines.span(first, first)
        after = after_first if end == start + 1 else self._char(end - 1)[1]
        return self.lines.span(first, after)

    def _char(self, offset: int) -> tuple[int, int]:
        """Source offsets of one character's start and end; of the end of the text for what lies past it."""
        if offset >= len(self.text) or not self.pieces:
            return self.end, self.end
        offset = max(0, offset)
        one = len(self.pieces) == 1
        text, source, width = self.pieces[0 if one else bisect_right(self.pieces, offset, key=lambda piece: piece[0]) - 1]
        at = source + (offset - text) * width
        return at, at + width


def plain_text(text: str) -> LocatedText:
    """A text that is its own source: what stands in no file has line 1, column 1 at its first character."""
    return LocatedText(text, Lines.of(text), ((0, 0, 1),) if text else (), len(text))


@dataclass(frozen=True, slots=True)
class Locator:
    """Places in one file by key path: ``("motif", "square", "rounds")``, ``("assembly", "join", 0)``.

    A path that the file does not have has the place of the nearest key above it.
    """

    lines: Lines
    keys: Mapping[Path, Bounds]
    values: Mapping[Path, Bounds]
    texts: Mapping[Path, TextPlaces]

    def key(self, path: Path) -> Span:
        """Where the last name of a path is written; for an item of a list, the item."""
        return self._span(self.keys if path in self.keys else self.values, path)

    def value(self, path: Path) -> Span:
        """Where a value is written, quotes included and cut at its first line's end; for a table, its name."""
        return self._span(self.values, path)

    def text(self, path: Path) -> LocatedText:
        """The text at a path, which must be a text's (KeyError if not)."""
        places = self.texts[path]
        return LocatedText("".join(places.chunks), self.lines, tuple(places.pieces), places.end)

    def also(self, old: Path, new: Path) -> Locator:
        """The same places, what stands below ``old`` known as ``new`` too."""
        return Locator(self.lines, _also(self.keys, old, new), _also(self.values, old, new), _also(self.texts, old, new))

    def places(self) -> dict[Path, Span]:
        """The place of every value of the file."""
        return {path: self.lines.span(*bounds) for path, bounds in self.values.items()}

    def _span(self, table: Mapping[Path, Bounds], path: Path) -> Span:
        while path and path not in table:
            path = path[:-1]
        return self.lines.span(*table[path]) if path else Span(1, 1, 0)


def _also(table: Mapping[Path, Place], old: Path, new: Path) -> dict[Path, Place]:
    size = len(old)
    return {**table, **{(*new, *path[size:]): place for path, place in table.items() if path[:size] == old}}


def locate(source: str) -> Locator:
    """The places of everything in a TOML text; raises TomlError where it stops being TOML."""
    found = scan(source)
    return Locator(Lines.of(source), found.keys, found.values, found.texts)
