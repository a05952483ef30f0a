"""``python -m motifold.cli``."""

from motifold.cli.main import main

main()
