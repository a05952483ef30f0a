"""One table of keys: what it lists is read, and what is read is listed."""

from __future__ import annotations

import json
import tomllib

import jsonschema
import pytest

from motifold.render.pattern import read_pattern
from motifold.render.pattern.keys import KEYS, describe_keys, json_schema


def test_every_key_has_a_row_with_its_type_and_example() -> None:
    table = describe_keys()
    assert table.count("\n") == len(KEYS) + 2
    for key in KEYS:
        assert f"| `{key.path.replace('*', 'NAME')}` |" in table


def test_every_example_is_toml_of_its_type() -> None:
    for key in KEYS:
        if not key.example.startswith("["):
            value = tomllib.loads(f"x = {key.example}")["x"]
            assert isinstance(value, str) == (key.kind not in ("whole", "number", "yes or no", "table", "tables"))


def test_no_key_stands_in_the_table_twice_and_parents_come_first() -> None:
    paths = [key.path for key in KEYS]
    assert len(paths) == len(set(paths))
    for key in KEYS:
        parent = key.path.replace("[]", "").rpartition(".")[0]
        assert not parent or parent in paths[: paths.index(key.path)]


def test_the_good_file_has_every_table(good: str) -> None:
    data = tomllib.loads(good)
    assert set(data) == {key.path for key in KEYS if "." not in key.path}


def test_the_schema_is_a_schema_and_takes_the_good_file(good: str) -> None:
    schema = json_schema()
    jsonschema.Draft202012Validator.check_schema(schema)
    jsonschema.validate(tomllib.loads(good), schema)
    assert json.loads(json.dumps(schema)) == schema


@pytest.mark.parametrize(
    ("before", "after"),
    [
        ('hook = "4 mm"', "hook = 4"),
        ('hook = "4 mm"', 'hok = "4 mm"'),
        ('hook = "4 mm"', 'hook = "4,5 mm"'),
        ('terms = "US"\n', ""),
        ('terms = "US"', 'terms = "us"'),
        ("weight = 3", "weight = 9"),
        ('hex = "#8c9aa5"', 'hex = "fog"'),
        ("across = 2", "across = 0"),
        ("rounds = 8", "rounds = 0"),
        ('ease = "0 % to 12 %"', 'ease = "5 %"'),
        ('Small = "42 cm"', "Small = 42"),
        ('means = "5 dc in same st"', 'name = "petal"'),
        ('rows = "Row 1: Ch 3, 2 dc in ring."\n', ""),
        ('passes = [["F1.left"], ["B1.top"]]', 'passes = ["F1.left"]'),
        ("[gauge]", "[tension]"),
    ],
)
def test_the_schema_refuses_what_the_reader_refuses(recorder: object, good: str, before: str, after: str) -> None:
    source = good.replace(before, after, 1)
    assert any(problem.severity == "error" for problem in read_pattern("x", source.encode()).problems)
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(tomllib.loads(source), json_schema())
