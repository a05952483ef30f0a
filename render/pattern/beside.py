"""Files that a pattern names: read only from its own folder and those below it, only as much as is wanted.

Pattern files are passed around among designers: one that came from elsewhere must not be able to print what else lies on a disk.
"""

from __future__ import annotations

import os
import stat
from pathlib import Path, PurePosixPath, PureWindowsPath


class NotBeside(ValueError):
    """The file cannot be read, or must not be; its words say why. ``hint``: what would mend it."""

    def __init__(self, message: str, hint: str) -> None:
        super().__init__(message)
        self.hint = hint


_OWN_FOLDER = "put the file beside the pattern file, and name it without a path"


def read_beside(pattern_path: str, name: str, most_bytes: int) -> bytes:
    """The bytes of the file ``name``, as the pattern file at ``pattern_path`` names it ("-": the folder one is in).

    Raises ``NotBeside`` for what is not there, lies outside (by its name or by a link), is no plain file, or is larger than ``most_bytes``.
    """
    return _opened(_place(pattern_path, name), name, most_bytes)


def _place(pattern_path: str, name: str) -> Path:
    """Where the file lies, links followed."""
    parts = PurePosixPath(name.replace("\\", "/")).parts
    if not parts or "\0" in name or ".." in parts or PurePosixPath(name).is_absolute() or PureWindowsPath(name).drive or parts[0] == "/":
        raise NotBeside("a pattern reads files from its own folder only", _OWN_FOLDER)
    folder = Path(os.path.realpath(Path.cwd() if pattern_path == "-" else Path(pattern_path).parent))
    place = Path(os.path.realpath(folder.joinpath(*parts)))
    if not place.is_relative_to(folder):
        raise NotBeside("a pattern reads files from its own folder only", _OWN_FOLDER)
    return place


def _opened(place: Path, name: str, most_bytes: int) -> bytes:
    shown = name if len(name) <= 60 else name[:57] + "..."
    try:
        # Asked before it is opened, and not waited for: opening a pipe would hang.
        if not stat.S_ISREG(os.stat(place).st_mode):
            raise NotBeside(f"{shown} is no file", _OWN_FOLDER)
        handle = os.open(place, os.O_RDONLY | getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_BINARY", 0))
        with os.fdopen(handle, "rb") as stream:
            data = stream.read(most_bytes + 1)
    except OSError as error:
        reason = "there is no file" if isinstance(error, FileNotFoundError | NotADirectoryError) else "cannot read"
        raise NotBeside(f"{reason} {shown}", _near(place) or _OWN_FOLDER) from None
    if len(data) > most_bytes:
        most = f"{most_bytes // 1_000_000:,} million" if most_bytes >= 1_000_000 else f"{most_bytes:,}"
        raise NotBeside(f"{shown} has more than {most} bytes", "save it smaller")
    return data


def _near(place: Path) -> str | None:
    """A file that lies there and may be meant."""
    from motifold.render.pattern.spelling import nearest

    try:
        found = nearest(place.name, sorted(os.listdir(place.parent))[:1000])
    except OSError:
        return None
    return f"did you mean {found}?" if found else None
