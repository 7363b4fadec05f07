"""Every bad file gives exactly the messages that stand beside it, all of them, in order."""

from pathlib import Path

import pytest

from typeset.arithmetic.building import solve_week
from typeset.errors import ContentError
from typeset.reading.week import read_lesson_alone, read_week

BAD = Path(__file__).parents[1] / "bad"
EXPECTED = sorted(BAD.rglob("*.txt"))


def subject(expected: Path) -> Path:
    """What the messages are about: NAME.yaml beside NAME.txt, or the folder NAME."""
    file = expected.with_suffix(".yaml")
    return file if file.exists() else expected.with_suffix("")


def messages(bad: Path) -> list[str]:
    """Every complaint about the bad file or folder, as `typeset check` gives them."""
    try:
        week = read_week(bad) if bad.is_dir() else read_lesson_alone(bad)
        solve_week(week)
    except ContentError as error:
        return [str(each).removeprefix(f"{bad.parent}/") for each in error.complaints]
    return []


@pytest.mark.parametrize("expected", EXPECTED, ids=lambda each: str(each.relative_to(BAD).stem))
def test_bad_file_gives_its_messages(expected: Path) -> None:
    assert messages(subject(expected)) == expected.read_text(encoding="utf-8").splitlines()


def test_there_are_enough_bad_files_and_none_without_messages() -> None:
    assert len(EXPECTED) >= 45
    files = {each for each in BAD.rglob("*.yaml") if not (each.parent / "week.yaml").exists()}
    folders = {each.parent for each in BAD.rglob("week.yaml")}
    told = {subject(each) for each in EXPECTED}
    assert (files | folders) - {BAD / "no-week-file" / "monday.yaml"} <= told
