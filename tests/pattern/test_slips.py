# ruff: noqa: E501 (texts keep their lines)
"""One slip of the pen in a whole file gives one problem, at the word, with what was meant or nothing: all that is told, word for word."""

from __future__ import annotations

import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parent))

from examples_of_codes import BASKET, SQUARE, edited, piece, squares

from motifold.render.pattern import read_pattern
from motifold.render.pattern.spelling import nearest
from motifold.render.worked import work_pattern

BALL = """Rnd 1: 6 sc in magic ring. (6)
Rnd 2: Inc x 6. (12)
Rnd 3: (Sc, inc) x 6. (18)
Rnd 4: Sc in BLO of each st around. (18)
Rnd 5: Sc in each st around. (18)
Rnd 6: Join with sl st in any unused front lp of Rnd 3, ch 1, sc in same st, [ch 3, sc in next unused front lp of Rnd 3] 17 times, ch 3; join with sl st in first sc. (18 sc, 18 ch-3 sps)
"""
ROSE = """Ring: Ch 5; join with sl st in first ch to form a ring.
Rnd 1: Ch 1, [sc in ring, ch 3] 6 times; join with sl st in first sc. (6 sc, 6 ch-3 sps)
Rnd 2: Ch 1, petal in each ch-3 sp around; join with sl st in first sc. (6 petals)
Rnd 3: Ch 1, working behind petals, [BPsc around next sc of Rnd 1, ch 4] 6 times; join with sl st in first BPsc. (6 BPsc, 6 ch-4 sps)
"""
PETAL = '[stitch.petal]\nmeans = "(sc, hdc, 3 dc, hdc, sc) in same sp"\n'
STRIP = """Foundation: Work 20 fdc; turn.
Row 1 (RS): Ch 3 (counts as dc here and throughout), dc in next 19 sts; turn. (20 dc)
Row 2: Ch 3, dc in next 18 sts, dc in top of beg ch-3; turn. (20 dc)
Row 3: Ch 3, BPdc around each of next 18 sts, dc in top of beg ch-3; turn. (2 dc, 18 BPdc)
Rep Rows 2-3 until piece measures 20 cm, ending with a WS row.
"""
GAUGE = '[gauge]\nstitches = 20\nwidth = "10 cm"\nrows = 10\nheight = "10 cm"\n'
TILE = SQUARE.replace("counts as dc)", "counts as dc here and throughout)") + """Rnds 2 and 3: Sl st in next 2 dc, sl st in next ch-2 sp, ch 3, dc in same sp, *dc in each dc to next ch-2 sp, (2 dc, ch 2, 2 dc) in next ch-2 sp; rep from * 2 more times, dc in each dc to beg sp, 2 dc in beg sp, ch 2; join with sl st in top of beg ch-3.
"""


def ball(*edits: tuple[str, str]) -> str:
    return piece(edited(BALL, *edits))


def rose(*edits: tuple[str, str]) -> str:
    return edited(piece(ROSE, more=PETAL), *edits)


def strip(*edits: tuple[str, str]) -> str:
    return edited(piece(STRIP, worked="rows", more=GAUGE), *edits)


def tile(*edits: tuple[str, str]) -> str:
    return piece(edited(TILE, *edits), "square")


def told(source: str) -> Iterator[tuple[str, str, str, str | None]]:
    """Code, the words underlined, message and hint of every problem."""
    reading = read_pattern("slip.toml", source.encode())
    assert reading.pattern is not None, reading.problems
    lines = source.split("\n")
    for problem in work_pattern(reading.pattern, reading_problems=reading.problems).problems:
        span = problem.span
        words = lines[span.line - 1][span.column - 1 : span.column - 1 + span.length] if span is not None else ""
        yield problem.code, words, problem.message, problem.hint


def test_the_good_files_are_good() -> None:
    for source in (ball(), rose(), strip(), tile(), BASKET):
        assert list(told(source)) == []


