"""Scans TOML 1.0 for places: where each key and value stands, and where each character of a text value comes from.

The standard library reads TOML but keeps no positions. This walks the same grammar (https://toml.io/en/v1.0.0) once, in time
proportional to the file, and keeps nothing but positions and texts. Its errors are in plain words, at the character where the file stops
making sense.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import NoReturn

Path = tuple[str | int, ...]
Bounds = tuple[int, int]

DEEPEST = 16
"""Arrays, inline tables and dotted keys nest no deeper than this in a pattern file: four levels would do."""

_SPACE = re.compile(r"[ \t]*")
_BLANK = re.compile(r"(?:[ \t]|\r?\n)*")
_LINE_END = re.compile(r"\r?\n|\Z")
_COMMENT = re.compile(r"#[^\n\r\x00-\x08\x0b-\x1f\x7f]*")
_BARE_KEY = re.compile(r"[A-Za-z0-9_-]+")
_TOKEN = re.compile(r"[^ \t\r\n,\]}#=\"']+")
_BASIC = re.compile(r"[^\"\\\n\r\x00-\x08\x0b-\x1f\x7f]+")
_BASIC_LINES = re.compile(r"[^\"\\\r\x00-\x08\x0b-\x1f\x7f]+")
_LITERAL = re.compile(r"[^'\n\r\x00-\x08\x0b-\x1f\x7f]+")
_LITERAL_LINES = re.compile(r"[^'\r\x00-\x08\x0b-\x1f\x7f]+")
_ESCAPE = re.compile(r"\\(?:[btnfr\"\\]|u[0-9A-Fa-f]{4}|U[0-9A-Fa-f]{8})")
_LINE_JOIN = re.compile(r"\\[ \t]*\r?\n(?:[ \t]|\r?\n)*")
_ESCAPED = {"b": "\b", "t": "\t", "n": "\n", "f": "\f", "r": "\r", '"': '"', "\\": "\\"}
_NUMBER = re.compile(
    r"0x[0-9A-Fa-f](?:_?[0-9A-Fa-f])*|0b[01](?:_?[01])*|0o[0-7](?:_?[0-7])*|[+-]?(?:inf|nan)"
    r"|[+-]?(?:0|[1-9](?:_?[0-9])*)(?:\.[0-9](?:_?[0-9])*)?(?:[eE][+-]?[0-9](?:_?[0-9])*)?"
)
_TIME = r"(?:[01][0-9]|2[0-3]):[0-5][0-9]:[0-5][0-9](?:\.[0-9]+)?"
_DATE_TIME = re.compile(
    rf"[0-9]{{4}}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12][0-9]|3[01])(?:[Tt ]{_TIME}(?:[Zz]|[+-](?:[01][0-9]|2[0-3]):[0-5][0-9])?)?|{_TIME}"
)
_DATE_THEN_TIME = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2} [0-9]{2}:")
_LONGEST_NUMBER = 100
_CURLY = "“”„‟″‘’‚‛"


class TomlError(ValueError):
    """Where a file stops being TOML: a message, the offset and length of the place, and what would mend it."""

    def __init__(self, message: str, start: int, length: int = 1, hint: str | None = None) -> None:
        super().__init__(message)
        self.message = message
        self.start = start
        self.length = length
        self.hint = hint


@dataclass(slots=True)
class TextPlaces:
    """One text value as it is built: its characters, and (text offset, source offset, width) for each stretch of them."""

    chunks: list[str] = field(default_factory=list)
    pieces: list[tuple[int, int, int]] = field(default_factory=list)
    length: int = 0
    end: int = 0

    def add(self, chunk: str, at: int, width: int = 1) -> None:
        self.pieces.append((self.length, at, width))
        self.chunks.append(chunk)
        self.length += len(chunk)


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
    table: Path = ()
    at = 0
    size = len(source)
    while True:
        at = _past(_BLANK, source, at)
        if at >= size:
            return out
        if source[at] == "[":
            table, at = _header(source, at, out)
        elif source[at] != "#":
            at = _key_value(source, at, table, out, 0)
        at = _statement_end(source, at)


def _past(pattern: re.Pattern[str], source: str, at: int) -> int:
    match = pattern.match(source, at)
    return match.end() if match else at


def _statement_end(source: str, at: int) -> int:
    """Past a comment and the end of the line, where nothing else may stand."""
    at = _past(_SPACE, source, at)
    if source.startswith("#", at):
        at = _past(_COMMENT, source, at)
    match = _LINE_END.match(source, at)
    if match is None:
        _fail_at_rest(source, at)
    return match.end()


def _fail_at_rest(source: str, at: int) -> NoReturn:
    """Something stands after a whole statement."""
    _fail_on_control(source, at)
    rest = _rest_of_line(source, at)
    line_start = source.rfind("\n", 0, at) + 1
    bare = re.fullmatch(r"([ \t]*[^=]*=[ \t]*)([^\"'\[{ \t][^\"']*)", source[line_start:at])
    if bare and source[line_start:at].strip():
        value = (bare[2] + rest).strip()
        raise TomlError("text must stand in quotes", line_start + bare.end(1), len(bare[2] + rest.rstrip()), f'write "{_shown(value)}"')
    if rest[0] in "\"'" and source[at - 1] in "\"'":
        hint = "a quotation mark inside a text is written \\\" , or the text stands in single quotes"
        raise TomlError("a text has ended before this", at, len(rest), hint)
    raise TomlError("nothing more may stand on this line", at, len(rest), "each key stands on a line of its own")


def _rest_of_line(source: str, at: int) -> str:
    match = re.compile(r"[^\r\n]*").match(source, at)
    return (match.group().rstrip() if match else "") or source[at : at + 1]


def _shown(text: str, most: int = 40) -> str:
    return text if len(text) <= most else text[: most - 3] + "..."


def _fail_on_control(source: str, at: int) -> None:
    """A character that no text file should have gets its own words."""
    char = source[at : at + 1]
    if char == "\r":
        raise TomlError("a carriage return stands alone here", at, 1, "save the file with plain line endings (LF, or CR LF)")
    if char and (char < " " or char == "\x7f") and char not in "\t\n":
        raise TomlError(f"a control character (U+{ord(char):04X}) stands here", at, 1, "delete it")


def _header(source: str, at: int, out: Scanned) -> tuple[Path, int]:
    """``[table]`` or ``[[array of tables]]``: the path that the following keys belong to."""
    start = at
    many = source.startswith("[[", at)
    at = _past(_SPACE, source, at + (2 if many else 1))
    parts, at = _key(source, at, "]")
    close = "]]" if many else "]"
    if not source.startswith(close, at):
        _fail_on_control(source, at)
        raise _bad_header(source, start, at, close)
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


def _bad_header(source: str, start: int, at: int, close: str) -> TomlError:
    line = _rest_of_line(source, start)
    words = re.match(r"\[+\s*([A-Za-z0-9_-]+)\.([A-Za-z0-9_ -]+?)\s*\]", line)
    if words:
        hint = f'a name of several words stands in quotes: [{words[1]}."{words[2]}"]'
        return TomlError("a name without quotes is one word", start, words.end(), hint)
    return TomlError(f'the table\'s name needs a closing "{close}"', start, max(1, at - start), 'for example [motif.square]')


def _twice(source: str, path: Path, out: Scanned, start: int, end: int) -> TomlError:
    first = out.values.get(path, (0, 0))[0]
    line = source.count("\n", 0, first) + 1
    name = ".".join(str(part) for part in path if isinstance(part, str))
    return TomlError(f"{_shown(name)} is given twice: first on line {line}", start, end - start, "keep one of them, or give the second another name")


def _key_value(source: str, at: int, table: Path, out: Scanned, depth: int) -> int:
    """``key = value`` below ``table``; the offset after it."""
    start = at
    parts, at = _key(source, at, "=")
    if not source.startswith("=", at):
        _fail_on_control(source, at)
        raise _no_equals(source, start, at)
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
    at = _past(_SPACE, source, at + 1)
    end = _value(source, at, path, out, depth)
    out.assigned.add(path)
    out.values[path] = (at, end)
    return end


def _no_equals(source: str, start: int, at: int) -> TomlError:
    line = _rest_of_line(source, start)
    colon = re.match(r"([A-Za-z0-9_-]+)\s*:\s*(.*)", line)
    if re.match(r"(Rnds?|Rounds?|Rows?|Ring|Chain|Foundation|Finish)\b", line):
        hint = 'all of them stand between two lines of three quotation marks: rounds = """'
        return TomlError("a line of instructions stands outside its text", start, len(line), hint)
    if colon:
        return TomlError("a key and its value have = between them, not a colon", start, len(line), f"write {colon[1]} = {_shown(colon[2])}")
    if re.match(r"[A-Za-z0-9_-]+[ \t]+[A-Za-z0-9_-]+[^=]*=", line):
        name = line.split("=")[0].strip()
        return TomlError("a key without quotes is one word", start, len(name), f'write "{name}" =')
    return TomlError('"=" and a value are missing after this', start, max(1, at - start), 'a line is a key, = and a value: title = "Basket"')


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
            end = _text(source, at, text, lines_allowed=False)
            name = "".join(text.chunks)
        else:
            _fail_on_control(source, at)
            raise _no_key(source, at, until)
        parts.append((name, at, end))
        if len(parts) > DEEPEST:
            raise TomlError("this key has too many dots", parts[0][1], end - parts[0][1])
        at = _past(_SPACE, source, end)
        if not source.startswith(".", at):
            return parts, at
        at = _past(_SPACE, source, at + 1)


