"""What a careful editor changes in a draft: nothing is said twice, nothing is printed that is not done, numbers stand in both units."""

# ruff: noqa: E501
# Each line of a pattern is one line here, as a designer writes it.

from __future__ import annotations

import pytest

from motifold.render.pattern import read_pattern
from motifold.render.pattern.model import Pattern, Terms
from motifold.render.words import WordsLook, to_text, write_document
from motifold.render.words.printed import titled
from motifold.render.worked import needs_by_size, work_pattern

HEAD = '[pattern]\ntitle = "Piece"\nterms = "{terms}"\n[yarn.A]\nname = "Oat"\n[yarn.B]\nname = "Ink"\n'
SQUARE = """
Ring: With A, ch 4; join with sl st in first ch to form a ring.
Rnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, [3 dc in ring, ch 2] 3 times; join with sl st in top of beg ch-3. (12 dc, 4 ch-2 sps)
"""


def pattern(body: str, terms: Terms = "US") -> Pattern:
    reading = read_pattern("piece.toml", (HEAD.format(terms=terms) + body).encode())
    assert reading.pattern is not None
    assert not [problem.message for problem in reading.problems if problem.severity == "error"]
    return reading.pattern


def written(body: str, terms: Terms = "US", to: Terms = "US", plain: bool = False, size: str | None = None, left: bool = False) -> str:
    worked = work_pattern(pattern(body, terms))
    assert not [problem.message for problem in worked.problems if problem.severity == "error"]
    return to_text(write_document(worked, needs_by_size(worked), WordsLook(to, plain, size, left))).replace("\u00a0", " ")


def motif(lines: str, worked: str = "rounds", name: str = "piece") -> str:
    return f"[motif.{name}]\n{worked} = '''\n{lines.strip()}\n'''\n"


TOY = motif("Ring: Make a magic ring.\nRnd 1: 6 sc in ring. (6)\nRnd 2: inc x 6. (12)\nRnd 3: (sc, inc) x 6. (18)\nRnd 4: (sc, inv dec) x 6. (12)\nRnd 5: inv dec x 6. (6)\nRnd 6: (sc in next 2 sts, sc2tog) once, 2 sc. (5)")


def test_increases_are_of_the_stitch_in_hand_and_stand_in_brackets() -> None:
    text = written(TOY)
    assert "Rnd 2: [Inc] 6 times. (12 sts)" in text
    assert "Rnd 3: [Sc, inc] 6 times. (18 sts)" in text
    assert "- Inc: Work 2 sc in the same st." in text
    assert "Round 2: [Single crochet increase] 6 times. (12 stitches)" in written(TOY, plain=True)
    assert "- Inc: Work 2 dc in the same st." in written(TOY, to="UK")


def test_one_in_brackets_is_not_several() -> None:
    assert "Rnd 5: [Inv dec] 6 times. (6 sts)" in written(TOY)


def test_what_is_done_once_stands_in_no_brackets() -> None:
    assert "Rnd 6: Sc in each of next 2 sts, sc2tog, 2 sc. (5 sts)" in written(TOY)


def test_a_stitch_worked_together_is_listed_by_its_whole_abbreviation_only() -> None:
    listed = written(TOY).partition("Abbreviations")[2].partition("Special")[0]
    assert "sc2tog" in listed
    assert "\ntog " not in listed
    assert "\ndec " not in listed


MITT = motif("Chain: Ch 31 (35, 39).\nRow 1 (RS): Sc in 2nd ch from hook and in each ch across; turn. (30 (34, 38) sc)\nRow 2: Ch 1, [sc in next 8 (9, 10) sts, sc2tog] 3 times, sc in next 0 (1, 2) sts.", "rows")
SIZES = '[gauge]\nstitches = 18\nwidth = "10 cm"\nrows = 20\nheight = "10 cm"\n[size]\nmeasure = "hand circumference"\nmotif = "piece"\nease = "-10 % to 10 %"\n[size.bodies]\nS = "17 cm"\nM = "19 cm"\nL = "21 cm"\n'


