"""Looking at a pattern while it is written: worked again after each save, until Ctrl-C."""

from __future__ import annotations

import time
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Final

import click

LOOK_AGAIN_S: Final = 0.2


def saves(path: Path, between_looks: Callable[[], None] = lambda: time.sleep(LOOK_AGAIN_S)) -> Iterator[bool]:
    """Once at the start and after each change of the file: whether it is there.

    Editors save by writing over the file or by putting a new one in its place; both change its time, size or number. A file that is
    away for a moment between the two is waited for: its absence is told only when a second look finds it away as well.
    """
    seen: tuple[int, int, int] | str | None = "nothing yet"
    while True:
        now = _mark(path)
        if now is None and seen is not None:
            between_looks()
            now = _mark(path)
        if now != seen:
            seen = now
            yield now is not None
        between_looks()


def _mark(path: Path) -> tuple[int, int, int] | None:
    try:
        found = path.stat()
    except OSError:
        return None
    return found.st_mtime_ns, found.st_size, found.st_ino


def watch(path: Path, look: Callable[[], None]) -> None:
    """Clear the screen and ``look`` after each save. Ctrl-C ends it, with exit status 0."""
    try:
        for there in saves(path):
            click.clear()  # does nothing where nobody watches
            click.echo(f"{path}, {time.strftime('%H:%M:%S')}\n", err=True)
            if there:
                look()
            else:
                click.echo("The file is not there at the moment.", err=True)
            click.echo("\nSave the file to see it checked again; Ctrl-C ends.", err=True)
    except KeyboardInterrupt:
        raise SystemExit(0) from None
