"""The tables in DEVELOPERS.md are those of the code. Run as a program, this writes them anew."""

from __future__ import annotations

import re
from pathlib import Path

from motifold.render.pattern.catalogue import describe_codes
from motifold.render.pattern.keys import describe_keys

PAGE = Path(__file__).parents[1] / "DEVELOPERS.md"


def with_tables(text: str) -> str:
    """The page with its generated tables as the code has them now."""
    for name, table in (("keys", describe_keys()), ("codes", describe_codes())):
        text = re.sub(rf"<!-- {name} -->\n.*?<!-- end -->", lambda _: f"<!-- {name} -->\n{table.strip()}\n<!-- end -->", text, flags=re.S)  # noqa: B023
    return text


def test_the_tables_are_those_of_the_code() -> None:
    text = PAGE.read_text(encoding="utf-8")
    assert text == with_tables(text), "run: python tests/test_developers.py"


if __name__ == "__main__":
    PAGE.write_text(with_tables(PAGE.read_text(encoding="utf-8")), encoding="utf-8")
