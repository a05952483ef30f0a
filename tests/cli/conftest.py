"""Running the command in the same process, on copies of the samples."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from motifold.cli import main

SAMPLES = Path(__file__).parents[2] / "samples"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """An empty folder with copies of the samples."""
    for sample in sorted(SAMPLES.glob("*.toml")):
        shutil.copy(sample, tmp_path / sample.name)
    return tmp_path


@pytest.fixture
def motifold() -> Callable[..., Result]:
    """``motifold("check", path)``: the result, with standard output and standard error apart."""
    runner = CliRunner()

    def run(*arguments: object, stdin: str | None = None) -> Result:
        return runner.invoke(main, [str(argument) for argument in arguments], input=stdin)

    return run
