"""Findings for other programs and as pictures."""

from __future__ import annotations

import json
import shutil
from io import BytesIO
from pathlib import Path

import pytest
from PIL import Image
from pypdf import PdfReader, PdfWriter

from tests.proofing.planting import Lines, redraw, runs_of
from typeset.command import main
from typeset.press.reporting import findings_json, write_pictures
from typeset.proofing import Finding


@pytest.fixture
def made_copy(made_week: Path, demonstration_week: Path, tmp_path: Path) -> Path:
    """The demonstration week's documents in a folder of their own, one with a wrong digit."""
    content, to = tmp_path / "harbour-festival", tmp_path / "printed"
    shutil.copytree(demonstration_week, content)
    assert (
        main(["make", str(content), "--lesson", "tuesday", "--only", "task-sheet", "--to", str(to)])
        == 0
    )

    def plant(pages: list[Lines]) -> None:
        run = next(run for run in runs_of(pages[0]) if "15 visitors" in run.text)
        pages[0][run.index] = run.line(text=run.text.replace("15", "51"))

    file = to / "tuesday-task-sheet.pdf"
    file.write_bytes(redraw(file.read_bytes(), plant))
    return to


def test_json_names_page_place_and_source(
    made_copy: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    capsys.readouterr()
    assert main(["proof", str(made_copy), "--json"]) == 1
    found = json.loads(capsys.readouterr().out)
    told = next(each for each in found if each["kind"] == "number")
    assert told["document"] == "tuesday-task-sheet.pdf"
    assert told["page"] == 1
    assert told["message"] == "question 1 prints '51' where '15' should be"
    assert told["source"].endswith("tuesday.yaml:" + told["source"].rpartition(":")[2])
    assert 17 < told["place_mm"][0] < 193


def test_the_picture_rings_the_place(made_copy: Path, tmp_path: Path) -> None:
    assert main(["proof", str(made_copy), "--pictures", str(tmp_path / "pictures")]) == 1
    (file,) = (tmp_path / "pictures").iterdir()
    assert file.name == "tuesday-task-sheet-page-1.png"
    with Image.open(file) as picture:
        colours = picture.convert("RGB").getcolors(maxcolors=1 << 24) or []
    assert (176, 0, 32) in [colour for _count, colour in colours]


def test_no_findings_are_an_empty_list() -> None:
    assert json.loads(findings_json([])) == []


def test_a_finding_about_the_file_has_no_picture(tmp_path: Path) -> None:
    finding = Finding("a.pdf", 0, None, "the file is locked", "", "", "file")
    assert write_pictures([finding], {"a.pdf": b""}, tmp_path / "p") == []
    assert json.loads(findings_json([finding]))[0]["page"] is None


def test_places_on_a_turned_side_are_as_a_reader_shows_them() -> None:
    """A finding on the back of a folded booklet is told of its side, counted in the file."""
    from tests.documents.test_folding import booklet
    from tests.proofing.making import made_week
    from typeset.documents.folding import Flip
    from typeset.proofing import proof_folded_booklet

    pdf, layout = booklet(Flip.LONG_EDGE)
    writer = PdfWriter(clone_from=PdfReader(BytesIO(pdf)))
    out = BytesIO()
    writer.write(out)

    def plant(pages: list[Lines]) -> None:
        run = next(run for run in runs_of(pages[1]) if "Answer" in run.text)
        pages[1][run.index] = run.line(text=run.text.replace("Answer", "Anzwer"))

    made = made_week()
    lesson = made.lesson("wednesday")
    found = proof_folded_booklet(redraw(pdf, plant), "b.pdf", made.solved, layout, lesson)
    (finding,) = [each for each in found if "Anzwer" in each.what]
    assert finding.page == 2
    assert finding.place is not None
    assert 0 < finding.place[0] < 297 and 0 < finding.place[1] < 210
