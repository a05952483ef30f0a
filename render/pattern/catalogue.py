"""Every code that a problem can have, from every room, in one table.

A room that finds a new kind of problem adds a row: a code of small letters and hyphens, how bad it is, one line that says what it
means, and an example of what brings it about. A test compares the table with the codes that the sources use.
"""

from __future__ import annotations

from typing import Literal

from motifold.symbols.record import dataclass

Severities = Literal["error", "warning", "error or warning"]


@dataclass(frozen=True, slots=True)
class Entry:
    """One code. ``severity`` says which it comes with; ``example`` is a piece of a file, or words, that brings it about."""

    code: str
    severity: Severities
    says: str
    example: str


CATALOGUE: tuple[Entry, ...] = (
    # the file
    Entry(
        "file",
        "error",
        "The file is no text that can be read: empty, too big, or in another encoding than UTF-8.",
        "a file saved as UTF-16",
    ),
    Entry("toml", "error", "The file stops being TOML here. Reported alone: nothing after it can be trusted.", "hook = 4 mm"),
    Entry("format", "error", "The file was written for a newer version of the format.", "format = 7"),
    Entry("more", "error or warning", "There are more problems than are worth printing at once.", "a file in the wrong language"),
    # its keys
    Entry("key", "error", "No key of this name is known in this table.", "[tension]"),
    Entry("type", "error", "The value is of the wrong kind: text where a number belongs, or a table where a text does.", 'rounds = "8"'),
    Entry("missing", "error", "Something that is needed here is not there.", "[pattern] without terms"),
    Entry("value", "error", "The value is of the right kind and cannot be right.", "weight = 9"),
    Entry("name", "error", "The name of a yarn, stitch, motif or size cannot be read in a text, or is taken.", "[stitch.dc]"),
    Entry("quantity", "error", "No number with its unit can be read, or it measures the wrong thing.", 'width = "12,5 cm"'),
    Entry("colour", "error", "The colour is no hex colour.", 'hex = "fog"'),
    Entry("shape", "error", "The shape of a motif is none that is known.", 'shape = "sqare"'),
    Entry("reference", "error", "A motif, yarn or panel is named that the file does not have.", 'motif = "sqaure"'),
    Entry(
        "gauge", "error or warning", "Measured rounds contradict each other, or the gauge lacks what a line needs.", "points that shrink"
    ),
    Entry("picture", "error", "A picture is not there, is no PNG or JPEG, or lies outside the pattern's folder.", 'file = "../front.jpg"'),
    Entry("coarse-picture", "warning", "A picture has too few dots for the width it is printed at.", "300 dots over 10 cm"),
    # panels, as written
    Entry("net", "error", "A word of the net cannot be a panel, or stands there twice.", 'net = "A B A"'),
    Entry(
        "net-shift",
        "warning",
        "A row of the net is set in with spaces instead of dots, so that it means another place than it shows.",
        '"   north"',
    ),
    Entry("panel-side", "error", "A side of a panel cannot be read.", 'open = ["north"]'),
    Entry("panel-join", "error", "A join of panels cannot be read.", 'join = ["F1.left B1.left"]'),
    # the instructions, as written
    Entry("word", "error", "A word of the instructions cannot be read.", "frogs in next st"),
    Entry("not-worked", "error", "A word is known, and what it asks for is not worked here.", "tambour in next st"),
    Entry("bracket", "error", "Brackets do not close, or say neither how often nor where.", "[dc in next st, ch 1]; join"),
    Entry("star", "error", "A star repeat does not say how often, or from which star.", "*dc in next st; join"),
    Entry("depth", "error", "Brackets stand too deep in each other to follow.", "fifty opening brackets"),
    Entry("number", "error", "A number is too large, or too small, for what it counts.", "dc99tog"),
    Entry("sizes", "error", "Numbers in brackets are not one for each size.", "ch 80 (90) with three sizes"),
    Entry("measure", "error", "A measure is wanted and cannot be read.", "until piece measures a hand"),
    Entry("round", "error", "Rounds are named that are no run of rounds, or are not there.", "Rep last 4 rnds, as the second line"),
    Entry("terms", "error or warning", "A word belongs to the other terms than the file says.", "sc in a file in UK terms"),
    Entry("definition", "error", "What a special stitch means cannot be read, or its name is taken.", 'means = "yo, insert hook"'),
    Entry("ambiguous", "warning", "The words can be read in two ways; the problem says which was taken.", "3 dc in next 3 sts"),
    # the instructions, as worked
    Entry("count", "error", "What a line says it has is not what working it makes.", "(36 dc) after 33"),
    Entry("left-over", "error", "Something of the round before is never worked into.", "2 dc past the last place"),
    Entry("beyond", "error", "More places are wanted than the round before has.", "[dc in next st] 40 times into 36"),
    Entry("uneven", "error", "A repeat that goes around does not come out even.", "[dc in next 5 sts] around 36"),
    Entry("repeat", "error", "A repeat that goes on to a place never comes nearer to it.", "[ch 1] around"),
    Entry("place", "error or warning", "There is nothing at the place that is named.", "in next ch-3 sp of a round without one"),
    Entry("passed", "warning", "A place was reached by passing stitches that nobody said to skip.", "next dc past 3 sc"),
    Entry("join", "error", "What a round is to be joined into is not there.", "top of beg ch-3 after ch 2"),
    Entry("stand", "error", "A first round has nothing to be worked into.", "Rnd 1: Sc in each st, without a ring"),
    Entry("side", "error or warning", "A line's RS or WS is not the side that faces.", "Rnd 2 (WS) without a turn before it"),
    Entry("turning-chain", "warning", "A beginning chain is unusually short or long for what it counts as.", "ch 5 (counts as dc)"),
    Entry("attach", "error", "The yarn was fastened off, and nothing joins it again.", "Fasten off. Rnd 3: Ch 3 ..."),
    Entry(
        "unjoined",
        "error or warning",
        "A round is not joined, and the next one begins with a chain as if it were.",
        "Rnd 2 without its join",
    ),
    Entry(
        "corners", "warning", "Nothing shows the corners of a shape, or its sides are not alike.", "a square whose last round is a circle"
    ),
    Entry("unstated", "warning", "A line that states its counts leaves a kind out.", "(24 dc, 4 ch-2 sps) with 4 ch-1 sps besides"),
    Entry("flat", "warning", "A plain round grows too much, or too little, to lie flat.", "12 sc more in every round"),
    Entry("order", "error", "Lines do not follow each other.", "Rnd 4 after Rnd 2"),
    Entry("rounds", "error", "More rounds are asked for than the text has.", "--rounds 9 of a text of 5"),
    Entry("limit", "error", "This is more work than anyone would do.", "[dc in next st] 999999 times"),
    Entry("yarn", "error", "A yarn is named that the file does not have, or it is not clear which is meant.", "change to Q"),
    # panels, as joined
    Entry("net-shape", "error", "A panel in the net has another shape than its neighbours can meet.", "a hexagon beside a square"),
    Entry("panel-twice", "error", "Two panels have one name.", 'net = "A A"'),
    Entry("panel-left-over", "error", "A panel has a motif and no place.", '[assembly.panels] T9 = "half"'),
    Entry(
        "panel-motif",
        "error or warning",
        "It is not known which motif a panel is, or the motif has no sides.",
        "two motifs and no motif = ...",
    ),
    Entry("unknown-panel", "error", "A join names a panel that there is not.", '"norht.left + west.top"'),
    Entry("unknown-side", "error", "A join names a side that its panel does not have.", '"A.7 + B.1" of squares'),
    Entry("panel-unjoined", "error", "A panel is joined to nothing.", "a panel with dots all round"),
    Entry(
        "joined-twice", "error", "A side has two seams, or is joined to itself as if it were two.", '"A.left + B.left", "A.left + C.left"'
    ),
    Entry("sides-differ", "error", "Two sides that meet have different numbers of stitches.", "a side of 20 sts against one of 24"),
    Entry("open-unknown", "error", "A side that should stay open, or be edged, is not there or not open.", 'open = ["A.7"]'),
    Entry("open-differs", "error", "What stays open is not what `open` says.", "an opening that `open` leaves out"),
    Entry("side-rolled", "warning", "Both ends of a side come together: it is a small hole by itself.", '"front.right + east.right"'),
    Entry("surface", "warning", "The panels close as is hardly meant: a hole right through, or a corner that ruffles.", '"F.1 + B.1", ...'),
    Entry("pieces", "warning", "The panels make several pieces that nothing joins.", "two nets in one, without a join"),
    Entry("pass-unknown", "error", "A pass names a seam that does not exist.", 'passes = [["A.left"]]'),
    Entry("pass-twice", "error", "A seam is sewn by two passes.", "one seam in two passes"),
    Entry("pass-missing", "error", "A seam is sewn by no pass.", "passes that leave a seam out"),
    Entry("pass-broken", "error", "A pass goes on where its last seam does not end.", "two seams without a common corner"),
    # what a technical editor would ask
    Entry("spare-stitch", "warning", "A special stitch is explained and never used.", "[stitch.petal] in a pattern without petals"),
    Entry("spare-yarn", "warning", "A yarn is in the materials and nothing is worked with it.", "[yarn.C] in a pattern of A and B"),
    Entry("size-order", "warning", "Numbers go up and down by size.", "116 (112, 148) sc"),
    Entry("gauge-differs", "warning", "The gauge's rounds contradict its rows.", "8 rounds = 12.8 cm beside 20 rows = 10 cm"),
    # sizes
    Entry("body-table", "error or warning", "A body size is in no table, or its table has a caution.", '"table: tail, 2 years"'),
    Entry("body-size", "error", "A body measures nothing.", '"0 cm"'),
    Entry("size-name", "error", "The size asked for is not one of the file's.", "--size Huge"),
    Entry("size-rounds", "error", "A size wants more rounds than the text has.", "9 rounds of a motif of 5"),
    Entry("size-fit", "warning", "No number of rounds comes within the ease.", 'ease = "0 % to 1 %"'),
    Entry("gauge-uneven", "warning", "Measured rounds lie far from one line: widths are uncertain.", "4 rounds 6 cm, 6 rounds 12 cm"),
    Entry("edging-fit", "warning", "An edging's stitches are too many, or too few, to lie flat along its opening.", "160 sc along 60 cm"),
    Entry("colourway", "error or warning", "The plan of colourways does not fit, or two alike must touch.", 'colourways = "dawn dsuk"'),
    Entry("size-gauge", "error", "The gauge does not tell how wide the motif becomes.", "[size] without a measured swatch"),
)


def describe_codes() -> str:
    """The table of codes in Markdown."""
    rows = ["| code | | means | for example |", "|---|---|---|---|"]
    rows += [f"| `{entry.code}` | {entry.severity} | {entry.says} | {entry.example} |" for entry in CATALOGUE]
    return "\n".join(rows) + "\n"
