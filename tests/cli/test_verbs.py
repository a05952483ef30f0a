"""What is typed and what comes out: files, standard output, exit statuses."""

from __future__ import annotations

import json
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from click.testing import Result

from motifold.cli.main import VERBS

Run = Callable[..., Result]
BASKET, COASTER = "lighthouse-basket.toml", "tidepool-coaster.toml"
BAD = "3 dc in beg sp, ch 2; join; change to A; turn. (24 dc,"
WORSE = "ch 2; join; change to A; turn. (24 dc,"


def text_of(path: Path) -> str:
    return path.read_text(encoding="utf-8")


def test_help_names_every_verb(motifold: Run) -> None:
    result = motifold("--help")
    assert result.exit_code == 0
    assert all(f"  {verb}" in result.output for verb in VERBS)


@pytest.mark.parametrize("verb", list(VERBS))
def test_every_verb_explains_itself(motifold: Run, verb: str) -> None:
    result = motifold(verb, "--help")
    assert result.exit_code == 0
    assert "Usage" in result.output and "-h, --help" in result.output


def test_a_verb_that_is_not_there_is_told_with_the_nearest(motifold: Run) -> None:
    result = motifold("chrat", BASKET)
    assert result.exit_code == 2
    assert "Is 'chart' meant?" in result.stderr


def test_a_file_that_is_not_there_is_a_wrong_command_line(motifold: Run, folder: Path) -> None:
    result = motifold("check", folder / "no-such.toml")
    assert result.exit_code == 2
    assert "no such file" in result.stderr


def test_check_of_a_good_pattern_prints_its_rounds_and_leaves_with_0(motifold: Run, folder: Path) -> None:
    result = motifold("check", folder / BASKET)
    assert result.exit_code == 0
    assert result.stderr == ""
    assert "108 dc, 32 ch-1 sps, 4 ch-2 sps" in result.output
    assert "148 sc, 4 ch-1 sps" in result.output


def test_check_speaks_in_the_files_own_terms(motifold: Run, folder: Path) -> None:
    assert "36 tr" in motifold("check", folder / COASTER).output


def test_a_missing_cluster_is_told_at_its_place_with_exit_status_1(motifold: Run, folder: Path) -> None:
    path = folder / BASKET
    assert BAD in text_of(path)
    path.write_text(text_of(path).replace(BAD, WORSE), encoding="utf-8")
    result = motifold("check", path)
    assert result.exit_code == 1
    assert f"error[count]: {path}:39:" in result.stderr
    assert "^^^^^" in result.stderr
    assert "3 dc in beg sp before the join" in result.stderr
    assert result.stderr.count("error[") == 1, "one mistake is one problem"


def test_a_wrong_count_is_told_at_the_number(motifold: Run, folder: Path) -> None:
    path = folder / BASKET
    path.write_text(text_of(path).replace("(24 dc, 4 ch-1 sps", "(25 dc, 4 ch-1 sps"), encoding="utf-8")
    [problem] = json.loads(motifold("check", path, "--json").output)["problems"]
    line = text_of(path).splitlines()[problem["line"] - 1]
    assert line[problem["column"] - 1 :].startswith("25")
    assert problem["code"] == "count" and "25" in problem["message"] and "24" in problem["message"]


def test_json_is_all_that_json_prints(motifold: Run, folder: Path) -> None:
    for verb in ("check", "size", "yarn", "chart", "schematic"):
        result = motifold(verb, folder / COASTER, "--json")
        assert result.exit_code == 0, verb
        json.loads(result.output)
        assert result.stderr == ""
    assert not list(folder.glob("*.svg"))


def test_a_pattern_without_sizes_has_the_one_size(motifold: Run, folder: Path) -> None:
    content = json.loads(motifold("check", folder / COASTER, "--json").output)
    assert list(content["sizes"]) == ["One size"]


def test_one_size_only(motifold: Run, folder: Path) -> None:
    content = json.loads(motifold("check", folder / BASKET, "--json", "--size", "medium").output)
    assert list(content["sizes"]) == ["Medium"]
    numbers = [r["number"] for r in content["sizes"]["Medium"]["motifs"]["square"]["rounds"]]
    assert [n for n in numbers if n] == list(range(1, 9))


def test_a_size_that_is_not_there_is_a_wrong_command_line(motifold: Run, folder: Path) -> None:
    result = motifold("check", folder / BASKET, "--size", "Giant")
    assert result.exit_code == 2
    assert "Small, Medium, Large" in result.stderr


