"""Every key of a pattern file, in one table: checking, the table for people and the JSON Schema are all made from it."""

from __future__ import annotations

import tomllib
from typing import Any, Literal

from motifold.symbols.record import dataclass

Kind = Literal[
    "table", "tables", "text", "lines", "texts", "joins", "passes", "length", "mass", "yarn length", "share", "range", "body", "colour",
    "whole", "number", "yes or no", "date",
]  # fmt: skip

ANY = "*"
"""In a path: any name that the designer chooses. ``[]``: each item of a list of tables."""


@dataclass(frozen=True, slots=True)
class Key:
    """One key. ``path`` is dotted; ``default`` is shown to people ("" where leaving it out leaves its pages out).

    ``needs``: of these keys in a table at least one must be there. ``low`` and ``high`` bound numbers, both ends included.
    """

    path: str
    kind: Kind
    example: str
    says: str
    default: str = ""
    required: bool = False
    choices: tuple[str, ...] = ()
    low: float | None = None
    high: float | None = None
    needs: tuple[str, ...] = ()

    @property
    def parts(self) -> tuple[str, ...]:
        return tuple(self.path.replace("[]", ".[]").split("."))


KIND_WORDS: dict[Kind, str] = {
    "table": "table",
    "tables": "list of tables",
    "text": "text",
    "lines": "text of several lines",
    "texts": "text, or list of texts",
    "joins": "text, or list of texts and tables",
    "passes": "list of lists of texts",
    "length": "length",
    "mass": "weight",
    "yarn length": "length / weight",
    "share": "percentage",
    "range": "two ends",
    "body": "length, or a table's entry",
    "colour": "hex colour",
    "whole": "whole number",
    "number": "number",
    "yes or no": "true or false",
    "date": "date",
}

LEVELS = ("basic", "easy", "intermediate", "complex")
MOST_ROUNDS = 1000

def _join_keys(path: str) -> tuple[Key, ...]:
    """A join that says more than its sides is a table."""
    return (
        Key(f"{path}[].sides", "text", '"A.1 + B.2"', 'The two sides; beside `join`, how their stitches meet: `"3 sts to 2 rows"`.'),
        Key(f"{path}[].join", "text", '"A.1 + B.2"', "The two sides, where `sides` says how they meet."),
        Key(f"{path}[].ease", "yes or no", "true", "The longer side is eased in.", "false"),
    )


