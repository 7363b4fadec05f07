"""A class list on the command line: what is made, what is refused, and where no name may stand."""

from __future__ import annotations

from pathlib import Path

import pytest
from pypdf import PdfReader

from typeset.command import DONE, WRONG, main

WEEK = "week: Ropes\nclass: Terns\nlayout: standard\nlessons: [monday]\n"
MONDAY = """\
lesson: Floats
day: Monday
sides: 1
aim: I can multiply.
stages:
  - practise:
      - set: A
        problems:
          - structure: equal groups
            groups: 3..9 crates
            each: 12..48 step 6 floats
            space: lines
            lines: 12
            story: Leila packs {groups} with {each} each. How many floats is that?
          - structure: sharing
            total: 84 mackerel
            groups: 7 buckets
            lines: 8
            story: Rhys shares {total} out into {groups}. How many are in each?
"""


@pytest.fixture
def week(tmp_path: Path) -> Path:
    """A lesson of two problems, so that it is made many times over in a moment."""
    folder = tmp_path / "ropes"
    folder.mkdir()
    (folder / "week.yaml").write_text(WEEK, encoding="utf-8")
    (folder / "monday.yaml").write_text(MONDAY, encoding="utf-8")
    return folder


CLASS = "name,version,layout\nAsha,,\nTomasz,support,\nImogen,,large-print-18\nKofi B,,\n"


@pytest.fixture
def class_list(tmp_path: Path) -> Path:
    file = tmp_path / "terns.csv"
    file.write_text(CLASS, encoding="utf-8")
    return file


@pytest.mark.parametrize(("vary", "part"), [([], ""), (["--vary"], "-varied")])
def test_a_class_list_makes_named_sets_and_grids(
    vary: list[str],
    part: str,
    week: Path,
    class_list: Path,
    tmp_path: Path,
    capsys: pytest.CaptureFixture[str],
) -> None:
    to = tmp_path / "to"
    make = ["make", str(week), "--to", str(to), "--class", str(class_list)]
    assert main([*make, "--lesson", "monday", *vary]) == DONE
    told = capsys.readouterr().out
    files = {file.name for file in to.iterdir()}
    named, grid = f"monday-named-set{part}.pdf", f"monday-answer-grid{part}.pdf"
    assert files == {named, grid, "how-to-print.pdf", "made.json"}
    assert "Sheets with the pupils\u2019 names: A4, both sides, flipped on the long edge;" in told
    record = (to / "made.json").read_text(encoding="utf-8")
    for name in ("Asha", "Imogen", "Kofi", "terns"):
        assert name not in record and name not in told and not any(name in f for f in files)

    assert main(["proof", str(to), "--class", str(class_list)]) == DONE
    assert "3 documents, no findings" in capsys.readouterr().out
    assert main(["proof", str(to)]) == DONE
    read = capsys.readouterr()
    assert "1 document, no findings" in read.out and f"{named}: not read" in read.err
    assert main(["proof", str(to / named)]) == WRONG
    assert "say --class FILE" in capsys.readouterr().err

    class_list.write_text(CLASS.replace("Asha", "Femi"), encoding="utf-8")
    assert main(["proof", str(to), "--class", str(class_list)]) == WRONG
    assert "the name line prints 'Asha' where 'Femi' should be" in capsys.readouterr().err


def test_a_name_changed_leaves_every_number(week: Path, class_list: Path, tmp_path: Path) -> None:
    def words(to: Path) -> str:
        reader = PdfReader(to / "monday-named-set-varied.pdf")
        return " ".join(page.extract_text() for page in reader.pages)

    make = ["make", str(week), "--vary", "--class", str(class_list), "--to"]
    assert main([*make, str(tmp_path / "one")]) == DONE
    class_list.write_text(CLASS.replace("Kofi B", "Idris"), encoding="utf-8")
    assert main([*make, str(tmp_path / "two")]) == DONE
    assert words(tmp_path / "one").replace("Kofi B", "Idris") == words(tmp_path / "two")


def test_a_bad_class_list_is_refused_whole_and_nothing_is_made(
    week: Path, class_list: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    class_list.write_text(
        "name,version,layout\nAsha,,standart\nЮля,,\nasha,,\nNell,,paper-saving\n,,\nRhys,hard,\n"
        "Imogen Imogen Imogen,,large-print-24\n",
        encoding="utf-8",
    )
    to = tmp_path / "to"
    assert main(["make", str(week), "--to", str(to), "--class", str(class_list)]) == WRONG
    told = capsys.readouterr().err
    for part in (
        ":2:1: there is no layout called 'standart'; did you mean 'standard'?",
        ":3:1: the regular font has no 'Ю'",
        ":4:1: the name stands in line 2 already",
        ":7:1: unknown version 'hard'",
        ":8:1: the name is longer than the name line of the layout 'large-print-24'",
        "5 complaints",
    ):
        assert part in told
    assert not to.exists()


def test_a_version_without_variation_is_refused(
    week: Path, class_list: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """A week of open tasks alone has no numbers to vary."""
    (week / "monday.yaml").write_text(
        "lesson: Kites\nday: Monday\nsides: 1\naim: I can explain.\nstages:\n"
        "  - extension:\n      title: Kites\n      story: Which kite flies best, and why?\n"
    )
    to = tmp_path / "to"
    assert main(["make", str(week), "--to", str(to), "--class", str(class_list)]) == WRONG
    told = capsys.readouterr().err
    assert "terns.csv:3:1: no number of the week differs in the version 'support'" in told
    assert not to.exists()


@pytest.mark.parametrize(
    ("extra", "told"),
    [
        (["--vary"], "--vary goes with --class"),
        (["--class", "c.csv", "--only", "task-sheet"], "--only does not go with --class"),
        (["--class", "c.csv", "--version", "core"], "--version does not go with --class"),
        (["--class", "c.csv", "--layout", "a", "--layout", "b"], "one --layout can be given"),
    ],
)
def test_options_that_do_not_go_together_are_misuse(
    extra: list[str], told: str, week: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    with pytest.raises(SystemExit) as ended:
        main(["make", str(week), *extra])
    assert ended.value.code == 2
    assert told in capsys.readouterr().err
