"""``motifold completion``: verbs, options and names completed by the Tab key."""

from __future__ import annotations

from typing import Final

import click
from click.shell_completion import get_completion_class

SHELLS: Final = {
    "bash": '  eval "$(motifold completion bash)"    in ~/.bashrc',
    "zsh": '  eval "$(motifold completion zsh)"     in ~/.zshrc',
    "fish": "  motifold completion fish | source    in ~/.config/fish/config.fish",
}


@click.command("completion", epilog="\b\nOne line, once, in the file that your shell reads at its start:\n" + "\n".join(SHELLS.values()))
@click.argument("shell", type=click.Choice(list(SHELLS)))
def command(shell: str) -> None:
    """Print what makes the Tab key complete verbs, options, motifs and sizes in this shell."""
    from motifold.cli.main import main

    kind = get_completion_class(shell)
    assert kind is not None
    click.echo(kind(main, {}, "motifold", "_MOTIFOLD_COMPLETE").source())