KEYS: tuple[Key, ...] = (
    Key("pattern", "table", "[pattern]", "What the pattern is.", required=True),
    Key("pattern.title", "text", '"Lighthouse Project Basket"', "The name on the cover.", required=True),
    Key("pattern.summary", "text", '"A soft basket of five squares."', "One or two sentences under the title."),
    Key("pattern.format", "whole", "1", "The version of this file format.", "1", low=1),
    Key("pattern.terms", "text", '"US"', "The terms that this file is written in.", required=True, choices=("US", "UK")),
    Key("pattern.level", "text", '"basic"', "Project level as the trade grades it.", choices=LEVELS),
    Key("pattern.author", "text", '"Example Yarn Room"', "Who designed it."),
    Key("pattern.language", "text", '"en"', "Language of the text, as a language tag.", '"en"'),
    Key("pattern.version", "text", '"1.2"', "The edition that this is: on the cover and in the file's metadata."),
    Key("pattern.date", "date", '"2026-03-01"', "The day of this edition: year, month, day."),
    Key("pattern.copyright", "text", '"© 2026 Example Yarn Room"', "Whose work it is, as printed."),
    Key("pattern.licence", "text", '"For personal use; sell what you make from it."', "What a buyer may do with it."),
    Key("pattern.web", "text", '"https://example.org/basket"', "Its address on the web, printed with a code to scan."),
    Key("pattern.changes", "table", "[pattern.changes]", "What each edition changed, the newest last."),
    Key("pattern.changes.*", "texts", '["Rnd 5: 60 dc, not 58."]', "What the edition of this version changed."),
    Key("picture", "table", "[picture.front]", "Pictures of your own, PNG or JPEG, kept beside the pattern file."),
    Key("picture.*", "table", "[picture.front]", "One picture.", needs=("file",)),
    Key("picture.*.file", "text", '"front.jpg"', "Its file, in the pattern's own folder or one below it.", required=True),
    Key("picture.*.caption", "text", '"The basket, brim turned down."', "What is printed below it."),
    Key("picture.*.alt", "text", '"A grey basket on a table."', "What it shows, for those who cannot see it.", "the caption"),
    Key("picture.*.at", "text", '"cover"', "Where it stands: cover, a motif, an edging, assembly or finishing.", '"finishing"'),
    Key("picture.*.width", "length", '"8 cm"', "How wide it is printed.", "as wide as its column"),
    Key("materials", "table", "[materials]", "What is needed besides yarn."),
    Key("materials.hook", "length", '"4 mm"', "The hook's size."),
    Key("materials.notions", "texts", '["yarn needle", "scissors"]', "Everything else that is needed."),
    Key("materials.margin", "share", '"15 %"', "Yarn to spare on top of what is worked.", '"10 %"'),
    Key("yarn", "table", "[yarn.A]", "The yarns, each under the name that the instructions use."),
    Key("yarn.*", "table", "[yarn.A]", "One yarn: A in `with A`."),
    Key("yarn.*.name", "text", '"Fog"', "The colour's name, as printed.", "the table's name"),
    Key("yarn.*.hex", "colour", '"#8c9aa5"', "The colour in charts."),
    Key("yarn.*.weight", "whole", "3", "Standard yarn weight, 0 (lace) to 7 (jumbo).", low=0, high=7),
    Key("yarn.*.length", "yarn length", '"110 m / 50 g"', "Length for its weight, from the label."),
    Key("yarn.*.ball", "mass", '"50 g"', "Weight of one ball."),
    Key("yarn.*.substitute", "yarn length", '"125 m / 50 g"', "Length for its weight of another yarn: what that takes is told beside."),
    Key("gauge", "table", "[gauge]", "The designer's swatch, washed and dried flat."),
    Key("gauge.motif", "text", '"square"', "The motif that was measured.", "the only motif"),
    Key("gauge.rounds", "whole", "8", "How many rounds the swatch has.", low=1, high=MOST_ROUNDS),
    Key("gauge.width", "length", '"12.8 cm"', "Its width from side to side (over `rounds`, or over `stitches`)."),
    Key("gauge.grams", "number", "11.5", "What that swatch weighs, all yarns together.", low=0),
    Key("gauge.points", "tables", '[{ rounds = 4, width = "6.5 cm" }]', "Several measured rounds instead of one."),
    Key("gauge.points[].rounds", "whole", "4", "After how many rounds it was measured.", required=True, low=1, high=MOST_ROUNDS),
    Key("gauge.points[].width", "length", '"6.5 cm"', "Its width then.", required=True),
    Key("gauge.stitches", "number", "16", "Stitches over `width`.", low=0),
    Key("gauge.rows", "number", "9", "Rows over `height`.", low=0),
    Key("gauge.height", "length", '"10 cm"', "Height of that many rows."),
    Key("gauge.after_wash", "share", '"-3 %"', "How washing changes the width, if measured before it.", '"0 %"'),
    Key(
        "gauge.estimate",
        "yes or no",
        "true",
        "Estimate from the yarn's weight where nothing was measured; marked wherever printed.",
        "false",
    ),
    Key("stitch", "table", "[stitch.petal]", "Special stitches, each under the name that the instructions use."),
    Key("stitch.*", "table", "[stitch.petal]", "One special stitch.", needs=("means",)),
    Key("stitch.*.name", "text", '"petal"', "Its name, as printed.", "the table's name"),
    Key("stitch.*.means", "text", '"(dc, htr, 3 tr, htr, dc) in same st"', "How it is worked.", required=True),
    Key(
        "stitch.*.symbol",
        "text",
        '"M 0 0 L 0 2"',
        "Its own symbol: SVG path data, foot down, or an SVG file beside the pattern.",
        "drawn from its stitches",
    ),
    Key("motif", "table", "[motif.square]", "The motifs; at least one.", required=True),
    Key("motif.*", "table", "[motif.square]", "One motif, worked in rounds or rows.", needs=("rounds", "rows")),
    Key("motif.*.shape", "text", '"square"', "Its outline: circle, square, hexagon, half hexagon …", "circle; rectangle in rows"),
    Key("motif.*.rounds", "lines", '"""Rnd 1: …"""', "The instructions, a line a round."),
    Key("motif.*.rows", "lines", '"""Row 1: …"""', "The instructions, a line a row."),
    Key("motif.*.last_round", "whole", "5", "Rounds worked where no size says how many.", "what the text has", low=1, high=MOST_ROUNDS),
    Key(
        "motif.*.counts_as",
        "yes or no",
        "true",
        "Whether beginning chains count as a stitch where the text does not say.",
        "the trade's habit",
    ),
    Key("motif.*.colourway", "table", "[motif.square.colourway]", "Colourways: the same motif worked in other yarns."),
    Key("motif.*.colourway.*", "table", '{ A = "C", B = "A" }', "One colourway: which yarn stands in for which of the text."),
    Key("motif.*.colourway.*.*", "text", '"C"', "The yarn that is worked where the text says this one."),
    Key("size", "table", "[size]", "What the piece must fit.", needs=("bodies",)),
    Key("size.measure", "text", '"head circumference"', "What is measured on the body.", '"girth"'),
    Key("size.across", "number", "4", "Motifs around that girth.", "1", low=0),
    Key("size.motif", "text", '"square"', "The motif whose rounds make the size.", "the only motif"),
    Key("size.ease", "range", '"-8 % to 0 %"', "Finished girth over the body, from least to most; or in cm or in."),
    Key("size.bodies", "table", "[size.bodies]", "The sizes in order.", required=True),
    Key("size.bodies.*", "body", '"42 cm"', 'A body\'s girth, or `"table: head, 2 years"`.'),
    Key("size.own", "table", "[size.own]", "What single sizes have of their own."),
    Key("size.own.*", "table", "[size.own.Large]", "One size's own: what it does not say, it has as the others do."),
    Key("size.own.*.rounds", "whole", "6", "Its rounds, whatever the ease says.", low=1, high=MOST_ROUNDS),
    Key("size.own.*.across", "number", "5", "Its motifs around.", low=0),
    Key("size.own.*.hook", "length", '"5 mm"', "Its hook, with a gauge of its own."),
    Key("size.own.*.gauge", "table", "[size.own.Large.gauge]", "Its swatch, of the same motif."),
    Key("size.own.*.gauge.rounds", "whole", "5", "How many rounds that swatch has.", low=1, high=MOST_ROUNDS),
    Key("size.own.*.gauge.width", "length", '"13.5 cm"', "Its width (over `rounds`, or over `stitches`)."),
    Key("size.own.*.gauge.grams", "number", "13", "What it weighs.", low=0),
    Key("size.own.*.gauge.stitches", "number", "14", "Stitches over `width`.", low=0),
    Key("size.own.*.gauge.rows", "number", "8", "Rows over `height`.", low=0),
    Key("size.own.*.gauge.height", "length", '"10 cm"', "Height of that many rows."),
    Key("size.own.*.net", "lines", '"""\nF1 F2 F3\n"""', "Its own net, with its own `join`, `open` and `panels`."),
    Key("size.own.*.join", "joins", '["F3.right + F1.left"]', "What folds together in that net."),
    *_join_keys("size.own.*.join"),
    Key("size.own.*.open", "texts", '["F1.top"]', "What stays open there.", "what is left"),
    Key("size.own.*.panels", "table", '{ F3 = "half" }', "Panels there whose motif differs."),
    Key("size.own.*.panels.*", "text", '"half"', "That panel's motif."),
    Key("size.own.*.edgings", "table", "{ rim = 3 }", "How many rounds of its edgings it works."),
    Key("size.own.*.edgings.*", "whole", "3", "Rounds of that edging.", low=1, high=MOST_ROUNDS),
    Key("assembly", "table", "[assembly]", "How panels become the piece.", needs=("net", "join")),
    Key("assembly.motif", "text", '"square"', "Every panel's motif.", "the only motif"),
    Key("assembly.panels", "table", '{ T1 = "half" }', "Panels whose motif differs."),
    Key("assembly.panels.*", "text", '"half"', "That panel's motif."),
    Key("assembly.net", "lines", '"""\nF1 B1\n"""', "The panels laid flat, right side up: a word each, a dot for an empty place."),
    Key("assembly.join", "joins", '["F1.left + B1.left"]', "Sides that fold together: `+`, twisted `~`, or with `itself`."),
    *_join_keys("assembly.join"),
    Key("assembly.open", "texts", '["F1.top"]', "Sides that stay open.", "what is left"),
    Key(
        "assembly.colourways", "lines", '"""\ndawn dusk\n"""', "The colourway of each panel, laid out as the net is.",
        "spread so that no two alike touch",
    ),
    Key("assembly.copies", "whole", "2", "How many of the whole thing (2: a pair).", "1", low=1, high=100),
    Key("assembly.fold", "texts", '["base.top"]', "What is folded, in words or by side."),
    Key("assembly.form", "text", '"basket"', "What the finished thing is drawn as."),
    Key("assembly.seam", "table", "[assembly.seam]", "How the seams are worked."),
    Key("assembly.seam.method", "text", '"slip stitch"', "Slip stitch, single crochet, whip stitch, mattress stitch.", '"slip stitch"'),
    Key("assembly.seam.yarn", "text", '"A"', "The yarn for seams.", "the first yarn"),
    Key(
        "assembly.seam.passes",
        "passes",
        '[["F1.left", "B1.top"]]',
        "Seams by one of their sides, in sewing order, a list for each length of yarn.",
        "planned",
    ),
    Key("assembly.seam.adds", "length", '"3 mm"', "What each seam adds to a girth.", '"0 cm"'),
    Key("edging", "table", "[edging.rim]", "Edgings worked on openings or around a motif."),
    Key("edging.*", "table", "[edging.rim]", "One edging.", needs=("rounds", "rows")),
    Key("edging.*.opening", "text", '"north.top"', "The opening that this side lies on."),
    Key("edging.*.motif", "text", '"square"', "Without an assembly: the motif that it goes around."),
    Key("edging.*.rounds", "lines", '"""Rnd 1: …"""', "Its instructions, a line a round."),
    Key("edging.*.rows", "lines", '"""Row 1: …"""', "Its instructions, a line a row."),
    Key("edging.*.gauge", "table", "[edging.rim.gauge]", "Its own gauge, to tell whether it lies flat."),
    Key("edging.*.gauge.stitches", "number", "20", "Stitches over `width`.", low=0),
    Key("edging.*.gauge.width", "length", '"10 cm"', "Width of that many stitches."),
    Key("edging.*.gauge.rows", "number", "24", "Rounds over `height`.", low=0),
    Key("edging.*.gauge.height", "length", '"10 cm"', "Height of that many rounds."),
    Key("notes", "table", "[notes]", "What a reader should know."),
    Key("notes.before", "texts", '["Turn after every round."]', "Notes before the instructions."),
    Key("notes.after", "texts", '["Wash by hand."]', "Finishing and care."),
)


