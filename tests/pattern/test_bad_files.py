"""One mistake at a time in a whole file: the one problem that it brings, the words that it points at, and the hint."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from motifold.render.pattern import Reading, read_pattern, report_problems
from motifold.render.pattern.locator import Lines

# (what stood there, what stands there now, code, line, words pointed at, how the hint begins)
MISTAKES = [
    ('hook = "4 mm"', "hook = 4 mm", "toml", 9, "4 mm", 'write "4 mm"'),
    ('hook = "4 mm"', 'hook = "4,5 mm"', "quantity", 9, ",", "write 4.5 mm"),
    ('hook = "4 mm"', "hook = 4", "type", 9, "4", 'for example hook = "4 mm"'),
    ('hook = "4 mm"', "hook = “4 mm”", "toml", 9, "“", "type straight quotation marks:"),
    ('hook = "4 mm"', 'hook = "4 mm', "toml", 9, '"4 mm', 'close it with "; a text of sev'),
    ('hook = "4 mm"', 'hook: "4 mm"', "toml", 9, 'hook: "4 mm"', 'write hook = "4 mm"'),
    ('hook = "4 mm"', 'hook "4 mm"', "toml", 9, 'hook "4 mm"', 'write hook = "4 mm"'),
    ('hook = "4 mm"', 'hook size = "4 mm"', "toml", 9, "hook size", 'write "hook size" ='),
    ('hook = "4 mm"', "hook =", "toml", 9, "", "text stands in quotes: title ="),
    ('hook = "4 mm"', 'hook = "4 g"', "quantity", 9, '"4 g"', 'for example "12.5 cm" or "5 1/'),
    ('hook = "4 mm"', 'hook = "0 mm"', "quantity", 9, '"0 mm"', 'for example "12.5 cm" or "5 1/'),
    ('hook = "4 mm"', 'needle = "4 mm"', "key", 9, "needle", "did you mean hook?"),
    ('hook = "4 mm"', 'hok = "4 mm"', "key", 9, "hok", "did you mean hook?"),
    ('hook = "4 mm"', 'hook = "4 mm"\nhook = "5 mm"', "toml", 10, "hook", "keep one of them, or give the "),
    ('hook = "4 mm"', 'hook = "a\\d"', "toml", 9, "\\d", "a backslash itself is written "),
    ('hook = "4 mm"', 'hook = "4 mm" and 5 mm', "toml", 9, "and 5 mm", "each key stands on a line of i"),
    ("[gauge]", "[tension]", "key", 22, "tension", "did you mean [gauge]?"),
    ("[gauge]", "[gauge", "toml", 22, "[gauge", "for example [motif.square]"),
    ("[gauge]", "[ga uge]", "toml", 22, "[ga ", "for example [motif.square]"),
    ("[motif.half]", "[motif.big half]", "toml", 38, "[motif.big half]", "a name of several words stands"),
    ("[motif.half]", "[motif.square]", "toml", 38, "square", "keep one of them, or give the "),
    ("[edging.rim]", "[edging]", "type", 69, "edging", "for example [edging.rim]"),
    ('title = "Harbour Bag"\n', "", "missing", 2, "pattern", 'for example title = "Lighthous'),
    ('terms = "US"\n', "", "missing", 2, "pattern", 'add terms = "US" (where single'),
    ('terms = "US"', 'terms = "UR"', "value", 4, '"UR"', 'US: single crochet is "sc"; UK'),
    ('terms = "US"', 'terms = "us"', "value", 4, '"us"', 'did you mean "US"?'),
    ('level = "easy"', 'level = "beginner"', "value", 5, '"beginner"', "basic is the least demanding, "),
    ('level = "easy"', 'level = "Easy"', "value", 5, '"Easy"', 'did you mean "easy"?'),
    ('language = "en"', 'language = "english language"', "value", 6, '"english language"', 'for example language = "en" or'),
    ('notions = ["yarn needle", "scissors"]', 'notions = ["yarn needle" "scissors"]', "toml", 10, "[", "its items have commas between "),
    ('notions = ["yarn needle", "scissors"]', 'notions = ["yarn needle", "scissors"', "toml", 10, "[", "its items have commas between "),
    ('notions = ["yarn needle", "scissors"]', 'notions = ["yarn needle", 3]', "type", 10, "3", 'for example notions = ["yarn n'),
    ('hex = "#8c9aa5"', 'hex = "8c9aa5"', "colour", 14, '"8c9aa5"', "a # and six digits or letters "),
    ('hex = "#8c9aa5"', 'colour = "#8c9aa5"', "key", 14, "colour", "did you mean hex?"),
    ("weight = 3", "weight = 9", "value", 15, "9", "for example weight = 3"),
    ("weight = 3", 'weight = "3"', "type", 15, '"3"', "without quotes: weight = 3"),
    ("weight = 3", "weight = 03", "toml", 15, "03", "write 3"),
    ("weight = 3", "weight = 3.5", "type", 15, "3.5", "for example weight = 3"),
    ("weight = 3", "weight = DK", "toml", 15, "DK", 'write "DK"'),
    ('length = "110 m / 50 g"', 'length = "110 m"', "quantity", 16, "110 m", 'write length, slash, weight: "'),
    ('length = "110 m / 50 g"', 'length = "110 m / 50 cm"', "quantity", 16, "110 m / 50 cm", 'for example "110 m / 50 g" or '),
    ('ball = "50 g"', 'ball = "50 cm"', "quantity", 17, '"50 cm"', 'for example "50 g" or "1.75 oz'),
    ('motif = "square"\nrounds = 8', 'motif = "sqaure"\nrounds = 8', "reference", 23, '"sqaure"', "did you mean square?"),
    ('width = "12.8 cm"\n', "", "missing", 24, "8", 'for example width = "12.8 cm"'),
    ("rounds = 8\n", "", "missing", 24, '"12.8 cm"', "for example rounds = 8, or sti"),
    ("rounds = 8", 'rounds = "8"', "type", 24, '"8"', "without quotes: rounds = 8"),
    ("rounds = 8", "rounds = 0", "value", 24, "0", "for example rounds = 8"),
    ("rounds = 8", "rounds = true", "type", 24, "true", "for example rounds = 8"),
    ("grams = 11.5", "grams = -1", "value", 26, "-1", "for example grams = 11.5"),
    ("grams = 11.5", "grams = nan", "value", 26, "nan", "for example grams = 11.5"),
    ('after_wash = "-3 %"', 'after_wash = "-300 %"', "quantity", 27, '"-300 %"', 'for example "-3 %"'),
    ('after_wash = "-3 %"', 'after_wash = "3 cm"', "quantity", 27, '"3 cm"', 'for example "-3 %"'),
    ("[stitch.petal]", "[stitch.dc]", "name", 29, "dc", "give yours a name of its own: "),
    ("[stitch.petal]", "[stitch.A]", "name", 29, "A", "give one of them another name"),
    ("[stitch.petal]", "[stitch.next]", "name", 29, "next", "give yours a name of its own: "),
    ('means = "5 dc in same st"', 'name = "petal"', "missing", 29, "petal", 'for example means = "(dc, htr,'),
    ('shape = "square"', 'shape = "sqare"', "shape", 33, '"sqare"', "did you mean square?"),
    ('shape = "square"', 'shape = "ball"', "shape", 33, '"ball"', "a ball is worked in rounds like a circle"),
    ('shape = "square"', 'shape = "star"', "shape", 33, '"star"', "say what its rounds make without the points"),
    ('shape = "square"', 'shape = "blob"', "shape", 33, '"blob"', "circle, triangle, square, hexa"),
    ('shape = "half square"', 'shape = "polygon: 2"', "shape", 39, '"polygon: 2"', "circle, triangle, square, hexa"),
    ("last_round = 5", "last_round = -5", "value", 41, "-5", "for example last_round = 5"),
    ("last_round = 5", "last_rnd = 5", "key", 41, "last_rnd", "did you mean last_round?"),
    ('rows = "Row 1: Ch 3, 2 dc in ring."\n', "", "missing", 38, "half", 'for example rounds = """Rnd 1:'),
    ('rows = "Row 1: Ch 3, 2 dc in ring."\n', 'rows = ""\n', "value", 40, '""', "for example Rnd 1: Ch 3, 11 dc"),
    ('Rnd 1: Ch 3, 11 dc in ring; join.\n"""\n', "Rnd 1: Ch 3, 11 dc in ring; join.\n", "toml", 34, '"""', 'close it with a line of """'),
    ('rounds = """\nRnd 1: Ch 3, 11', "Rnd 1: Ch 3, 11", "toml", 34, "Rnd 1: Ch 3, 11 dc in ring; join.", "all of them stand between two "),
    ("across = 2", "across = 0", "value", 45, "0", "for example across = 4"),
    ("across = 2", "around = 2", "key", 45, "around", "did you mean across?"),
    ('ease = "0 % to 12 %"', 'ease = "12 % to 0 %"', "quantity", 47, "12 % to 0 %", 'turned round: "0 % to 12 %"'),
    ('ease = "0 % to 12 %"', 'ease = "5 %"', "quantity", 47, "5 %", 'write the smaller, then "to", '),
    ('ease = "0 % to 12 %"', 'ease = "0 % to 12 cm"', "quantity", 47, "0 % to 12 cm", "both ends need the same kind o"),
    ('Small = "42 cm"', "Small = 42", "type", 50, "42", 'for example Small = "42 cm"'),
    ('Small = "42 cm"', 'Small = "42"', "quantity", 50, "", 'for example "42 cm"'),
    ('Small = "42 cm"', 'Small = "-42 cm"', "quantity", 50, '"-42 cm"', 'for example "12.5 cm" or "5 1/'),
    ('Small = "42 cm"', 'Small = "42 cm"\nsmall = "43 cm"', "name", 51, "small", "give one of them another name"),
    ('Small = "42 cm"', 'Small = "table:"', "value", 50, '"table:"', 'for example "table: head, 2 ye'),
    ("[size.bodies]\n", "[size.body]\n", "key", 49, "body", "did you mean bodies?"),
    ('panels = { F2 = "half" }', 'panels = { F2 = "hlf" }', "reference", 55, '"hlf"', "did you mean half?"),
    ('panels = { F2 = "half" }', 'panels = { F2 = "half",\n }', "toml", 55, '{ F2 = "half",', ""),
    (".  F1\nB1 C1", ".  F1\nB1 F1", "net", 58, "F1", "each panel needs a name of its"),
    (".  F1\nB1 C1", ".. F1\nB1 C1", "net", 57, "..", "an empty place is one dot, wit"),
    (".  F1\nB1 C1", "   F1\nB1 C1", "net-shift", 57, "F1", "put a dot for each empty place"),
    (".  F1\nB1 C1", ".  1F\nB1 C1", "net", 57, "1F", "a panel's name begins with a l"),
    ('"F1.left + B1.top"', '"F1.left B1.top"', "panel-join", 60, "F1.left B1.top", 'for example "F1.left + B1.left'),
    ('"F1.left + B1.top"', '"F1.left + B9.top"', "reference", 60, "B9", "the panels are F1, B1, C1, F2"),
    ('"F1.left + B1.top"', '"F1left + B1.top"', "panel-side", 60, "F1left", "a side is its panel, a dot and"),
    ('"F1.left + B1.top"', '"F1.left + F1.left"', "panel-join", 60, "F1.left + F1.left", 'write "F1.left + itself" to fo'),
    ('"F1.left + B1.top"', '"F1.left + B1.top, easy"', "panel-join", 60, " easy", 'after the comma stands "eased"'),
    ("C1.bottom[1/2] + itself", "C1.bottom[3/2] + itself", "panel-side", 60, "3/2", "the first half is [1/2], the s"),
    ("C1.bottom[1/2] + itself", "C1.bottom[1/2 + itself", "panel-side", 60, "C1.bottom[1/2", "a side is its panel, a dot and"),
    ('"F1.top", "B1', '"F1", "B1', "panel-side", 61, "F1", "a side is its panel, a dot and"),
    ('yarn = "A"', 'yarn = "C"', "reference", 65, '"C"', "the file's yarns are A, B"),
    ('adds = "3 mm"', 'adds = "-3 mm"', "quantity", 67, '"-3 mm"', 'for example "12.5 cm" or "5 1/'),
    ('opening = "F1.top"', 'opening = "Z1.top"', "reference", 70, "Z1", "the panels are F1, B1, C1, F2"),
    ('opening = "F1.top"\n', "", "missing", 69, "rim", 'for example opening = "north.t'),
    ('passes = [["F1.left"], ["B1.top"]]', 'passes = ["F1.left"]', "type", 66, '["F1.left"]', 'for example passes = [["F1.lef'),
    ('before = ["Turn after every round."]', 'bfore = ["Turn after every round."]', "key", 74, "bfore", "did you mean before?"),
    ("[notes]", "[notes]\n[notes]", "toml", 74, "notes", "keep one of them, or give the "),
    ('title = "Harbour Bag"', 'title = ""', "value", 3, '""', 'for example title = "Harbour M'),
    ("[materials]\n", "[materials]\nformat = 1\n", "key", 9, "format", "format belongs in [pattern]"),
    ('title = "Harbour Bag"', 'title = "Harbour Bag"\nformat = 7', "format", 4, "7", "a newer motifold will read it"),
    ('title = "Harbour Bag"', 'title = "Harbour Bag"\npattern.x = 7', "key", 4, "pattern", "its keys are title, summary, f"),
]