SLIPS: dict[str, tuple[str, tuple[str, str, str, str | None]]] = {
    "swapped letters": (ball(("Inc x", "Icn x")), ("word", "Icn", '"Icn" cannot be read', 'did you mean "inc"?')),
    "swapped letters of the file's own stitch": (rose(("petal in each", "peatl in each")), ("word", "peatl", '"peatl" cannot be read', 'did you mean "petal"?')),
    "another letter, capitals kept": (strip(("BPdc around", "BDdc around")), ("word", "BDdc", '"BDdc" cannot be read', 'did you mean "BPdc"?')),
    "a label": (ball(("Rnd 4:", "Rdn 4:")), ("word", "Rdn", '"Rdn" cannot be read', 'did you mean "Rnd"?')),
    "a word of a label": (
        edited(BASKET, ("and following:", "and folowing:")),
        ("word", "folowing", '"folowing" cannot be read', 'did you mean "following"?'),
    ),
    "the unit of a measure": (
        strip(("20 cm, ending", "20 cn, ending")),
        ("measure", "20 cn", "a measure is wanted here, such as 20 cm or 8 in", 'did you mean "cm"?'),
    ),
    "no unit that is near": (strip(("20 cm, ending", "20 g, ending")), ("measure", "20 g", "a measure is wanted here, such as 20 cm or 8 in", None)),
    "the side to end with": (strip(("a WS row", "a WR row")), ("word", "WR", '"WR" is no side of the work', 'did you mean "WS"?')),
    "a row that does not turn": (
        strip(("dc in next 18 sts, dc in top of beg ch-3; turn", "dc in next 18 sts, dc in top of beg ch-3")),
        ("side", "Row 2", 'Row 2 does not say "turn", and every other row does: it is taken as turned', 'add "turn" at its end'),
    ),
    "loops that are all used": (
        ball(("Sc in BLO of each", "Sc in each")),
        ("place", "in any unused front lp of Rnd 3", "Rnd 3 has no unused front loops: what was worked on it went into both loops", "they are left where a round is worked in BLO of Rnd 3"),
    ),
    "loops of another round": (
        ball(("next unused front lp of Rnd 3", "next unused front lp of Rnd 2")),
        ("place", "in next unused front lp of Rnd 2", "Rnd 2 has no unused front loops: what was worked on it went into both loops", "Rnd 3 has unused front loops"),
    ),
    "stitches left over of an earlier round": (
        rose(("[BPsc around next sc of Rnd 1, ch 4] 6 times", "[BPsc around next sc of Rnd 1, ch 4] 5 times"), (" (6 BPsc, 6 ch-4 sps)", "")),
        ("left-over", "BPsc around next sc of Rnd 1", 'Rnd 3: 1 sc of Rnd 1 is never worked into, from "BPsc around next sc" on', "it comes out with the repeat worked 6 times instead of 5 times"),
    ),
    "a corner that is come to twice": (
        tile(("rep from * 2 more times", "rep from * 3 more times")),
        ("beyond", "(2 dc, ch 2, 2 dc) in next ch-2 sp", "Rnd 2 wants 1 ch-2 sp more than Rnd 1 has", "it comes out with the repeat worked 3 times instead of 4 times"),
    ),
    "the top of a chain that counts as two": (
        piece("Ring: Ch 4; join with sl st in first ch to form a ring.\nRnd 1: Ch 5 (counts as dc and ch 2), [3 dc in ring, ch 2] 3 times, 2 dc in ring; join with sl st in 4th ch of beg ch-5. (12 dc, 4 ch-2 sps)\n", "square"),
        ("join", "in 4th ch of beg ch-5", "The 3rd ch is the top of the dc that the beginning chain counts as, not the 4th", "join with sl st in 3rd ch of beg ch-5"),
    ),
    "one star for two": (
        piece("Rnd 1: Ch 1, 12 sc in magic ring; join with sl st in first sc. (12 sc)\nRnd 2: Ch 1, *sc in next st**, ch 2; rep from * around, ending last rep at *; join with ch 1, sc in first sc. (12 sc, 12 ch-2 sps)\n"),
        ("star", "*", "the last repeat is to end at *, where it begins", 'did you mean "ending last rep at **"?'),
    ),
    "an edging on a seam": (
        squares('net = """\nP Q\n"""\n[edging.rim]\nopening = "P.right"\nrounds = "Rnd 1: Ch 1, sc in each st around; join with sl st in first sc."\n'),
        ("open-unknown", '"P.right"', "P.right lies on no opening, it is joined to Q.left", "for example P.top"),
    ),
    "a key, and what stands under it is read": (
        strip(("stitches = 20", "stiches = 20")),
        ("key", "stiches", "[gauge] has no key stiches", "did you mean stitches?"),
    ),
    "a table, and what stands in it is read": (
        rose(("[stitch.petal]", "[stich.petal]")),
        ("key", "stich", "a pattern file has no table or key stich", "did you mean [stitch]?"),
    ),
    "lines in the wrong order": (
        ball(("Rnd 4: Sc in BLO of each st around. (18)\nRnd 5: Sc in each st around. (18)\n", "Rnd 5: Sc in each st around. (18)\nRnd 4: Sc in BLO of each st around. (18)\n")),
        ("order", "Rnd 5", "Rnd 5 stands before Rnd 4", "exchange the two lines"),
    ),
    "a count in brackets that do not close": (ball(("Inc x 6. (12)", "Inc x 6. (12 st")), ("bracket", "(", "( is never closed in this line", None)),
    "square brackets that do not close before times": (
        rose(("sc in ring, ch 3] 6 times", "sc in ring, ch 3 6 times")),
        ("bracket", "[", "[ is never closed in this line", 'is ] missing before "6 times"?'),
    ),
    "round brackets that do not close before a place": (
        tile(("(2 dc, ch 2, 2 dc) in next", "(2 dc, ch 2, 2 dc in next")),
        ("bracket", "(", "( is never closed in this line", 'is ) missing before "in next ch-2 sp"?'),
    ),
    "a bracket twice": (
        rose(("sc in ring, ch 3] 6 times", "sc in ring, ch 3]] 6 times")),
        ("bracket", "]", "] closes nothing: its opening bracket is missing", "take one of the two out"),
    ),
    "one word in the other terms": (
        rose(("[sc in ring", "[htr in ring")),
        ("terms", "htr", 'the file says terms = "US", but "htr" is a UK word', 'in US terms that stitch is hdc; if the whole text is in UK terms, say terms = "UK"'),
    ),
    "the terms of the whole file": (
        rose(('terms = "US"', 'terms = "UK"')),
        ("terms", "sc", 'the file says terms = "UK", but "sc" is a US word', 'in UK terms that stitch is dc; if the whole text is in US terms, say terms = "US"'),
    ),
    "a count of another space": (
        rose(("(6 sc, 6 ch-3 sps)", "(6 sc, 6 ch-4 sps)")),
        ("count", "6 ch-4 sps", "Rnd 1 says 6 ch-4 sps, but working it makes 6 ch-3 sps", "if the work is right, the count is 6 ch-3 sps"),
    ),
    "more skipped stitches than were skipped": (
        piece("Chain: Ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across; turn. (10 sc)\nRow 2: Ch 1, sc in next 2 sts, [sk next 2 sts, dc in next 2 sts, dc in each of 3 skipped sts] 2 times; turn. (2 sc, 8 dc)\n", worked="rows"),
        ("place", "in each of 3 skipped sts", "3 skipped sts are named, but 2 were skipped before this", "skip 3 sts, or work into 2"),
    ),
    "a word in what a stitch means": (
        rose(("(sc, hdc, 3 dc", "(sc, hcd, 3 dc")),
        ("definition", "hcd", 'what "petal" means cannot be read: "hcd" cannot be read', 'did you mean "hdc"?'),
    ),
    "a run of rounds that is too long": (
        piece("Rnd 1: 6 sc in magic ring. (6)\nRnd 2: Inc x 6. (12)\nRnds 3-5: Sc in each st around. (12)\nRnd 5: Dec x 6. (6)\nRnd 6: Sc in each st around. (6)\n"),
        ("order", "Rnd 5", "Rnd 5 has a line of its own, but Rnds 3-5 come before it", "is Rnds 3-4 meant there?"),
    ),
    "a space that no motif has": (
        piece(SQUARE + "Rnd 2: Sl st in next 2 dc, sl st in next ch-2 sp, ch 1, (sc, ch 1, sl st in corresponding ch-2 sp of previous motif, ch 1, sc) in same sp, sc in next 3 dc, [(sc, ch 3, sc) in next ch-2 sp, sc in next 3 dc] 3 times; join with sl st in first sc. (20 sc, 4 ch-3 sps)\n", "square"),
        ("place", "in corresponding ch-2 sp of previous motif", "no motif ends with a ch-2 sp to join into", "the last round has ch-3 sps"),
    ),
    "a seam's stitch": (
        squares('net = """\nP Q\n"""\n[assembly.seam]\nmethod = "slp stitch"\n'),
        ("value", '"slp stitch"', '"slp stitch" is no way to sew that is known', 'did you mean "slip stitch"?'),
    ),
    "a seam that is not crochet": (
        squares('net = """\nP Q\n"""\n[assembly.seam]\nmethod = "glue"\n'),
        (
            "value",
            '"glue"',
            '"glue" is no way to sew that is known',
            "known are slip stitch, single crochet, half double crochet, double crochet, whip stitch, mattress stitch, join as you go; "
            "others by their usual name: ladder stitch",
        ),
    ),
}  # fmt: skip