@dataclass(frozen=True, slots=True)
class Branch:
    """The keys as a tree: one key and what may stand below it by name (``*`` and ``[]`` included)."""

    key: Key | None
    below: dict[str, Branch]


def key_tree() -> Branch:
    """The table of keys as a tree; the root has no key."""
    root = Branch(None, {})
    for key in KEYS:
        branch = root
        for part in key.parts[:-1]:
            branch = branch.below.setdefault(part, Branch(None, {}))
        branch.below[key.parts[-1]] = Branch(key, branch.below[key.parts[-1]].below if key.parts[-1] in branch.below else {})
    return root


def describe_keys() -> str:
    """The table of keys in Markdown: key, type, default, example, meaning."""
    rows = ["| key | type | default | example | meaning |", "|---|---|---|---|---|"]
    for key in KEYS:
        default = "**required**" if key.required and key.kind != "table" else _cell(key.default)
        kind = KIND_WORDS[key.kind] + (": " + ", ".join(key.choices) if key.choices else "")
        example = key.example.replace("\n", " ")
        rows.append(f"| `{key.path.replace(ANY, 'NAME')}` | {kind} | {default} | `{example}` | {_cell(key.says)} |")
    return "\n".join(rows) + "\n"


def _cell(text: str) -> str:
    return f"`{text}`" if text.startswith('"') else text


