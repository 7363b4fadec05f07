"""Which files a class list makes: one a lesson for all, or one for each kind of paper."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.test_class_on_the_command_line import MONDAY, WEEK
from typeset.errors import ContentError, OutputError
from typeset.press.class_plan import ClassOrder, plan_class
from typeset.press.making import Order, make_week
from typeset.press.record import read_record
from typeset.setting.pdf import write_pdf

BIG = "layout: big\nlike: standard\npaper: A3\n"
LYING = "layout: lying\nlike: standard\norientation: landscape\nsides: as needed\n"
SHORT = "layout: short\nlike: standard\nturned over: short edge\n"


@pytest.fixture
def week(tmp_path: Path) -> Path:
    folder = tmp_path / "ropes"
    (folder / "layouts").mkdir(parents=True)
    (folder / "week.yaml").write_text(WEEK, encoding="utf-8")
    (folder / "monday.yaml").write_text(MONDAY, encoding="utf-8")
    for text in (BIG, LYING, SHORT):
        name = text.split()[1]
        (folder / "layouts" / f"{name}.yaml").write_text(text, encoding="utf-8")
    return folder


def class_of(folder: Path, *lines: str) -> Path:
    file = folder / "class.csv"
    file.write_text("\n".join(("name,version,layout", *lines)), encoding="utf-8")
    return file


def test_sheets_on_other_paper_come_in_a_file_of_their_own(week: Path, tmp_path: Path) -> None:
    pupils = class_of(tmp_path, "Asha,,", "Kofi,,big", "Leila,,lying", "Nell,,short", "Rhys,,big")
    to = tmp_path / "to"
    results = make_week(Order(week, to, class_list=pupils))
    assert not any(result.findings for result in results)
    sides = {each.file: each.sides for each in read_record(to).made}
    assert sides == {
        "monday-named-set-a4.pdf": 2,
        "monday-named-set-a4-2.pdf": 2,
        "monday-named-set-a4-lying.pdf": 2,
        "monday-named-set-a3.pdf": 4,
        "monday-answer-grid.pdf": 1,
        "how-to-print.pdf": 1,
    }
    notes = {result.made.file: result.notes for result in results}
    assert notes["monday-named-set-a3.pdf"][0].startswith("2 of 5 sheets: those on this kind of")


def test_every_pdf_asks_for_the_edge_that_its_layout_says(week: Path, tmp_path: Path) -> None:
    pupils = class_of(tmp_path, "Asha,,", "Nell,,short")
    _, jobs = plan_class(ClassOrder(week, pupils))
    asked = [job.compose()[0].duplex.value for job in jobs if job.kind == "named set"]
    assert asked == ["DuplexFlipLongEdge", "DuplexFlipShortEdge"]


def test_the_same_list_gives_the_same_bytes(week: Path, tmp_path: Path) -> None:
    order = ClassOrder(week, class_of(tmp_path, "Asha,,", "Nell,stretch,"), varied=True)
    made = [[write_pdf(job.compose()[0]) for job in plan_class(order)[1]] for _ in range(2)]
    assert made[0] == made[1]


def test_sheets_tell_their_version_where_the_class_has_several(week: Path, tmp_path: Path) -> None:
    """The core's sheets too, so that none of them is the usual one."""
    _, jobs = plan_class(ClassOrder(week, class_of(tmp_path, "Asha,,", "Nell,stretch,")))
    document, _ = jobs[0].compose()
    feet = [
        item.reads_as for page in document.pages for item in page.placed if "·" in item.reads_as
    ]
    assert feet == ["Ropes · Monday · gull", "Ropes · Monday · puffin"]


def test_questions_alike_on_every_sheet_are_told(week: Path, tmp_path: Path) -> None:
    """7 buckets and 84 mackerel are typed; with two values there are only so many others."""
    lesson = week / "monday.yaml"
    text = lesson.read_text(encoding="utf-8")
    lesson.write_text(text.replace("groups: 3..9 crates", "groups: 4 crates or 4 crates"))
    fixed = lesson.read_text(encoding="utf-8").replace(
        "12..48 step 6 floats", "12 floats or 12 floats"
    )
    lesson.write_text(fixed, encoding="utf-8")
    pupils = class_of(tmp_path, "Asha,,", "Nell,,", "Rhys,,", "Yuki,,")
    _, jobs = plan_class(ClassOrder(week, pupils, varied=True))
    _, pages = jobs[0].compose()
    assert pages.notes[-1].startswith("question 1 has the same numbers on every sheet")


def test_an_unknown_lesson_gets_the_nearest(week: Path, tmp_path: Path) -> None:
    with pytest.raises(OutputError, match="did you mean 'monday'"):
        plan_class(ClassOrder(week, class_of(tmp_path, "Asha,,"), lesson="munday"))


def test_week_and_list_are_complained_of_in_one_run(week: Path, tmp_path: Path) -> None:
    (week / "week.yaml").write_text(WEEK + "sead: 3\n", encoding="utf-8")
    with pytest.raises(ContentError) as refused:
        plan_class(ClassOrder(week, class_of(tmp_path, "Asha,core2,")))
    told = [each.problem for each in refused.value.complaints]
    assert told == ["unknown version 'core2'", "unknown key 'sead'"]


def test_complaints_about_a_list_come_before_anything_is_solved(
    week: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def too_early(*_: object) -> None:
        raise AssertionError("the week is solved before the list is looked over")

    monkeypatch.setattr("typeset.press.class_plan.solve_week", too_early)
    with pytest.raises(ContentError, match="unknown version 'core2'"):
        plan_class(ClassOrder(week, class_of(tmp_path, "Asha,core2,")))
