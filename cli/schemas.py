"""A JSON Schema for what each verb prints with ``--json``: other programs build on these keys, so they stay.

``python -m motifold.cli.schemas check`` prints one.
"""

from __future__ import annotations

import json
import sys
from typing import Any, Final

Schema = dict[str, Any]

NUMBER: Final[Schema] = {"type": "number"}
COUNT: Final[Schema] = {"type": "integer", "minimum": 0}
TEXT: Final[Schema] = {"type": "string"}
MAYBE_NUMBER: Final[Schema] = {"type": ["number", "null"]}
MAYBE_TEXT: Final[Schema] = {"type": ["string", "null"]}
POINT: Final[Schema] = {"type": "array", "items": NUMBER, "minItems": 2, "maxItems": 2}


def obj(required: dict[str, Schema], optional: dict[str, Schema] | None = None) -> Schema:
    """An object with these keys and no others."""
    return {
        "type": "object",
        "properties": {**required, **(optional or {})},
        "required": list(required),
        "additionalProperties": False,
    }


def each(values: Schema) -> Schema:
    """An object whose keys are names of the file."""
    return {"type": "object", "additionalProperties": values}


def many(items: Schema) -> Schema:
    return {"type": "array", "items": items}


PROBLEMS: Final = many(
    obj(
        {
            "code": TEXT,
            "severity": {"enum": ["error", "warning"]},
            "file": TEXT,
            "line": {"type": ["integer", "null"], "minimum": 1},
            "column": {"type": ["integer", "null"], "minimum": 1},
            "message": TEXT,
            "hint": MAYBE_TEXT,
        }
    )
)

ROUNDS: Final = many(
    obj(
        {
            "label": TEXT,
            "number": {"type": ["integer", "null"], "minimum": 1},
            "side": {"enum": ["RS", "WS"]},
            "yarns": many(TEXT),
            "stitches": COUNT,
            "counts": each(COUNT),
            "parts": each(COUNT),
        }
    )
)

ASSEMBLY: Final = obj(
    {
        "panels": COUNT,
        "seams": COUNT,
        "pieces": COUNT,
        "orientable": {"type": "boolean"},
        "openings": many(obj({"sides": many(TEXT), "girth_cm": MAYBE_NUMBER})),
        "corners": many(obj({"at": many(TEXT), "degrees": NUMBER, "on_opening": {"type": "boolean"}})),
        "passes": many(obj({"seams": many(TEXT), "stitches": COUNT})),
        "gaps": many(obj({"at": many(TEXT)})),
    }
)

CHECK: Final = obj(
    {
        "title": MAYBE_TEXT,
        "terms": {"enum": ["US", "UK", None]},
        "sizes": each(
            obj(
                {
                    "motifs": each(
                        obj(
                            {
                                "shape": TEXT,
                                "rounds": ROUNDS,
                                "sides": many(obj({"name": TEXT, "stitches": COUNT, "counts": each(COUNT)})),
                                "width_cm": MAYBE_NUMBER,
                                "length_cm": MAYBE_NUMBER,
                            }
                        )
                    )
                },
                {"assembly": ASSEMBLY, "edgings": each(obj({"rounds": ROUNDS}))},
            )
        ),
        "problems": PROBLEMS,
    }
)

FIT: Final = obj(
    {"rounds": COUNT, "width_cm": NUMBER, "girth_cm": NUMBER, "ease_cm": NUMBER, "ease_pct": NUMBER, "within": {"type": "boolean"}}
)

GAUGE: Final = obj(
    {
        "per_round_cm": MAYBE_NUMBER, "start_cm": MAYBE_NUMBER, "error_cm": MAYBE_NUMBER, "points": COUNT, "row_cm": MAYBE_NUMBER,
        "stitch_cm": MAYBE_NUMBER, "after_wash": NUMBER, "estimate": {"type": "boolean"},
    }
)  # fmt: skip

EDGING_FIT: Final = obj(
    {
        "size": TEXT, "name": TEXT, "stitches": COUNT, "edge_stitches": COUNT, "edge_cm": NUMBER, "width_cm": NUMBER,
        "flat_stitches": COUNT, "ratio": {"type": "array", "items": COUNT, "minItems": 2, "maxItems": 2},
        "lies": {"enum": ["flat", "flares", "draws in"]},
        "own_gauge": {"type": "boolean"},
    }
)  # fmt: skip

