"""Where everything stands in a pattern file: key path -> place, and offset in a text value -> line and column.

Offsets count characters of the decoded source; lines and columns count from 1, in characters.
"""

from __future__ import annotations

from bisect import bisect_right
from dataclasses import dataclass

from motifold.render.pattern.problem import Span


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
class Piece:
    """A stretch of a text value: its character i stands at ``source + (i - text) * width``, ``width`` characters wide.

    Plain text is one long piece of width 1; an escape ("\\u00bd") is a piece of its own, one character in the text.
    """

    text: int
    source: int
    width: int = 1


@dataclass(frozen=True, slots=True)
class LocatedText:
    """A text value and the place of each of its characters. ``end`` is the source offset just after its last one."""

    text: str
    lines: Lines
    pieces: tuple[Piece, ...]
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
        piece = self.pieces[bisect_right(self.pieces, max(0, offset), key=lambda p: p.text) - 1]
        at = piece.source + (max(0, offset) - piece.text) * piece.width
        return at, at + piece.width


def plain_text(text: str) -> LocatedText:
    """A text that is its own source: what stands in no file has line 1, column 1 at its first character."""
    return LocatedText(text, Lines.of(text), (Piece(0, 0),) if text else (), len(text))