def read(source: str) -> Reading:
    return read_pattern("bag.toml", source.encode())


def pointed_at(reading: Reading, source: str) -> list[str]:
    lines = Lines.of(source)
    spans = [problem.span for problem in reading.problems]
    return [lines.text(span.line)[span.column - 1 : span.column - 1 + span.length] for span in spans if span]


def test_the_whole_file_has_no_problem(recorder: object, good: str) -> None:
    reading = read(good)
    assert reading.problems == ()
    assert reading.pattern is not None


@pytest.mark.parametrize(
    ("before", "after", "code", "line", "words", "hint"), MISTAKES, ids=[after[:40] or before[:40] for before, after, *_ in MISTAKES]
)
def test_one_mistake_is_one_problem_at_its_place(
    recorder: object, good: str, before: str, after: str, code: str, line: int, words: str, hint: str
) -> None:
    assert before in good
    source = good.replace(before, after, 1)
    reading = read(source)
    assert [(problem.code, problem.span.line if problem.span else 0) for problem in reading.problems] == [(code, line)]
    assert pointed_at(reading, source) == [words]
    assert (reading.problems[0].hint or "").startswith(hint)


@pytest.mark.parametrize(
    ("data", "code", "place", "words"),
    [
        (b"", "file", None, "empty"),
        (b" \r\n\t\n", "file", None, "empty"),
        (b"\xff\xfet\x00i\x00", "file", None, "UTF-16"),
        (b'[pattern]\ntitle = "caf\xe9"\n', "file", (2, 13), "0xe9"),
        (b'[pattern]\ntitle = "a\0b"\n', "file", (2, 11), "zero byte"),
        (b"# " + b"x" * 2_000_001, "file", None, "2,000,003 bytes"),
        (b"a = 1\rb = 2\n", "toml", (1, 6), "carriage return"),
        (b'a = "\x07"\n', "toml", (1, 6), "U+0007"),
        (b"[" * 5000, "toml", (1, 3), "name"),
        (b"a = " + b"[" * 5000, "toml", (1, 21), "too deep"),
        (b"a = " + b"{a=" * 5000, "toml", (1, 53), "too deep"),
        (b"a = " + b"9" * 5000, "toml", (1, 5), "too long"),
        (b"a" + b".a" * 5000 + b" = 1", "toml", (1, 1), "too many dots"),
        (b"a = 1\na.b = 2\n", "toml", (2, 8), "cannot be read from here"),
        (b"a = 1979-02-30\n", "toml", (1, 5), "cannot be read from here"),
    ],
)
def test_what_is_no_file_to_read_is_one_problem(data: bytes, code: str, place: tuple[int, int] | None, words: str) -> None:
    reading = read_pattern("x.toml", data)
    assert reading.pattern is None
    [problem] = reading.problems
    assert problem.code == code
    assert words in problem.message
    assert ((problem.span.line, problem.span.column) if problem.span else None) == place


