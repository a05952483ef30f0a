# ruff: noqa: E501 (texts keep their lines)
"""For each code of the catalogue a file, or an edit of a sample, that brings about that problem and no other."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from importlib import resources

BASKET = resources.files("motifold.samples").joinpath("lighthouse-basket.toml").read_text(encoding="utf-8")
COASTER = resources.files("motifold.samples").joinpath("tidepool-coaster.toml").read_text(encoding="utf-8")
RING = "Ring: Make a magic ring.\n"
CIRCLE = RING + "Rnd 1: Ch 1, 12 sc in ring; join with sl st in first sc. (12 sc)\n"
SQUARE = """Ring: Ch 4; join with sl st in first ch to form a ring.
Rnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, [3 dc in ring, ch 2] 3 times; join with sl st in top of beg ch-3. (12 dc, 4 ch-2 sps)
"""
HEXAGON = RING + "Rnd 1: Ch 3 (counts as dc), dc in ring, ch 2, [2 dc in ring, ch 2] 5 times; join with sl st in top of beg ch-3. (12 dc, 6 ch-2 sps)\n"


@dataclass(frozen=True, slots=True)
class Example:
    """The file, and what is asked on the command line."""

    source: str | bytes
    rounds: int | None = None
    size: str | None = None


def piece(text: str, shape: str = "circle", terms: str = "US", more: str = "", worked: str = "rounds", yarns: str = "A") -> str:
    """A whole file of one motif."""
    yarn = "".join(f'[yarn.{key}]\nname = "Oat {key}"\n' for key in yarns)
    line = "" if worked == "rows" else f'shape = "{shape}"\n'
    return f'[pattern]\ntitle = "Example"\nterms = "{terms}"\n{yarn}[motif.piece]\n{line}{worked} = """\n{text}"""\n{more}'


def edited(source: str, *edits: tuple[str, str]) -> str:
    for old, new in edits:
        assert old in source, old
        source = source.replace(old, new, 1)
    return source


def squares(more: str, text: str = SQUARE, others: str = "") -> str:
    """A file of squares with an assembly."""
    return piece(text, "square", more=others + "[assembly]\n" + more)


def rnd2(line: str) -> str:
    return piece(CIRCLE + f"Rnd 2: {line}\n")


ROWS = "Chain: Ch 11.\nRow 1 (RS): Sc in 2nd ch from hook and in each ch across; turn. (10 sc)\n"
HALF = '[motif.other]\nshape = "hexagon"\nrounds = """\n' + HEXAGON + '"""\n'
BIGGER = '[motif.other]\nshape = "square"\nrounds = """\n' + SQUARE.replace("2 dc in ring, ch 2, [3 dc", "3 dc in ring, ch 2, [4 dc").replace("(12 dc", "(16 dc") + '"""\n'

SIZED = edited(BASKET, (" (116 (132, 148) sc, 4 ch-1 sps)", ""))

EXAMPLES: Mapping[str, Example] = {
    "file": Example("terms".encode("utf-16")),
    "toml": Example(piece(CIRCLE, more="[materials]\nhook = 4 mm\n")),
    "format": Example(edited(piece(CIRCLE), ('title = "Example"', 'title = "Example"\nformat = 7'))),
    "more": Example("[pattern]\n" + "".join(f"bogus{number} = 1\n" for number in range(300))),
    "key": Example(piece(CIRCLE, more="[tensio]\n")),
    "type": Example(piece(CIRCLE, more='[gauge]\nmotif = "piece"\nrounds = "8"\nwidth = "9 cm"\n')),
    "missing": Example(edited(piece(CIRCLE), ('title = "Example"\n', ""))),
    "value": Example(edited(piece(CIRCLE), ('name = "Oat A"', 'name = "Oat A"\nweight = 9'))),
    "name": Example(piece(CIRCLE, more='[stitch.dc]\nmeans = "3 sc in same st"\n')),
    "quantity": Example(piece(CIRCLE, more='[materials]\nhook = "4,5 mm"\n')),
    "colour": Example(edited(piece(CIRCLE), ('name = "Oat A"', 'name = "Oat A"\nhex = "fog"'))),
    "shape": Example(piece(CIRCLE, "circel")),
    "reference": Example(piece(CIRCLE, more='[gauge]\nmotif = "peice"\nrounds = 1\nwidth = "3 cm"\n')),
    "gauge": Example(piece(ROWS + "Row 2: Rep Row 1 until piece measures 9 cm.\n".replace("Rep Row 1", "Ch 1, sc in each st across; turn.\nRow 3: Rep Row 2"), worked="rows")),
    "net": Example(squares('net = """\nP Q P\n"""\n')),
    "net-shift": Example(squares('net = """\n   Q\nP R\n"""\n')),
    "panel-side": Example(squares('net = """\nP Q\n"""\nopen = ["north"]\n')),
    "panel-join": Example(squares('net = """\nP Q\n"""\njoin = ["P.left Q.right"]\n')),
    "word": Example(rnd2("Ch 1, frogs in each st around; join with sl st in first sc.")),
    "not-worked": Example(rnd2("Ch 1, bullion in each st around; join with sl st in first sc.")),
    "bracket": Example(rnd2("Ch 1, [2 sc in next st, sc in next st; join with sl st in first sc.")),
    "star": Example(rnd2("Ch 1, *2 sc in next st, sc in next st; join with sl st in first sc.")),
    "depth": Example(rnd2("Ch 1, " + "[" * 60 + "sc in next st" + "] 1 times" * 60 + "; join with sl st in first sc.")),
    "number": Example(rnd2("Ch 1, sc99tog; join with sl st in first st.")),
    "sizes": Example(edited(BASKET, ("116 (132, 148) sc", "116 (132) sc"))),
    "measure": Example(piece(ROWS + "Row 2: Ch 1, sc in each st across; turn.\nRow 3: Rep Row 2 until piece measures a hand.\n", worked="rows", more='[gauge]\nrows = 20\nheight = "10 cm"\n')),
    "round": Example(piece(CIRCLE + "Rnd 2: Rep last 4 rnds.\n")),
    "terms": Example(piece("Ring: Make a magic ring.\nRnd 1: Ch 1, 12 sc in ring; join with ss in first sc.\n", terms="UK")),
    "definition": Example(piece(CIRCLE.replace("12 sc in ring", "6 tuft in ring").replace("first sc. (12 sc)", "first st"), more='[stitch.tuft]\nmeans = "yo, insert hook"\n')),
    "ambiguous": Example(rnd2("Ch 1, [3 sc in next 3 sts] 4 times; join with sl st in first sc.")),
    "count": Example(piece(CIRCLE.replace("(12 sc)", "(13 sc)"))),
    "left-over": Example(rnd2("Ch 1, sc in next 11 sts; join with sl st in first sc. (11 sc)")),
    "beyond": Example(rnd2("Ch 1, sc in next 13 sts; join with sl st in first sc. (13 sc)")),
    "uneven": Example(rnd2("Ch 1, [sc in next 4 sts, 2 sc in next st] around; join with sl st in first sc.")),
    "repeat": Example(rnd2("Ch 1, [ch 1] around; join with sl st in first ch.")),
    "place": Example(rnd2("Ch 1, sc in next ch-3 sp, sc in next 12 sts; join with sl st in first sc.")),
    "passed": Example(piece(RING + "Rnd 1: Ch 1, [sc in ring, dc in ring] 6 times; join with sl st in first sc.\nRnd 2: Ch 1, [sc in next dc, ch 1] 6 times; join with sl st in first sc.\n")),
    "join": Example(piece(CIRCLE.replace("sl st in first sc", "sl st in top of beg ch-3"))),
    "stand": Example(piece("Rnd 1: Ch 1, sc in each st around; join with sl st in first sc.\n")),
    "side": Example(piece(CIRCLE + "Rnd 2 (WS): Ch 1, sc in each st around; join with sl st in first sc.\n")),
    "turning-chain": Example(piece(RING + "Rnd 1: Ch 5 (counts as dc), 11 dc in ring; join with sl st in top of beg ch-5.\n")),
    "attach": Example(piece(CIRCLE.replace("first sc.", "first sc. Fasten off.") + "Rnd 2: Ch 1, sc in each st around; join with sl st in first sc.\n")),
    "unjoined": Example(piece(CIRCLE.replace("; join with sl st in first sc", "") + "Rnd 2: Ch 1, sc in each st around; join with sl st in first sc.\n")),
    "corners": Example(piece(CIRCLE, "square")),
    "unstated": Example(piece(SQUARE.replace("3 times;", "3 times;") + "Rnd 2: Sl st in next 2 dc, sl st in next ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, ch 1, [(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1] 3 times; join with sl st in top of beg ch-3. (24 dc, 4 ch-2 sps)\n", "square")),
    "flat": Example(piece(CIRCLE + "".join(f"Rnd {n}: Ch 1, [sc in next {n - 2} sts, 2 sc in next st] 12 times; join with sl st in first sc. ({12 * n} sc)\n".replace("sc in next 0 sts, ", "").replace("next 1 sts", "next st") for n in (2, 3, 4)))),
    "order": Example(piece(CIRCLE + "Rnd 3: Ch 1, sc in each st around; join with sl st in first sc.\n")),
    "limit": Example(rnd2("Ch 1, [2 sc in next st] 99999 times; join with sl st in first sc.")),
    "yarn": Example(piece(CIRCLE.replace("Rnd 1: ", "Rnd 1: With Q, "))),
    "net-shape": Example(piece(SQUARE, "square", more=HALF + '[assembly]\nmotif = "piece"\npanels = { H = "other" }\nnet = """\nP H\n"""\n')),
    "panel-left-over": Example(squares('net = """\nP Q\n"""\npanels = { T9 = "piece" }\n')),
    "panel-motif": Example(piece(SQUARE, "square", more=HALF + '[assembly]\nnet = """\nP Q\n"""\n')),
    "unknown-side": Example(squares('net = """\nP Q\n"""\njoin = ["P.7 + Q.right"]\n')),
    "panel-unjoined": Example(squares('net = """\nP Q . R\n"""\n')),
    "joined-twice": Example(squares('net = """\nP Q R\n"""\njoin = ["P.left + R.right", "P.left + Q.top"]\n')),
    "sides-differ": Example(piece(SQUARE, "square", more=BIGGER + '[assembly]\nmotif = "piece"\npanels = { Q = "other" }\nnet = """\nP Q\n"""\n')),
    "open-unknown": Example(squares('net = """\nP Q\n"""\nopen = ["P.7"]\n')),
    "side-rolled": Example(squares('net = """\n. back .\nwest base east\n. front .\n"""\njoin = ["back.left + west.top", "back.right + east.top", "front.left + west.bottom", "front.right + east.right"]\n')),
    "surface": Example(squares('join = ["P.top + Q.top", "P.left + Q.left", "P.right + Q.right"]\npanels = { P = "piece", Q = "piece" }\n')),
    "pieces": Example(squares('net = """\nP Q . R S\n"""\n')),
    "gauge-uneven": Example(piece(CIRCLE + "Rnds 2-9: Ch 1, sc in each st around; join with sl st in first sc.\n", more='[gauge]\nmotif = "piece"\npoints = [{ rounds = 4, width = "6 cm" }, { rounds = 6, width = "12 cm" }, { rounds = 8, width = "13 cm" }]\n')),
    "open-differs": Example(squares('net = """\nP Q\n"""\nopen = ["P.left"]\n')),
    "pass-unknown": Example(squares('net = """\nP Q R\n"""\n[assembly.seam]\npasses = [["P.right"], ["Q.right"], ["P.left"]]\n')),
    "pass-twice": Example(squares('net = """\nP Q R\n"""\n[assembly.seam]\npasses = [["P.right"], ["Q.right"], ["P.right"]]\n')),
    "pass-missing": Example(squares('net = """\nP Q R\n"""\n[assembly.seam]\npasses = [["P.right"]]\n')),
    "pass-broken": Example(squares('net = """\nP Q R\n"""\n[assembly.seam]\npasses = [["P.right", "Q.right"]]\n')),
    "spare-stitch": Example(piece(CIRCLE, more='[stitch.leaf]\nmeans = "3 tr in same st"\n')),
    "spare-yarn": Example(piece(CIRCLE, yarns="AC")),
    "size-order": Example(SIZED.replace('"48 cm"', '"40 cm"')),
    "gauge-differs": Example(edited(COASTER, ("rounds = 3\n", 'rounds = 3\nrows = 20\nheight = "10 cm"\n'))),
    "body-table": Example(edited(BASKET, ('"42 cm"', '"table: tail, 2 years"'))),
    "size-name": Example(BASKET, size="Huge"),
    "size-fit": Example(SIZED.replace("0 % to 12 %", "0 % to 1 %")),
    "size-rounds": Example(piece(CIRCLE), rounds=9),
    "size-gauge": Example(piece(SQUARE, "square", more='[size]\nacross = 4\nease = "0 % to 9 %"\n[size.bodies]\nSmall = "42 cm"\n')),
}

NOT_FROM_A_FILE: Mapping[str, str] = {
    "panel-twice": "reading the net tells it first, as net",
    "unknown-panel": "reading the joins tells it first, as reference",
    "rounds": "the sizes tell it first, as size-rounds",
    "body-size": "reading the size tells it first, as quantity",
    "picture": "needs a picture beside the file",
    "coarse-picture": "needs a picture beside the file",
    "edging-fit": "tests/sizing",
    "colourway": "tests/pattern",
}
"""Codes that no file alone brings about, with what shows them instead."""
