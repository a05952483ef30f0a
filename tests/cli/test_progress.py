"""What a long job says while someone watches, and that it says nothing where nobody does."""

from __future__ import annotations

import os
import pty
import subprocess
import sys
from pathlib import Path

import motifold.samples

COASTER = Path(motifold.samples.__path__[0]) / "tidepool-coaster.toml"


def test_a_terminal_sees_each_stage_and_then_where_the_booklet_is(tmp_path: Path) -> None:
    ours, theirs = pty.openpty()
    command = [sys.executable, "-m", "motifold.cli", "booklet", str(COASTER), "-o", str(tmp_path / "coaster.pdf")]
    with subprocess.Popen(command, stderr=theirs, stdout=subprocess.PIPE) as running:
        os.close(theirs)
        seen = b""
        while True:
            try:
                part = os.read(ours, 4096)
            except OSError:
                break
            if not part:
                break
            seen += part
        assert running.wait() == 0
    os.close(ours)
    said = seen.decode()
    assert said.index("drawing the charts") < said.index("setting the pages") < said.index("wrote ")
    assert "\r\x1b[Kwrote" in said  # the line of stages was taken away before


def test_a_file_or_a_pipe_sees_nothing(tmp_path: Path) -> None:
    command = [sys.executable, "-m", "motifold.cli", "booklet", str(COASTER), "-o", str(tmp_path / "coaster.pdf")]
    done = subprocess.run(command, capture_output=True, check=True)
    assert done.stderr == b""
    assert done.stdout == b""