def _no_key(source: str, at: int, until: str) -> TomlError:
    char = source[at : at + 1]
    if char in ("", "\r", "\n"):
        return TomlError("a name is missing here", at, 0, "for example [motif.square]" if until == "]" else 'for example title = "Basket"')
    if char == until:
        return TomlError(f'a name is missing before "{until}"', at, 1)
    if char in _CURLY:
        return _curly(at)
    word = _rest_of_line(source, at).split("=")[0].split("]")[0].split()
    shown = word[0] if word else char
    hint = "names without quotes have only letters A to Z, digits, - and _; others stand in quotes"
    return TomlError(f"{_shown(shown)} cannot be a name as it stands", at, len(shown), hint)


def _curly(at: int) -> TomlError:
    return TomlError("this quotation mark is a curly one", at, 1, "type straight quotation marks: \"")


def _value(source: str, at: int, path: Path, out: Scanned, depth: int) -> int:
    """Any value; the offset after it."""
    char = source[at : at + 1]
    if char in ('"', "'") and char:
        text = TextPlaces()
        out.texts[path] = text
        return _text(source, at, text, lines_allowed=True)
    if char in ("[", "{") and char:
        if depth >= DEEPEST:
            raise TomlError("lists and tables stand too deep inside each other here", at, 1)
        read = _array if char == "[" else _inline_table
        return read(source, at, path, out, depth + 1)
    return _bare_value(source, at)