def test_rounds_overrides_what_the_size_works(motifold: Run, folder: Path) -> None:
    content = json.loads(motifold("check", folder / BASKET, "--json", "--rounds", 12, "--size", "Small").output)
    [last] = [r for r in content["sizes"]["Small"]["motifs"]["square"]["rounds"] if r["number"] == 12]
    assert last["counts"] == {"dc": 144, "ch-1 sp": 44, "ch-2 sp": 4}


def test_drawings_go_beside_the_pattern_unless_told_otherwise(motifold: Run, folder: Path) -> None:
    assert motifold("chart", folder / COASTER).exit_code == 0
    assert text_of(folder / "tidepool-coaster-chart.svg").startswith("<?xml")
    assert motifold("booklet", folder / COASTER).exit_code == 0
    assert (folder / "tidepool-coaster.pdf").read_bytes().startswith(b"%PDF-")


@pytest.mark.parametrize(("ending", "head"), [("svg", b"<?xml"), ("pdf", b"%PDF-"), ("png", b"\x89PNG")])
@pytest.mark.parametrize("verb", ["chart", "schematic", "key"])
def test_the_ending_of_the_output_says_its_form(motifold: Run, folder: Path, verb: str, ending: str, head: bytes) -> None:
    target = folder / "out" / f"it.{ending}"
    options = ["--terms", "UK"] if verb == "key" else ["--size", "Small"]
    assert motifold(verb, folder / BASKET, *options, "-o", target).exit_code == 0
    assert target.read_bytes().startswith(head)


def test_a_folder_gets_a_file_for_each_drawing(motifold: Run, folder: Path) -> None:
    result = motifold("chart", folder / COASTER, "--steps", "-o", f"{folder}/steps/")
    assert result.exit_code == 0
    names = sorted(path.name for path in (folder / "steps").iterdir())
    assert names == [f"tidepool-coaster-chart-coaster-0{n}.svg" for n in (1, 2, 3, 4)]


def test_a_folder_gets_the_form_that_is_asked_for(motifold: Run, folder: Path) -> None:
    for verb in ("chart", "schematic"):
        assert motifold(verb, folder / BASKET, "--size", "Small", "--format", "pdf", "-o", f"{folder}/{verb}/").exit_code == 0
        assert {path.suffix for path in (folder / verb).iterdir()} == {".pdf"}


@pytest.mark.parametrize("verb", ["check", "chart", "schematic", "size", "yarn"])
def test_json_goes_into_a_file_with_that_ending_and_into_no_other(motifold: Run, folder: Path, verb: str) -> None:
    printed = motifold(verb, folder / BASKET, "--size", "Small", "--json")
    written = motifold(verb, folder / BASKET, "--size", "Small", "--json", "-o", folder / "it.json")
    assert (written.exit_code, written.output) == (0, "")
    assert json.loads(text_of(folder / "it.json")) == json.loads(printed.output)
    assert motifold(verb, folder / BASKET, "--json", "-o", folder / "it.txt").exit_code == 2


def test_the_symbols_as_sprites(motifold: Run, folder: Path) -> None:
    assert motifold("key", "--sprites", "-o", folder / "all.svg").exit_code == 0
    assert '<symbol id="dc"' in text_of(folder / "all.svg")


def test_an_ending_that_cannot_be_made_is_a_wrong_command_line(motifold: Run, folder: Path) -> None:
    result = motifold("chart", folder / COASTER, "-o", folder / "chart.gif")
    assert result.exit_code == 2
    assert ".svg, .pdf, .png" in result.stderr


def test_nothing_is_written_over_by_a_pattern_that_cannot_be_read(motifold: Run, folder: Path) -> None:
    kept = folder / "tidepool-coaster.pdf"
    kept.write_bytes(b"before")
    (folder / COASTER).write_text("[pattern\n", encoding="utf-8")
    assert motifold("booklet", folder / COASTER).exit_code == 1
    assert kept.read_bytes() == b"before"
    assert [p.name for p in folder.iterdir() if p.name.endswith(".part")] == []


def test_a_pattern_on_standard_input(motifold: Run, folder: Path) -> None:
    result = motifold("words", "-", stdin=text_of(folder / COASTER))
    assert result.exit_code == 0
    assert "Tidepool Coaster" in result.output