def test_a_byte_order_mark_and_windows_line_ends_change_nothing(recorder: object, good: str) -> None:
    bad = good.replace('hook = "4 mm"', 'hook = "4,5 mm"')
    plain = read(bad)
    windows = read_pattern("bag.toml", b"\xef\xbb\xbf" + bad.replace("\n", "\r\n").encode())
    assert windows.problems == plain.problems
    title = read_pattern("x", b"\xef\xbb\xbftitel = 1").problems[-1].span
    assert title is not None
    assert (title.line, title.column) == (1, 1)


def test_all_mistakes_are_told_at_once_in_the_order_of_the_file(recorder: object, good: str) -> None:
    source = good
    for before, after, code, _line, _words, _hint in MISTAKES:
        if before in source and code not in ("toml", "format", "missing", "net") and after.count("\n") == before.count("\n"):
            source = source.replace(before, after, 1)
    reading = read(source)
    places = [(problem.span.line, problem.span.column) for problem in reading.problems if problem.span]
    assert len(reading.problems) >= 20
    assert {problem.code for problem in reading.problems} >= {
        "key",
        "value",
        "type",
        "quantity",
        "reference",
        "panel-join",
        "panel-side",
        "shape",
    }
    assert places == sorted(places)


def test_a_flood_of_mistakes_is_cut_and_says_so() -> None:
    reading = read("[pattern]\n" + "\n".join(f"bogus{number} = {number}" for number in range(19_999)))
    assert len(reading.problems) == 201
    assert reading.problems[-1].code == "more"
    assert "at least 19802 more" in reading.problems[-1].message


