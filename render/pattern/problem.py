"""Problems are data: where, what is wrong in the trade's words, and what would mend it."""

from __future__ import annotations

from typing import Literal

from motifold.symbols.record import dataclass

Severity = Literal["error", "warning"]


@dataclass(frozen=True, slots=True)
class Span:
    """A place in the pattern file: ``line`` and ``column`` count from 1, in characters.

    ``length`` is how many characters of that line are meant (0: a place between two characters).
    """

    line: int
    column: int
    length: int = 0


@dataclass(frozen=True, slots=True)
class Problem:
    """One thing that is wrong, or may be; collected, never raised past a room."""

    code: str
    severity: Severity
    span: Span | None
    message: str
    hint: str | None = None


NOWHERE = Span(1, 1, 0)
