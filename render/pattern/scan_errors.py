"""What stops a file from being TOML, in plain words: each function says one thing about one place."""

from __future__ import annotations

import re
from typing import NoReturn

LONGEST_NUMBER = 100
_CURLY = "“”„‟″‘’‚‛"
_TO_LINE_END = re.compile(r"[^\r\n]*")
_TO_VALUE_END = re.compile(r"[^\r\n#\]},]*")


class TomlError(ValueError):
    """Where a file stops being TOML: a message, the offset and length of the place, and what would mend it."""

    def __init__(self, message: str, start: int, length: int = 1, hint: str | None = None) -> None:
        super().__init__(message)
        self.message = message
        self.start = start
        self.length = length
        self.hint = hint


def fail_at_rest(source: str, at: int) -> NoReturn:
    """Something stands after a whole statement."""
    fail_on_control(source, at)
    rest = rest_of_line(source, at)
    line_start = source.rfind("\n", 0, at) + 1
    bare = re.fullmatch(r"([ \t]*[^=]*=[ \t]*)([^\"'\[{ \t][^\"']*)", source[line_start:at])
    if bare and source[line_start:at].strip():
        value = (bare[2] + rest).strip()
        raise TomlError("text must stand in quotes", line_start + bare.end(1), len(bare[2] + rest.rstrip()), f'write "{shown(value)}"')
    if rest[0] in "\"'" and source[at - 1] in "\"'":
        hint = 'a quotation mark inside a text is written \\" , or the text stands in single quotes'
        raise TomlError("a text has ended before this", at, len(rest), hint)
    raise TomlError("nothing more may stand on this line", at, len(rest), "each key stands on a line of its own")


def rest_of_line(source: str, at: int) -> str:
    match = _TO_LINE_END.match(source, at)
    return (match.group().rstrip() if match else "") or source[at : at + 1]


def shown(text: str, most: int = 40) -> str:
    return text if len(text) <= most else text[: most - 3] + "..."


def fail_on_control(source: str, at: int) -> None:
    """A character that no text file should have gets its own words."""
    char = source[at : at + 1]
    if char == "\r":
        raise TomlError("a carriage return stands alone here", at, 1, "save the file with plain line endings (LF, or CR LF)")
    if char and (char < " " or char == "\x7f") and char not in "\t\n":
        raise TomlError(f"a control character (U+{ord(char):04X}) stands here", at, 1, "delete it")


def bad_header(source: str, start: int, at: int, close: str) -> TomlError:
    line = rest_of_line(source, start)
    words = re.match(r"\[+\s*([A-Za-z0-9_-]+)\.([A-Za-z0-9_ -]+?)\s*\]", line)
    if words:
        hint = f'a name of several words stands in quotes: [{words[1]}."{words[2]}"]'
        return TomlError("a name without quotes is one word", start, words.end(), hint)
    return TomlError(f'the table\'s name needs a closing "{close}"', start, max(1, at - start), "for example [motif.square]")


def no_equals(source: str, start: int, at: int) -> TomlError:
    line = rest_of_line(source, start)
    colon = re.match(r"([A-Za-z0-9_-]+)\s*:\s*(.*)", line)
    if re.match(r"(Rnds?|Rounds?|Rows?|Ring|Chain|Foundation|Finish)\b", line):
        hint = 'all of them stand between two lines of three quotation marks: rounds = """'
        return TomlError("a line of instructions stands outside its text", start, len(line), hint)
    if colon:
        return TomlError("a key and its value have = between them, not a colon", start, len(line), f"write {colon[1]} = {shown(colon[2])}")
    if re.match(r"[A-Za-z0-9_-]+[ \t]+[A-Za-z0-9_-]+[^=]*=", line):
        name = line.split("=")[0].strip()
        return TomlError("a key without quotes is one word", start, len(name), f'write "{name}" =')
    pair = re.match(r"([A-Za-z0-9_-]+)[ \t]+([\"'\[{0-9].*)", line)
    if pair:
        return TomlError("a key and its value have = between them", start, len(line), f"write {pair[1]} = {shown(pair[2])}")
    return TomlError(
        '"=" and a value are missing after this', start, max(1, at - start), 'a line is a key, = and a value: title = "Basket"'
    )


def no_key(source: str, at: int, until: str) -> TomlError:
    char = source[at : at + 1]
    if char in ("", "\r", "\n"):
        return TomlError("a name is missing here", at, 0, "for example [motif.square]" if until == "]" else 'for example title = "Basket"')
    if char == until:
        return TomlError(f'a name is missing before "{until}"', at, 1)
    if char in _CURLY:
        return curly(at)
    word = rest_of_line(source, at).split("=")[0].split("]")[0].split()
    name = word[0] if word else char
    hint = "names without quotes have only letters A to Z, digits, - and _; others stand in quotes"
    return TomlError(f"{shown(name)} cannot be a name as it stands", at, len(name), hint)


def curly(at: int) -> TomlError:
    return TomlError("this quotation mark is a curly one", at, 1, 'type straight quotation marks: "')


def bad_bare_value(source: str, at: int, word: str) -> TomlError:
    rest = _TO_VALUE_END.match(source, at)
    whole = rest.group().rstrip() if rest else word
    if word[0] in _CURLY:
        return curly(at)
    if word.lower() in ("true", "false", "yes", "no"):
        right = "true" if word.lower() in ("true", "yes") else "false"
        return TomlError(f"{word} is not read", at, len(word), f"write {right}")
    if re.fullmatch(r"[+-]?0[0-9]+", word):
        return TomlError("a number does not begin with 0", at, len(word), f"write {int(word)}")
    if re.fullmatch(r"[+-]?[0-9]+\.|[+-]?\.[0-9]+", word):
        return TomlError("a number has digits on both sides of its point", at, len(word), f"write {float(word):g}")
    if len(word) > LONGEST_NUMBER and word.strip("+-.0123456789_eE") == "":
        return TomlError("this number is too long", at, len(word))
    return TomlError("text must stand in quotes", at, max(len(whole), 1), f'write "{shown(whole)}"')
