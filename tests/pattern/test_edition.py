"""What a file says of itself as a publication: edition, rights, address, pictures."""

from __future__ import annotations

import pytest

from motifold.render.pattern import read_pattern
from motifold.render.pattern.model import Pattern
from motifold.render.pattern.problem import Problem

PLAIN = """[pattern]
title = "Mat"
terms = "US"
{head}
[motif.mat]
rounds = "Rnd 1: Ch 3 (counts as dc), 11 dc in 4th ch from hook; join. (12 dc)"
{tail}
"""


def read(head: str = "", tail: str = "") -> tuple[Pattern, tuple[Problem, ...]]:
    reading = read_pattern("mat.toml", PLAIN.format(head=head, tail=tail).encode())
    assert reading.pattern is not None
    return reading.pattern, reading.problems


@pytest.mark.parametrize("written", ["2026-03-01", '"2026-03-01"'])
def test_a_date_is_read_as_toml_has_it_and_in_quotes(written: str) -> None:
    pattern, problems = read(f"date = {written}")
    assert (pattern.edition.date, problems) == ("2026-03-01", ())


@pytest.mark.parametrize(
    ("head", "words", "hint"),
    [
        ('date = "1 March 2026"', "is no date", "year, month, day"),
        ('date = "2026-02-30"', "there is no day 2026-02-30", "year, month, day"),
        ("date = 2026-03-01T10:00:00", "pattern.date must be a date", "for example"),
        ('web = "example.org/mat"', "no address", 'did you mean "https://example.org/mat"?'),
        ('web = "javascript:alert(1)"', "no address", "for example web"),
    ],
)
def test_what_cannot_be_is_told_at_its_place_and_left_out(head: str, words: str, hint: str) -> None:
    pattern, problems = read(head)
    [problem] = problems
    assert words in problem.message
    assert hint in (problem.hint or "")
    assert problem.span is not None
    assert problem.span.line == 4
    assert (pattern.edition.date, pattern.edition.web) == (None, None)


def test_changes_keep_the_order_of_the_file() -> None:
    pattern, problems = read(tail='[pattern.changes]\n"1.1" = "Rnd 1: 12 dc."\n"1.2" = ["Yarn B added.", "A new chart."]')
    assert not problems
    assert pattern.edition.changes == (("1.1", ("Rnd 1: 12 dc.",)), ("1.2", ("Yarn B added.", "A new chart.")))


def test_a_picture_may_stand_at_a_motif() -> None:
    pattern, problems = read(tail='[picture.top]\nfile = "a/top.PNG"\nat = "mat"\nalt = "From above."\nwidth = "8 cm"')
    assert not problems
    [picture] = pattern.pictures
    assert (picture.file, picture.at, picture.alt, picture.width_cm) == ("a/top.PNG", "mat", "From above.", 8.0)


@pytest.mark.parametrize(
    ("table", "code", "words"),
    [
        ('file = "top.gif"', "value", "neither PNG nor JPEG"),
        ('file = "top.png"\nat = "mta"', "reference", "no place"),
        ('caption = "x"', "missing", "file"),
    ],
)
def test_a_picture_that_cannot_be_placed_is_told(table: str, code: str, words: str) -> None:
    _, problems = read(tail=f"[picture.top]\n{table}")
    [problem] = problems
    assert problem.code == code
    assert words in problem.message