def test_one_size_is_not_told_to_do_nothing() -> None:
    assert "sc in each of next 0 (1, 2) sts" in written(SIZES + MITT)
    assert "sc2tog] 3 times. (24 sc, 3 sc2tog)" in written(SIZES + MITT, size="S")
    assert "sc2tog] 3 times, sc in next st. (" in written(SIZES + MITT, size="M")


def test_a_swatch_as_wide_as_high_is_told_in_one_breath() -> None:
    assert "18 sts and 20 rows = 10 cm (4 in)." in written(SIZES + MITT)
    assert "18 sts and 20 rows = 4 in (10 cm)." in written(SIZES.replace('"10 cm"', '"4 in"').replace('"17 cm"', '"7 in"').replace('"19 cm"', '"8 in"').replace('"21 cm"', '"9 in"') + MITT)


@pytest.mark.parametrize(
    ("measure", "heading"),
    [("hand circumference", "girth"), ("width of the pad", "width"), ("finished length", "length"), ("height", "height"), ("fits a tray", "measure")],
)
def test_a_measure_is_headed_by_what_it_is(measure: str, heading: str) -> None:
    assert f"Finished {heading} " in written(SIZES.replace("hand circumference", measure) + MITT)


ROWS = "Chain: Ch 11.\nRow 1 (RS): Sc in 2nd ch from hook and in each ch across; turn. (10 sc)\nRow 2: Ch 1, sc in each st across; turn. (10 sc)\nRow 3: Rep Row 2 until piece measures {}.\nFinish: Fasten off."
SWATCH = '[gauge]\nstitches = 16\nwidth = "{0}"\nrows = 18\nheight = "{0}"\n'


@pytest.mark.parametrize(
    ("gauge", "until", "said"),
    [("10 cm", "20 cm", "20 cm (7⅞ in)"), ("4 in", "8 1/2 in", "8½ in (21.6 cm)"), ("4 in", "60 in (152.4 cm)", "60 in (152 cm)"),
     ("10 cm", "20 cm [8 in]", "20 cm (7⅞ in)")],
)  # fmt: skip
def test_a_length_is_worked_to_in_both_units_the_files_own_first(gauge: str, until: str, said: str) -> None:
    text = written(SWATCH.format(gauge) + motif(ROWS.format(until), "rows"))
    assert f"Rep Row 2 until piece measures {said}." in text
    line = next(line for line in text.splitlines() if "until" in line).partition(": ")[2].partition(" (10 sc)")[0]
    again = motif(ROWS.replace("Rep Row 2 until piece measures {}.", line), "rows")
    assert [r.counts for r in work_pattern(pattern(SWATCH.format(gauge) + again)).sizes[0].fabrics["piece"].rounds] == [
        r.counts for r in work_pattern(pattern(SWATCH.format(gauge) + motif(ROWS.format(until), "rows"))).sizes[0].fabrics["piece"].rounds
    ]


def test_the_turning_chain_comes_before_the_stitch_that_is_skipped() -> None:
    text = written(motif("Chain: Ch 12.\nRow 1: Dc in 4th ch from hook (skipped 3 ch count as dc) and in each ch across; turn. (10 dc)\nRow 2: Ch 3 (counts as dc), sk first st, dc in each st across. (10 dc)", "rows"))
    assert "Row 2: Ch 3 (counts as dc), sk first st, dc in each st across." in text


def strip(panels: str, more: str = "") -> str:
    return motif(SQUARE, name="square").replace("[motif.square]\n", '[motif.square]\nshape = "square"\n') + f'[assembly]\nmotif = "square"\nnet = "{panels}"\n{more}'


def test_seams_that_are_sewn_alike_say_what_is_done_once() -> None:
    text = written(strip("P Q\\nR S").replace('net = "P Q\\nR S"', 'net = """\nP Q\nR S\n"""'))
    assert "join the bottom of Q to the top of S, then the bottom of P to the top of R (" in text


