"""The package keeps its own rules: one-way imports, short files, exact arithmetic, true pages."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
PACKAGE = ROOT / "typeset"
# Each step may import itself and what stands before it.
ORDER = (
    "errors",
    "quantities",
    "reading",
    "arithmetic",
    "drawing",
    "setting",
    "documents",
    "proofing",
    "posting",
    "press",
    "terminal",
    "verbs",
    "command",
)
SOURCES = sorted(PACKAGE.rglob("*.py"))
MOST_LINES = 400
CARD = {
    "README.md",
    "DEVELOPERS.md",
    "pyproject.toml",
    "typeset",
    "layouts",
    "content",
    "tests",
    "samples",
}


def imports_of(file: Path) -> Iterator[str]:
    """The steps of our own that a file imports from, wherever in the file."""
    for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
        names: list[str] = []
        if isinstance(node, ast.ImportFrom) and node.module:
            names = [node.module]
            if node.module == "typeset":
                names = [f"typeset.{alias.name}" for alias in node.names]
        elif isinstance(node, ast.Import):
            names = [alias.name for alias in node.names]
        for name in names:
            parts = name.split(".")
            if parts[0] == "typeset" and len(parts) > 1:
                yield parts[1]


def step_of(file: Path) -> str:
    return file.relative_to(PACKAGE).parts[0].removesuffix(".py")


@pytest.mark.parametrize("file", SOURCES, ids=lambda file: str(file.relative_to(PACKAGE)))
def test_imports_go_one_way(file: Path) -> None:
    step = step_of(file)
    if step in ("__init__", "__main__"):
        return
    later = [name for name in imports_of(file) if name in ORDER[ORDER.index(step) + 1 :]]
    assert later == []


def test_posting_knows_nothing_of_how_a_pdf_is_made() -> None:
    files = (PACKAGE / "posting").rglob("*.py")
    assert {name for file in files for name in imports_of(file)} == {"errors", "posting", "reading"}


def test_every_step_has_its_place_in_the_order() -> None:
    steps = {step_of(file) for file in SOURCES} - {"__init__", "__main__"}
    assert steps == set(ORDER)


@pytest.mark.parametrize("file", SOURCES, ids=lambda file: str(file.relative_to(PACKAGE)))
def test_files_are_short(file: Path) -> None:
    assert len(file.read_text(encoding="utf-8").splitlines()) <= MOST_LINES


@pytest.mark.parametrize("step", ["quantities", "arithmetic"])
def test_no_float_touches_an_answer(step: str) -> None:
    for file in (PACKAGE / step).rglob("*.py"):
        for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
            is_float = isinstance(node, ast.Constant) and isinstance(node.value, float)
            is_call = (
                isinstance(node, ast.Call)
                and isinstance(node.func, ast.Name)
                and node.func.id in ("float", "round")
            )
            assert not is_float and not is_call, f"{file}:{getattr(node, 'lineno', 0)}"


def test_the_top_level_is_the_design_card() -> None:
    there = {path.name for path in ROOT.iterdir() if not path.name.startswith(".")}
    made_by_tools = {"printed", "dist", "build"}
    assert there - made_by_tools <= CARD
    assert there >= CARD


def test_every_folder_is_named_in_the_developers_page() -> None:
    page = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    folders = {path.name for path in PACKAGE.iterdir() if (path / "__init__.py").is_file()}
    named = set(re.findall(r"`typeset/(\w+)/`", page))
    assert named == folders


def test_the_readme_names_every_structure() -> None:
    from typeset.arithmetic.families import FAMILIES

    readme = (ROOT / "README.md").read_text(encoding="utf-8")
    assert [name for name in FAMILIES if f"| `{name}` |" not in readme] == []
