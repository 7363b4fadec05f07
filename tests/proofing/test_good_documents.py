"""Right documents give no finding; documents made from other content do."""

from __future__ import annotations

import ast
from io import BytesIO
from pathlib import Path
from typing import Any

import pdfplumber
import pytest

import typeset.proofing
from tests.proofing.making import BOOKLET, WEEK, made_short_week, made_week, make, sheet_of
from tests.proofing.planting import Lines, redraw, runs_of
from tests.proofing.random_weeks import random_week
from typeset.arithmetic.building import solve_week
from typeset.arithmetic.lessons import SolvedWeek
from typeset.documents.layout_files import find_layout
from typeset.documents.paper import paper_named
from typeset.proofing import proof_sheet
from typeset.reading.new_week import start_week
from typeset.reading.week import read_week


@pytest.mark.parametrize("name", ["tuesday", "wednesday", BOOKLET])
def test_the_little_week_has_no_finding(name: str) -> None:
    assert made_week().proof(name) == []


def test_the_starter_of_a_new_week_has_no_finding(tmp_path: Path) -> None:
    start_week(tmp_path / "spring")
    week = read_week(tmp_path / "spring")
    made = make(solve_week(week), find_layout(week.layout, week.folder))
    assert [str(each) for name in made.pdfs for each in made.proof(name)] == []


@pytest.mark.parametrize("seed", range(3))
def test_random_weeks_have_no_finding(seed: int, tmp_path: Path) -> None:
    random_week(tmp_path, seed)
    week = read_week(tmp_path)
    solved = solve_week(week)
    layout = find_layout(week.layout, tmp_path)
    lesson = solved.lessons[0]
    pdf, asked = sheet_of(solved, lesson, layout)
    assert [str(each) for each in proof_sheet(pdf, "s.pdf", solved, asked, layout)] == []


LAYOUTS: dict[str, dict[str, Any]] = {
    "tinted, lying": {"tint": (1.0, 0.98, 0.92), "orientation": "landscape"},
    "large print": {"type_size": {"largest": 20.0, "smallest": 18.0}, "leading": 1.5},
    "larger rooms": {"answer_spaces": {"ruled_mm": 10.0, "square_mm": 10.0, "bar_model_mm": 40.0}},
    "small paper": {"upright": paper_named("A5"), "margins": {"left": 12.0, "right": 11.0}},
}


@pytest.mark.parametrize("name", LAYOUTS)
def test_other_layouts_have_no_finding(name: str) -> None:
    made = made_week()
    layout = made.layout
    for key, value in LAYOUTS[name].items():
        own = getattr(layout, key)
        value = own.model_copy(update=value) if isinstance(value, dict) else value
        layout = layout.model_copy(update={key: value})
    pdf, asked = sheet_of(made.solved, made.lesson("tuesday"), layout)
    assert [str(each) for each in proof_sheet(pdf, "t.pdf", made.solved, asked, layout)] == []


def test_a_path_is_read_as_bytes_are(tmp_path: Path) -> None:
    made = made_week()
    path = tmp_path / "tuesday.pdf"
    path.write_bytes(made.pdfs["tuesday"])
    lesson = made.lesson("tuesday")
    assert proof_sheet(path, "tuesday.pdf", made.solved, lesson, made.layout) == []


CHANGES = [
    ("{difference: 36}", "{difference: 39}", "'39' where '36' should be"),
    ("{gulls: 5, terns: 2}", "{gulls: 7, terns: 4}", "where '5' should be"),
    ("{whole: 10 litres}", "{whole: 10 pints}", "where 'litres' should be"),
    ("{red flags: 1, green flags: 3}", "{red flags: 1, green flags: 4}", "where '3' should be"),
    ("pupil: Tomasz", "pupil: Odette", "where 'Tomasz' should be"),
    ("Two kinds of kite", "Three kinds of kite", "where 'Two' should be"),
    ("lines: 5", "lines: 9", "content has been changed"),
]


