"""A pattern to start from: good at once, commented, never over what is there."""

from __future__ import annotations

import tomllib
from pathlib import Path

import pytest
from click.testing import CliRunner

import motifold.samples
from motifold.cli.main import main
from motifold.samples import CONSTRUCTIONS

SAMPLES = Path(motifold.samples.__path__[0])


def run(*words: str) -> tuple[int, str]:
    result = CliRunner().invoke(main, words)
    return result.exit_code, result.output


def test_every_sample_can_be_started_from() -> None:
    assert {f"{name}.toml" for name in CONSTRUCTIONS.values()} == {path.name for path in SAMPLES.glob("*.toml")}


@pytest.mark.parametrize("construction", CONSTRUCTIONS)
def test_what_is_written_passes_check_without_a_word(construction: str, tmp_path: Path) -> None:
    path = tmp_path / "mine.toml"
    status, said = run("new", construction, "--title", 'The "first" one', "-o", str(path))
    assert (status, "wrote" in said) == (0, True), said
    text = path.read_text(encoding="utf-8")
    data = tomllib.loads(text)
    assert data["pattern"]["title"] == 'The "first" one'
    sample = tomllib.loads((SAMPLES / f"{CONSTRUCTIONS[construction]}.toml").read_text(encoding="utf-8"))
    assert {**data["pattern"], "title": ""} == {**sample["pattern"], "title": ""}
    assert {key: data[key] for key in data if key != "pattern"} == {key: sample[key] for key in sample if key != "pattern"}
    assert text.count("\n# ") > 6
    status, said = run("check", str(path))
    assert status == 0
    assert "warning" not in said


def test_a_file_that_is_there_is_left_as_it_is(tmp_path: Path) -> None:
    path = tmp_path / "mine.toml"
    path.write_text("mine")
    status, said = run("new", "hat", "-o", str(path))
    assert (status, path.read_text()) == (2, "mine")
    assert "is there already" in said
    assert [one.name for one in tmp_path.iterdir()] == ["mine.toml"]


def test_the_file_is_named_after_the_title(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    assert run("new", "Basket", "--title", "Grey & Small: a Basket!")[0] == 0
    assert [one.name for one in tmp_path.iterdir()] == ["grey-small-a-basket.toml"]


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (["new"], "One of: coaster"),
        (["new", "baskte"], "Is 'basket' meant?"),
        (["new", "zeppelin"], "There are: coaster"),
        (["new", "hat", "-o", "hat.txt"], "ends in .toml"),
        (["new", "hat", "--title", " "], "the title is empty"),
    ],
)
def test_what_cannot_be_done_is_said(words: list[str], told: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    status, said = run(*words)
    assert status == 2
    assert told in said
    assert not list(tmp_path.iterdir())


def test_a_title_of_many_letters_or_lines_still_makes_a_good_file(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    assert run("new", "hat", "--title", "two\nlines")[0] == 0
    assert run("check", "two-lines.toml")[0] == 0
    assert run("new", "hat", "--title", "wool " * 100)[0] == 0
    assert any(len(path.name) < 80 and path.name.startswith("wool-wool") for path in tmp_path.iterdir())
    status, said = run("new", "flower blanket")
    assert status == 0 and "motifold check my-flower-blanket.toml" in said