_TEXT_KINDS = ("text", "lines", "length", "mass", "yarn length", "share", "range", "body", "colour")
_NUMBER = r"[-−+]?(\d+([ -]\d+[/⁄]\d+|\.\d+|[/⁄]\d+)?|\.\d+|\d*\s?[¼½¾⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞])"
_PATTERNS: dict[Kind, str] = {
    "length": rf"^\s*{_NUMBER}\s*[A-Za-z\"″”']+\.?\s*$",
    "mass": rf"^\s*{_NUMBER}\s*[A-Za-z]+\.?\s*$",
    "yarn length": rf"^\s*{_NUMBER}\s*[A-Za-z]+\.?\s*[/⁄]\s*{_NUMBER}\s*[A-Za-z]+\.?\s*$",
    "share": rf"^\s*{_NUMBER}\s*%\s*$",
    "range": r"^.+(to|–|—).+$",
    "body": rf"^\s*([Tt][Aa][Bb][Ll][Ee]:.+|{_NUMBER}\s*[A-Za-z\"″”']+\.?)\s*$",
    "colour": r"^\s*#([0-9A-Fa-f]{3}|[0-9A-Fa-f]{6})\s*$",
}
"""Looser than the reader where a pattern cannot say it exactly (units): what the reader takes, the schema takes."""

