"""US terms: the name counts from single crochet; a k-fold treble has k + 1 yarn overs."""

from __future__ import annotations

from motifold.symbols.terms_english import (
    CRAFT,
    FOLD_FULL,
    FOLD_SPELLINGS,
    MEANINGS,
    READERS,
    SHARED_NAMES,
    SHARED_SPELLINGS,
    WRITERS,
    same,
)
from motifold.symbols.terms_model import Name, Table

US = Table(
    label="US",
    names={
        **SHARED_NAMES,
        "sl st": Name("sl st", "sl sts", "slip stitch", "slip stitches"),
        "sc": same("sc", "single crochet"),
        "hdc": same("hdc", "half double crochet"),
        "dc": same("dc", "double crochet"),
    },
    treble=same("tr", "treble crochet"),
    first_fold=2,
    fold_short=("", "d", "tr", "quad", "quin", "sex", "sep", "oct", "non", "dec"),
    fold_full=FOLD_FULL,
    fold_many_short="{0}-fold tr",
    fold_many_full="{0}-fold treble crochet",
    fold_spellings=FOLD_SPELLINGS,
    treble_spellings=("tr", "trc", "treble", "trebletr", "treblecrochet", "trcrochet", "triplecrochet", "triple", "trbl", "trst"),
    spellings={
        **SHARED_SPELLINGS,
        "sc": "sc", "singlecrochet": "sc", "single": "sc", "scst": "sc",
        "hdc": "hdc", "halfdoublecrochet": "hdc", "halfdouble": "hdc", "hdcst": "hdc", "halfdc": "hdc",
        "dc": "dc", "doublecrochet": "dc", "double": "dc", "dcst": "dc", "dblcrochet": "dc",
        "trtrc": "trtr", "dtrc": "dtr", "dtc": "dtr", "doubletriplecrochet": "dtr", "tripletriplecrochet": "trtr",
    },
    readers=READERS,
    writers=WRITERS,
    words={
        "gauge": "gauge", "skip": "skip", "sk": "sk", "yo": "yo", "yarn over": "yarn over", "center": "center", "color": "color",
        "gray": "gray", "sl st": "sl st", "slip stitch": "slip stitch", "work even": "work even", "meter": "meter", "meters": "meters",
        "fiber": "fiber", "weave in": "weave in", "fasten off": "fasten off", "terms": "US terms", "centimeters": "centimeters",
        "skipped": "skipped", "colors": "colors",
    },
    craft=CRAFT,
    meanings={**MEANINGS, "sk": "skip", "yo": "yarn over", "CC": "contrasting color", "MC": "main color", "yoh": "yarn over hook",
              "cm": "centimeters", "mm": "millimeters", "m/g": "meters a gram"},
)  # fmt: skip
