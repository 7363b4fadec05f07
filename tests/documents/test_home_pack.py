"""The home pack: what is in it, what leads where, and where answers are and are not."""

from __future__ import annotations

from functools import cache
from io import BytesIO
from pathlib import Path

import pytest
from pypdf import PdfReader

from tests.proofing.making import made_short_week, made_week
from typeset.arithmetic.building import solve_week
from typeset.documents.cautions import check_cautions
from typeset.documents.home_pack import compose_home_answers, compose_home_pack
from typeset.documents.layout import Layout
from typeset.documents.layout_files import find_layout, layout_names
from typeset.documents.letter import Answers
from typeset.documents.task_sheet import compose_task_sheet
from typeset.documents.versions import Versions
from typeset.drawing.shapes import Shape
from typeset.errors import ContentError
from typeset.press.plan import Wanted, plan_jobs
from typeset.proofing import proof_home_answers, proof_home_pack
from typeset.reading.content import HOME_PACK
from typeset.reading.week import read_week
from typeset.setting.frames import Document, Page, Role
from typeset.setting.pdf import write_pdf


@cache
def layout(name: str = "standard") -> Layout:
    return find_layout(name, Path("nowhere"))


@cache
def pack(answers: Answers = Answers.END) -> Document:
    return compose_home_pack(made_week().solved, layout(), answers)[0]


@pytest.mark.parametrize("name", layout_names())
def test_it_has_no_finding_in_any_layout(name: str) -> None:
    solved = made_short_week().solved
    pdf = write_pdf(compose_home_pack(solved, layout(name), Answers.END)[0])
    found = proof_home_pack(pdf, "p.pdf", solved, layout(name), "end")
    assert [str(each) for each in found] == []
    assert len(pdf) < 1_000_000


@pytest.mark.parametrize("answers", Answers)
def test_answers_can_be_left_out(answers: Answers) -> None:
    solved = made_week().solved
    pdf = write_pdf(pack(answers))
    found = proof_home_pack(pdf, "p.pdf", solved, layout(), answers.value)
    assert [str(each) for each in found] == []
    at_end = answers is Answers.END
    labels = PdfReader(BytesIO(pdf)).page_labels
    assert any(label.startswith("A-") for label in labels) == at_end
    assert any(each.title == "Answers" for each in pack(answers).bookmarks) == at_end


def test_answers_in_a_file_of_their_own() -> None:
    solved = made_week().solved
    pdf = write_pdf(compose_home_answers(solved, layout())[0])
    found = proof_home_answers(pdf, "a.pdf", solved, layout())
    assert [str(each) for each in found] == []


def drawn(page: Page) -> tuple[Shape, ...]:
    """All that is drawn but the foot."""
    foot = [each for each in page.placed if each.role is Role.FURNITURE and each.reads_as]
    assert len(foot) == 2
    return tuple(shape for each in page.placed if each not in foot for shape in each.shapes)


def test_sheets_look_as_they_do_alone() -> None:
    solved, at = made_week().solved, 1
    for lesson in solved.lessons:
        alone = compose_task_sheet(solved, lesson, layout())[0]
        within = pack().pages[at : at + len(alone.pages)]
        assert [drawn(page) for page in within] == [drawn(page) for page in alone.pages]
        at += len(alone.pages)


def test_what_a_reader_of_the_file_shows() -> None:
    """By pypdf, which our writer knows nothing of."""
    reader = PdfReader(BytesIO(write_pdf(pack())))
    count = len(reader.pages)
    sides = sum(lesson.lesson.sides for lesson in made_week().solved.lessons)
    answers = [f"A-{number}" for number in range(1, count - sides)]
    assert reader.page_labels == ["i", *map(str, range(1, sides + 1)), *answers]
    pages = [page.extract_text() for page in reader.pages]
    for number, text in enumerate(pages, 1):
        assert f"Page {number} of {count}" in " ".join(text.split())
    shown = [each for each in reader.outline if not isinstance(each, list)]
    assert [str(each.title) for each in shown] == [
        "Maths at home: Ropes and rigging",
        "In this pack",
        *(f"{each.lesson.day}: {each.lesson.title}" for each in made_week().solved.lessons),
        "Answers",
    ]
    for each, lesson in zip(shown[2:-1], made_week().solved.lessons, strict=True):
        at = reader.get_destination_page_number(each)
        assert at is not None
        assert lesson.lesson.title in " ".join(pages[at].split())
    assert reader.metadata is not None
    assert reader.metadata.title == "Maths at home: Ropes and rigging"
    assert reader.trailer["/Root"]["/Lang"] == "en-GB"  # type: ignore[index]  # pypdf types no deeper


