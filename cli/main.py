"""The command ``motifold``: its verbs, each loaded only when it is used, so that ``--help`` pays for none of them."""

from __future__ import annotations

import gc
import importlib
import os
from typing import Final

import click

VERBS: Final = {
    "new": "A commented pattern file to start from.",
    "check": "The proof: counts round by round, and every problem at its place.",
    "chart": "Stitch charts of the motifs, as SVG, PDF or PNG.",
    "schematic": "The net, each seam pass and the finished thing, with measurements.",
    "size": "The fit table: rounds, width, girth, ease, and what would come closer.",
    "yarn": "Metres, grams and balls of each yarn for each size.",
    "words": "The written pattern, in US or UK terms.",
    "booklet": "The whole pattern as a printable PDF.",
    "key": "The symbol key: every symbol, or those that one pattern uses.",
    "completion": "What makes the Tab key complete verbs, options and names.",
}


class VerbGroup(click.Group):
    """Finds a verb's command in the module of the same name."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        return list(VERBS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        if cmd_name not in VERBS:
            return None
        command = importlib.import_module(f"motifold.cli.{cmd_name}").command
        assert isinstance(command, click.Command)
        return command

    def resolve_command(self, ctx: click.Context, args: list[str]) -> tuple[str | None, click.Command | None, list[str]]:
        if args and args[0] not in VERBS and not args[0].startswith("-"):
            from difflib import get_close_matches

            near = get_close_matches(args[0], VERBS, n=1)
            ctx.fail(f"there is no verb '{args[0]}'." + (f" Is '{near[0]}' meant?" if near else f" The verbs are: {', '.join(VERBS)}."))
        return super().resolve_command(ctx, args)

    def invoke(self, ctx: click.Context) -> object:
        """Run the verb; a fault of our own is told in one line, never as a traceback (set MOTIFOLD_TRACEBACK to see it)."""
        # Data here is frozen and holds no cycles: looking for them after every 700 new objects takes a tenth of a run and finds nothing.
        gc.set_threshold(200_000, 50, 50)
        try:
            return super().invoke(ctx)
        except (click.ClickException, click.exceptions.Exit, click.Abort):
            raise
        except BrokenPipeError:
            raise SystemExit(0) from None
        except (Exception, RecursionError) as fault:
            if os.environ.get("MOTIFOLD_TRACEBACK"):
                raise
            click.echo(f"motifold: a fault of its own, not of the pattern: {type(fault).__name__}: {fault}", err=True)
            click.echo("Nothing was written. Please report it with the pattern file.", err=True)
            raise SystemExit(1) from None

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        with formatter.section("Verbs"):
            formatter.write_dl(list(VERBS.items()))


@click.command(cls=VerbGroup, subcommand_metavar="VERB PATTERN [OPTIONS]", context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(package_name="motifold", message="motifold %(version)s")
def main() -> None:
    """From one crochet pattern file: proof, charts, schematics, sizes, yarn, words and the booklet.

    Exit status: 0 good, 1 the pattern has problems, 2 the command line is wrong.
    """