@pytest.mark.parametrize("name", SLIPS)
def test_one_slip_is_told_once_and_as_it_is(name: str) -> None:
    source, problem = SLIPS[name]
    assert list(told(source)) == [problem]


@pytest.mark.parametrize("method", ["ladder stitch", "flat slip stitch", "back stitch", "sc through back loops", "join as you go along"])
def test_other_seams_of_the_trade_are_known(method: str) -> None:
    assert list(told(squares(f'net = """\nP Q\n"""\n[assembly.seam]\nmethod = "{method}"\n'))) == []


def test_a_word_is_nearest_to_what_it_takes_the_fewest_slips_to() -> None:
    assert nearest("hcd", ["dc", "hdc", "hand"]) == "hdc"
    assert nearest("toghether", ["together", "to"]) == "together"
    assert nearest("zz", ["sc", "dc"]) is None
    assert nearest("", ["sc"]) is None


def test_the_stitch_behind_a_spike_stitch_is_skipped_with_it() -> None:
    base = "Chain: Ch 9.\nRow 1: Sc in 2nd ch from hook and in each ch across; turn. (8 sc)\nRow 2: Ch 1, sc in each st across; turn. (8 sc)\n"
    spike = "Row 3: Ch 1, [sc in next st, {}] 4 times; turn. (4 sc, 4 dc)\n"
    for words in ("dc in st 2 rows below", "dc in st 2 rows below, sk next st", "sk next st, dc in st 2 rows below"):
        assert list(told(piece(base + spike.format(words), worked="rows"))) == []


def test_picots_may_be_counted_by_their_length() -> None:
    text = "Rnd 1: Ch 1, 12 sc in magic ring; join with sl st in first sc. (12 sc)\nRnd 2: Ch 1, [sc in next 2 sts, ch-3 picot] 6 times; join with sl st in first sc. (12 sc, {})\n"
    for words in ("6 picots", "6 ch-3 picots", "6 ch-3 picot"):
        assert list(told(piece(text.format(words)))) == []
