"""The two files that every engine sets in: those of our own family."""

from __future__ import annotations

from importlib.resources import files
from pathlib import Path

FOLDER = Path(str(files("fontpkg_atkinson_hyperlegible") / "files"))
REGULAR = FOLDER / "AtkinsonHyperlegible-Regular.ttf"
BOLD = FOLDER / "AtkinsonHyperlegible-Bold.ttf"
FAMILY = "Atkinson Hyperlegible"
