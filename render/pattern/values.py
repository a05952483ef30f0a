"""Reads single values of a file: quantities with their kind, colours and references, each problem at its place."""

from __future__ import annotations

from collections.abc import Callable, Collection
from dataclasses import field
from fractions import Fraction
from typing import Any, Literal, TypeVar

from motifold.render.pattern.check import MOST_SUGGESTIONS
from motifold.render.pattern.locator import Locator
from motifold.render.pattern.problem import Problem, Severity, Span
from motifold.render.pattern.quantity import Kind, PerLength, Quantity, QuantityError, Range, parse_per_length, parse_quantity, parse_range
from motifold.render.pattern.scan import Path
from motifold.render.pattern.spelling import nearest
from motifold.symbols.record import dataclass

Read = TypeVar("Read", Quantity, PerLength, Range)
Table = dict[str, Any]

_KIND_HINTS: dict[Kind, str] = {
    "length": 'for example "12.5 cm" or "5 1/8 in"',
    "mass": 'for example "50 g" or "1.75 oz"',
    "share": 'for example "-3 %"',
    "number": "a number alone",
}
_KIND_NAMES: dict[Kind, str] = {"length": "a length", "mass": "a weight", "share": "a percentage", "number": "a number"}
MOST_PROBLEMS = 200
"""How many problems of one file are told; the rest are only counted."""
LONGEST_CM = 10_000
"""Nothing crocheted is measured over more than a hundred metres; more is a slip of the pen."""


@dataclass(slots=True)
class Reader:
    """What is known while a file is read: where its values stand, and the problems found so far.

    ``terms_known`` false: the file does not say US or UK, so that its instructions cannot be read. ``terms``: those that its words are in.
    """

    locator: Locator
    problems: list[Problem] = field(default_factory=list)
    terms_known: bool = True
    terms: Literal["US", "UK"] = "US"

    def has(self, *path: str | int) -> bool:
        """Whether the file gives this key at all, be its value right or wrong."""
        return path in self.locator.values

    @property
    def flooded(self) -> bool:
        """Whether more is wrong than anyone will read: what only repeats may stop here."""
        return len(self.problems) > MOST_PROBLEMS

    def nearest(self, word: str, words: Collection[str]) -> str | None:
        """The one of ``words`` that ``word`` may be a slip for, while it is worth the time to look."""
        return nearest(word, words) if len(self.problems) < MOST_SUGGESTIONS else None

    def count(self, *path: str | int) -> int:
        """How many keys or items the file gives right below this one."""
        return sum(len(other) == len(path) + 1 and other[: len(path)] == path for other in self.locator.values)

    def found(self, code: str) -> bool:
        """Whether a problem with this code was found so far."""
        return any(problem.code == code for problem in self.problems)

    def add(self, code: str, span: Span, message: str, hint: str | None = None, severity: Severity = "error") -> None:
        self.problems.append(Problem(code, severity, span, message, hint))


def text(table: Table, name: str) -> str | None:
    """A text of a checked table, without spaces around it; None if it is not there."""
    value = table.get(name)
    return value.strip() if isinstance(value, str) else None


def texts(table: Table, name: str) -> tuple[str, ...]:
    return tuple(item.strip() for item in table.get(name, ()))


def whole(table: Table, name: str) -> int | None:
    value = table.get(name)
    return value if isinstance(value, int) else None


def number(table: Table, name: str) -> float | None:
    value = table.get(name)
    return float(value) if isinstance(value, int | float) else None


def truth(table: Table, name: str) -> bool | None:
    value = table.get(name)
    return value if isinstance(value, bool) else None


def quantity(reader: Reader, table: Table, path: Path, kind: Kind, positive: bool = True, hint: str | None = None) -> Quantity | None:
    """The quantity at ``path``, whose last part is its name in ``table``; it must be of ``kind``, and more than 0 if ``positive``.

    ``hint`` is for what cannot be read as a quantity at all, in place of the general one.
    """
    found = _parsed(reader, table, path, parse_quantity, hint)
    if found is None:
        return None
    if found.kind != kind:
        reader.add("quantity", reader.locator.value(path), f"{found} is not {_KIND_NAMES[kind]}", _KIND_HINTS[kind])
        return None
    if (positive and found.value <= 0) or (kind in ("length", "mass") and found.value < 0):
        reader.add(
            "quantity",
            reader.locator.value(path),
            f"{found} cannot be: it must be {'more than 0' if positive else '0 or more'}",
            _KIND_HINTS[kind],
        )
        return None
    if kind == "length" and found.cm > LONGEST_CM:
        reader.add("quantity", reader.locator.value(path), f"{found} is longer than anything crocheted", "is the unit right?")
        return None
    return found


def centimetres(reader: Reader, table: Table, path: Path, positive: bool = True) -> float | None:
    found = quantity(reader, table, path, "length", positive)
    return float(found.cm) if found else None


def per_length(reader: Reader, table: Table, path: Path) -> PerLength | None:
    return _parsed(reader, table, path, parse_per_length)


def ease(reader: Reader, table: Table, path: Path) -> Range | None:
    """Two ends in percent, or two lengths; nothing shrinks by its whole self."""
    found = _parsed(reader, table, path, parse_range)
    if found is None:
        return None
    if found.low.kind not in ("share", "length"):
        reader.add("quantity", reader.locator.value(path), f"{found.low} is no ease", 'ease is in percent or in cm: "-8 % to 0 %"')
        return None
    if found.low.kind == "share" and (found.low.value <= -100 or found.high.value > 1000):
        reader.add("quantity", reader.locator.value(path), f"{found.low} to {found.high} fits nobody", 'for example "-8 % to 0 %"')
        return None
    return found


def _parsed(reader: Reader, table: Table, path: Path, parse: Callable[[str], Read], hint: str | None = None) -> Read | None:
    if str(path[-1]) not in table:
        return None
    located = reader.locator.text(path)
    try:
        return parse(located.text)
    except QuantityError as error:
        span = located.span(error.offset, error.offset + error.length) if located.text else reader.locator.value(path)
        reader.add("quantity", span, error.message, error.hint if hint is None or error.exact else hint)
        return None


def share(reader: Reader, table: Table, path: Path) -> Fraction | None:
    """A percentage as a share of one, more than -100 %."""
    found = quantity(reader, table, path, "share", positive=False)
    if found and not -50 <= found.value <= 100:
        reader.add("quantity", reader.locator.value(path), f"{found} is no change that washing makes", 'for example "-3 %"')
        return None
    return found.fraction if found else None


def reference(reader: Reader, table: Table, path: Path, known: Collection[str], what: str) -> str | None:
    """A name that must be one of ``known``; ``what`` says what it names: "motif", "yarn"."""
    name = text(table, str(path[-1]))
    if name is None or name in known:
        return name
    if what == "motif" and not known:  # told already: the file has no motif at all
        return None
    near = reader.nearest(name, known)
    if near:
        hint = f"did you mean {near}?"
    elif known:
        hint = f"the file's {what}s are {', '.join(list(known)[:12])}"
    else:
        hint = f"the file has no [{what}.NAME]"
    shown = name if len(name) <= 40 else name[:37] + "..."
    reader.add("reference", reader.locator.value(path), f'there is no {what} "{shown}"', hint)
    return None
