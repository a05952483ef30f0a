"""How a problem is told: its line, its words underlined, whatever stands in that line."""

from __future__ import annotations

import unicodedata

from hypothesis import given
from hypothesis import strategies as st

from motifold.render.pattern.problem import Problem, Span
from motifold.render.pattern.report import WIDEST, problem_json, report_problems


def told(source: str, span: Span | None, hint: str | None = None) -> list[str]:
    return report_problems(
        [Problem("count", "error", span, "Rnd 3 says 36 dc, but working it makes 33", hint)], "my-square.toml", source
    ).split("\n")


def columns(text: str) -> int:
    return sum(0 if unicodedata.combining(c) else 2 if unicodedata.east_asian_width(c) in "WF" else 1 for c in text)


def test_code_place_message_line_marks_and_hint() -> None:
    assert told("a\nRnd 3: dc. (36 dc)\n", Span(2, 13, 5), "is one missing?") == [
        "error[count]: my-square.toml:2:13: Rnd 3 says 36 dc, but working it makes 33",
        "    2 | Rnd 3: dc. (36 dc)",
        "      |             ^^^^^",
        "   hint: is one missing?",
    ]


def test_a_problem_without_a_place_names_the_file() -> None:
    assert told("a\n", None) == ["error[count]: my-square.toml: Rnd 3 says 36 dc, but working it makes 33"]


def test_a_tab_moves_the_marks_with_it() -> None:
    _, line, marks, *_ = told("\tx = 1\n", Span(1, 2, 1))
    assert line == "    1 |     x = 1"
    assert marks == "      |     ^"


def test_wide_characters_take_two_columns() -> None:
    _, line, marks, *_ = told("編み物 = dc\n", Span(1, 7, 2))
    assert columns(line[: line.index("dc")]) == marks.index("^")
    assert marks.count("^") == 2
    assert told("編み物 = dc\n", Span(1, 1, 3))[2].count("^") == 6


def test_combining_marks_take_none() -> None:
    _, line, marks, *_ = told("cafe\u0301 = dc\n", Span(1, 9, 2))
    assert columns(line[: line.index("dc")]) == marks.index("^")


def test_a_long_line_is_clipped_around_its_place() -> None:
    words = "dc in next st, " * 40
    source = f"Rnd 9: {words}(36 dc) {words}\n"
    _, line, marks, *_ = told(source, Span(1, source.index("(36") + 2, 5))
    shown = line.removeprefix("    1 | ")
    assert shown.startswith("...")
    assert shown.endswith("...")
    assert len(shown) <= WIDEST
    at = marks.index("^")
    assert line[at : at + 5] == "36 dc"
    assert marks.count("^") == 5


def test_the_beginning_of_a_long_line_stays_where_the_place_is_in_it() -> None:
    source = "Rnd 9: " + "dc in next st, " * 40
    _, line, _marks, *_ = told(source, Span(1, 8, 2))
    assert line.startswith("    1 | Rnd 9: dc in next st")
    assert line.endswith("...")


def test_a_place_between_two_characters_has_one_mark() -> None:
    assert told("hook =\n", Span(1, 7, 0))[2] == "      |       ^"


def test_a_windows_file_is_told_as_any_other() -> None:
    source = "\ufeffa = 1\r\nb = 2\r\n"
    assert told(source, Span(1, 1, 1))[1] == "    1 | a = 1"
    assert told(source, Span(2, 1, 1))[1] == "    2 | b = 2"


def test_control_characters_never_reach_the_terminal() -> None:
    text = "\n".join(told("a\x1b[31m = \x07\n", Span(1, 2, 1), "no\x1b[0m"))
    assert "\x1b" not in text
    assert "\x07" not in text


def test_problems_stand_apart_by_a_blank_line() -> None:
    problem = Problem("key", "warning", None, "x")
    assert report_problems([problem, problem], "f", "") == "warning[key]: f: x\n\nwarning[key]: f: x"
    assert report_problems([], "f", "") == ""


def test_as_json_a_problem_has_the_agreed_keys() -> None:
    assert problem_json(Problem("key", "error", Span(2, 3, 4), "m", "h"), "f.toml") == {
        "code": "key",
        "severity": "error",
        "file": "f.toml",
        "line": 2,
        "column": 3,
        "message": "m",
        "hint": "h",
    }
    assert problem_json(Problem("key", "error", None, "m"), "f.toml")["line"] is None


@given(st.text(max_size=300).filter(lambda text: "\n" not in text), st.integers(1, 320), st.integers(0, 320))
def test_the_marks_are_as_wide_as_what_they_mark(line: str, column: int, length: int) -> None:
    told_lines = told(line, Span(1, column, length))
    assert "\n" not in told_lines[0]
    if len(told_lines) > 1:
        assert told_lines[2].rstrip("^").strip() == "|"
        assert "^" in told_lines[2]
        assert len(told_lines) == 3
