"""A booklet made by hand: every kind of block and figure, without the rooms that usually make them."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import replace
from functools import cache
from pathlib import Path as FilePath

import pytest

import motifold.samples
from motifold.render.booklet import BookletContent, Cover, Figure, Look, PageStyle, booklet_content
from motifold.render.booklet.compose import written
from motifold.render.booklet.contents import planned
from motifold.render.booklet.model import PaperName
from motifold.render.booklet.plan import Plan
from motifold.render.drawing.display import Drawing, Group, Operation, Path, StrokePath, Text
from motifold.render.pattern import read_pattern
from motifold.render.words.model import Document, Items, Paragraph, RoundText, Section, Table
from motifold.render.worked import Worked, work_pattern

COLOURS = ("#8c9aa5", "#b3402e")


def stitch(angle: float, radius: float, number: int, round_number: int) -> Group:
    x, y = radius * math.cos(angle), radius * math.sin(angle)
    out_x, out_y = math.cos(angle), math.sin(angle)
    head = (x + 5 * out_x, y + 5 * out_y)
    strokes = (
        StrokePath(Path((("M", x, y), ("L", *head))), COLOURS[round_number % 2], 0.3),
        StrokePath(
            Path((("M", head[0] - out_y, head[1] + out_x), ("L", head[0] + out_y, head[1] - out_x))), COLOURS[round_number % 2], 0.3
        ),
    )
    return Group(strokes, css_class="stitch dc", data=(("round", str(round_number)), ("index", str(number))))


def chart(rounds: int) -> Drawing:
    marks: list[Operation] = []
    for number in range(1, rounds + 1):
        marks += [stitch(2 * math.pi * i / (12 * number), 6 * number, i + 1, number) for i in range(12 * number)]
        marks.append(Text(-1.5, 6 * number + 1, str(number), "sans-bold", 7))
    side = 6 * rounds + 8.0
    return Drawing(
        (-side, -side, side, side), tuple(marks), "Chart", f"Chart of rounds 1 to {rounds}: 12 double crochet more in each round."
    )


def panels(title: str, words: str, width: float = 70, height: float = 50) -> Drawing:
    frame = StrokePath(Path((("M", 2, 2), ("L", width - 2, 2), ("L", width - 2, height - 2), ("L", 2, height - 2), ("Z",))), "#333333", 0.4)
    return Drawing(
        (0, 0, width, height), (frame, Text(width / 2, height / 2, words, size_pt=10, anchor="middle")), title, f"{title}: {words}."
    )


ROUNDS = (
    RoundText("Ring", "With A, ch 4; join with sl st in first ch to form a ring.", "", 1),
    RoundText(
        "Rnd 1 (RS)",
        "Ch 3 (counts as dc here and throughout), 2 dc in ring, ch 2, [3 dc in ring, ch 2] 3 times; join with sl st in top of "
        "beg ch-3; change to B; turn.",
        "(12 dc, 4 ch-2 sps)",
        2,
        1,
        1,
    ),
    RoundText(
        "Rnd 2 (WS)",
        "Sl st in next ch-2 sp, ch 3, 2 dc in same sp, ch 1, [(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1] 3 times, 3 dc in beg "
        "sp, ch 2; join; change to A; turn.",
        "(24 dc, 4 ch-1 sps, 4 ch-2 sps)",
        3,
        2,
        2,
    ),
    RoundText(
        "Rnds 3 to 7 (8, 9)",
        "Sl st in next ch-2 sp, ch 3, 2 dc in same sp, ch 1, *[3 dc in next ch-1 sp, ch 1] to next ch-2 sp, (3 dc, ch 2, "
        "3 dc) in next ch-2 sp, ch 1; rep from * 2 more times, [3 dc in next ch-1 sp, ch 1] to beg sp, 3 dc in beg sp, ch 2; "
        "join; change to "
        "the other yarn; turn.",
        "(84 (96, 108) dc, 24 (28, 32) ch-1 sps, 4 ch-2 sps)",
        4,
        3,
        9,
    ),
    RoundText("Finish", "Fasten off both yarns.", "", 5),
)


def document() -> Document:
    return Document(
        "Harbour Light Basket",
        "US",
        "en-US",
        (
            Section("about", "About", (Paragraph("A soft basket of five open squares: one for the base and four for the walls."),)),
            Section(
                "sizes",
                "Finished sizes",
                (
                    Table(
                        "Girth and height, in centimetres.",
                        ("Size", "Rounds", "Holds", "Girth", "Height"),
                        (("Small", "7", "42", "44.8", "11.2"), ("Medium", "8", "48", "51.2", "12.8"), ("Large", "9", "54", "57.6", "14.4")),
                    ),
                ),
            ),
            Section(
                "materials",
                "Materials",
                (
                    Table(
                        "Yarn for each size, with a margin of 10 %.",
                        ("Yarn", "Small", "Medium", "Large"),
                        (
                            ("A Fog", "62 m (1 ball)", "81 m (1 ball)", "102 m (1 ball)"),
                            ("B Signal", "45 m (1 ball)", "60 m (1 ball)", "78 m (1 ball)"),
                        ),
                    ),
                    Items(("4 mm hook", "yarn needle", "stitch marker", "scissors")),
                ),
            ),
            Section("gauge", "Gauge", (Paragraph("A square of 8 rounds is 12.8 cm (5 1/16 in) across, washed and dried flat."),)),
            Section(
                "abbreviations",
                "Abbreviations",
                (
                    Items(
                        (
                            "beg: beginning",
                            "ch: chain",
                            "dc: double crochet",
                            "rep: repeat",
                            "rnd: round",
                            "RS: right side",
                            "sl st: slip stitch",
                            "sp: space",
                            "st: stitch",
                            "WS: wrong side",
                        )
                    ),
                ),
            ),
            Section("notes", "Notes", (Paragraph("Turn after every round: it keeps the squares straight.", "note"),)),
            Section("motif", "The square", (Paragraph("Make 5."), *ROUNDS), subject="square"),
            Section(
                "assembly",
                "Assembly",
                (
                    Paragraph("Lay the five squares as the net shows, right side up."),
                    Items(
                        (
                            "With A, RS facing, slip stitch base.top to north.bottom, through both loops, 29 (33, 37) sl st.",
                            "Without fastening off go on along base.right and east.left.",
                            "Join base.bottom to south.top.",
                            "Join the four walls, corner to rim.",
                        ),
                        numbered=True,
                    ),
                ),
            ),
            Section(
                "edging",
                "The rim",
                (
                    RoundText(
                        "Rnd 1 (RS)",
                        "With A, join with sl st in corner sp at right end of any side, ch 1, sc in same sp, *sc "
                        "in each dc and each ch-1 sp to next corner sp; rep from * around.",
                        "(116 (132, 148) sc)",
                        9,
                        1,
                        1,
                    ),
                ),
                subject="rim",
            ),
            Section("finishing", "Finishing", (Items(("Weave in all ends.", "Wash by hand in cool water and dry flat."), numbered=True),)),
            Section(
                "cautions", "Cautions", (Paragraph("Hooks, needles and cut yarn can hurt: keep them from small children.", "caution"),)
            ),
        ),
    )


def figures() -> tuple[Figure, ...]:
    return (
        Figure("chart", chart(9), "The square, rounds 1 to 9.", "square"),
        Figure("key", panels("Key", "dc ch sl st", 60, 40), "", "square"),
        Figure("net", panels("Net", "five squares"), "The net, right side up."),
        Figure("seams", panels("Seams", "passes 1 to 4"), "The seams, numbered in the order they are worked."),
        *(Figure("step", panels(f"Step {n}", f"pass {n}"), f"Pass {n}.", step=n) for n in (1, 2, 3, 4)),
        Figure("finished", panels("Finished", "the basket", 80, 60), "The finished basket, size Medium."),
    )


def content(paper: PaperName = "A4", mono: bool = False) -> BookletContent:
    cover = Cover(
        "Harbour Light Basket",
        "A soft basket of five open squares: one for the base and four for the walls.",
        "Example Yarn Room",
        (
            ("Sizes", "42 (48, 54) cm around"),
            ("Yarn", "Fog and Signal, weight 3"),
            ("Hook", "4 mm"),
            ("Level", "Basic"),
            ("Terms", "US"),
            ("Gauge", "8 rounds = 12.8 cm"),
        ),
        chart(7),
    )
    return BookletContent(
        document(),
        cover,
        figures(),
        PageStyle(paper, "#b3402e", mono),
        "Example Yarn Room",
        (("A Fog", "#8c9aa5"), ("B Signal", "#b3402e")),
    )


@pytest.fixture
def make_content() -> Callable[..., BookletContent]:
    return content


@pytest.fixture
def plain_content() -> BookletContent:
    """Words alone, no drawing at all."""
    whole = content()
    return replace(whole, figures=(), cover=replace(whole.cover, hero=None, facts=()))


MONO = "cargo-bag"
QUICK = ("cargo-bag", "deckhand-mitts", "lighthouse-basket", "signal-bunting", "spindrift-doily", "tidepool-coaster")
"""What every run looks at; the other samples are left to the slow tier, two of them to the part of it that CI runs."""
SAMPLED = ("pier-blanket", "watch-headband")


class Samples:
    """The samples as booklets: worked, drawn, planned and written once in a session."""

    def __init__(self) -> None:
        self.worked, self.plan, self.made = cache(self._worked), cache(self._plan), cache(self._made)
        self._contents: dict[tuple[str, Look | None], BookletContent] = {}

    def _worked(self, name: str, size: str | None = None) -> Worked:
        path = FilePath(motifold.samples.__path__[0]) / f"{name}.toml"
        pattern = read_pattern(str(path), path.read_bytes()).pattern
        assert pattern is not None
        return work_pattern(pattern, None, size)

    def content(self, name: str, look: Look | None = None) -> BookletContent:
        if (name, look) not in self._contents:
            wanted = look or Look(mono=name == MONO)
            self._contents[name, look] = booklet_content(self.worked(name, wanted.size), wanted)
        return self._contents[name, look]

    def _plan(self, name: str, look: Look | None = None) -> Plan:
        return planned(self.content(name, look))

    def _made(self, name: str, look: Look | None = None) -> bytes:
        return written(self.content(name, look), self.plan(name, look).pages)


@pytest.fixture(scope="session")
def samples() -> Samples:
    return Samples()


def pytest_generate_tests(metafunc: pytest.Metafunc) -> None:
    """A test that takes ``sample`` is run for each of them."""
    if "sample" in metafunc.fixturenames:
        names = sorted(path.stem for path in FilePath(motifold.samples.__path__[0]).glob("*.toml"))
        marks = {name: [] if name in QUICK else [pytest.mark.slow, *([pytest.mark.sampled] if name in SAMPLED else [])] for name in names}
        metafunc.parametrize("sample", [pytest.param(name, marks=marks[name]) for name in names])
