"""Scans TOML 1.0 for places: where each key and value stands, and where each character of a text value comes from.

The standard library reads TOML but keeps no positions. This walks the same grammar (https://toml.io/en/v1.0.0) once, in time
proportional to the file, and keeps nothing but positions and texts. Its errors are in plain words, at the character where the file stops
making sense.
"""

from __future__ import annotations

import re
from dataclasses import field

from motifold.render.pattern.scan_errors import (
    LONGEST_NUMBER,
    TomlError,
    bad_bare_value,
    bad_header,
    fail_at_rest,
    fail_on_control,
    no_equals,
    no_key,
    shown,
)
from motifold.render.pattern.scan_texts import TextPlaces, past, read_text
from motifold.symbols.record import dataclass

Path = tuple[str | int, ...]
Bounds = tuple[int, int]

DEEPEST = 16
"""Arrays, inline tables and dotted keys nest no deeper than this in a pattern file: four levels would do."""

MOST_VALUES = 20_000
"""Keys, tables and items of lists in one file: far more than any pattern has, and few enough to be looked at in a second."""

_SPACE = re.compile(r"[ \t]*")
_BLANK = re.compile(r"(?:[ \t]|\r?\n)*")
_LINE_END = re.compile(r"\r?\n|\Z")
_TABLE_OR_KEY = re.compile(
    r"\[{1,2}[A-Za-z][\w-]*(?:\.[\w\"' -]+)*\]{1,2}[ \t]*(?:#[^\r\n]*)?\r?$|[a-z][a-z_]*[ \t]*=[ \t]*[\"'\[{0-9]", re.MULTILINE
)
_NEXT_ITEM = re.compile(r"[\"'\[{0-9]")
_COMMENT = re.compile(r"#[^\n\r\x00-\x08\x0b-\x1f\x7f]*")
_BARE_KEY = re.compile(r"[A-Za-z0-9_-]+")
_TOKEN = re.compile(r"[^ \t\r\n,\]}#=\"']+")
_NUMBER = re.compile(
    r"0x[0-9A-Fa-f](?:_?[0-9A-Fa-f])*|0b[01](?:_?[01])*|0o[0-7](?:_?[0-7])*|[+-]?(?:inf|nan)"
    r"|[+-]?(?:0|[1-9](?:_?[0-9])*)(?:\.[0-9](?:_?[0-9])*)?(?:[eE][+-]?[0-9](?:_?[0-9])*)?"
)
_TIME = r"(?:[01][0-9]|2[0-3]):[0-5][0-9]:[0-5][0-9](?:\.[0-9]+)?"
_DATE_TIME = re.compile(
    rf"[0-9]{{4}}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12][0-9]|3[01])(?:[Tt ]{_TIME}(?:[Zz]|[+-](?:[01][0-9]|2[0-3]):[0-5][0-9])?)?|{_TIME}"
)
_DATE_THEN_TIME = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2} [0-9]{2}:")


@dataclass(slots=True)
class Scanned:
    """What a scan finds: bounds of keys and values by path, and texts. Tables stand where they are first named."""

    keys: dict[Path, Bounds] = field(default_factory=dict)
    values: dict[Path, Bounds] = field(default_factory=dict)
    texts: dict[Path, TextPlaces] = field(default_factory=dict)
    assigned: set[Path] = field(default_factory=set)
    headers: set[Path] = field(default_factory=set)
    arrays: dict[Path, int] = field(default_factory=dict)


def scan(source: str) -> Scanned:
    """The places of everything in a TOML text; raises TomlError at the first character that cannot be read.

    Rules between tables (what may extend what) are not checked here beyond a key or table that is given twice.
    """
    out = Scanned()
    try:
        _statements(source, out)
    except TomlError as error:
        raise _unclosed(source, out) or error from None
    return out


def _unclosed(source: str, out: Scanned) -> TomlError | None:
    """Where a long text swallowed a table or a key, its missing end is the mistake, not what the scan stumbled over after it."""
    for text in out.texts.values():
        if not source.startswith(('"""', "'''"), text.start):
            continue
        at = source.find("\n", text.start) + 1
        end = text.end or len(source)
        swallowed = _TABLE_OR_KEY.search(source, at, end) if at else None
        while swallowed and source[swallowed.start() - 1] != "\n":
            swallowed = _TABLE_OR_KEY.search(source, swallowed.end(), end)
        if swallowed:
            line = source.count("\n", 0, swallowed.start()) + 1
            message = f"the text that begins here is not closed: it runs on over {shown(swallowed.group().strip())} on line {line}"
            return TomlError(message, text.start, 3, f"close it with a line of {source[text.start] * 3}")
    return None