def test_words_in_the_other_terms(motifold: Run, folder: Path) -> None:
    us = motifold("words", folder / COASTER, "--terms", "US").output
    assert "(36 dc)" in us.replace("\N{NO-BREAK SPACE}", " ")
    assert "htr" not in us


def test_left_handed_charts_mirror_the_work(motifold: Run, folder: Path) -> None:
    def heads(*more: str) -> dict[str, Any]:
        content = json.loads(motifold("chart", folder / COASTER, "--json", *more).output)
        return {s["id"]: s["head"] for s in content["charts"][0]["symbols"]}

    right, left = heads(), heads("--left-handed")
    assert right.keys() == left.keys()
    assert all(abs(left[i][0] + right[i][0]) < 1e-6 and abs(left[i][1] - right[i][1]) < 1e-6 for i in right)


def test_show_leaves_the_other_rounds_out(motifold: Run, folder: Path) -> None:
    content = json.loads(motifold("chart", folder / COASTER, "--json", "--show", "2-3").output)
    assert {s["round"] for s in content["charts"][0]["symbols"]} == {2, 3}


@pytest.mark.parametrize("show", ["0", "3-1", "two", "1-"])
def test_show_takes_rounds_only(motifold: Run, folder: Path, show: str) -> None:
    assert motifold("chart", folder / COASTER, "--show", show).exit_code == 2


def test_the_same_bytes_in_two_processes(folder: Path) -> None:
    made = []
    for seed in ("1", "2"):
        for verb, name in (("chart", "c.svg"), ("booklet", "b.pdf")):
            subprocess.run(
                [sys.executable, "-m", "motifold.cli", verb, str(folder / COASTER), "-o", str(folder / seed / name)],
                check=True,
                env={"PYTHONHASHSEED": seed, "PATH": ""},
            )
        made.append([(folder / seed / name).read_bytes() for name in ("c.svg", "b.pdf")])
    assert made[0] == made[1]


def test_rounds_alike_share_a_line_of_the_proof(motifold: Run, folder: Path) -> None:
    band = motifold("check", folder / "watch-headband.toml").stdout
    assert "  Rows 1-56  RS  13 hdc each, RS and WS in turn\n" in band
    hat = motifold("check", folder / "ferry-hat.toml", "--size", "Adult").stdout
    assert "  Rnd 1     RS  104 sc\n  Rnds 2-5  RS  104 hdc each\n" in hat
    assert "  Rnd 11  RS  88 sc, 4 ch-2 sps\n" in hat


def test_without_cairo_only_a_png_is_refused_and_what_mends_it_is_said(folder: Path) -> None:
    code = (
        "import builtins, sys\n"
        "real = builtins.__import__\n"
        "def found(name, *rest, **more):\n"
        "    if name == 'cairosvg':\n"
        "        raise OSError('no library called cairo-2 was found')\n"
        "    return real(name, *rest, **more)\n"
        "builtins.__import__ = found\n"
        "from motifold.cli import main\n"
        "main(sys.argv[1:])\n"
    )

    def run(kind: str) -> subprocess.CompletedProcess[str]:
        command = [sys.executable, "-c", code, "chart", str(folder / COASTER), "-o", str(folder / f"chart.{kind}")]
        return subprocess.run(command, capture_output=True, text=True, check=False)

    refused = run("png")
    assert refused.returncode == 2 and "apt-get install libcairo2" in refused.stderr and not (folder / "chart.png").exists()
    assert run("svg").returncode == run("pdf").returncode == 0


def test_a_picture_of_too_many_dots_is_refused(motifold: Run, folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("motifold.render.drawing.png.MAX_PIXELS", 1_000_000)
    result = motifold("chart", folder / COASTER, "--dpi", "600", "-o", folder / "large.png")
    assert result.exit_code == 2 and "fewer dots per inch" in result.stderr


def test_a_good_pattern_is_told_to_be_good_and_a_bad_one_s_drawings_to_hold_its_mistakes(motifold: Run, folder: Path) -> None:
    good = motifold("check", folder / COASTER)
    assert good.stdout.endswith("\n\nno problems\n")
    text = text_of(folder / COASTER)
    (folder / COASTER).write_text(text.replace("(36 tr)", "(37 tr)"), encoding="utf-8")
    assert "no problems" not in motifold("check", folder / COASTER).stdout
    drawn = motifold("chart", folder / COASTER, "-o", folder / "c.svg")
    assert drawn.exit_code == 1 and (folder / "c.svg").exists()
    assert "with the mistakes told above in it" in drawn.stderr