@pytest.mark.parametrize(("old", "new", "told"), CHANGES, ids=[new for _, new, _ in CHANGES])
def test_a_sheet_of_other_content_is_found(old: str, new: str, told: str, tmp_path: Path) -> None:
    """The documents are made from content that was changed in one place."""
    made, other = made_week(), _changed(old, new, tmp_path)
    pdf, _asked = sheet_of(other, other.lessons[0], made.layout)
    text = "\n".join(map(str, made.proof("tuesday", pdf)))
    assert told in text
    assert "content has been changed" in text


def test_a_booklet_of_other_content_is_found(tmp_path: Path) -> None:
    made = made_short_week()
    old, new, told = CHANGES[0]
    other = make(_changed(old, new, tmp_path), made.layout)
    text = "\n".join(map(str, made.proof(BOOKLET, other.pdfs[BOOKLET])))
    assert told in text
    # The answer follows: 36 ÷ 3 × 5 = 60, and 39 ÷ 3 × 5 = 65.
    assert "'65' where '60' should be" in text


def _changed(old: str, new: str, folder: Path) -> SolvedWeek:
    for file in WEEK.iterdir():
        text = file.read_text(encoding="utf-8")
        if file.stem == "tuesday":
            assert old in text
            text = text.replace(old, new)
        if file.stem == "week":
            text = text.replace("[tuesday, wednesday]", "[tuesday]")
        if file.stem != "wednesday":
            (folder / file.name).write_text(text, encoding="utf-8")
    return solve_week(read_week(folder))


def test_a_wrong_digit_is_told_with_question_place_and_line() -> None:
    made = made_week()

    def plant(pages: list[Lines]) -> None:
        run = next(run for run in runs_of(pages[0]) if "There are 36 more" in run.text)
        pages[0][run.index] = run.line(text=run.text.replace("36", "63"))

    findings = made.proof("tuesday", redraw(made.pdfs["tuesday"], plant))
    # A screen reader would still be told the right number: that is found, too.
    (finding,) = (each for each in findings if each.kind == "number")
    assert finding.message == "question 1 prints '63' where '36' should be"
    assert (finding.page, finding.kind) == (1, "number")
    assert finding.source.endswith("tests/proofing/week/tuesday.yaml:15")
    # The place that pdfplumber finds by its own search, in millimetres.
    assert finding.place is not None
    with pdfplumber.open(BytesIO(made.pdfs["tuesday"])) as pdf:
        (found,) = pdf.pages[0].search("36(?= more)")
    assert finding.place[0] == pytest.approx(found["x0"] * 25.4 / 72, abs=0.2)
    assert finding.place[1] == pytest.approx(found["top"] * 25.4 / 72, abs=1.5)


def test_the_proof_knows_nothing_of_how_documents_are_made() -> None:
    """It must not share the code that it judges: neither the setting nor the composing."""
    forbidden = {"setting", "task_sheet", "answer_booklet", "composer", "entries", "answer_spaces"}
    folder = Path(typeset.proofing.__file__).parent
    for file in folder.glob("*.py"):
        for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
            if isinstance(node, ast.ImportFrom) and node.module:
                assert not forbidden & set(node.module.split(".")), file.name


PROMISES = [
    ({"ruled_mm": 14.0}, "question 5 has 8.0 mm of room above a ruled line"),
    ({"square_mm": 10.0}, "question 4 has squares of 7.0 mm where 10.0 mm should be"),
    ({"working_lines": 9.0}, "of room to work in where at least 72.0 mm should be"),
    ({"line_mm": 60.0}, "to the line to write on where at least 60.0 mm should be"),
]


@pytest.mark.parametrize(("spaces", "told"), PROMISES, ids=lambda each: str(each)[:20])
def test_a_room_smaller_than_promised_is_found(spaces: dict[str, float], told: str) -> None:
    """Sheets of one layout, proofed against another that promises more."""
    made = made_week()
    promised = made.layout.answer_spaces.model_copy(update=spaces)
    layout = made.layout.model_copy(update={"answer_spaces": promised})
    text = "\n".join(
        str(each)
        for name in ("tuesday", "wednesday")
        for each in proof_sheet(made.pdfs[name], "s.pdf", made.solved, made.lesson(name), layout)
    )
    assert told in text
