"""The words of the trade, and what each of them is to the reader: one row a meaning, every spelling of it beside it.

Stitch names are not here: they are read by the tables of ``symbols``.
"""

from __future__ import annotations

NUMBER_WORDS = {
    word: number
    for number, word in enumerate(
        [
            "zero",
            "one",
            "two",
            "three",
            "four",
            "five",
            "six",
            "seven",
            "eight",
            "nine",
            "ten",
            "eleven",
            "twelve",
            "thirteen",
            "fourteen",
            "fifteen",
            "sixteen",
            "seventeen",
            "eighteen",
            "nineteen",
        ]
    )
}
TENS = {word: 10 * number for number, word in enumerate(["twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"], 2)}
ORDINAL_WORDS = {
    word: number
    for number, word in enumerate(
        ["first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth", "eleventh", "twelfth"], 1
    )
}
ARTICLES = frozenset({"a", "an", "the", "your", "its", "this", "that", "very"})

UNITS_CM = {"cm": 1.0, "mm": 0.1, "in": 2.54, "in.": 2.54, "inch": 2.54, "inches": 2.54, '"': 2.54}
"""Centimetres in one unit; the inch is 2.54 cm by definition (international yard and pound agreement, 1959)."""

_SPELLINGS: dict[str, str] = {
    # nouns
    "st": "st, sts, stitch, stitches",
    "sp": "sp, sps, space, spaces, hole, holes",
    "lp": "lp, lps, loop, loops, arch, arches",
    "ch": "ch, chs, chain, chains, chns, chain st, chain sts, chain stitch, chain stitches",
    "rnd": "rnd, rnds, round, rounds, rd, rds",
    "row": "row, rows",
    "corner": "corner, corners",
    "group": "group, groups, grp, grps, gp, gps, set, sets, petal, petals, fan, fans, scallop, scallops, leaf, leaves, block, blocks, "
    "point, points, trefoil, trefoils, tuft, tufts, v, vs",
    "ring": "ring, circle, ring center",
    "magic ring": "magic ring, magic circle, magic loop, magic rng, adjustable ring, adjustable loop, adjustable circle, sliding loop, "
    "sliding ring, sliding knot ring, mr, magic adjustable ring",
    "tch": "tch, t ch, turning ch, turning chain, turning chs, turn ch, turning chains",
    "foundation": "foundation ch, foundation chs, foundation chain, foundation chains, base ch, base chain, original chain, original ch, "
    "foundation row, foundation edge, beg foundation ch, starting foundation ch",
    "other side": "other side, opposite side, other edge, opposite edge, underside, bottom loops, bottom side",
    "row end": "row end, row ends, row edge, row edges, end of each row, end of every row, ends of rows, end of rows, ends of each row, "
    "side of each row, sides of rows, row-end sts, row end sts, end of next row, side of rows",
    "side": "side, sides, edge, edges",
    "blo": "blo, blos, bl, bls, blp, bl only, tbl, back loop, back loops, back lp, back lps, back loop only, back loops only, "
    "back lp only, back lps only, through back loop, through back loops, through back loops only, through back loop only, "
    "bk lp, bk lps, bk lp only, rear loop, rear loops, back half",
    "flo": "flo, flos, fl, fls, flp, fl only, tfl, front loop, front loops, front lp, front lps, front loop only, front loops only, "
    "front lp only, front lps only, through front loop, through front loops, through front loops only, through front loop only, ft lp, "
    "ft lps, front half",
    "bump": "back bump, back bumps, back bar, back bars, back ridge, bump, bumps, back hump, back humps",
    "indicated": "indicated, specified, designated, given, chosen",
    "both loops": "both loops, both lps",
    "post": "post, posts, stem, stems",
    "hook": "hook",
    "piece": "piece, fabric",
    "marker": "marker, markers, stitch marker, st marker, m",
    "yarn": "yarn, yarns, color, colors, colour, colours, col, shade, thread, strand",
    "other yarn": "other yarn, other color, other colour, other shade, other one",
    "motif": "motif, motifs, square, squares, hexagon, hexagons, panel, panels, flower, flowers, medallion",
    "rs": "rs, right side",
    "ws": "ws, wrong side",
    "yo": "yo, yrh, yoh, yon, yarn over, yarn over hook, yarn round hook, yarn overs, wool round hook, pull through, yarn on hook",
    # which one
    "next": "next, nxt, following, foll, subsequent, adjacent",
    "same": "same",
    "last": "last, final",
    "each": "each, every, ea",
    "any": "any",
    "both": "both",
    "beg": "beg, begin, beginning, starting, initial, start, beg'g",
    "prev": "prev, previous, preceding",
    "corresponding": "corresponding, matching",
    "center": "center, centre, middle, central, mid, ctr",
    "top": "top",
    "base": "base, bottom",
    "rem": "rem, remaining",
    "unused": "unused, unworked, free, leftover, open, available, exposed",
    "other": "other, alternate, alt, second alternate",
    "missed": "missed, skipped",
    # where
    "in": "in, into, inside, within",
    "to": "to",
    "on": "on, onto",
    "of": "of",
    "from": "from",
    "over": "over",
    "around": "around, about",
    "across": "across",
    "along": "along, down, up",
    "between": "between, bet, betw, btw",
    "behind": "behind, in back of",
    "in front of": "in front of",
    "below": "below, down below, underneath",
    "through": "through, thru",
    "evenly": "evenly, even",
    "until": "until, till, til",
    "end": "end, end of",
    "at": "at",
    "where": "where",
    # doing
    "work": "work, works, make, do, crochet",
    "working": "working, making, placing",
    "skip": "skip, sk, skipping, skips, miss, missing",
    "turn": "turn, turning",
    "join": "join, joining, rejoin, attach, attaching, joined, reattach, joins",
    "close": "close, closing, connect, finish rnd",
    "invisible join": "invisible join, needle join, invisible fasten off, invisible finish, join invisibly",
    "with": "with, w, using",
    "fasten off": "fasten off, fasten, finish off, end off, bind off, tie off, fo, f o, fasten yarn off",
    "cut": "cut, break, break off, cut off, snip",
    "change": "change, changing, switch, switching, swap, swapping",
    "pick up": "pick up, picking up",
    "drop": "drop, dropping",
    "carry": "carry, carrying",
    "place marker": "place marker, place stitch marker, pm, place m, mark, marking, place st marker",
    "slip marker": "slip marker, sm, move marker, move marker up, replace marker, slip m, move m",
    "rep": "rep, reps, repeat, repeats, repeating, repeated",
    "leave": "leave, leaving",
    "form": "form, forming, make ring",
    "counts as": "equals, replaces, stands for, stands in for, in place of, instead of, "
    "counts as, count as, does count as, do count as, counting as, counted as, counts for, count for, counts for, acts as",
    "counts": "counts, count, counted, counting, countas",
    "inc": "inc, incs, increase, increases, increasing",
    "dec": "dec, decs, decrease, decreases, decreasing",
    "standing": "standing",
    "not": "do not, don't, dont, does not, doesn't, doesnt, without, not, are not, is not",
    "ending": "ending, end with, ends, finishing",
    "omit": "omitting, omit, leaving off, leaving out",
    # joining words
    "and": "and, plus, along with",
    "then": "then, now",
    "times": "times, time, xs",
    "x": "x",
    "more": "more, additional, additional times",
    "total": "total, total of, in total, altogether, in all, total number of",
    "all": "all",
    "tog": "tog, together",
    "throughout": "throughout, here and throughout, now and throughout, here and throughout pattern, throughout pattern",
    "made": "made, just made, just worked, completed, complete",
}

