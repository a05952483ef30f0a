"""The designer's own pictures: read from the pattern's folder and nowhere else, and looked at before they are printed."""

from __future__ import annotations

import os
from io import BytesIO
from pathlib import Path

import pytest
from PIL import Image

from motifold.render.pattern import read_pattern
from motifold.render.pattern.beside import NotBeside, read_beside
from motifold.render.pattern.pictures import dots_of, picture_problems
from motifold.render.pattern.problem import Problem

MAT = """[pattern]
title = "Mat"
terms = "US"
[motif.mat]
rounds = "Rnd 1: Ch 3 (counts as dc), 11 dc in 4th ch from hook; join. (12 dc)"
[picture.top]
file = "{file}"
{more}
"""


def problems_of(folder: Path, file: str, more: str = "") -> tuple[Problem, ...]:
    reading = read_pattern(str(folder / "mat.toml"), MAT.format(file=file, more=more).encode())
    assert reading.pattern is not None
    assert not reading.problems
    return picture_problems(reading.pattern)


def save(path: Path, width: int, height: int, **more: object) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    Image.new("RGB", (width, height), "tan").save(path, **more)


def test_a_picture_below_the_pattern_s_folder_is_fine(tmp_path: Path) -> None:
    save(tmp_path / "photos" / "top.jpg", 1200, 800)
    assert problems_of(tmp_path, "photos/top.jpg", 'width = "16 cm"') == ()


def test_a_picture_that_is_not_there_is_told_with_one_that_is(tmp_path: Path) -> None:
    save(tmp_path / "front.jpg", 900, 900)
    [problem] = problems_of(tmp_path, "frnt.jpg")
    assert (problem.code, problem.severity) == ("picture", "error")
    assert problem.hint == "did you mean front.jpg?"


def test_a_coarse_picture_is_a_warning_that_says_how_wide_it_may_be(tmp_path: Path) -> None:
    save(tmp_path / "top.png", 300, 300)
    [problem] = problems_of(tmp_path, "top.png", 'width = "10 cm"')
    assert problem.severity == "warning"
    assert "76 dots an inch" in problem.message  # 300 / (10 / 2.54)
    assert "5.1 cm" in (problem.hint or "")      # 300 / 150 * 2.54


def test_a_renamed_text_is_no_picture(tmp_path: Path) -> None:
    (tmp_path / "top.png").write_text("not a picture")
    [problem] = problems_of(tmp_path, "top.png")
    assert "cannot be read" in problem.message


@pytest.mark.parametrize("name", ["../secret.png", "/etc/passwd.png", "a/../../secret.png", "C:\\\\secret.png", "..\\\\secret.png", "."])
def test_nothing_outside_the_pattern_s_folder_is_read(tmp_path: Path, name: str) -> None:
    save(tmp_path / "secret.png", 900, 900)
    inside = tmp_path / "pattern"
    inside.mkdir()
    with pytest.raises(NotBeside):
        read_beside(str(inside / "mat.toml"), name.replace("\\\\", "\\"), 10**6)


def test_a_link_that_leads_outside_is_not_followed(tmp_path: Path) -> None:
    save(tmp_path / "secret.png", 900, 900)
    inside = tmp_path / "pattern"
    inside.mkdir()
    (inside / "top.png").symlink_to(tmp_path / "secret.png")
    with pytest.raises(NotBeside, match="own folder only"):
        read_beside(str(inside / "mat.toml"), "top.png", 10**6)


def test_a_pipe_is_no_picture_and_is_not_waited_for(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "top.png")
    with pytest.raises(NotBeside, match="no file"):
        read_beside(str(tmp_path / "mat.toml"), "top.png", 10**6)


def test_a_file_larger_than_is_wanted_is_not_read_whole(tmp_path: Path) -> None:
    (tmp_path / "top.png").write_bytes(b"x" * 3_000_000)
    with pytest.raises(NotBeside, match="2 million"):
        read_beside(str(tmp_path / "mat.toml"), "top.png", 2_000_000)


@pytest.mark.parametrize("kind", ["PNG", "JPEG"])
@pytest.mark.parametrize(("width", "height"), [(1, 1), (640, 480), (33, 1000)])
def test_a_picture_s_size_is_what_the_reference_library_says(kind: str, width: int, height: int) -> None:
    out = BytesIO()
    Image.new("RGB", (width, height)).save(out, kind, progressive=True)
    assert dots_of(out.getvalue()) == (width, height)


@pytest.mark.parametrize("turned", range(1, 9))
def test_a_camera_s_picture_is_measured_as_it_is_seen(turned: int) -> None:
    exif = Image.Exif()
    exif[0x0112] = turned
    out = BytesIO()
    Image.new("RGB", (60, 40)).save(out, "JPEG", exif=exif)
    from PIL import ImageOps

    assert dots_of(out.getvalue()) == ImageOps.exif_transpose(Image.open(out)).size


@pytest.mark.parametrize("data", [b"", b"\xff\xd8", b"\xff\xd8\xff\xe0\x00\x00", b"\x89PNG\r\n\x1a\n", b"\xff" * 100])
def test_a_broken_header_is_no_picture(data: bytes) -> None:
    assert dots_of(data) is None