def test_a_yarn_with_a_panels_name_is_called_yarn() -> None:
    text = written(strip("A B", '[assembly.seam]\nyarn = "A"\nmethod = "whip stitch"\n'))
    assert "Sew the sides together in whip stitch with yarn A." in text
    assert "attach yarn A at the top-right corner of A" in text
    assert "with B." in written(strip("P Q", '[assembly.seam]\nyarn = "B"\n').replace("yarn A", "")) or "with B," in written(strip("P Q", '[assembly.seam]\nyarn = "B"\n'))


@pytest.mark.parametrize(
    ("terms", "method", "us", "uk"),
    [("UK", "double crochet", "single crochet", "double crochet"), ("UK", "dc", "single crochet", "double crochet"),
     ("US", "sc", "single crochet", "double crochet"), ("UK", "ss", "slip stitch", "slip stitch")],
)  # fmt: skip
def test_a_seams_stitch_is_named_in_the_chosen_terms(terms: Terms, method: str, us: str, uk: str) -> None:
    lines = SQUARE if terms == "US" else SQUARE.replace("dc", "tr").replace("sl st", "ss")
    body = strip("P Q", f'[assembly.seam]\nmethod = "{method}"\n').replace(SQUARE.strip(), lines.strip())
    assert f"Join the sides in {us}" in written(body, terms, "US")
    assert f"Join the sides in {uk}" in written(body, terms, "UK")


def test_ends_are_woven_in_once() -> None:
    noted = '[notes]\nafter = ["Weave in every end before you stuff it."]\n'
    assert "Weave in all ends." not in written(noted + TOY)
    assert written(TOY).count("Weave in all ends.") == 1


def test_colorways_are_spelt_as_the_terms_spell_them() -> None:
    assert titled("left-cuff") == "Left cuff"
    assert titled("T-shirt") == "T-shirt"


SHAWL = motif("Chain: With A, ch 4; join with sl st in first ch to form a ring.\nRow 1 (RS): Ch 3 (counts as dc), 2 dc in ring, ch 2, 3 dc in ring, pm in ch-2 sp; turn. (6 dc, 1 ch-2 sp)\nRow 2: Ch 3 (counts as dc), dc in first st, dc in each st to marked sp, (2 dc, ch 2, 2 dc) in marked sp, move marker to ch-2 sp, dc in each st to last st, 2 dc in last st; turn. (12 dc, 1 ch-2 sp)\nRow 3: Rep Row 2. (18 dc, 1 ch-2 sp)", "rows")
CORNERS = motif(SQUARE.strip().replace("top of beg ch-3. (", "top of beg ch-3; pm in each corner. (") + "\nRnd 2: Ch 3 (counts as dc), dc in each of next 2 dc, [(2 dc, ch 2, 2 dc) in next marked sp, dc in each of next 3 dc] 3 times, (2 dc, ch 2, 2 dc) in next marked sp; join with sl st in top of beg ch-3. (28 dc, 4 ch-2 sps)").replace("[motif.piece]\n", '[motif.piece]\nshape = "square"\n')
STAYS = motif(SQUARE.strip().replace("top of beg ch-3. (", "top of beg ch-3; pm in each ch-2 sp. (") + "".join(f"\nRnd {n}: Ch 3 (counts as dc), dc in each st to marked sp, *(2 dc, ch 2, 2 dc) in marked sp, dc in each st to marked sp; rep from * 2 more times, (2 dc, ch 2, 2 dc) in marked sp, dc in each st to end; join. ({16 * n - 4} dc, 4 ch-2 sps)" for n in (2, 3)))


@pytest.mark.parametrize("lines", [SHAWL, CORNERS, STAYS], ids=["in a space", "in each corner", "carried up"])
def test_markers_in_spaces_are_found_again_also_from_print(lines: str) -> None:
    first = work_pattern(pattern(lines))
    assert [problem.code for problem in first.problems] == ["spare-yarn"]
    text = written(lines)
    assert "marked sp" in text
    again = motif("\n".join(line for line in text.partition("Piece\n-----")[2].splitlines() if line.startswith(("Ring", "Chain", "R"))), "rows" if "Row" in lines else "rounds")
    second = work_pattern(pattern(again.replace("[motif.piece]\n", '[motif.piece]\nshape = "square"\n') if "shape" in lines else again))
    assert [problem.code for problem in second.problems] == ["spare-yarn"]
    assert [r.counts for r in second.sizes[0].fabrics["piece"].rounds] == [r.counts for r in first.sizes[0].fabrics["piece"].rounds]


