"""Sheets to fill in: every field is there, on its room, empty; a filled copy is read back."""

from __future__ import annotations

import csv
import io
import re
from functools import cache
from io import BytesIO
from pathlib import Path
from typing import Any

import pypdfium2  # type: ignore[import-untyped]  # has no types
import pytest
from PIL import Image, ImageChops
from pypdf import PdfReader, PdfWriter
from pypdf.generic import NameObject

from tests.accessibility import reference_engine
from tests.accessibility.second_checker import failures
from tests.proofing.faults_in_fields import answer, fields, lying_on, say
from tests.proofing.making import WEEK, made_week
from tests.proofing.planting import rebuild
from typeset.command import DONE, WRONG, main
from typeset.documents.home_pack import compose_home_pack
from typeset.documents.letter import Answers
from typeset.documents.task_sheet import compose_task_sheet
from typeset.proofing import Finding, proof_home_pack, proof_sheet
from typeset.setting.pdf import write_pdf

LESSONS = ("tuesday", "wednesday")


@cache
def sheet(lesson: str) -> bytes:
    made = made_week()
    return write_pdf(
        compose_task_sheet(made.solved, made.lesson(lesson), made.layout, fields=True)[0]
    )


def findings(pdf: bytes, lesson: str, fields: bool = True) -> list[Finding]:
    made = made_week()
    return proof_sheet(pdf, "sheet.pdf", made.solved, made.lesson(lesson), made.layout, fields)


def leaves(pdf: bytes) -> dict[str, Any]:
    """The fields that hold values by their full names, as pypdf finds them."""
    found = PdfReader(BytesIO(pdf)).get_fields() or {}
    return {name: each for name, each in found.items() if "/FT" in each}


def filled(pdf: bytes, values: dict[str, str]) -> bytes:
    """A copy with these values, by pypdf, which draws appearances as other programs do."""
    writer = PdfWriter(clone_from=BytesIO(pdf))
    for page in writer.pages:
        writer.update_page_form_field_values(page, values, auto_regenerate=False)
    out = BytesIO()
    writer.write(out)
    return out.getvalue()


def typed_values(pdf: bytes) -> dict[str, str]:
    """Something of its own for every field, and a tick in each box."""
    return {
        name: "/Ticked" if each["/FT"] == "/Btn" else f"{index} × £1.50"
        for index, (name, each) in enumerate(leaves(pdf).items())
    }


def pictures(pdf: bytes) -> list[Image.Image]:
    """The pages as PDFium shows them, fields included, one pixel a point."""
    document = pypdfium2.PdfDocument(pdf)
    document.init_forms()
    return [page.render(scale=1).to_pil().convert("L") for page in document]


@pytest.mark.parametrize("lesson", LESSONS)
def test_a_sheet_to_fill_in_is_as_proofed_as_any(lesson: str) -> None:
    assert findings(sheet(lesson), lesson) == []
    assert failures(sheet(lesson)) == []


@pytest.mark.skipif(
    bool(reference_engine.missing()), reason=f"no reference engine: {reference_engine.missing()}"
)
def test_no_rule_is_broken_empty_or_filled(tmp_path: Path) -> None:
    assert reference_engine.failures(sheet("tuesday"), tmp_path) == []
    pdf = sheet("wednesday")
    assert reference_engine.failures(pdf, tmp_path) == []
    assert reference_engine.failures(filled(pdf, typed_values(pdf)), tmp_path) == []


def test_no_sheet_has_fields_unless_they_are_asked_for() -> None:
    made = made_week()
    plain = write_pdf(compose_task_sheet(made.solved, made.lesson("tuesday"), made.layout)[0])
    assert b"/AcroForm" not in plain and b"/AcroForm" in sheet("tuesday")
    assert findings(sheet("tuesday"), "tuesday", fields=False)
    assert findings(plain, "tuesday", fields=True)


