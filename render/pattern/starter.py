"""A pattern file to start from: a whole one, with what each of its tables is for said above it."""

from __future__ import annotations

import re

from motifold.render.pattern.keys import ANY, KEYS

_TABLE = re.compile(r"^\[([^\[\]]+)\][ \t]*$", re.MULTILINE)
_TITLE = re.compile(r'^(title[ \t]*=[ \t]*)"[^"\n]*"', re.MULTILINE)

_HEAD = """\
# A pattern to start from: change it bit by bit, and after each change ask for the proof:
#     motifold check {file}
# A line that begins with # is for you alone.
#
"""


def starter(sample: str, file: str, title: str | None = None) -> str:
    """``sample``, a whole pattern file, with comments; ``file`` is what it will be called, ``title`` a new title.

    >>> print(starter('[pattern]\\ntitle = "Mat"\\n', "mine.toml", 'A "new" mat').splitlines()[-1])
    title = "A \\"new\\" mat"
    """
    said = {key.path: key.says for key in KEYS if key.kind == "table"}

    def with_comment(found: re.Match[str]) -> str:
        words = said.get(_general(found[1].strip(), said))
        above = sample[: found.start()].rstrip("\n").rpartition("\n")[2]
        return found[0] if not words or above.startswith("#") else f"# {words}\n{found[0]}"

    text = _TABLE.sub(with_comment, sample)
    if title is not None:
        quoted = title.replace("\\", "\\\\").replace('"', '\\"')
        text = _TITLE.sub(lambda found: f'{found[1]}"{quoted}"', text, count=1)
    return _HEAD.format(file=file) + text


def _general(table: str, known: dict[str, str]) -> str:
    """The table of keys' name for a table: ``yarn.*`` for ``yarn.A``."""
    parts = table.split(".")
    for place in range(1, len(parts)):
        general = [*parts[:place], ANY, *parts[place + 1 :]]
        if table not in known and ".".join(general) in known:
            return ".".join(general)
    return table
