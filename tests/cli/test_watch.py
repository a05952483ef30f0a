"""Looking at a pattern while it is written, and the Tab key."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import threading
from collections.abc import Callable, Iterator
from functools import partial
from pathlib import Path

import pytest
from click.testing import Result

from motifold.cli.watch import saves

Run = Callable[..., Result]


def test_each_save_is_seen_once_whichever_way_the_editor_saves(tmp_path: Path) -> None:
    path, beside = tmp_path / "hat.toml", tmp_path / ".hat.new"
    path.write_text("one")

    def replaced() -> None:
        beside.write_text("another")
        beside.replace(path)

    changes: Iterator[Callable[[], object]] = iter((lambda: None, lambda: path.write_text("longer"), lambda: None, replaced, lambda: None))
    seen = saves(path, lambda: next(changes)())
    assert next(seen)  # at the start
    assert next(seen)  # written over
    assert next(seen)  # replaced
    with pytest.raises(RuntimeError):  # StopIteration of the changes: nothing more was seen
        next(seen)


def test_a_file_that_is_away_for_one_look_is_not_missed_and_one_that_stays_away_is_told(tmp_path: Path) -> None:
    path = tmp_path / "hat.toml"
    path.write_text("one")
    changes: Iterator[Callable[[], object]] = iter(
        (path.unlink, lambda: path.write_text("two"), lambda: None, path.unlink, lambda: None, lambda: path.write_text("three"))
    )
    seen = saves(path, lambda: next(changes)())
    assert [next(seen) for _ in range(4)] == [True, True, False, True]


def test_a_mistake_is_told_after_the_save_that_made_it_and_ctrl_c_ends_well(folder: Path) -> None:
    path = folder / "tidepool-coaster.toml"
    good = path.read_text(encoding="utf-8")
    command = [sys.executable, "-m", "motifold.cli", "check", "--watch", str(path)]
    heard = partial(signal.signal, signal.SIGINT, signal.SIG_DFL)  # tests in the background would hand down a Ctrl-C that is ignored
    with subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True, preexec_fn=heard) as running:
        assert running.stdout is not None
        stuck = threading.Timer(60, running.kill)
        stuck.start()
        _until(running.stdout, "Ctrl-C")
        path.write_text(good.replace("(36 tr)", "(37 tr)"), encoding="utf-8")
        assert any("error[count]" in line for line in _until(running.stdout, "Ctrl-C"))
        path.write_text(good, encoding="utf-8")
        assert not any("error" in line for line in _until(running.stdout, "Ctrl-C"))
        running.send_signal(signal.SIGINT)
        assert running.wait() == 0
        stuck.cancel()


def _until(stream: Iterator[str], words: str) -> list[str]:
    lines = []
    for line in stream:
        lines.append(line)
        if words in line:
            return lines
    raise AssertionError(f"it ended without {words}: {lines}")


def test_watching_is_for_one_pattern_on_the_screen(motifold: Run, folder: Path) -> None:
    assert "not at 2" in motifold("check", "--watch", folder / "ferry-hat.toml", folder / "cargo-bag.toml").stderr
    assert "no --json" in motifold("check", "--watch", "--json", folder / "ferry-hat.toml").stderr


def _tab(*words: str) -> list[str]:
    """What the Tab key offers after these words."""
    asked = {"_MOTIFOLD_COMPLETE": "bash_complete", "COMP_WORDS": " ".join(words), "COMP_CWORD": str(len(words) - 1)}
    started = "from motifold.cli import main; main(prog_name='motifold')"
    done = subprocess.run([sys.executable, "-c", started], env={**os.environ, **asked}, capture_output=True, text=True, check=False)
    return [line.partition(",")[2] for line in done.stdout.splitlines()]


def test_the_tab_key_knows_verbs_sizes_and_motifs(folder: Path) -> None:
    jacket = str(folder / "harbour-jacket.toml")
    assert _tab("motifold", "sch") == ["schematic"]
    assert _tab("motifold", "check", jacket, "--size", "M") == ["Medium"]
    assert _tab("motifold", "chart", jacket, "--motif", "h") == ["hexagon"]


@pytest.mark.parametrize("shell", ["bash", "zsh", "fish"])
def test_each_shell_has_its_lines(motifold: Run, shell: str) -> None:
    result = motifold("completion", shell)
    assert result.exit_code == 0 and f"_MOTIFOLD_COMPLETE={shell}_complete" in result.stdout