def _statements(source: str, out: Scanned) -> None:
    table: Path = ()
    at = 0
    size = len(source)
    while True:
        at = past(_BLANK, source, at)
        if at >= size:
            return
        if source[at] == "[":
            table, at = _header(source, at, out)
        elif source[at] != "#":
            at = _key_value(source, at, table, out, 0)
        at = _statement_end(source, at)


def _statement_end(source: str, at: int) -> int:
    """Past a comment and the end of the line, where nothing else may stand."""
    at = past(_SPACE, source, at)
    if source.startswith("#", at):
        at = past(_COMMENT, source, at)
    match = _LINE_END.match(source, at)
    if match is None:
        fail_at_rest(source, at)
    return match.end()


def _header(source: str, at: int, out: Scanned) -> tuple[Path, int]:
    """``[table]`` or ``[[array of tables]]``: the path that the following keys belong to."""
    start = at
    _count(out, at)
    many = source.startswith("[[", at)
    at = past(_SPACE, source, at + (2 if many else 1))
    parts, at = _key(source, at, "]")
    close = "]]" if many else "]"
    if not source.startswith(close, at):
        fail_on_control(source, at)
        raise bad_header(source, start, at, close)
    path: Path = ()
    for number, (name, key_start, key_end) in enumerate(parts):
        path = (*path, name)
        last = number == len(parts) - 1
        out.keys.setdefault(path, (key_start, key_end))
        out.values.setdefault(path, (key_start, key_end))
        if last and many:
            if path in out.assigned or path in out.headers:
                raise _twice(source, path, out, key_start, key_end)
            count = out.arrays.get(path, 0)
            out.arrays[path] = count + 1
        if path in out.arrays and (many or not last):
            path = (*path, out.arrays[path] - 1)
            out.keys.setdefault(path, (key_start, key_end))
            out.values.setdefault(path, (key_start, key_end))
        elif last:
            if path in out.headers or path in out.assigned or path in out.arrays:
                raise _twice(source, path, out, key_start, key_end)
            out.headers.add(path)
            out.keys[path] = out.values[path] = (key_start, key_end)
    return path, at + len(close)


def _twice(source: str, path: Path, out: Scanned, start: int, end: int) -> TomlError:
    first = out.values.get(path, (0, 0))[0]
    line = source.count("\n", 0, first) + 1
    name = ".".join(str(part) for part in path if isinstance(part, str))
    return TomlError(
        f"{shown(name)} is given twice: first on line {line}", start, end - start, "keep one of them, or give the second another name"
    )


def _key_value(source: str, at: int, table: Path, out: Scanned, depth: int) -> int:
    """``key = value`` below ``table``; the offset after it."""
    start = at
    parts, at = _key(source, at, "=")
    if not source.startswith("=", at):
        fail_on_control(source, at)
        raise no_equals(source, start, at)
    path = table
    for name, key_start, key_end in parts[:-1]:
        path = (*path, name)
        out.keys.setdefault(path, (key_start, key_end))
        out.values.setdefault(path, (key_start, key_end))
    name, key_start, key_end = parts[-1]
    path = (*path, name)
    if path in out.assigned or path in out.headers:
        raise _twice(source, path, out, key_start, key_end)
    out.keys.setdefault(path, (key_start, key_end))
    at = past(_SPACE, source, at + 1)
    end = _value(source, at, path, out, depth)
    out.assigned.add(path)
    out.values[path] = (at, end)
    return end


def _key(source: str, at: int, until: str) -> tuple[list[tuple[str, int, int]], int]:
    """A dotted key: its parts with their bounds, and the offset of what follows it."""
    parts: list[tuple[str, int, int]] = []
    while True:
        char = source[at : at + 1]
        bare = _BARE_KEY.match(source, at)
        if bare:
            name, end = bare.group(), bare.end()
        elif char in ('"', "'") and char:
            text = TextPlaces()
            end = read_text(source, at, text, lines_allowed=False)
            name = "".join(text.chunks)
        else:
            fail_on_control(source, at)
            raise no_key(source, at, until)
        parts.append((name, at, end))
        if len(parts) > DEEPEST:
            raise TomlError("this key has too many dots", parts[0][1], end - parts[0][1])
        at = past(_SPACE, source, end)
        if not source.startswith(".", at):
            return parts, at
        at = past(_SPACE, source, at + 1)


