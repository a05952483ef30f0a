"""What is being done, on standard error, while someone watches: one line that each step replaces and the end takes away."""

from __future__ import annotations

import sys
from collections.abc import Iterator
from contextlib import contextmanager

import click

_TO_THE_LINE_S_START = "\r\x1b[K"


@contextmanager
def stages() -> Iterator[Stages]:
    """The line, taken away at the end whatever happens."""
    line = Stages(sys.stderr.isatty())
    try:
        yield line
    finally:
        line.clear()


class Stages:
    """``seen``: whether standard error is a terminal; where it is not, nothing is written."""

    def __init__(self, seen: bool) -> None:
        self._seen = seen

    def now(self, words: str) -> None:
        """What is being done from now on: "setting the pages"."""
        if self._seen:
            click.echo(f"{_TO_THE_LINE_S_START}{words} ...", nl=False, err=True)

    def clear(self) -> None:
        if self._seen:
            click.echo(_TO_THE_LINE_S_START, nl=False, err=True)
