"""One mistake made on a good pattern gives one problem, at its word, with a hint that would mend it."""

from __future__ import annotations

import pytest
from good import GOOD
from make import made

from motifold.render.pattern.problem import Span

# (pattern, what it says, what it says by mistake, code, words underlined, a piece of the message, a piece of the hint)
MISTAKES = [
    ("amigurumi ball", "(Sc, inc) x 6", "(Sc, inc) x 5", "left-over", "inc", "2 sc of Rnd 2 are never worked into", "6 times instead of 5"),
    (
        "amigurumi ball",
        "(Sc, dec) x 6. (12)",
        "(Sc, dec) x 6. (14)",
        "count",
        "14",
        "Rnd 7 says 14 sts, but working it makes 12",
        "count is 12",
    ),
    ("amigurumi ball", "6 sc in magic ring", "7 sc in magic ring", "count", "6", "Rnd 1 says 6 sts", "6 sc in ring instead of 7"),
    ("amigurumi ball", "Rnds 4-6", "Rnds 5-6", "order", "Rnd", "4 is missing", "call this one Rnd 4"),
    (
        "double crochet rows",
        "dc in next 16 sts",
        "dc in next 15 sts",
        "left-over",
        "dc in top of beg ch-3",
        "1 dc of Row 2 is never",
        "next 16 sts",
    ),
    (
        "double crochet rows",
        "dc in next 16 sts",
        "dc in next 17 sts",
        "beyond",
        "dc in next 17 sts",
        "wants 1 st more than Row 2 has",
        "next 16 sts",
    ),
    ("double crochet rows", "Dc in 4th ch", "Dc in 5th ch", "count", "18 dc", "makes 17", "4th ch from hook instead of 5th"),
    (
        "mesh",
        "[dc in next dc, ch 1] 9 times",
        "[dc in next dc, ch 1] 8 times",
        "left-over",
        "dc in 4th ch of beg ch-5",
        "1 dc of Row 1",
        "9 times",
    ),
    (
        "mesh",
        "sk next ch, dc in next ch] 9 times",
        "sk next ch, dc in next ch] 8 times",
        "left-over",
        "dc in next ch",
        "2 ch of the foundation",
        "9 times",
    ),
    ("filet", "Dc in 8th ch", "Dc in 80th ch", "place", "in 80th ch from hook", "Only 23 ch", ""),
    (
        "a lace that closes with a stitch",
        "sc in next sc] 5 times",
        "sc in next sc] 4 times",
        "left-over",
        "sc in next sc",
        "2 sc of Rnd 1",
        "5 times",
    ),
    ("a lace that closes with a stitch", ", sk last sc", "", "left-over", "sc in next sc", "1 sc of Rnd 1", "skip them"),
    (
        "a lace that closes with a stitch",
        "ch-3 sp] 5 times",
        "ch-4 sp] 5 times",
        "place",
        "sc in next ch-4 sp",
        "Rnd 2 has no ch-4 sp",
        "next ch-3 sp instead of next ch-4 sp",
    ),
    ("layered flower", "[sc in ring, ch 3] 6 times", "[sc in ring, ch 3] 5 times", "count", "6 sc", "makes 5", "6 times instead of 5"),
    (
        "layered flower",
        "of Rnd 1, ch 5] 6 times",
        "of Rnd 1, ch 5] 7 times",
        "beyond",
        "sc around next sc of Rnd 1",
        "1 sc more than Rnd 1 has",
        "6 times",
    ),
    (
        "layered flower",
        "next sc of Rnd 1",
        "next dc of Rnd 1",
        "place",
        "sc around next dc of Rnd 1",
        "Rnd 1 has no dc",
        "next sc instead of next dc",
    ),
    (
        "shells into shells",
        "sk 2 ch, sc in next ch] across",
        "sk 3 ch, sc in next ch] across",
        "uneven",
        "[sk 2 ch",
        "3 ch are left",
        "instead of next 3 ch",
    ),
    (
        "shells into shells",
        "shell in next sc] 3 times",
        "shell in next sc] twice",
        "left-over",
        "3 dc in last sc",
        "1 sc and 1 shell of Row 1",
        "3 times",
    ),
    ("shells into shells", "2 dc in first sc", "dc in first sc", "count", "6 dc", "makes 5", "2 dc in first sc instead of 1"),
    ("oval", "sc in next 8 ch, 3 sc", "sc in next 7 ch, 3 sc", "left-over", "2 sc in last ch", "1 ch of the foundation", "next 8 ch"),
    ("oval", "3 sc in last ch", "2 sc in last ch", "count", "22 sc", "makes 21", "3 sc in last ch instead of 2"),
    ("picot edge", "sl st in first sc", "sl st in first dc", "join", "in first dc", "Rnd 2 has no dc to join into", "its first st is sc"),
    ("hexagon", "[2 dc in ring, ch 2] 5 times", "[2 dc in ring, ch 2] 4 times", "count", "12 dc", "makes 10", "5 times instead of 4"),
    (
        "hexagon",
        "in next ch-2 sp] 5 times",
        "in next ch-2 sp] 6 times",
        "beyond",
        "dc in next 2 dc",
        "2 dc more than Rnd 1 has",
        "5 times instead of 6",
    ),
    (
        "two colours joined anew",
        "With B, join with sl st in any ch-2 sp, ch 3",
        "Ch 3",
        "attach",
        "Rnd 2",
        "nothing joins it again for Rnd 2",
        "join",
    ),
    ("two colours joined anew", "each dc and each ch-1 sp to beg", "each dc to beg", "count", "44 sc", "makes 43", "it comes out"),
    ("two colours joined anew", "in corner sp] 3 times", "in corner sp] 2 times", "count", "44 sc", "makes 40", "3 times instead of twice"),
    ("octagon", "in next st] 7 times", "in next st] 6 times", "left-over", "dc in next st", "2 dc of Rnd 1", "7 times instead of 6"),
    ("octagon", "15 dc in ring", "16 dc in ring", "count", "16 dc", "makes 17", "15 dc in ring instead of 16"),
    ("triangle", "[4 dc in ring, ch 3] twice", "[4 dc in ring, ch 3] 3 times", "count", "12 dc", "makes 16", "twice instead of 3"),
    (
        "wheel with loops",
        "in 3rd ch of beg ch-4",
        "in top of beg ch-3",
        "join",
        "in top of beg ch-3",
        "Rnd 1 begins with ch 4, not with ch 3",
        "beg ch-4",
    ),
    (
        "wheel with loops",
        "sk next 3 sts] around",
        "sk next 4 sts] around",
        "uneven",
        "[sc in next st",
        "3 sts are left",
        "next 3 sts instead of next 4",
    ),
    ("wheel with loops", "(24 dc, 8 ch-1 sps)", "(24 dc, 9 ch-1 sps)", "count", "9 ch-1 sps", "makes 8", "count is 8"),
    (
        "star repeats",
        "rep from * 5 more times",
        "rep from * 6 more times",
        "beyond",
        "sc in next sc",
        "1 sc more than Rnd 2 has",
        "6 times instead of 7",
    ),
    ("star repeats", "rep from * to last 3 sts", "rep from * to last 2 sts", "uneven", "*dc in next 3 sts", "1 st is left", ""),
    ("tube", "first sc. (24 sc)", "first sc. (25 sc)", "count", "25 sc", "makes 24", ""),
    (
        "tube",
        "; join with sl st in first sc. (24 sc)",
        ". (24 sc)",
        "unjoined",
        "Rnd 1",
        "Rnd 1 is not joined, but Rnd 2 begins with a chain",
        "do not join",
    ),
    ("turned square, whichever side", "first sc; turn. (12 sc)", "first sc. (12 sc)", "side", "Rnd 2", "Rnd 2 is called WS", 'add "turn"'),
    (
        "turned square, whichever side",
        "sc in next 3 sc] 4 times",
        "sc in next 2 sc] 4 times",
        "count",
        "20 sc",
        "makes 16",
        "next 3 sc instead of next 2",
    ),
    (
        "UK square",
        "dc in next 3 tr] 4 times",
        "dc in next 3 tr] 3 times",
        "left-over",
        "dc in next 3 tr",
        "1 ch-2 sp and 3 tr of Rnd 1",
        "4 times",
    ),
    ("UK square", "ss in first dc. (28", "ss in first tr. (28", "join", "in first tr", "Rnd 2 has no tr", "its first st is dc"),
    (
        "rounds of several parts",
        "sc in next st] around; join",
        "sc in next 2 sts] around; join",
        "uneven",
        "[2 sc in next st",
        "2 sts are left",
        "next st instead of next 2",
    ),
    ("crossed stitches", "skipped st] 5 times", "skipped st] 4 times", "left-over", "dc in top of beg ch", "2 dc of Row 1", "5 times"),
    ("half a circle in rows", "[dc in ring, ch 1] 5 times", "[dc in ring, ch 1] 4 times", "count", "7 dc", "makes 6", "5 times"),
    (
        "short rows",
        "sc, leave remaining sts unworked; turn. (5 sc)",
        "sc; turn. (5 sc)",
        "left-over",
        "sc in next 5 sc",
        "5 sc of Row 1",
        "leave remaining",
    ),
    ("until it measures", "Rep Row 2", "Rep Row 4", "order", "Rep Row 4", "Row 4 is to be repeated", ""),
    ("chainless foundation", "12 fsc; turn", "11 fsc; turn", "count", "12 fsc", "The foundation says 12 fsc", "12 fsc instead of 11"),
    (
        "clusters, beginning ones too",
        "[cl in ring, ch 3] 5 times",
        "[cl in ring, ch 2] 5 times",
        "count",
        "6 ch-3 sps",
        "makes 1",
        "ch 3 instead of ch 2",
    ),
    (
        "groups between groups",
        "3 dc in sp between next 2 groups, (3",
        "2 dc in sp between next 2 groups, (3",
        "count",
        "36 dc",
        "makes 33",
        "3 dc in sp between next 2 groups",
    ),
    ("hat crown", "2 hdc in each st around", "hdc in each st around", "count", "20 hdc", "makes 10", "2 hdc in each st instead of 1"),
]