PHRASES: dict[str, str] = {spelling.strip(): meaning for meaning, row in _SPELLINGS.items() for spelling in row.split(",")}
"""Spelling (words parted by one space, articles and hyphens left out) -> meaning."""

_UNWORKED = (
    "surface sl st, surface slip stitch, surface ch, surface crochet, loop st, loop stitch, fur stitch, spike st, spike stitch, "
    "spike sc, spike dc, bullion, bullion st, bullion stitch, roll stitch, solomon's knot, lover's knot, love knot, "
    "broomstick lace, star st, star stitch, hairpin lace, tunisian simple stitch, tss, tks, tunisian knit stitch, pat, patt, "
    "pattern, cont, continue, approx, x st, cable, cables, y st, y stitch, inverted y, basketweave, mesh, filet, bead, "
    "place bead, add bead, tapestry crochet, waistcoat stitch, camel st, third loop, 3rd loop, third lp, 3rd lp, "
    "horizontal bar, cc, mc, selvage, selvedge"
)
KNITTING = frozenset({"skp", "ssk", "psso", "kfb", "yfwd", "ssp", "skpo"})
"""Words of knitting that slip into crochet patterns; none of them says what to do with a hook."""

UNWORKED = frozenset(_UNWORKED.split(", ")) | KNITTING
"""Words that the trade knows and a reader of patterns knows, but that cannot be worked here."""

US_WORDS = {"skip": "miss", "sk": "miss", "skipping": "missing", "gauge": "tension", "yo": "yrh", "yarn over": "yarn round hook"}
UK_WORDS = {"miss": "sk", "missing": "skipping", "tension": "gauge", "yrh": "yo", "yarn round hook": "yarn over"}
"""Words of only one set of terms that change no meaning where they stand in the other, and what the other says instead."""