def _bare_value(source: str, at: int) -> int:
    """true, false, a number, a date or a time."""
    token = _TOKEN.match(source, at)
    if token is None:
        _fail_on_control(source, at)
        if source[at : at + 1] in ("", "\r", "\n", "#"):
            raise TomlError("a value is missing here", at, 0, 'text stands in quotes: title = "Basket"')
        raise TomlError("a value is missing before this", at, 1)
    word = token.group()
    end = token.end()
    if _DATE_THEN_TIME.match(source, at):
        rest = _TOKEN.match(source, end + 1)
        end = rest.end() if rest else end
        word = source[at:end]
    if len(word) <= _LONGEST_NUMBER and (word in ("true", "false") or _NUMBER.fullmatch(word) or _DATE_TIME.fullmatch(word)):
        return end
    raise _bad_bare_value(source, at, word)


def _bad_bare_value(source: str, at: int, word: str) -> TomlError:
    rest = re.compile(r"[^\r\n#\]},]*").match(source, at)
    whole = rest.group().rstrip() if rest else word
    if word[0] in _CURLY:
        return _curly(at)
    if word.lower() in ("true", "false", "yes", "no"):
        right = "true" if word.lower() in ("true", "yes") else "false"
        return TomlError(f"{word} is not read", at, len(word), f"write {right}")
    if re.fullmatch(r"[+-]?0[0-9]+", word):
        return TomlError("a number does not begin with 0", at, len(word), f"write {int(word)}")
    if re.fullmatch(r"[+-]?[0-9]+\.|[+-]?\.[0-9]+", word):
        return TomlError("a number has digits on both sides of its point", at, len(word), f"write {float(word):g}")
    if len(word) > _LONGEST_NUMBER and word.strip("+-.0123456789_eE") == "":
        return TomlError("this number is too long", at, len(word))
    return TomlError("text must stand in quotes", at, max(len(whole), 1), f'write "{_shown(whole)}"')


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
            _fail_on_control(source, at)
            if re.compile(r"[\"'\[{0-9]").match(source, at):
                raise TomlError("a comma is missing between the items of this list", end, 0, "write a comma here")
            raise TomlError('this list is never closed with "]"', start, 1, "its items have commas between them")
    return at + 1