def test_every_field_has_a_name_and_words_of_its_own() -> None:
    for lesson in LESSONS:
        told = [each["/TU"] for each in leaves(sheet(lesson)).values()]
        assert len(told) == len(set(told)) > 10
    names = leaves(sheet("tuesday"))
    assert names["tuesday.q1.answer"]["/TU"] == "Question 1, answer in gulls"
    assert names["tuesday.q2.answer-2"]["/TU"] == "Question 2, answer for \u2018Terns\u2019"
    sorting = leaves(sheet("wednesday"))
    assert sorting["wednesday.q2.multiply"]["/TU"] == "Question 2, multiply or divide"
    assert sorting["wednesday.q5.answer"]["/TU"] == "Question 5, answer in pounds"


def test_what_is_typed_shows_in_its_own_field_and_nowhere_else() -> None:
    """By PDFium, one field after the other: so no two share an appearance, either."""
    pdf = sheet("wednesday")
    empty, values = pictures(pdf), typed_values(pdf)
    places = _places(pdf)
    for name, value in values.items():
        changed = []
        for index, (before, after) in enumerate(
            zip(empty, pictures(filled(pdf, {name: value})), strict=True)
        ):
            box = ImageChops.difference(before, after).point(lambda v: 255 * (v > 90)).getbbox()
            if box is not None:
                changed.append((index, box))
        assert len(changed) == 1, name
        ((page, (left, top, right, foot)),) = changed
        at, (x1, y1, x2, y2) = places[name]
        assert page == at and x1 - 1 <= left < right <= x2 + 1 and y1 - 1 <= top < foot <= y2 + 1


def _places(pdf: bytes) -> dict[str, tuple[int, tuple[float, ...]]]:
    """Page and place of every field, from the page's top left corner."""
    found: dict[str, tuple[int, tuple[float, ...]]] = {}
    pages: Any = PdfReader(BytesIO(pdf)).pages
    for index, page in enumerate(pages):
        high = float(page.mediabox.height)
        for each in page["/Annots"]:
            field = each.get_object()
            names, node = [field["/T"]], field
            while "/Parent" in node:
                node = node["/Parent"]
                names.append(node["/T"])
            x1, y1, x2, y2 = map(float, field["/Rect"])
            found[".".join(reversed(names))] = (index, (x1, high - y2, x2, high - y1))
    return found


