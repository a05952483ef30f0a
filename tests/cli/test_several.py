"""Several patterns in one call: each has its own result, and one that fails leaves the others done."""

from __future__ import annotations

import json
import os
import signal
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import Result

from motifold.cli.several import run_one, work_several

Run = Callable[..., Result]
COASTER, HAT, BAND = "tidepool-coaster.toml", "ferry-hat.toml", "watch-headband.toml"


@pytest.fixture
def desk(folder: Path) -> Path:
    """A folder with three patterns; the hat's is spoilt."""
    for sample in folder.glob("*.toml"):
        if sample.name not in (COASTER, HAT, BAND):
            sample.unlink()
    spoilt = (folder / HAT).read_text(encoding="utf-8").replace("(8 sc", "(9 sc")
    (folder / HAT).write_text(spoilt, encoding="utf-8")
    return folder


def test_a_folder_is_every_pattern_in_it_and_the_worst_status_is_told(motifold: Run, desk: Path) -> None:
    result = motifold("check", desk)
    assert result.exit_code == 1
    headings = [line for line in result.stdout.splitlines() if line.startswith("== ")]
    assert [Path(line.strip("= ")).name for line in headings if HAT not in line] == [COASTER, BAND]
    assert "error[" in result.stderr and HAT in result.stderr
    assert result.stderr.rstrip().endswith(f"3 patterns: 2 good, 1 not ({HAT}).")


def test_each_says_what_it_says_alone(motifold: Run, desk: Path) -> None:
    alone = motifold("check", desk / BAND).stdout
    together = motifold("check", desk / COASTER, desk / BAND)
    assert together.exit_code == 0
    assert together.stdout.endswith(f"== {desk / BAND} ==\n\n{alone}\n")


def test_json_of_several_is_one_array_in_the_order_asked_for(motifold: Run, desk: Path) -> None:
    told = json.loads(motifold("check", "--json", desk / BAND, desk / COASTER).stdout)
    assert [Path(one["file"]).name for one in told] == [BAND, COASTER]
    assert told[1]["told"] == json.loads(motifold("check", "--json", desk / COASTER).stdout)


def test_drawings_of_several_go_into_a_folder_and_not_into_one_file(motifold: Run, desk: Path, tmp_path: Path) -> None:
    into = tmp_path / "charts"
    assert motifold("chart", desk / COASTER, desk / BAND, "--show", "1-2", "-o", f"{into}/").exit_code == 0
    assert {path.name.split("-chart")[0] for path in into.iterdir()} == {"tidepool-coaster", "watch-headband"}
    refused = motifold("chart", desk / COASTER, desk / BAND, "-o", tmp_path / "one.svg")
    assert refused.exit_code == 2 and "name a folder" in refused.stderr


def test_two_of_one_name_are_not_written_over_each_other(motifold: Run, desk: Path, tmp_path: Path) -> None:
    other = tmp_path / "other"
    other.mkdir()
    (other / COASTER).write_bytes((desk / COASTER).read_bytes())
    refused = motifold("booklet", desk / COASTER, other / COASTER, "-o", f"{tmp_path / 'out'}/")
    assert refused.exit_code == 2 and "over each other" in refused.stderr
    assert not (tmp_path / "out").exists()


def test_a_file_that_is_not_there_does_not_stop_the_rest(motifold: Run, desk: Path) -> None:
    result = motifold("check", desk / "gone.toml", desk / COASTER)
    assert result.exit_code == 2
    assert "gone.toml: cannot read" in result.stderr and "Tidepool Coaster" in result.stdout


def test_a_folder_without_patterns_is_told(motifold: Run, tmp_path: Path) -> None:
    result = motifold("check", tmp_path)
    assert result.exit_code == 2 and "no pattern file (.toml)" in result.stderr


def test_standard_input_cannot_stand_among_several(motifold: Run, desk: Path) -> None:
    result = motifold("check", "-", desk / COASTER, stdin="")
    assert result.exit_code == 2 and "cannot stand among several" in result.stderr


def test_a_fault_of_ours_is_told_as_the_fault_of_that_file(monkeypatch: pytest.MonkeyPatch, desk: Path) -> None:
    def broken(*_: object) -> None:
        raise ZeroDivisionError("nought")

    monkeypatch.setattr("motifold.cli.check.load", broken)
    done = run_one("motifold.cli.check", desk / COASTER, _check_options())
    assert (done.status, done.printed) == (1, b"")
    assert "a fault of motifold" in done.told and "nought" in done.told


def test_a_process_ended_from_outside_costs_its_own_file_only(
    monkeypatch: pytest.MonkeyPatch, desk: Path, capfd: pytest.CaptureFixture[str]
) -> None:
    import motifold.cli.check as check

    load = check.load

    def load_or_die(path: Path, *rest: object) -> object:
        if path.name == HAT:
            os.kill(os.getpid(), signal.SIGKILL)
        return load(path, *rest)  # type: ignore[arg-type]

    monkeypatch.setattr("motifold.cli.check.load", load_or_die)
    assert work_several("motifold.cli.check", sorted(desk.glob("*.toml")), _check_options()) == 1
    printed, told = capfd.readouterr()
    assert "Tidepool Coaster" in printed and "Night Watch Headband" in printed
    assert "stopped from outside" in told and f"1 not ({HAT})" in told


def _check_options() -> dict[str, object]:
    return {"as_json": False, "output": None, "rounds": None, "size_name": None, "watching": False}
