"""Frames for a film: exactly the dots asked for, nothing jumps between two of them, and the edges stay free."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import numpy as np
import pytest
from click.testing import CliRunner, Result
from PIL import Image

from motifold.cli import main

Run = Callable[..., Result]
SAMPLES = Path(__file__).parents[2] / "samples"


def _frame(path: Path) -> Image.Image:
    with Image.open(path) as picture:
        return picture.copy()


def _frames(folder: Path) -> list[Image.Image]:
    return [_frame(path) for path in sorted(folder.glob("*.png"))]


@pytest.fixture(scope="module")
def steps(tmp_path_factory: pytest.TempPathFactory) -> list[Image.Image]:
    film = tmp_path_factory.mktemp("film")
    looks = ("--steps", "--no-key", "--mono", "--frame", "640x360")
    result = CliRunner().invoke(main, ["chart", str(SAMPLES / "spindrift-doily.toml"), *looks, "-o", f"{film}/"])
    assert result.exit_code == 0, result.stderr
    return _frames(film)


def test_each_round_is_a_frame_of_the_dots_asked_for(steps: list[Image.Image]) -> None:
    assert [frame.size for frame in steps] == [(640, 360)] * 6


def test_the_rounds_of_one_frame_lie_where_they_lay_in_the_one_before(steps: list[Image.Image]) -> None:
    inner = slice(144, 240), slice(272, 368)  # about the middle, where the first rounds are
    dark = [255 - np.asarray(frame.convert("L"), dtype=float)[inner] for frame in steps]
    first = dark[0] > 60
    assert first.sum() > 100
    for later in dark[1:]:
        assert (later[first] > 8).all()  # grey now, and at the same dots: moved by one, three in five of them at most would have ink
        assert (np.roll(later, 1, axis=0)[first] > 8).mean() < 0.8


def test_a_twentieth_of_each_edge_stays_free(steps: list[Image.Image]) -> None:
    for frame in steps:
        ink = np.asarray(frame.convert("L")) < 250
        ink[18:342, 32:608] = False
        assert not ink.any()
    widest = np.asarray(steps[-1].convert("L")) < 250
    assert widest[18:24].any()  # and no more than that: the largest drawing fills the height


def test_a_frame_may_have_no_background(motifold: Run, folder: Path, tmp_path: Path) -> None:
    out = tmp_path / "one.png"
    assert motifold("chart", folder / "tidepool-coaster.toml", "--frame", "320x200", "--transparent", "-o", out).exit_code == 0
    alpha = np.asarray(_frame(out).convert("RGBA"))[:, :, 3]
    assert alpha[0, 0] == 0 and alpha.max() > 150  # hair lines cover no dot wholly


@pytest.mark.parametrize(
    ("options", "words"),
    [
        (("--frame", "1920"), "such as 1920x1080"),
        (("--frame", "9x1080"), "64 to 8192 dots"),
        (("--frame", "640x360", "-o", "a.svg"), "PNG pictures"),
        (("--frame", "640x360", "--format", "pdf"), "PNG pictures"),
        (("--transparent",), "--frame 1920x1080"),
        (("--steps", "--frame", "640x360", "-o", "a.png"), "name a folder"),
    ],
)
def test_what_cannot_be_a_frame_is_a_wrong_command_line(motifold: Run, folder: Path, options: tuple[str, ...], words: str) -> None:
    result = motifold("chart", folder / "tidepool-coaster.toml", *options)
    assert result.exit_code == 2 and words in result.stderr


def test_a_seam_pass_is_a_frame_too(motifold: Run, folder: Path, tmp_path: Path) -> None:
    result = motifold("schematic", folder / "lighthouse-basket.toml", "--steps", "--frame", "400x300", "-o", f"{tmp_path / 'film'}/")
    assert result.exit_code == 0
    assert [frame.size for frame in _frames(tmp_path / "film")] == [(400, 300)] * 5
