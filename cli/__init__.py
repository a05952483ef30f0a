"""What is typed and printed: one small file a verb; no craft and no drawing in it."""

from motifold.cli.main import main

__all__ = ["main"]
