"""What is installed: one name, typed, with the samples in it."""

from __future__ import annotations

import importlib.metadata
import importlib.resources
import subprocess
import sys


def test_the_samples_and_the_marks_of_typed_packages_are_installed() -> None:
    samples = {path.name for path in importlib.resources.files("motifold.samples").iterdir()}
    assert {"lighthouse-basket.toml", "tidepool-coaster.toml"} <= samples
    for package in ("motifold.cli", "motifold.render", "motifold.symbols", "motifold.samples"):
        assert (importlib.resources.files(package) / "py.typed").is_file()


def test_the_version_is_that_of_the_installed_package() -> None:
    told = subprocess.run([sys.executable, "-m", "motifold.cli", "--version"], capture_output=True, text=True, check=True).stdout
    assert told.split() == ["motifold", importlib.metadata.version("motifold")]


def test_check_loads_no_slow_library() -> None:
    """``check`` and ``--help`` must not pay for drawing or unit libraries."""
    slow = "{'pint', 'reportlab', 'cairosvg', 'shapely', 'numpy', 'pikepdf', 'pypdf', 'svgwrite', 'fontTools'}"
    code = (
        "import sys; sys.argv = ['motifold', 'check', sys.argv[1]]\n"
        "from motifold.cli import main\n"
        "try:\n    main()\nexcept SystemExit:\n    pass\n"
        f"print('LOADED', sorted({slow} & {{name.split('.')[0] for name in sys.modules}}))"
    )
    with importlib.resources.as_file(importlib.resources.files("motifold.samples") / "lighthouse-basket.toml") as sample:
        out = subprocess.run([sys.executable, "-c", code, str(sample)], capture_output=True, text=True, check=True).stdout
    assert out.strip().endswith("LOADED []")