@pytest.mark.parametrize(("side", "sc", "first"), [("left", 14, 10), ("right", 14, 24), ("bottom", 20, 14)])
def test_an_edging_goes_along_the_side_that_it_names(side: str, sc: int, first: int) -> None:
    cloth = motif("Chain: Ch 11.\nRow 1 (RS): Sc in 2nd ch from hook and in each ch across; turn. (10 sc)\n" + "\n".join(f"Row {n}: Ch 1, sc in each st across; turn. (10 sc)" for n in (2, 3)) + "\nRow 4: Ch 1, sc in each st across. (10 sc)", "rows")
    trim = f'[edging.trim]\nmotif = "piece"\nrounds = """Rnd 1: With B, join with sl st in first sc, ch 1, sc in each sc across, sc evenly along {side} side; join with sl st in first sc. ({sc} sc)"""\n'
    fabric = work_pattern(pattern(cloth + trim)).sizes[0].edgings["trim"]
    into = [stitch.legs[0].base.id for stitch in fabric.stitches if stitch.kind == "sc" and stitch.legs]
    assert into == [*range(10), *range(first, first + sc - 10)]  # 10 stitches of the top, 4 rows, 10 of the foundation, 4 rows


def test_the_last_round_of_each_size_is_read_from_its_label() -> None:
    grows = motif("Ring: Make a magic ring.\nRnd 1: Ch 1, 6 sc in ring; join. (6 sc)\nRnds 2-4 (5, 6): Ch 1, sc in each st around; join.")
    gauge = '[gauge]\nmotif = "piece"\nrounds = 4\nwidth = "8 cm"\n'
    plan = SIZES.partition("[size]")[2].replace("-10 % to 10 %", "-80 % to 80 %")
    worked = work_pattern(pattern(gauge + "[size]" + plan + grows))
    assert [max(r.number or 0 for r in size.fabrics["piece"].rounds) for size in worked.sizes] == [4, 5, 6]
    short = work_pattern(pattern(gauge + "[size]" + plan + grows.replace("2-4 (5, 6)", "2-2 (3, 3)")))
    assert [max(r.number or 0 for r in size.fabrics["piece"].rounds) for size in short.sizes] == [2, 3, 3]
    assert "Rnds 2–4 (5, 6): Ch 1" in written(gauge + "[size]" + plan + grows)


def test_leaves_are_several_of_ones_own_leaf() -> None:
    leaf = '[stitch.leaf]\nname = "leaf"\nmeans = "3 tr in same st, gathered"\n'
    text = written(leaf + motif("Ring: Make a magic ring.\nRnd 1: Ch 1, 8 sc in ring; join with sl st in first sc. (8 sc)\nRnd 2: [Leaf in next st, ch 3, sk next st] 4 times; join with sl st in first leaf. (4 leaves, 4 ch-3 sps)"))
    assert "(4 leaves, 4 ch-3 sps)" in text


def test_a_line_for_a_worker_of_the_other_hand_changes_directions_only() -> None:
    note = '[notes]\nbefore = ["The right side faces; work from right to left, the tail on the left."]\n'
    assert "The right side faces; work from left to right, the tail on the right." in written(note + TOY, left=True)


def test_what_notes_and_yarns_abbreviate_is_explained_too() -> None:
    noted = '[notes]\nbefore = ["Approx 3 sts rem; Pat Dec. wrote this in BLO."]\nafter = ["Sew foll the prev line."]\n'
    listed = written(noted.replace("Approx", "approx") + motif("Ring: Make a magic ring.\nRnd 1: 6 sc in ring. (6)")).partition("Abbreviations")[2].partition("Special")[0]
    assert all(f"\n{short} " in listed for short in ("approx", "rem", "BLO", "foll", "prev"))
    assert "\ndec " not in listed
