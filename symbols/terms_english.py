"""What US and UK terms share: the ways of building a name ("front post ...", "... 3 together"), special stitches, abbreviations."""

from __future__ import annotations

from motifold.symbols.terms_model import Name


def same(short: str, full: str) -> Name:
    """A stitch whose abbreviation has no plural."""
    return Name(short, short, full, full + "s")


SHARED_NAMES = {
    "ch": same("ch", "chain"),
    "picot": Name("picot", "picots", "picot", "picots"),
    "cl": Name("cl", "cls", "cluster", "clusters"),
    "bobble": Name("bobble", "bobbles", "bobble", "bobbles"),
    "pc": Name("pc", "pcs", "popcorn", "popcorns"),
    "puff": Name("puff", "puffs", "puff stitch", "puff stitches"),
    "shell": Name("shell", "shells", "shell", "shells"),
    "V-st": Name("V-st", "V-sts", "V stitch", "V stitches"),
    "inv dec": Name("inv dec", "inv decs", "invisible decrease", "invisible decreases"),
}

FOLD_FULL = ("", "double ", "triple ", "quadruple ", "quintuple ", "sextuple ", "septuple ", "octuple ", "nonuple ", "decuple ")

FOLD_SPELLINGS = {
    "d": 2, "db": 2, "dbl": 2, "double": 2,
    "t": 3, "tr": 3, "trip": 3, "triple": 3, "treble": 3,
    "q": 4, "qu": 4, "quad": 4, "quadruple": 4,
    "qn": 5, "qt": 5, "quin": 5, "quint": 5, "quintuple": 5,
    "sx": 6, "sex": 6, "sext": 6, "sextuple": 6,
    "sep": 7, "sept": 7, "septuple": 7,
    "o": 8, "oct": 8, "octuple": 8,
    "non": 9, "nonuple": 9,
    "dec": 10, "decuple": 10,
}  # fmt: skip

SHARED_SPELLINGS = {
    "ch": "ch", "chain": "ch", "chainst": "ch", "chainstitch": "ch",
    "slst": "sl st", "ss": "sl st", "slipst": "sl st", "slipstitch": "sl st", "slstitch": "sl st", "slip": "sl st",
    "picot": "picot", "pic": "picot",
    "cl": "cl", "cluster": "cl", "clusterst": "cl", "clusterstitch": "cl",
    "bobble": "bobble", "bo": "bobble", "bob": "bobble", "bobblest": "bobble", "bobblestitch": "bobble",
    "pc": "pc", "pop": "pc", "popcorn": "pc", "popcornst": "pc", "popcornstitch": "pc", "pcst": "pc",
    "puff": "puff", "ps": "puff", "puffst": "puff", "puffstitch": "puff", "pst": "puff", "pf": "puff",
    "shell": "shell", "sh": "shell", "shellst": "shell", "shellstitch": "shell",
    "vst": "V-st", "vstitch": "V-st",
    "invdec": "inv dec", "invisibledecrease": "inv dec", "invisibledec": "inv dec",
    "crabst": "rev sc", "crabstitch": "rev sc",
}  # fmt: skip

_CLOSED = r"(cl|cluster|bobble|bo|pc|pop|popcorn|puff|puffst|puffstitch|ps|shell|sh)"

READERS = (
    (r"(?:beginning|beg)(.+)", "beg {1}"),
    (r"(?:fp|frontpost)(.+)", "FP{1}"),
    (r"(?:bp|backpost)(.+)", "BP{1}"),
    (r"(.+?)(?:fp|frontpost|aroundfrontpost)", "FP{1}"),
    (r"(.+?)(?:bp|backpost|aroundbackpost)", "BP{1}"),
    (r"(.+?)(\d+)tog(?:ether)?", "{1}{2}tog"),
    (r"(\d+)(.+?)tog(?:ether)?", "{2}{1}tog"),
    (r"(.+?)(?:dec|decrease)", "{1}2tog"),
    (r"(?:reverse|rev|r)(sc|dc|singlecrochet|doublecrochet)", "rev {1}"),
    (r"(?:crossed|cross|x)(.+)", "crossed {1}"),
    (r"ch(?:ain)?(\d+)(?:picot|p)", "ch-{1} picot"),
    (r"(\d+)ch(?:ain)?picot", "ch-{1} picot"),
    (rf"(\d+)(.+?){_CLOSED}", "{1}-{2} {3}"),
    (r"(?:extended|ext|ex|e)(.+)", "e{1}"),
    (r"(?:linked|lk|l)(.+)", "l{1}"),
    (r"(?:foundation|fnd|found|f)(.+)", "f{1}"),
    (r"(.+?)foundation", "f{1}"),
)
"""Tried in this order on a compact spelling. A number stays as it is; anything else is a stitch in the same terms."""

WRITERS = {
    "FP": ("FP{}", "front post {}"),
    "BP": ("BP{}", "back post {}"),
    "tog": ("{}{n}tog", "{} {n} together"),
    "e": ("e{}", "extended {}"),
    "l": ("l{}", "linked {}"),
    "f": ("f{}", "foundation {}"),
    "crossed": ("crossed {}", "crossed {}"),
    "rev": ("rev {}", "reverse {}"),
    "beg": ("beg {}", "beginning {}"),
    "gathered": ("{n}-{} {g}", "{n}-{} {g}"),
    "picot": ("ch-{n} picot", "chain-{n} picot"),
}

CRAFT = {
    "st": ("st", "stitch"), "sts": ("sts", "stitches"), "sp": ("sp", "space"), "sps": ("sps", "spaces"), "lp": ("lp", "loop"),
    "lps": ("lps", "loops"), "beg": ("beg", "beginning"), "rnd": ("rnd", "round"), "rnds": ("rnds", "rounds"), "rep": ("rep", "repeat"),
    "tch": ("tch", "turning chain"), "BLO": ("BLO", "back loop only"), "FLO": ("FLO", "front loop only"), "RS": ("RS", "right side"),
    "WS": ("WS", "wrong side"), "inc": ("inc", "increase"), "pm": ("pm", "place marker"), "sm": ("sm", "slip marker"),
    "fasten off": ("fasten off", "fasten off"),
}  # fmt: skip

MEANINGS = {
    "patt": "pattern",
    "alt": "alternate", "approx": "approximately", "beg": "beginning", "bet": "between", "BL": "back loop", "BLO": "back loop only",
    "BP": "back post", "cont": "continue", "dec": "decrease", "FL": "front loop", "FLO": "front loop only", "foll": "following",
    "FP": "front post", "inc": "increase", "lp": "loop", "m": "marker", "pat": "pattern", "pm": "place marker", "prev": "previous",
    "rem": "remaining", "rep": "repeat", "rnd": "round", "rnds": "rounds", "RS": "right side", "sm": "slip marker", "sp": "space",
    "sps": "spaces", "st": "stitch", "sts": "stitches", "tbl": "through back loop", "tch": "turning chain", "tog": "together",
    "WS": "wrong side", "yd": "yards", "in": "inches", "cm": "centimetres", "mm": "millimetres", "g": "grams", "m/g": "metres a gram",
}  # fmt: skip