def _array_gap(source: str, at: int) -> int:
    """Past spaces, line ends and comments between the items of a list."""
    while True:
        at = _past(_BLANK, source, at)
        if not source.startswith("#", at):
            return at
        at = _past(_COMMENT, source, at)
        if _LINE_END.match(source, at) is None:
            _fail_on_control(source, at)


def _inline_table(source: str, at: int, path: Path, out: Scanned, depth: int) -> int:
    start = at
    at = _past(_SPACE, source, at + 1)
    if source.startswith("}", at):
        return at + 1
    while True:
        if source[at : at + 1] in ("", "\r", "\n", "#"):
            raise TomlError('a table in braces stands on one line: it is not closed with "}" here', start, max(1, at - start))
        if source[at] == "}":
            raise TomlError('no comma stands before the "}" of a table in braces', at, 1, "delete the comma")
        at = _past(_SPACE, source, _key_value(source, at, path, out, depth))
        if source.startswith("}", at):
            return at + 1
        if not source.startswith(",", at):
            _fail_on_control(source, at)
            if source[at : at + 1] in ("", "\r", "\n", "#"):
                continue
            raise TomlError('a comma or "}" is missing here', at, 1)
        at = _past(_SPACE, source, at + 1)


def _text(source: str, at: int, out: TextPlaces, lines_allowed: bool) -> int:
    """A text in quotes of any of the four kinds; the offset after its closing quotes."""
    quote = source[at]
    if lines_allowed and source.startswith(quote * 3, at):
        return _long_text(source, at, out)
    start = at
    at += 1
    plain = _BASIC if quote == '"' else _LITERAL
    while True:
        match = plain.match(source, at)
        if match:
            out.add(match.group(), at)
            at = match.end()
        char = source[at : at + 1]
        if char == quote:
            out.end = at
            return at + 1
        if char == "\\":
            at = _escape(source, at, out)
        elif char in ("", "\n") or source.startswith("\r\n", at):
            hint = f'close it with {quote}; a text of several lines stands between two lines of """'
            raise TomlError("the text that begins here is not closed on its line", start, at - start, hint)
        else:
            _fail_on_control(source, at)


def _long_text(source: str, at: int, out: TextPlaces) -> int:
    """Between three quotes on either side; a line end right after the opening is no part of the text."""
    start = at
    quote = source[at]
    at = _past(re.compile(r"(?:\r?\n)?"), source, at + 3)
    plain = _BASIC_LINES if quote == '"' else _LITERAL_LINES
    while True:
        match = plain.match(source, at)
        if match:
            out.add(match.group(), at)
            at = match.end()
        char = source[at : at + 1]
        if char == quote:
            quotes = 1
            while quotes < 5 and source.startswith(quote, at + quotes):
                quotes += 1
            inside = quotes if quotes < 3 else quotes - 3
            if inside:
                out.add(quote * inside, at)
            if quotes >= 3:
                out.end = at + inside
                return at + quotes
            at += quotes
        elif char == "\\":
            join = _LINE_JOIN.match(source, at)
            at = join.end() if join else _escape(source, at, out)
        elif source.startswith("\r\n", at):
            out.add("\n", at, 2)
            at += 2
        elif char == "":
            line = source.count("\n", 0, start) + 1
            raise TomlError(f"the text that begins on line {line} is never closed", start, 3, f"close it with a line of {quote * 3}")
        else:
            _fail_on_control(source, at)


def _escape(source: str, at: int, out: TextPlaces) -> int:
    match = _ESCAPE.match(source, at)
    code = int(match.group()[2:], 16) if match and len(match.group()) > 2 else 0
    if match is None or code > 0x10FFFF or 0xD800 <= code <= 0xDFFF:
        shown = source[at : at + 2].rstrip() or "\\"
        hint = 'a backslash itself is written \\\\ ; texts in single quotes (\' or \'\'\') have no escapes'
        raise TomlError(f"{shown} means nothing in a text in quotes", at, len(shown), hint)
    word = match.group()
    out.add(_ESCAPED[word[1]] if len(word) == 2 else chr(code), at, len(word))
    return match.end()
