"""The sheet with frames for the pupils' own problems: read, made, proofed, found where wrong."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.proofing.planting import Lines, rects_of, redraw, rules_of, runs_of
from typeset.arithmetic.building import solve_week
from typeset.arithmetic.lessons import SolvedWeek
from typeset.documents.layout_files import find_layout, layout_names
from typeset.documents.own_problems import compose_own_problems
from typeset.documents.versions import Versions
from typeset.drawing.shapes import PT_PER_MM, TextRun
from typeset.errors import ContentError
from typeset.press.plan import plan_jobs
from typeset.proofing import proof_own_problems
from typeset.reading.week import read_week
from typeset.setting.pdf import write_pdf

WEEK = "week: Kites\nclass: Gull class\nlessons: [monday]\n"
OWN = """\
own problems:
  title: At the kite stall
  quantities: {kites: 24 kites, price: £3.50, tail: 1.5 m}
  story: The stall has {kites} at {price} each. A tail takes {tail} of ribbon.
"""
LESSON = """\
lesson: Kites
day: Monday
sides: 1
aim: I can make up a problem.
OWNstages:
  - practise:
      - set: A
        problems:
          - structure: equal groups
            groups: 3 boxes
            each: 8 kites
            story: In {groups} there are {each} each. How many kites is that?
"""


def week_with(own: str, folder: Path) -> SolvedWeek:
    (folder / "week.yaml").write_text(WEEK, encoding="utf-8")
    (folder / "monday.yaml").write_text(LESSON.replace("OWN", own), encoding="utf-8")
    return solve_week(read_week(folder))


@pytest.fixture(scope="module")
def solved(tmp_path_factory: pytest.TempPathFactory) -> SolvedWeek:
    return week_with(OWN, tmp_path_factory.mktemp("kites"))


def made(solved: SolvedWeek, name: str = "standard") -> bytes:
    layout = find_layout(name, Path("nowhere"))
    return write_pdf(compose_own_problems(solved, solved.lessons[0], layout)[0])


def findings(solved: SolvedWeek, pdf: bytes, name: str = "standard") -> list[str]:
    layout = find_layout(name, Path("nowhere"))
    found = proof_own_problems(pdf, "own.pdf", solved, solved.lessons[0], layout)
    return [str(each) for each in found]


@pytest.mark.parametrize("name", layout_names())
def test_it_has_no_finding_in_any_layout(name: str, solved: SolvedWeek) -> None:
    assert findings(solved, made(solved, name), name) == []


@pytest.mark.parametrize("frames", [1, 2, 3, 4])
def test_at_most_two_frames_stand_on_a_side(frames: int, tmp_path: Path) -> None:
    solved = week_with(f"{OWN}  frames: {frames}\n", tmp_path)
    layout = find_layout("standard", Path("nowhere"))
    document, _pages = compose_own_problems(solved, solved.lessons[0], layout)
    headings = [
        [each.reads_as for each in page.placed if each.reads_as.startswith("My problem")]
        for page in document.pages
    ]
    named = [f"My problem {number}" for number in range(1, frames + 1)]
    assert [each for side in headings for each in side] == named
    assert all(1 <= len(side) <= 2 for side in headings)
    assert len(headings) == (frames + 1) // 2
    assert findings(solved, write_pdf(document)) == []


@pytest.mark.parametrize("size", [12.0, 14.0])
def test_the_name_begins_at_the_margin_at_any_size(size: float, solved: SolvedWeek) -> None:
    layout = find_layout("standard", Path("nowhere"))
    sizes = layout.type_size.model_copy(update={"largest": size, "smallest": 12.0})
    layout = layout.model_copy(update={"type_size": sizes})
    page = compose_own_problems(solved, solved.lessons[0], layout)[0].pages[0]
    runs = [each for item in page.placed for each in item.shapes if isinstance(each, TextRun)]
    (name,) = (run for run in runs if run.text == "Name")
    assert name.x_pt == pytest.approx(layout.margins.left * PT_PER_MM)


COMPLAINTS = {
    "title: At": ("titel: At", "unknown key 'titel'; did you mean 'title'?"),
    "{kites} at": ("{kite} at", "unknown name '{kite}'; did you mean {kites}?"),
    "takes {tail}": ("takes 2 m", "the number 2 is typed straight into the text"),
    "A tail takes {tail} of ribbon.": ("", "the story never mentions 'tail'"),
    "£3.50": ("£2..£4", "do not vary"),
    "24 kites": ("many", "many"),
}


@pytest.mark.parametrize("old", COMPLAINTS)
def test_what_is_wrong_is_complained_of(old: str, tmp_path: Path) -> None:
    new, told = COMPLAINTS[old]
    assert old in OWN
    with pytest.raises(ContentError) as raised:
        week_with(OWN.replace(old, new), tmp_path)
    text = "\n".join(map(str, raised.value.complaints))
    assert told in text
    assert "monday.yaml" in text


def test_too_many_frames_are_complained_of(tmp_path: Path) -> None:
    with pytest.raises(ContentError, match="from 1 to 8"):
        week_with(f"{OWN}  frames: 9\n", tmp_path)


def test_a_lesson_without_them_gets_no_sheet(tmp_path: Path, solved: SolvedWeek) -> None:
    layouts = (find_layout("standard", Path("nowhere")),)
    without = week_with("", tmp_path)
    for week, wanted in ((without, []), (solved, ["monday-own-problems.pdf"])):
        files = [job.file for job in plan_jobs(Versions(week), layouts)]
        assert [file for file in files if "own-problems" in file] == wanted


def spoil_number(page: Lines) -> None:
    run = next(run for run in runs_of(page) if "24 kites" in run.text)
    page[run.index] = run.line(text=run.text.replace("24", "42"))


def drop_frame(page: Lines) -> None:
    wide = [index for index, (_, _, width, height), _ in rects_of(page) if width * height > 9000]
    page[wide[0]] = ""


def drop_line(page: Lines) -> None:
    level = [
        index
        for index, (x1, y1, x2, y2) in rules_of(page)
        if y1 == y2 and 150 < x2 - x1 < 300 and page[index - 1]
    ]
    page[level[len(level) // 2]] = ""


def drop_tick_box(page: Lines) -> None:
    small = [index for index, (_, _, width, height), _ in rects_of(page) if width < 20]
    page[small[0]] = ""


def drop_heading(page: Lines) -> None:
    run = next(run for run in runs_of(page) if run.text == "My problem 2")
    page[run.index] = ""


FAULTS = {
    spoil_number: "the story prints '42' where '24' should be",
    drop_frame: "problem 1, model has no frame",
    drop_line: "ruled lines",
    drop_tick_box: "problem 1, hard",
    drop_heading: "the heading of problem 2",
}


@pytest.mark.parametrize("plant", FAULTS, ids=lambda plant: plant.__name__)
def test_a_planted_fault_is_found(plant: object, solved: SolvedWeek) -> None:
    assert callable(plant)
    pdf = redraw(made(solved), lambda pages: plant(pages[0]))
    text = "\n".join(findings(solved, pdf))
    assert FAULTS[plant] in text, text or "nothing was found"
