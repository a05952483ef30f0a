"""UK terms: the name counts one step lower than in the US; a k-fold treble has k yarn overs."""

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

UK = Table(
    label="UK",
    names={
        **SHARED_NAMES,
        "sl st": Name("ss", "ss", "slip stitch", "slip stitches"),
        "sc": same("dc", "double crochet"),
        "hdc": same("htr", "half treble"),
    },
    treble=same("tr", "treble"),
    first_fold=1,
    fold_short=("", "d", "tr", "q", "quin", "sex", "sep", "oct", "non", "dec"),
    fold_full=FOLD_FULL,
    fold_many_short="{0}-fold tr",
    fold_many_full="{0}-fold treble",
    fold_spellings=FOLD_SPELLINGS,
    treble_spellings=("tr", "treble", "treblecrochet", "trst"),
    spellings={
        **SHARED_SPELLINGS,
        "dc": "sc", "doublecrochet": "sc", "double": "sc", "dcst": "sc",
        "htr": "hdc", "halftreble": "hdc", "halftreblecrochet": "hdc", "halftr": "hdc",
        "longtreble": "tr",
    },
    readers=(
        (r"(?:raised|relief)(.+?)front", "FP{1}"),
        (r"(?:raised|relief)(.+?)back", "BP{1}"),
        (r"r(.+)f", "FP{1}"),
        (r"r(.+)b", "BP{1}"),
        *READERS,
    ),
    writers=WRITERS,
    words={
        "gauge": "tension", "skip": "miss", "sk": "miss", "yo": "yrh", "yarn over": "yarn round hook", "center": "centre",
        "color": "colour", "gray": "grey", "sl st": "ss", "slip stitch": "slip stitch", "work even": "work straight", "meter": "metre",
        "meters": "metres", "fiber": "fibre", "weave in": "weave in", "fasten off": "fasten off", "terms": "UK terms",
        "centimeters": "centimetres", "skipped": "missed", "colors": "colours",
    },
    craft=CRAFT,
    meanings={**MEANINGS, "miss": "miss", "yrh": "yarn round hook", "CC": "contrasting colour", "MC": "main colour"},
)  # fmt: skip
