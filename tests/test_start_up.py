"""A verb loads what it needs and no more; the times are in `tests/benchmarks/start_up.py`."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from typeset.arithmetic.families import FAMILIES
from typeset.command import DONE, VERBS
from typeset.reading.stages import problems_of
from typeset.reading.week import read_week

WEEK = Path(__file__).parents[1] / "content" / "harbour-festival"
# Packages that take as long to load as all that help needs.
PACKAGES = ("PIL", "jinja2", "pdfminer", "pdfplumber", "pydantic", "pypdf", "reportlab", "rich")
# What a run has loaded is written to where a test can tell it from what a verb says.
RUN = """
import sys
from typeset.command import main
try:
    code = main(sys.argv[1:])
except SystemExit as ended:
    code = ended.code
sys.stderr.write("loaded: " + " ".join(sorted(sys.modules)))
sys.exit(code)
"""


def loaded_by(*arguments: str) -> tuple[int, set[str]]:
    """The exit code of the command in a Python of its own, and all modules that it has loaded."""
    ran = subprocess.run(
        [sys.executable, "-c", RUN, *arguments], capture_output=True, text=True, check=False
    )
    return ran.returncode, set(ran.stderr.rpartition("loaded: ")[2].split())


HELP = [("--help",), ("--version",), *((verb, "--help") for verb in VERBS)]
MISUSE = [(), ("frob",), ("make",), ("check", "--frob", "x")]


@pytest.mark.parametrize("arguments", [*HELP, *MISUSE], ids=" ".join)
def test_help_and_misuse_load_parsers_alone(arguments: tuple[str, ...]) -> None:
    code, loaded = loaded_by(*arguments)
    assert code == (DONE if arguments in HELP else 2)
    assert "typeset.command" in loaded
    assert not loaded & {*PACKAGES, "yaml", "dataclasses", "typeset.errors"}


def test_one_verb_is_loaded_where_one_is_asked_for() -> None:
    _code, loaded = loaded_by("check", "--help")
    assert {f"typeset.verbs.{verb}" for verb in VERBS} & loaded == {"typeset.verbs.check"}


@pytest.fixture(scope="module")
def checked() -> set[str]:
    """All that is loaded to check the demonstration week."""
    code, loaded = loaded_by("check", str(WEEK))
    assert code == DONE
    return loaded


def test_a_check_loads_nothing_that_makes_or_reads_pdfs(checked: set[str]) -> None:
    assert not checked & set(PACKAGES) - {"pydantic"}
    steps = {name.split(".")[1] for name in checked if name.startswith("typeset.")}
    assert not steps & {"setting", "proofing", "press", "posting"}


def test_a_build_with_nothing_changed_loads_nothing_that_makes_or_reads_pdfs(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "kept"))
    week = tmp_path / "stalls"
    assert loaded_by("new", str(week))[0] == DONE
    order = ("make", str(week), "--to", str(tmp_path / "printed"))
    code, loaded = loaded_by(*order)
    assert code == DONE
    code, loaded = loaded_by(*order)
    assert code == DONE
    assert not loaded & set(PACKAGES) - {"jinja2", "pydantic", "rich"}
    steps = {".".join(name.split(".")[:2]) for name in loaded}
    assert not steps & {"typeset.setting"}


def test_a_check_loads_the_families_of_its_week_alone(checked: set[str]) -> None:
    stages = (stage for lesson in read_week(WEEK).lessons for stage in lesson.stages)
    used = {problem.structure for stage in stages for problem in problems_of(stage)}
    assert 10 < len(used) < len(FAMILIES) - 10
    modules = {name: type(family).__module__ for name, family in FAMILIES.items()}
    # Two families may share a module.
    wanted = {modules[name] for name in used}
    assert checked & set(modules.values()) == wanted
    assert "typeset.arithmetic.families.elapsed_view" not in checked