def underlined(text: str, span: Span) -> str:
    return text.split("\n")[span.line - 1][span.column - 1 : span.column - 1 + span.length]


@pytest.mark.parametrize("name, good, bad, code, words, message, hint", MISTAKES, ids=[f"{m[0]}: {m[2]}" for m in MISTAKES])
def test_one_mistake_gives_one_problem(name: str, good: str, bad: str, code: str, words: str, message: str, hint: str) -> None:
    pattern = GOOD[name]
    assert good in pattern.text
    text = pattern.text.replace(good, bad, 1)
    worked = made(text, pattern.shape, pattern.terms, pattern.stitches, rows=pattern.rows, row_height_cm=pattern.row_height_cm)
    problems = [*worked.read, *worked.problems]
    assert [problem.code for problem in problems] == [code], problems
    problem = problems[0]
    assert problem.span is not None and underlined(text, problem.span).startswith(words)
    assert message in problem.message
    assert hint in (problem.hint or "")


def test_two_mistakes_are_both_found() -> None:
    text = GOOD["star repeats"].text.replace("5 more times", "6 more times", 1).replace("(10 sc,", "(11 sc,", 1)
    worked = made(text)
    assert [(p.code, p.span.line) for p in worked.problems if p.span] == [("beyond", 4), ("count", 6)]
