"""Options of the test run, and the demonstration week made once for all tests that read it."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import settings

# The ordinary run is the same every time; the longer runs on request draw other examples.
settings.register_profile("the same every time", derandomize=True, deadline=None)
settings.load_profile("the same every time")

ROOT = Path(__file__).parents[1]


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption(
        "--remake-samples",
        action="store_true",
        help="write samples/ anew from the demonstration week; look at every page afterwards",
    )


@pytest.fixture(scope="session", autouse=True)
def _kept_for_this_run_alone(tmp_path_factory: pytest.TempPathFactory) -> Iterator[None]:
    """Commands keep what they make in the user's folder; those of the tests in one of their own."""
    with pytest.MonkeyPatch.context() as patch:
        for variable in ("XDG_CACHE_HOME", "LOCALAPPDATA"):
            patch.setenv(variable, str(tmp_path_factory.mktemp("kept")))
        yield


@pytest.fixture(scope="session")
def demonstration_week() -> Path:
    """The content of the demonstration week."""
    return ROOT / "content" / "harbour-festival"


@pytest.fixture(scope="session")
def made_week(demonstration_week: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The folder of the demonstration week's documents, made and proofed."""
    from typeset.press.making import Order, make_week

    to = tmp_path_factory.mktemp("printed") / "harbour-festival"
    results = make_week(Order(demonstration_week, to))
    assert [finding for result in results for finding in result.findings] == []
    return to