def test_a_filled_copy_is_read_back(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    pdf, file = sheet("wednesday"), tmp_path / "kofi.pdf"
    values = typed_values(pdf) | {"wednesday.q2.multiply": "/Off", "wednesday.q2.add": "/Off"}
    file.write_bytes(filled(pdf, values))
    assert main(["answers", str(file), "--csv"]) == DONE
    rows = list(csv.DictReader(io.StringIO(capsys.readouterr().out)))
    read = {(row["question"], row["part"]): row["typed"] for row in rows}
    typed = {name: value for name, value in values.items() if not value.startswith("/")}
    for name, value in typed.items():
        number = re.search(r"\.q(\d+)\.", name)
        assert read[number[1] if number else "", name.rpartition(".")[2]] == value
    assert read["2", "sorted"] == "both / neither"
    assert len(rows) == len(typed) + 2
    assert main(["answers", str(file)]) == DONE
    out = capsys.readouterr().out
    assert f"{len(rows)} of {len(rows)} rooms filled in" in out
    assert re.search(r"question 1, answer in sails +\d+ × £1.50\n", out)


def test_empty_rooms_are_listed(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    file = tmp_path / "nell.pdf"
    working = "3 × 36\r\n= 108\x1b[2J"
    file.write_bytes(
        filled(sheet("tuesday"), {"tuesday.q1.answer": "=60", "tuesday.q1.working": working})
    )
    assert main(["answers", str(file)]) == DONE
    out = capsys.readouterr().out
    assert "2 of 12 rooms filled in" in out and "\x1b" not in out
    assert "question 1, working          3 × 36 / = 108" in out
    assert "left empty: name; date; question 2, working;" in out
    assert main(["answers", str(file), "--csv"]) == DONE
    assert ",'=60\n" in capsys.readouterr().out, "no spreadsheet takes it for a formula"


def test_other_files_are_told_from_ours(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    made, file = made_week(), tmp_path / "copy.pdf"
    plain = write_pdf(compose_task_sheet(made.solved, made.lesson("tuesday"), made.layout)[0])
    others = {
        "has no fields": plain,
        "is no PDF": b"Dear Nell",
        "cannot be read as a PDF": b"%PDF-1.7 x",
        "are none that 'typeset make --fields' makes": _foreign(),
    }
    for told, data in others.items():
        file.write_bytes(data)
        assert main(["answers", str(file)]) == WRONG
        assert told in capsys.readouterr().err
    assert main(["answers", str(tmp_path / "none.pdf")]) == WRONG
    assert "cannot be read" in capsys.readouterr().err


def _foreign() -> bytes:
    """The form of somebody else."""
    writer = PdfWriter(clone_from=BytesIO(sheet("tuesday")))
    for each in fields(writer):
        say(each, "/T", f"field {each['/StructParent']}")
    out = BytesIO()
    writer.write(out)
    return out.getvalue()


def test_the_command_makes_and_proofs_them(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    arguments = ["make", str(WEEK), "--to", str(tmp_path), "--only", "task-sheet", "--fields"]
    assert main(arguments) == DONE
    made = sorted(file.name for file in tmp_path.glob("*to-fill-in.pdf"))
    assert [name.partition("-")[0] for name in made] == sorted(LESSONS)
    assert not (tmp_path / "tuesday-task-sheet.pdf").exists()
    assert main(["proof", str(tmp_path)]) == DONE
    assert main([*arguments, "--layout", "paper-saving"]) == WRONG
    assert "cut apart; leave out --fields" in capsys.readouterr().err


@cache
def pack() -> bytes:
    made = made_week()
    return write_pdf(compose_home_pack(made.solved, made.layout, Answers.END, fields=True)[0])


def findings_of_pack(pdf: bytes) -> list[Finding]:
    made = made_week()
    return proof_home_pack(pdf, "pack.pdf", made.solved, made.layout, "end", fields=True)


def test_a_pack_to_fill_in_holds_the_fields_of_all_its_sheets() -> None:
    assert findings_of_pack(pack()) == []
    assert failures(pack()) == []
    assert list(leaves(pack())) == [name for each in LESSONS for name in leaves(sheet(each))]
    told = [each["/TU"] for each in leaves(pack()).values()]
    assert len(told) == len(set(told))
    assert "Tuesday, question 1, answer in gulls" in told


def test_a_link_where_a_field_belongs_is_found() -> None:
    """Links may lie on the pages of a pack, but only where the contents lead on."""

    def change(writer: PdfWriter) -> None:
        link = next(
            each.get_object()
            for page in writer.pages
            for each in lying_on(page)
            if each.get_object()["/Subtype"] == "/Link"
        )
        answer(writer)[NameObject("/Subtype")] = NameObject("/Link")
        answer(writer)[NameObject("/Dest")] = link.raw_get("/Dest")

    told = [str(each) for each in findings_of_pack(rebuild(pack(), change))]
    assert any("belongs to nothing" in each or "neither text nor a link" in each for each in told)


def test_a_filled_pack_is_read_back_by_its_lessons(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    file = tmp_path / "leila.pdf"
    values = {"tuesday.q1.answer": "60", "wednesday.q1.answer": "35"}
    file.write_bytes(filled(pack(), values))
    assert main(["answers", str(file)]) == DONE
    out = capsys.readouterr().out
    assert "  tuesday\n    question 1, answer in gulls  60\n  wednesday\n" in out
    assert "    question 1, answer in sails  35\n" in out
