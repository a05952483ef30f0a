"""What a technical editor marks: names, units, seams, gauge."""

from __future__ import annotations

from motifold.render.pattern import read_pattern
from motifold.render.pattern.model import Terms
from motifold.render.words import WordsLook, write_document
from motifold.render.words.model import Document, Items, Paragraph, Table
from motifold.render.worked import needs_by_size, work_pattern

HEX = """
[pattern]
title = "Clusters"
terms = "US"
[yarn.A]
name = "Oat"
[stitch.cl]
name = "cluster"
means = "dc3tog in same st"
[motif.hex]
shape = "hexagon"
rounds = '''
Ring: With A, ch 6; join with sl st in first ch to form a ring.
Rnd 1 (RS): Beg cl in ring, ch 3, [cl in ring, ch 3] 5 times; join with sl st in first cl. (6 cl, 6 ch-3 sps)
Rnd 2: Sl st in next ch-3 sp, ch 1 (does not count as a st), (sc, ch-3 picot, sc) in same sp, [(sc, ch-3 picot, sc) in next ch-3 sp] 5 times; join with sl st in first sc. (12 sc, 6 picots)
Finish: Fasten off.
'''
"""  # noqa: E501

HAT = """
[pattern]
title = "Hat"
terms = "US"
[materials]
hook = "5 mm"
[yarn.A]
name = "Ink"
length = "218 yd / 100 g"
[gauge]
motif = "mixed"
points = [{ rounds = 6, width = "4 7/8 in" }, { rounds = 4, width = "3 1/4 in" }, { rounds = 8, width = "6 1/2 in" }]
grams = 11.5
[size]
measure = "head girth"
across = 4
ease = "-10 % to 0 %"
[size.bodies]
Child = "18 in"
Woman = "21 1/2 in"
[motif.mixed]
shape = "square"
rounds = '''
Ring: With A, ch 4; join with sl st in first ch to form a ring.
Rnd 1 (RS): Ch 3 (counts as dc here and throughout), 2 dc in ring, ch 2, [3 dc in ring, ch 2] 3 times; join with sl st in top of beg ch-3.
Rnd 2 and following: Sl st in each of next 2 dc, sl st in next ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, ch 1, [3 dc in next ch-1 sp, ch 1] to next ch-2 sp, *(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1, [3 dc in next ch-1 sp, ch 1] to next ch-2 sp; rep from * once more, (3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1, [3 dc in next ch-1 sp, ch 1] to end; join with sl st in top of beg ch-3.
Finish: Fasten off.
'''
[assembly]
motif = "mixed"
net = '''
.     back  .
left  crown right
.     front .
'''
join = ["back.left + left.top", "back.right + right.top", "front.left + left.bottom", "front.right + right.bottom"]
seam = { method = "METHOD", yarn = "A" }
"""  # noqa: E501


def document(text: str, terms: Terms = "US", plain: bool = False) -> Document:
    reading = read_pattern("x.toml", text.encode())
    assert reading.pattern is not None
    done = work_pattern(reading.pattern)
    assert not [problem.message for problem in done.problems if problem.severity == "error"]
    return write_document(done, needs_by_size(done), WordsLook(terms, plain))


def texts(found: Document, key: str) -> list[str]:
    told: list[str] = []
    for section in found.sections:
        for block in section.blocks if section.key == key else ():
            if isinstance(block, Paragraph):
                told.append(block.text.replace("\u00a0", " "))
            elif isinstance(block, Items):
                told += [item.replace("\u00a0", " ") for item in block.items]
            elif isinstance(block, Table):
                told += [" | ".join(row).replace("\u00a0", " ") for row in block.rows]
    return told


def test_one_thing_has_one_name() -> None:
    found = document(HEX)
    assert not [row for row in texts(found, "abbreviations") if row.startswith(("cl ", "picot"))]
    special = texts(found, "special stitches")
    assert [entry for entry in special if "icot" in entry.split(":")[0]] == ["Ch-3 picot: Ch 3, sl st in the 3rd ch from the hook."]


def test_a_beginning_cluster_says_how_many_chains_it_begins_with() -> None:
    told = texts(document(HEX), "special stitches")
    assert "Beg cluster: Ch 3 in place of the first dc of the cluster, then work the rest of it as usual." in told
    told = texts(document(HEX.replace("Rnd 1 (RS): Beg cl", "Rnd 1 (RS): Ch 3, beg cl")), "special stitches")
    assert "Beg cluster: The ch before it is the first dc of the cluster; work the rest of it as usual." in told


