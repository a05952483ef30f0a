"""What ``--json`` prints keeps to its schema, for every sample."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

import jsonschema
import pytest
from click.testing import Result

from motifold.cli.schemas import SCHEMAS, schema_of

SAMPLES = sorted((Path(__file__).parents[2] / "samples").glob("*.toml"))


@pytest.mark.parametrize("verb", sorted(SCHEMAS))
def test_each_schema_is_one(verb: str) -> None:
    jsonschema.Draft202012Validator.check_schema(schema_of(verb))


@pytest.mark.parametrize("sample", SAMPLES, ids=lambda path: path.stem)
@pytest.mark.parametrize("verb", sorted(SCHEMAS))
def test_every_sample_keeps_to_the_schema(motifold: Callable[..., Result], verb: str, sample: Path) -> None:
    content = json.loads(motifold(verb, sample, "--json").output)
    jsonschema.validate(content, schema_of(verb))


@pytest.mark.parametrize("verb", sorted(SCHEMAS))
@pytest.mark.parametrize("text", ["", "[pattern", "[pattern]\ntitle = 3\n", "[pattern]\ntitle = 'x'\nterms = 'US'\n"])
def test_so_does_a_file_that_is_no_pattern(motifold: Callable[..., Result], tmp_path: Path, verb: str, text: str) -> None:
    path = tmp_path / "bad.toml"
    path.write_text(text, encoding="utf-8")
    result = motifold(verb, path, "--json")
    assert result.exit_code == 1
    content = json.loads(result.output)
    jsonschema.validate(content, schema_of(verb))
    assert content["problems"]