Schema = dict[str, Any]


def json_schema() -> Schema:
    """A JSON Schema (2020-12) of a pattern file, for completion and checks while typing in editors that know TOML."""
    schema: Schema = {"$schema": "https://json-schema.org/draft/2020-12/schema", "title": "Motifold pattern file"}
    schema.update(_branch_schema(key_tree()))
    return schema


def _branch_schema(branch: Branch) -> Schema:
    key = branch.key
    if key is None or key.kind == "table":
        schema = _table_schema(branch)
    elif key.kind == "tables":
        schema = {"type": "array", "items": _table_schema(branch.below["[]"])}
    elif key.kind == "joins":
        text = {"type": "string"}
        schema = {"oneOf": [text, {"type": "array", "items": {"oneOf": [text, _table_schema(branch.below["[]"])]}}]}
    else:
        schema = _value_schema(key)
    if key:
        schema["description"] = key.says
    return schema


def _table_schema(branch: Branch) -> Schema:
    named = {name: _branch_schema(below) for name, below in branch.below.items() if name != ANY}
    schema: Schema = {"type": "object", "properties": named, "additionalProperties": False}
    if ANY in branch.below:
        schema["additionalProperties"] = _branch_schema(branch.below[ANY])
        schema["minProperties"] = 1
    required = [name for name, below in branch.below.items() if below.key and below.key.required]
    if required:
        schema["required"] = required
    if branch.key and branch.key.needs:
        schema["anyOf"] = [{"required": [name]} for name in branch.key.needs]
    return schema


def _value_schema(key: Key) -> Schema:
    text: Schema = {"type": "string"}
    if key.kind in _TEXT_KINDS:
        schema = dict(text)
        if key.choices:
            schema["enum"] = list(key.choices)
        elif key.kind in _PATTERNS:
            schema["pattern"] = _PATTERNS[key.kind]
    elif key.kind == "texts":
        schema = {"oneOf": [text, {"type": "array", "items": text}]}
    elif key.kind == "passes":
        schema = {"type": "array", "items": {"type": "array", "items": text}}
    elif key.kind == "yes or no":
        schema = {"type": "boolean"}
    elif key.kind == "date":
        schema = {**text, "format": "date"}
    else:
        schema = {"type": "integer" if key.kind == "whole" else "number"}
        if key.low is not None:
            schema["minimum" if key.kind == "whole" or key.low != 0 else "exclusiveMinimum"] = key.low
        if key.high is not None:
            schema["maximum"] = key.high
    if key.kind != "lines":
        schema["examples"] = [tomllib.loads(f"x = {key.example}")["x"]]
    return schema