def test_without_terms_or_motifs_there_is_no_pattern(recorder: object, good: str) -> None:
    assert read(good.replace('terms = "US"', "")).pattern is None
    assert read('[pattern]\ntitle = "A"\nterms = "US"\n').pattern is None
    assert read(good.replace('title = "Harbour Bag"', "")).pattern is not None


fragments = st.sampled_from(
    [
        *(
            "[pattern]\n",
            "[motif.a]\n",
            "[[gauge.points]]\n",
            "[size.bodies]\n",
            "[assembly]\n",
            "[stitch.x]\n",
            "[edging.e]\n",
            "[yarn.A]\n",
        ),
        *(
            "[gauge]\n",
            'terms = "US"\n',
            "title = 1\n",
            'rounds = "Rnd 1: x"\n',
            "rounds = 4\n",
            'width = "1 cm"\n',
            'join = ["a.1 + b.2"]\n',
        ),
        *('net = """\na b\n. c"""\n', 'join = "a.1~itself, eased"\n', "open = [1]\n", 'means = "5 dc"\n', 'M = "table: x"\n', 'S = "4"\n'),
        *('hex = "#\\u0041"\n', 'opening = "a.1[1/0]"\n', 'ease = "1 in to 2 cm"\n', "points = [{}, {rounds = 1}]\n", "across = 1e999\n"),
        *("copies = -1\n", "motif = 'a'\n", "[motif]\n", "\\", '"', "'''", "{", "\0"),
    ]
)


@settings(max_examples=150, deadline=None)
@given(st.lists(fragments, max_size=14).map("".join))
def test_no_file_brings_a_traceback(source: str) -> None:
    reading = read(source)
    assert reading.problems or reading.pattern
    assert isinstance(report_problems(reading.problems, "x.toml", source), str)
