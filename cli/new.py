"""``motifold new``: a commented pattern file to start from."""

from __future__ import annotations

import os
import re
import sys
from importlib import resources
from pathlib import Path

import click

from motifold.samples import CONSTRUCTIONS

LONGEST_NAME = 60
"""Letters of a title that go into the name of its file: disks take no names as long as titles can be."""


@click.command("new", epilog="Example: motifold new hat --title 'My Harbour Hat'")
@click.argument("construction", required=False)
@click.option("--title", help="The pattern's name.")
@click.option("-o", "--output", metavar="FILE", help="The file to write; without it, named after the title or the construction.")
def command(construction: str | None, title: str | None, output: str | None) -> None:
    """Write a pattern file to start from: whole, with comments, and good from the first check on. Nothing is ever written over.

    CONSTRUCTION is what you want to make; without it you are asked.
    """
    from motifold.render.pattern.starter import starter

    chosen = _chosen(construction)
    if title is not None and not title.strip():
        raise click.UsageError("the title is empty.")
    title = " ".join(title.split()) if title else None
    path = Path(output) if output else Path(f"{_file_name(title if title else f'my {chosen}')}.toml")
    if path.suffix.lower() != ".toml":
        raise click.UsageError(f"'{path}': a pattern file's name ends in .toml.")
    sample = (resources.files("motifold.samples") / f"{CONSTRUCTIONS[chosen]}.toml").read_text(encoding="utf-8")
    text = starter(sample, path.name, title)
    _write(path, text)
    click.echo(f"wrote {path}")
    click.echo(f"next: motifold check {path}, then motifold booklet {path}")


def _chosen(construction: str | None) -> str:
    names = list(CONSTRUCTIONS)
    if construction is None:
        if not sys.stdin.isatty():
            raise click.UsageError(f"what is to be made? One of: {', '.join(names)}.")
        click.echo("What do you want to make?", err=True)
        picked: str = click.prompt("  " + ", ".join(names), type=click.Choice(names, case_sensitive=False), show_choices=False, err=True)
        return picked.lower()
    if construction.lower() in CONSTRUCTIONS:
        return construction.lower()
    from difflib import get_close_matches

    near = get_close_matches(construction.lower(), names, n=1)
    hint = f"Is '{near[0]}' meant?" if near else f"There are: {', '.join(names)}."
    raise click.UsageError(f"there is no '{construction}' to start from. {hint}")


def _file_name(title: str) -> str:
    """"My Harbour Hat" -> "my-harbour-hat"."""
    return re.sub(r"[^\w]+", "-", title.lower()).strip("-")[:LONGEST_NAME].strip("-") or "pattern"


def _write(path: Path, text: str) -> None:
    """Whole or not at all, and never over a file that is there: written beside, then linked to its name, which fails where there is one."""
    beside = path.with_name(f".{path.name}.{os.getpid()}.part")
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        beside.write_text(text, encoding="utf-8")
        try:
            os.link(beside, path)
        except FileExistsError:
            raise click.UsageError(f"'{path}' is there already, and is left as it is: choose another name with -o.") from None
        except OSError:  # a disk without links
            with path.open("x", encoding="utf-8") as stream:
                stream.write(text)
    except FileExistsError:
        raise click.UsageError(f"'{path}' is there already, and is left as it is: choose another name with -o.") from None
    except OSError as error:
        raise click.UsageError(f"cannot write '{path}': {(error.strerror or str(error)).lower()}.") from None
    finally:
        beside.unlink(missing_ok=True)