SIZE: Final = obj(
    {
        "measure": MAYBE_TEXT,
        "bodies": many(
            obj(
                {
                    "name": TEXT,
                    "body_cm": NUMBER,
                    "chosen": {"anyOf": [FIT, {"type": "null"}]},
                    "fits": many(FIT),
                    "closer": many({"type": "object", "properties": {"change": TEXT}, "required": ["change"]}),
                },
                {
                    "source": MAYBE_TEXT,
                    "caution": MAYBE_TEXT,
                    "estimate": {"type": "boolean"},
                    "band_cm": {"anyOf": [POINT, {"type": "null"}]},
                    "hook_scale": MAYBE_NUMBER,
                    "across": MAYBE_NUMBER,
                    "hook_mm": MAYBE_NUMBER,
                    "checkpoints": many(obj({"round": COUNT, "width_cm": NUMBER, "unblocked_cm": NUMBER})),
                },
            )
        ),
        "problems": PROBLEMS,
    },
    {"gauge": {"anyOf": [GAUGE, {"type": "null"}]}, "edgings": many(EDGING_FIT)},
)

YARN: Final = obj(
    {
        "sizes": each(
            each(
                obj(
                    {
                        "metres": NUMBER,
                        "grams": MAYBE_NUMBER,
                        "balls": {"type": ["integer", "null"], "minimum": 0},
                        "estimate": {"type": "boolean"},
                        "parts": obj({"motifs": NUMBER, "seams": NUMBER, "edging": NUMBER, "tails": NUMBER}),
                    },
                    {
                        "error_pct": MAYBE_NUMBER,
                        "left_grams": MAYBE_NUMBER,
                        "left_metres": MAYBE_NUMBER,
                        "other": obj({"label": TEXT, "grams": NUMBER, "balls": COUNT, "left_metres": NUMBER}),
                    },
                )
            )
        ),
        "problems": PROBLEMS,
    },
    {
        "margin_pct": NUMBER,
        "colourways": each(each(each(obj({"make": COUNT, "yarns": each(TEXT), "panels": many(TEXT)})))),
        "orders": each(many(obj({"motif": TEXT, "first": TEXT, "less": TEXT, "metres": each(NUMBER), "swapped": each(NUMBER)}))),
    },
)

CHART: Final = obj(
    {
        "unit": {"const": "mm"},
        "pitch": NUMBER,
        "charts": many(
            {
                "type": "object",
                "properties": {
                    "motif": TEXT,
                    "size": TEXT,
                    "symbols": many(
                        {
                            "type": "object",
                            "properties": {
                                "id": TEXT,
                                "stitch": TEXT,
                                "round": {"type": "integer", "minimum": 0},
                                "index": {"type": "integer", "minimum": 1},
                                "yarn": MAYBE_TEXT,
                                "into": many(TEXT),
                                "foot": POINT,
                                "head": POINT,
                                "group": MAYBE_TEXT,
                                "touches": many(TEXT),
                                "outlines": many(many(POINT)),
                            },
                            "required": [
                                "id", "stitch", "round", "index", "yarn", "into", "foot", "head", "group", "touches", "outlines",
                            ],
                        }
                    ),
                },
                "required": ["motif", "size", "symbols"],
            }
        ),
        "problems": PROBLEMS,
    }
)  # fmt: skip

KEY: Final = obj(
    {
        "unit": {"const": "mm"},
        "pitch": NUMBER,
        "symbols": many(
            obj(
                {
                    "id": TEXT,
                    "stitch": MAYBE_TEXT,
                    "names": obj({"US": obj({"short": TEXT, "full": TEXT}), "UK": obj({"short": TEXT, "full": TEXT})}),
                    "outlines": many(many(POINT)),
                }
            )
        ),
        "problems": PROBLEMS,
    }
)

SCHEMATIC: Final = obj(
    {
        "size": MAYBE_TEXT,
        "panels": many(obj({"name": TEXT, "outline": many(POINT)})),
        "seams": many(
            obj({"name": TEXT, "sides": many(TEXT), "pass": {"type": ["integer", "null"]}, "order": {"type": ["integer", "null"]}})
        ),
        "measures": many(obj({"name": TEXT, "cm": NUMBER, "estimate": {"type": "boolean"}})),
        "edgings": many(
            obj(
                {
                    "name": TEXT,
                    "opening": {"type": "integer", "minimum": 1},
                    "depth_cm": NUMBER,
                    "turned_back": {"type": "boolean"},
                    "estimate": {"type": "boolean"},
                }
            )
        ),
        "problems": PROBLEMS,
    }
)

SCHEMAS: Final = {"check": CHECK, "size": SIZE, "yarn": YARN, "chart": CHART, "key": KEY, "schematic": SCHEMATIC}


def schema_of(verb: str) -> Schema:
    """The JSON Schema (2020-12) of ``motifold VERB --json``.

    >>> schema_of("size")["required"]
    ['measure', 'bodies', 'problems']
    """
    return {"$schema": "https://json-schema.org/draft/2020-12/schema", "title": f"motifold {verb} --json", **SCHEMAS[verb]}


if __name__ == "__main__":
    print(json.dumps(schema_of(sys.argv[1]), indent=1))