def test_the_gauge_goes_from_few_rounds_to_many_and_its_weight_stands_alone() -> None:
    assert texts(document(HAT.replace("METHOD", "slip stitch")), "gauge")[:5] == [
        "4 rounds of the motif = 3¼ in (8.3 cm) across.",
        "6 rounds of the motif = 4⅞ in (12.4 cm) across.",
        "8 rounds of the motif = 6½ in (16.5 cm) across.",
        "It grows evenly: every round adds the same width.",
        "A swatch of 8 rounds weighs 11.5 g.",
    ]


def test_a_pattern_in_inches_is_printed_in_inches_first() -> None:
    found = document(HAT.replace("METHOD", "slip stitch"))
    assert texts(found, "sizes")[1].startswith("Child | 18 in (45.7 cm) | 5 | ")
    assert " yd (" in [row for row in texts(found, "materials") if "Ink" in row][-1]


def test_crocheted_seams_join_and_needles_sew() -> None:
    joined = " ".join(texts(document(HAT.replace("METHOD", "slip stitch")), "assembly"))
    assert "Join the sides in slip stitch with A" in joined
    assert "sew" not in joined
    sewn = " ".join(texts(document(HAT.replace("METHOD", "mattress stitch"), "UK"), "assembly"))
    assert "Sew the sides together in mattress stitch with A" in sewn
    assert " join " not in sewn


def test_each_step_of_a_pass_names_the_pass() -> None:
    steps = [text for text in texts(document(HAT.replace("METHOD", "whip stitch")), "assembly") if text.startswith("Pass")]
    assert steps[0].startswith("Pass 1: attach A at the ")
    assert [step.split(":")[0] for step in steps] == ["Pass 1", "Pass 1, continued", "Pass 2", "Pass 3", "Pass 4"]


BLANKET = """
[pattern]
title = "Blanket"
terms = "US"
[yarn.A]
name = "Milk"
[gauge]
motif = "granny"
rounds = 1
width = "11 cm"
stitches = 12
[motif.granny]
shape = "square"
rounds = '''
Ring: Ch 4; join with sl st in first ch to form a ring.
Rnd 1 (RS): Ch 3 (counts as dc), 2 dc in ring, ch 2, [3 dc in ring, ch 2] 3 times; join with sl st in top of beg ch-3.
Finish: Fasten off.
'''
[assembly]
motif = "granny"
net = '''
a1 a2 a3
b1 b2 b3
'''
seam = { method = "slip stitch", yarn = "A" }
"""

BORDER = """
[edging.border]
opening = "a1.top"
rounds = '''
Rnd 1 (RS): With A, join with sl st in corner sp at right end of any side, ch 1 (does not count as a st), sc in each dc and each ch-2 sp around; join with sl st in first sc.
'''
"""  # noqa: E501


def test_a_blanket_says_what_the_whole_of_it_measures() -> None:
    assert "Finished, it measures 33 × 22 cm (13 × 8⅝ in)." in texts(document(BLANKET), "sizes")


def test_a_border_is_added_or_said_to_be_left_out() -> None:
    bordered = document(BLANKET + BORDER)
    # a stitch is 11 / 12 cm wide, and a single crochet 0.88 of that high, on either side: 1.6 cm more
    assert [text for text in texts(bordered, "sizes") if text.startswith("Finished")] == [
        "Finished, it measures 33 × 22 cm (13 × 8⅝ in) without its border and about 34.6 × 23.6 cm (13⅝ × 9¼ in) with it."
    ]


def test_a_summary_ends_with_a_full_stop_and_another_yarn_is_bought_by_length() -> None:
    found = document(HAT.replace("METHOD", "slip stitch").replace('title = "Hat"', 'title = "Hat"\nsummary = "Five squares folded"'), "UK")
    assert texts(found, "about")[0] == "Five squares folded."
    assert texts(found, "materials")[-1].endswith("buy by length rather than by mass, and make a swatch to check the tension.")


def test_of_a_form_that_nothing_tells_the_girths_are_told() -> None:
    # two strips sewn end to side, as a poncho is: it neither stands nor lies in two layers
    assert "Finished, it measures 20 cm (7⅞ in) and 60 cm (23⅝ in) around its openings." in texts(document(PONCHO), "sizes")


PONCHO = """[pattern]
title = "Cape"
terms = "US"
[yarn.A]
name = "a"
hex = "#888888"
[gauge]
stitches = 20
rows = 20
width = "10 cm"
height = "10 cm"
[motif.half]
shape = "rectangle"
rows = '''
Chain: With A, ch 21.
Row 1 (RS): Sc in 2nd ch from hook, sc in each ch across; turn. (20 sc)
Rows 2-40: Ch 1 (does not count as a st), sc in each st across; turn. (20 sc)
Finish: Fasten off.
'''
[assembly]
motif = "half"
join = ["R1.bottom + R2.right[2/2]", "R2.bottom + R1.right[2/2]"]
form = "poncho"
[assembly.seam]
method = "mattress stitch"
yarn = "A"
"""