def test_the_letter_tells_where_the_answers_are() -> None:
    told = {
        Answers.END: "a part of their own at the end",
        Answers.SEPARATE: "in a file of their own",
        Answers.NONE: "not in this pack",
    }
    for answers, words in told.items():
        read = " ".join(each.reads_as for each in pack(answers).pages[0].placed)
        assert words in read
        assert not any(other in read for other in told.values() if other != words)


WEEK = "week: Kites\nclass: Gull class\nlessons: [monday, friday]\n"
LESSON = """\
lesson: Kites
day: DAY
sides: 1
aim: I can count kites.
CAUTIONSstages:
  - practise:
      - set: A
        problems:
          - structure: equal groups
            groups: 3 boxes
            each: 8 kites
            story: In {groups} there are {each} each. How many kites is that?
  - extension:
      title: A kite of your own
      story: What would you make your kite of?
      OWNspace: lines
"""


def week_with(folder: Path, monday: str, friday: str) -> Document:
    (folder / "week.yaml").write_text(WEEK, encoding="utf-8")
    text = LESSON.replace("DAY", "Monday").replace("CAUTIONS", monday).replace("OWN", "")
    (folder / "monday.yaml").write_text(text, encoding="utf-8")
    text = LESSON.replace("DAY", "Friday").replace("CAUTIONS", "").replace("OWN", friday)
    (folder / "friday.yaml").write_text(text, encoding="utf-8")
    week = read_week(folder)
    check_cautions(week, [layout()])
    solved = solve_week(week)
    document = compose_home_pack(solved, layout(), Answers.NONE)[0]
    found = proof_home_pack(write_pdf(document), "p.pdf", solved, layout(), "none")
    assert [str(each) for each in found] == []
    return document


def letter_of(document: Document) -> list[str]:
    return [each.reads_as for each in document.pages[0].placed]


def test_cautions_stand_in_the_letter_with_where(tmp_path: Path) -> None:
    document = week_with(tmp_path, "cautions: scissors\n", "cautions: [scissors, outdoors]\n      ")
    letter = letter_of(document)
    assert "Please take care" in letter
    (scissors,) = (each for each in letter if "Cut paper only" in each)
    assert scissors.startswith("Monday and Friday (question 2): ")
    (outdoors,) = (each for each in letter if "Outside" in each)
    assert outdoors.startswith("Friday (question 2): ")
    assert not any("kitchen" in each for each in letter)


def test_no_cautions_where_nothing_needs_them(tmp_path: Path) -> None:
    letter = letter_of(week_with(tmp_path, "", ""))
    assert "Please take care" not in letter
    assert letter[0] == "Maths at home: Kites"


def test_an_unknown_caution_is_complained_of(tmp_path: Path) -> None:
    with pytest.raises(ContentError) as raised:
        week_with(tmp_path, "cautions: [sissors]\n", "")
    (complaint,) = raised.value.complaints
    assert "has no caution called 'sissors'" in str(complaint)
    assert "did you mean 'scissors'?" in str(complaint)
    assert "monday.yaml:5" in str(complaint)


def test_a_school_adds_a_caution_of_its_own(tmp_path: Path) -> None:
    (tmp_path / "layouts").mkdir()
    own = "layout: ours\nlike: standard\nwording: {cautions: {glue: 'Mind the glue.'}}\n"
    (tmp_path / "layouts" / "ours.yaml").write_text(own, encoding="utf-8")
    assert find_layout("ours", tmp_path).wording["cautions"]["glue"] == "Mind the glue."


FILES = {
    "end": ["home-pack.pdf"],
    "separate": ["home-pack-sheets.pdf", "home-pack-answers.pdf"],
    "none": ["home-pack-without-answers.pdf"],
}


@pytest.mark.parametrize("answers", FILES)
def test_files_are_named_by_what_is_in_them(answers: str) -> None:
    wanted = Wanted((HOME_PACK,), packs=("core",), answers=answers)
    jobs = plan_jobs(Versions(made_week().solved), [layout()], wanted)
    assert [job.file for job in jobs] == FILES[answers]


def test_all_files_of_a_week_have_names_of_their_own() -> None:
    files = [job.file for job in plan_jobs(Versions(made_week().solved), [layout()])]
    assert len(files) == len(set(files))