def _value(source: str, at: int, path: Path, out: Scanned, depth: int) -> int:
    """Any value; the offset after it."""
    _count(out, at)
    char = source[at : at + 1]
    if char in ('"', "'") and char:
        text = out.texts[path] = TextPlaces(start=at)
        return read_text(source, at, text, lines_allowed=True)
    if char in ("[", "{") and char:
        if depth >= DEEPEST:
            raise TomlError("lists and tables stand too deep inside each other here", at, 1)
        read = _array if char == "[" else _inline_table
        return read(source, at, path, out, depth + 1)
    return _bare_value(source, at)


def _count(out: Scanned, at: int) -> None:
    if len(out.values) > MOST_VALUES:
        raise TomlError(f"a pattern file has at most {MOST_VALUES:,} keys and items, and this is one more", at)


def _bare_value(source: str, at: int) -> int:
    """true, false, a number, a date or a time."""
    token = _TOKEN.match(source, at)
    if token is None:
        fail_on_control(source, at)
        if source[at : at + 1] in ("", "\r", "\n", "#"):
            raise TomlError("a value is missing here", at, 0, 'text stands in quotes: title = "Basket"')
        raise TomlError("a value is missing before this", at, 1)
    word = token.group()
    end = token.end()
    if _DATE_THEN_TIME.match(source, at):
        rest = _TOKEN.match(source, end + 1)
        end = rest.end() if rest else end
        word = source[at:end]
    if len(word) <= LONGEST_NUMBER and (word in ("true", "false") or _NUMBER.fullmatch(word) or _DATE_TIME.fullmatch(word)):
        return end
    raise bad_bare_value(source, at, word)


def _array(source: str, at: int, path: Path, out: Scanned, depth: int) -> int:
    start = at
    at = _array_gap(source, at + 1)
    index = 0
    while not source.startswith("]", at):
        if at >= len(source) or source[at] == "=":
            raise TomlError('this list is never closed with "]"', start, 1)
        item: Path = (*path, index)
        end = _value(source, at, item, out, depth)
        out.values[item] = (at, end)
        index += 1
        at = _array_gap(source, end)
        if source.startswith(",", at):
            at = _array_gap(source, at + 1)
        elif not source.startswith("]", at):
            fail_on_control(source, at)
            if _NEXT_ITEM.match(source, at) and not _TABLE_OR_KEY.match(source, source.rfind("\n", 0, at) + 1):
                raise TomlError("a comma is missing between the items of this list", end, 0, "write a comma here")
            raise TomlError('this list is never closed with "]"', start, 1, "its items have commas between them")
    return at + 1


def _array_gap(source: str, at: int) -> int:
    """Past spaces, line ends and comments between the items of a list."""
    while True:
        at = past(_BLANK, source, at)
        if not source.startswith("#", at):
            return at
        at = past(_COMMENT, source, at)
        if _LINE_END.match(source, at) is None:
            fail_on_control(source, at)


def _inline_table(source: str, at: int, path: Path, out: Scanned, depth: int) -> int:
    start = at
    at = past(_SPACE, source, at + 1)
    if source.startswith("}", at):
        return at + 1
    while True:
        if source[at : at + 1] in ("", "\r", "\n", "#"):
            raise TomlError('a table in braces stands on one line: it is not closed with "}" here', start, max(1, at - start))
        if source[at] == "}":
            raise TomlError('no comma stands before the "}" of a table in braces', at, 1, "delete the comma")
        at = past(_SPACE, source, _key_value(source, at, path, out, depth))
        if source.startswith("}", at):
            return at + 1
        if not source.startswith(",", at):
            fail_on_control(source, at)
            if source[at : at + 1] in ("", "\r", "\n", "#"):
                continue
            raise TomlError('a comma or "}" is missing here', at, 1)
        at = past(_SPACE, source, at + 1)
