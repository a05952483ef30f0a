"""Holds a file's keys against the table of keys: what is unknown, of the wrong type, out of bounds or missing."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from datetime import date, datetime
from typing import Any

from motifold.render.pattern.keys import ANY, KEYS, Branch, Key, key_tree
from motifold.render.pattern.locator import Locator
from motifold.render.pattern.problem import Problem
from motifold.render.pattern.scan import Path
from motifold.render.pattern.spelling import nearest

MOST_SUGGESTIONS = 50
"""Searching for the nearest name costs time; a file with more mistakes than this is told of them without it."""


_OTHER_WORDS = {
    "tension": "gauge", "swatch": "gauge", "yarns": "yarn", "motifs": "motif", "squares": "motif", "sizes": "size", "fit": "size",
    "stitches": "stitch", "abbreviations": "stitch", "border": "edging", "edge": "edging", "edgings": "edging", "trim": "edging",
    "note": "notes", "joining": "assembly", "layout": "assembly", "construction": "assembly", "making_up": "assembly",
    "colour": "hex", "color": "hex", "colorway": "name", "colourway": "name", "designer": "author", "by": "author",
    "difficulty": "level", "skill": "level", "name": "title", "description": "summary", "lang": "language",
    "needle": "hook", "tools": "notions", "meterage": "length", "metreage": "length", "yardage": "length", "skein": "ball",
    "hank": "ball", "text": "rounds", "instructions": "rounds", "rnds": "rounds", "sts": "stitches", "mass": "grams",
    "grammes": "grams", "across": "width", "size": "width", "around": "across", "border_of": "opening", "side": "opening",
    "body": "bodies", "negative_ease": "ease", "joins": "join", "panel": "panels", "blocking": "after_wash",
    "washed": "after_wash", "last_rnd": "last_round", "license": "licence", "url": "web", "website": "web", "link": "web",
    "errata": "changes", "edition": "version", "photo": "picture", "photos": "picture", "pictures": "picture", "image": "picture",
    "images": "picture", "place": "at", "source": "file", "path": "file", "alt_text": "alt",
}  # fmt: skip
"""What people may call a key that has another name here, used only where a table has no such key of its own."""


def check_keys(data: Mapping[str, Any], locator: Locator) -> tuple[dict[str, Any], list[Problem], Locator]:
    """The part of ``data`` whose keys and TOML types are right, and a problem for everything else.

    A misspelt key is told, and read as what was meant: so nothing is missed that stands there under a wrong name. The places that come
    back know it by its right one.
    """
    problems: list[Problem] = []
    clean = _table(data, (), key_tree(), locator, problems)
    for old, new in _renamed(data, clean, ()):
        locator = locator.also(old, new)
    return clean, problems, locator


def _renamed(data: Mapping[str, Any], clean: Mapping[str, Any], path: Path) -> Iterator[tuple[Path, Path]]:
    """Which keys of a table were read as others, outermost first."""
    tree = key_tree()
    for part in path:
        tree = tree.below.get(str(part)) or tree.below[ANY]
    for name, value in data.items():
        if name in clean:
            if isinstance(value, dict) and isinstance(clean[name], dict):
                yield from _renamed(value, clean[name], (*path, name))
            continue
        meant = _meant(name, tree) if name not in tree.below and ANY not in tree.below else None
        if meant is not None and _fits_beside(meant, value, data) and meant in clean:
            yield (*path, name), (*path, meant)


def _table(data: Mapping[str, Any], path: Path, branch: Branch, locator: Locator, problems: list[Problem]) -> dict[str, Any]:
    clean: dict[str, Any] = {}
    taken: set[str | None] = set(data)
    named = branch.below.get(ANY)
    for name, value in data.items():
        below = branch.below.get(name) or named
        here: Path = (*path, name)
        if below is None or name in (ANY, "[]"):
            meant = _meant(name, branch) if len(problems) < MOST_SUGGESTIONS else None
            problems.append(_unknown(here, branch, meant, locator))
            if meant is None or not _fits_beside(meant, value, data):
                continue
            taken.add(meant)
            below, name = branch.below[meant], meant
        checked = _value(value, here, below, locator, problems)
        if checked is not None:
            clean[name] = {**clean[name], **checked} if name in clean and isinstance(checked, dict) else checked
    problems += _missing(taken, path, branch, locator)
    return clean


def _fits_beside(meant: str, value: Any, data: Mapping[str, Any]) -> bool:
    """Whether a value may be read under another key: the table has none such, or both are tables with names of their own."""
    if meant not in data:
        return True
    other = data[meant]
    return isinstance(value, dict) and isinstance(other, dict) and not set(value) & set(other)


def _value(value: Any, path: Path, branch: Branch, locator: Locator, problems: list[Problem]) -> Any:
    """The value, cleaned; None where it is of no use."""
    key = branch.key
    if key is None:
        return None
    if key.kind == "table":
        if isinstance(value, dict):
            return _table(value, path, branch, locator, problems)
    elif key.kind == "tables":
        if isinstance(value, list) and all(isinstance(item, dict) for item in value):
            each = branch.below["[]"]
            return [_table(item, (*path, index), each, locator, problems) for index, item in enumerate(value)]
    elif key.kind == "joins" and isinstance(value, list) and all(isinstance(item, str | dict) for item in value):
        each = branch.below["[]"]
        return [_table(item, (*path, i), each, locator, problems) if isinstance(item, dict) else item for i, item in enumerate(value)]
    elif _fits(value, key):
        problem = _out_of_bounds(value, path, key, locator)
        if problem is None:
            return [value] if key.kind in ("texts", "joins") and isinstance(value, str) else value
        problems.append(problem)
        return None
    problems.append(_wrong_type(value, path, key, locator))
    return None


def _fits(value: Any, key: Key) -> bool:
    if key.kind == "whole":
        return isinstance(value, int) and not isinstance(value, bool)
    if key.kind == "number":
        return isinstance(value, int | float) and not isinstance(value, bool)
    if key.kind == "yes or no":
        return isinstance(value, bool)
    if key.kind == "texts":
        return isinstance(value, str) or (isinstance(value, list) and all(isinstance(item, str) for item in value))
    if key.kind == "passes":
        return isinstance(value, list) and all(isinstance(item, list) and all(isinstance(name, str) for name in item) for item in value)
    if key.kind == "date" and isinstance(value, date) and not isinstance(value, datetime):
        return True
    return isinstance(value, str)


def _found(value: Any) -> str:
    """What a TOML value is, in words."""
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, str):
        return "text"
    if isinstance(value, int):
        return f"the number {value}" if abs(value) < 10**9 else "a number"
    if isinstance(value, float):
        return f"the number {value:g}"
    if isinstance(value, list):
        return "a list"
    return "a table" if isinstance(value, dict) else "a date or time"


_WANTED = {
    "text": "text in quotes", "lines": "text in quotes", "texts": "text in quotes, or a list of texts",
    "joins": "text in quotes, or a list of texts",
    "passes": "a list of lists of texts", "length": "a length with its unit, in quotes",
    "mass": "a weight with its unit, in quotes", "yarn length": "a length and its weight, in quotes",
    "share": "a percentage in quotes", "range": "two ends in quotes", "body": "a length with its unit, in quotes",
    "colour": "a hex colour in quotes", "whole": "a whole number", "number": "a number", "yes or no": "true or false",
    "table": "a table", "tables": "a list of tables", "date": "a date, year-month-day",
}  # fmt: skip


_WEIGHTS = {
    "lace": 0, "thread": 0, "fingering": 1, "sock": 1, "super fine": 1, "4 ply": 1, "sport": 2, "fine": 2, "5 ply": 2, "dk": 3, "light": 3,
    "8 ply": 3, "worsted": 4, "aran": 4, "medium": 4, "10 ply": 4, "bulky": 5, "chunky": 5, "12 ply": 5, "super bulky": 6, "jumbo": 7,
}  # fmt: skip
"""Names of the standard yarn weights 0 to 7 (the trade's own scale), for hints."""


def _wrong_type(value: Any, path: Path, key: Key, locator: Locator) -> Problem:
    name = str(path[-1])
    if key.kind in ("texts", "joins") and isinstance(value, list):
        index = next(index for index, item in enumerate(value) if not isinstance(item, str | dict if key.kind == "joins" else str))
        message = f"every item of {_dotted(path)} must be text in quotes; this is {_found(value[index])}"
        return Problem("type", "error", locator.value((*path, index)), message, f"for example {name} = {key.example}")
    message = f"{_dotted(path)} must be {_WANTED[key.kind]}; this is {_found(value)}"
    hint = f"for example {name} = {' '.join(key.example.split())}"
    if key.kind == "table":
        hint = f"for example {key.example}" if key.example.startswith("[") else hint
        if len(path) == 2 and KEY_NAMES.get(str(path[0])) == ANY:
            message = f"{path[0]} needs a name of its own before its keys"
            return Problem("type", "error", locator.key(path[:1]), message, f"for example {key.example}")
    elif isinstance(value, str) and key.kind in ("whole", "number") and value.strip().replace(".", "", 1).isdecimal():
        hint = f"without quotes: {name} = {value.strip()}"
    elif key.path == "yarn.*.weight" and str(value).lower() in _WEIGHTS:
        hint = f"the standard number: {name} = {_WEIGHTS[str(value).lower()]}"
    elif isinstance(value, int | float) and not isinstance(value, bool) and key.kind in ("length", "body"):
        hint = f'for example {name} = "{value:g} cm"' if key.path != "materials.hook" else f'for example {name} = "{value:g} mm"'
    elif isinstance(value, str) and key.kind == "yes or no" and value.lower() in ("yes", "no", "true", "false"):
        hint = f"without quotes: {name} = {'true' if value.lower() in ('yes', 'true') else 'false'}"
    return Problem("type", "error", locator.value(path), message, hint)


KEY_NAMES: dict[str, str] = {key.parts[0]: key.parts[1] for key in KEYS if len(key.parts) > 1 and key.parts[1] == ANY}


def _out_of_bounds(value: Any, path: Path, key: Key, locator: Locator) -> Problem | None:
    span = locator.value(path)
    if key.choices and value not in key.choices:
        listed = ", ".join(f'"{choice}"' for choice in key.choices)
        near = next((choice for choice in key.choices if choice.lower() == value.strip().lower()), None) or nearest(value, key.choices)
        hint = f'did you mean "{near}"?' if near else _CHOICE_HINTS.get(key.path)
        return Problem("value", "error", span, f"{_dotted(path)} is one of {listed}", hint)
    if key.low is not None and key.kind in ("whole", "number"):
        positive = key.kind == "number" and key.low == 0
        if value != value or value in (float("inf"), float("-inf")) or (value <= 0 if positive else value < key.low):
            least = "more than 0" if positive else f"{key.low:g} or more"
            if key.high is not None:
                least = f"from {key.low:g} to {key.high:g}"
            return Problem(
                "value", "error", span, f"{_dotted(path)} must be {least}; this is {value}", f"for example {path[-1]} = {key.example}"
            )
        if value > (key.high if key.high is not None else 1e6):
            most = f"{key.high:g}" if key.high is not None else "1,000,000"
            return Problem("value", "error", span, f"{_dotted(path)} must be at most {most}", f"for example {path[-1]} = {key.example}")
    return None


_CHOICE_HINTS = {
    "pattern.terms": 'US: single crochet is "sc"; UK: the same stitch is "dc"',
    "pattern.level": "basic is the least demanding, complex the most",
}


def _missing(given: Collection[str | None], path: Path, branch: Branch, locator: Locator) -> list[Problem]:
    """What a table needs and does not have; what a misspelt key was meant to be is not told as missing too."""
    required = [name for name, below in branch.below.items() if below.key and below.key.required]
    problems = [_missing_key(path, name, key, locator) for name in required if name not in given and (key := branch.below[name].key)]
    needs = branch.key.needs if branch.key else ()
    if needs and not set(needs) & {*given, *required}:
        message = f"{_dotted(path)} has neither {' nor '.join(needs)}"
        problems.append(Problem("missing", "error", locator.value(path), message, f"for example {needs[0]} = {_example(branch, needs[0])}"))
    return problems


def _example(branch: Branch, name: str) -> str:
    key = branch.below[name].key
    return " ".join(key.example.split()) if key else ""


def _missing_key(path: Path, name: str, key: Key, locator: Locator) -> Problem:
    if not path:
        return Problem("missing", "error", locator.value(()), f"the file has no [{name}]", f"begin it with a line {key.example}")
    hint = f"for example {name} = {key.example}"
    if key.path == "pattern.terms":
        hint = 'add terms = "US" (where single crochet is "sc") or terms = "UK" (where the same stitch is "dc")'
    if key.path == "size.bodies":
        hint = 'for example [size.bodies] with a line Small = "42 cm"'
    return Problem("missing", "error", locator.value(path), f"[{_dotted(path)}] has no {name}", hint)


def _unknown(path: Path, branch: Branch, meant: str | None, locator: Locator) -> Problem:
    name = str(path[-1])
    shown = name if len(name) <= 60 else name[:57] + "..."
    if len(path) == 1:
        hint = f"did you mean [{meant}]?" if meant else f"its tables are {', '.join(_known(branch))}"
        return Problem("key", "error", locator.key(path), f"a pattern file has no table or key {shown}", hint)
    elsewhere = next((key.path for key in KEYS if key.parts[-1] == name and len(key.parts) > 1), None)
    hint = f"its keys are {', '.join(_known(branch))}"
    if meant:
        hint = f"did you mean {meant}?"
    elif elsewhere:
        hint = f"{name} belongs in [{elsewhere.replace(ANY, 'NAME').rpartition('.')[0]}]"
    return Problem("key", "error", locator.key(path), f"[{_dotted(path[:-1])}] has no key {shown}", hint)


def _known(branch: Branch) -> list[str]:
    return [name for name in branch.below if name not in (ANY, "[]")]


def _meant(name: str, branch: Branch) -> str | None:
    """The key of this table that an unknown name may stand for."""
    plain = name.lower().replace("-", "_").replace(" ", "_")
    known = _known(branch)
    for other in (plain, _OTHER_WORDS.get(plain)):
        if other in known:
            return other
    return nearest(plain, known)


def _dotted(path: Path) -> str:
    return ".".join(str(part) for part in path if isinstance(part, str))
