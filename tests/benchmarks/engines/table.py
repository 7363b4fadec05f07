"""The engines that set the same sheets, and which of them are installed."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from importlib import import_module
from importlib.util import find_spec
from typing import cast

from tests.benchmarks.sheets import Material


@dataclass(frozen=True, slots=True)
class Engine:
    """An engine by the module here and the function in it that makes the file. `package` is
    what it needs; `does_all` is false for the floor, which is told every place."""

    name: str
    module: str
    package: str
    function: str = "make"
    does_all: bool = True

    @property
    def is_installed(self) -> bool:
        """True where its package is."""
        return find_spec(self.package) is not None

    @property
    def is_tagged(self) -> bool:
        """True where the file carries its structure."""
        return self.function == "make_tagged"

    def make(self) -> Callable[[Material], bytes]:
        """The function; its package is imported now."""
        module = import_module(f"tests.benchmarks.engines.{self.module}")
        return cast("Callable[[Material], bytes]", getattr(module, self.function))


FLOOR = Engine("floor: raw reportlab canvas", "floor", "reportlab", does_all=False)
ENGINES = (
    FLOOR,
    Engine("our engine", "ours", "typeset"),
    Engine("our engine, tagged", "ours", "typeset", "make_tagged"),
    Engine("reportlab platypus", "platypus", "reportlab"),
    Engine("Typst", "by_typst", "typst"),
    Engine("Typst, tagged", "by_typst", "typst", "make_tagged"),
    Engine("fpdf2", "by_fpdf2", "fpdf"),
    Engine("WeasyPrint", "by_weasyprint", "weasyprint"),
)
