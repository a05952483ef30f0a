"""A pattern's own symbol: SVG path data, checked, turned into marks and scaled to the stitch's height.

Grammar of path data: SVG 1.1, chapter 8.3.
"""

from __future__ import annotations

import re
from math import hypot, isfinite

from motifold.symbols import sizes as s
from motifold.symbols.ink import Mark, Point, Stroke, flatten
from motifold.symbols.record import dataclass
from motifold.symbols.svg_arc import arc_cubics

MAX_LENGTH = 4000
"""Characters of path data; a symbol is small."""

_TOKEN = re.compile(r"\s*,?\s*([MmLlHhVvCcSsQqTtAaZz]|[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d{1,3})?)")
_FLAG = re.compile(r"\s*,?\s*([01])")
_FLAGS = (3, 4)
"""Which numbers of an arc are flags: one digit, that the next number may follow at once."""
_TAKES = {"a": 7, "m": 2, "l": 2, "h": 1, "v": 1, "c": 6, "s": 4, "q": 4, "t": 2, "z": 0}


@dataclass(frozen=True, slots=True)
class OwnSymbol:
    """A symbol read: its subpaths as cubic chains with whether each is closed, foot at (0, 0), head at (0, 1), y up."""

    subpaths: tuple[tuple[tuple[Point, ...], bool], ...]

    def marks(self, foot: Point, head: Point) -> tuple[Mark, ...]:
        """The symbol standing on ``foot``, as tall as ``head`` is far."""
        ux, uy = head[0] - foot[0], head[1] - foot[1]
        return tuple(
            Stroke(tuple((foot[0] + x * uy + y * ux, foot[1] - x * ux + y * uy) for x, y in points), s.STEM_WIDTH, True, closed)
            for points, closed in self.subpaths
        )


def read_symbol(data: str) -> OwnSymbol:
    """Read SVG path data (y down). ValueError says in plain words what is wrong with it."""
    if len(data) > MAX_LENGTH:
        raise ValueError(f"path data is {len(data)} characters long; {MAX_LENGTH} are enough for a symbol")
    raw = _subpaths(_commands(data))
    flat = [p for points, _ in raw for p in flatten(points, True)]
    if not flat:
        raise ValueError("path data draws nothing")
    x0, x1 = min(p[0] for p in flat), max(p[0] for p in flat)
    y0, y1 = min(p[1] for p in flat), max(p[1] for p in flat)
    height = y1 - y0
    if not isfinite(height) or height <= 1e-6 or (x1 - x0) > 4 * height:
        raise ValueError("a symbol needs some height: it is scaled so that it is as tall as its stitch")
    middle = (x0 + x1) / 2
    return OwnSymbol(tuple((tuple(((x - middle) / height, (y1 - y) / height) for x, y in points), closed) for points, closed in raw))


def _commands(data: str) -> list[tuple[str, list[float]]]:
    commands: list[tuple[str, list[float]]] = []
    at = 0
    text = data.strip()
    while at < len(text):
        flag = bool(commands) and commands[-1][0] in "Aa" and len(commands[-1][1]) % 7 in _FLAGS
        match = (_FLAG if flag else _TOKEN).match(text, at)
        if match is None:
            wanted = "0 or 1 (a flag of an arc)" if flag else "a command (M L H V C S Q T A Z) or a number"
            raise ValueError(f"path data has {text[at : at + 8].strip()!r} where {wanted} should be")
        token = match.group(1)
        if token.isalpha():
            commands.append((token, []))
        elif not commands:
            raise ValueError("path data must begin with M")
        else:
            value = float(token)
            if not abs(value) < 1e6:
                raise ValueError(f"the number {token} is too large for a symbol")
            commands[-1][1].append(value)
        at = match.end()
    if not commands or commands[0][0] not in "Mm":
        raise ValueError("path data must begin with M")
    for letter, values in commands:
        takes = _TAKES[letter.lower()]
        if (takes == 0 and values) or (takes and (not values or len(values) % takes)):
            raise ValueError(f"{letter} in path data takes {takes} numbers, not {len(values)}")
    return commands


def _subpaths(commands: list[tuple[str, list[float]]]) -> list[tuple[tuple[Point, ...], bool]]:
    """Every subpath as one chain of cubics."""
    out: list[tuple[tuple[Point, ...], bool]] = []
    chain: list[Point] = []
    here = start = (0.0, 0.0)
    handle: Point | None = None
    before = ""

    def finish(closed: bool) -> None:
        if len(chain) > 1:
            if closed and hypot(chain[0][0] - chain[-1][0], chain[0][1] - chain[-1][1]) > 1e-9:
                chain.extend(_line(chain[-1], chain[0]))
            out.append((tuple(chain), closed))
        chain.clear()

    for letter, values in commands:
        kind = letter.lower()
        if kind == "z":
            finish(True)
            here, before = start, "z"
            chain.append(here)
            continue
        takes = _TAKES[kind]
        for i in range(0, len(values), takes):
            numbers = values[i : i + takes]
            points = _points(kind, numbers[5:] if kind == "a" else numbers, here, letter.islower())
            if kind == "m" and i == 0:
                finish(False)
                here = start = points[-1]
                chain.append(here)
            elif kind == "a":
                chain.extend(arc_cubics(here, (numbers[0], numbers[1]), numbers[2], numbers[3] > 0, numbers[4] > 0, points[-1]))
                here, handle = points[-1], None
            else:
                step, handle = _cubic(kind, points, here, handle if before == kind or {before, kind} in _SMOOTH else None)
                chain.extend(step)
                here = points[-1]
            before = kind
    finish(False)
    return out


_SMOOTH = ({"c", "s"}, {"q", "t"})


def _points(kind: str, values: list[float], here: Point, relative: bool) -> list[Point]:
    ox, oy = here if relative else (0.0, 0.0)
    if kind == "h":
        return [(ox + values[0], here[1])]
    if kind == "v":
        return [(here[0], oy + values[0])]
    return [(ox + x, oy + y) for x, y in zip(values[0::2], values[1::2], strict=True)]


def _line(a: Point, b: Point) -> list[Point]:
    return [(a[0] + (b[0] - a[0]) / 3, a[1] + (b[1] - a[1]) / 3), (a[0] + (b[0] - a[0]) * 2 / 3, a[1] + (b[1] - a[1]) * 2 / 3), b]


def _cubic(kind: str, points: list[Point], here: Point, handle: Point | None) -> tuple[list[Point], Point | None]:
    """One step as two handles and an end, and the handle that a smooth step after it mirrors."""
    end = points[-1]
    mirrored = (2 * here[0] - handle[0], 2 * here[1] - handle[1]) if handle else here
    if kind == "c":
        return points, points[1]
    if kind == "s":
        return [mirrored, *points], points[0]
    if kind in ("q", "t"):
        q = points[0] if kind == "q" else mirrored
        first = (here[0] + (q[0] - here[0]) * 2 / 3, here[1] + (q[1] - here[1]) * 2 / 3)
        return [first, (end[0] + (q[0] - end[0]) * 2 / 3, end[1] + (q[1] - end[1]) * 2 / 3), end], q
    return _line(here, end), None
