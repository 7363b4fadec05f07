"""No stale side survives: edit anything, make again, and compare with making everything anew."""

from __future__ import annotations

import os
import random
import shutil
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from typeset.errors import TypesetError
from typeset.press import keys
from typeset.press.building import Result
from typeset.press.making import Order, make_week
from typeset.setting.frames import Document, Role
from typeset.setting.pdf import write_pdf

LITTLE_WEEK = Path(__file__).parents[1] / "proofing" / "week"
STEPS = int(os.environ.get("TYPESET_DEEP", "0")) or 10
# A layout of the teacher's own, so that it can be edited too.
OWN_LAYOUT = "layout: our class\nlike: standard\nmargins: {left: 16 mm}\n"


class Desk:
    """A week in a folder, what was made of it, and what is kept from build to build."""

    def __init__(self, folder: Path) -> None:
        self.week = Path(shutil.copytree(LITTLE_WEEK, folder / "week"))
        (self.week / "layouts").mkdir()
        (self.week / "layouts" / "our class.yaml").write_text(OWN_LAYOUT, encoding="utf-8")
        self.replace("week", "layout: standard", "layout: our class")
        self.to, self.kept, self.anew = folder / "printed", folder / "kept", folder / "anew"

    def file(self, name: str) -> Path:
        """A file of the content."""
        inside = "layouts/our class" if name == "layout" else name
        return self.week / f"{inside}.yaml"

    def replace(self, name: str, old: str, new: str) -> None:
        file = self.file(name)
        text = file.read_text(encoding="utf-8")
        assert old in text, old
        file.write_text(text.replace(old, new, 1), encoding="utf-8")

    def make(self) -> tuple[Result, ...]:
        """The week with what is kept."""
        return make_week(Order(self.week, self.to, kept=self.kept))

    def made_anew(self) -> dict[str, bytes]:
        """What a build without anything kept gives."""
        shutil.rmtree(self.anew, ignore_errors=True)
        make_week(Order(self.week, self.anew))
        return _pdfs(self.anew)


def _pdfs(folder: Path) -> dict[str, bytes]:
    return {file.name: file.read_bytes() for file in sorted(folder.glob("*.pdf"))}


def _set_again(results: tuple[Result, ...]) -> set[str]:
    return {result.made.file for result in results if not result.is_as_before}


def _flip(*values: str) -> Callable[[str], str]:
    """Each of these texts into the next one, whichever stands there."""

    def flipped(text: str) -> str:
        old = next(value for value in values if value in text)
        new = values[(values.index(old) + 1) % len(values)]
        return text.replace(old, new, 1)

    return flipped


# What a teacher may change: the file, and the change, which may be made again and again.
CHANGES: list[tuple[str, Callable[[str], str]]] = [
    ("tuesday", _flip("{difference: 36}", "{difference: 39}", "{difference: 42}")),
    ("tuesday", _flip("gulls on the quay", "gulls on the mole")),
    ("tuesday", _flip("lesson: More terns than gulls", "lesson: Terns and gulls")),
    ("tuesday", _flip("pupil: Tomasz", "pupil: Imogen")),
    ("wednesday", _flip("{difference: 14}", "{difference: 18}", "{difference: 26}")),
    ("wednesday", _flip("mooring rope", "towing rope")),
    ("wednesday", _flip("aim: I can find", "aim: I find")),
    ("week", _flip("class: Gull class", "class: Tern class")),
    ("week", _flip("week: Ropes and rigging", "week: Rigging and ropes")),
    ("week", _flip("layout: our class", "layout: standard")),
    ("layout", _flip("left: 16 mm", "left: 18 mm", "left: 20 mm")),
    ("layout", _flip("like: standard\n", "like: standard\nleading: 1.45\n")),
]


def test_no_stale_side_survives(tmp_path: Path) -> None:
    """A walk of random edits, some of them undone again, some of them to what was made or kept."""
    desk, dice = Desk(tmp_path), random.Random(7)
    for _step in range(STEPS):
        for _edit in range(dice.choice([1, 1, 2])):
            name, change = dice.choice(CHANGES)
            file = desk.file(name)
            file.write_text(change(file.read_text(encoding="utf-8")), encoding="utf-8")
        _spoil(desk, dice)
        results = desk.make()
        assert not [finding for result in results for finding in result.findings]
        assert _pdfs(desk.to) == desk.made_anew()


def _spoil(desk: Desk, dice: random.Random) -> None:
    """Now and then something happens to what was made, or to what is kept."""
    made = sorted(desk.to.glob("*.pdf"))
    kept = sorted(desk.kept.glob("*")) if desk.kept.is_dir() else []
    match dice.randrange(6):
        case 0 if made:
            victim = dice.choice(made)
            victim.write_bytes(victim.read_bytes()[:-1] + b" ")
        case 1 if made:
            dice.choice(made).unlink()
        case 2 if kept:
            victim = dice.choice(kept)
            victim.write_bytes(victim.read_bytes()[: dice.randrange(60)])
        case 3 if kept:
            shutil.rmtree(desk.kept)
        case _:
            pass


@pytest.fixture
def desk(tmp_path: Path) -> Desk:
    """The week, made once."""
    desk = Desk(tmp_path)
    desk.make()
    return desk


def test_what_has_not_changed_is_left_as_it_is(desk: Desk) -> None:
    assert _set_again(desk.make()) == set()
    desk.replace("tuesday", "{difference: 36}", "{difference: 39}")
    made = {"tuesday-task-sheet.pdf", "answer-booklet.pdf", "how-to-print.pdf"}
    assert _set_again(desk.make()) == made
    assert _set_again(desk.make()) == set()


def test_a_changed_program_makes_everything_anew(
    desk: Desk, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(keys, "program", lambda: "another program")
    assert len(_set_again(desk.make())) == 4


def test_fresh_makes_everything_anew(desk: Desk) -> None:
    results = make_week(Order(desk.week, desk.to, kept=desk.kept, fresh=True))
    assert len(_set_again(results)) == 4


def test_another_folder_has_nothing_yet(desk: Desk, tmp_path: Path) -> None:
    results = make_week(Order(desk.week, tmp_path / "elsewhere", kept=desk.kept))
    assert len(_set_again(results)) == 4


def test_a_part_is_proofed_again_where_its_sides_differ(
    desk: Desk, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The booklet's file is bound anew after an edit; a fault in the side of a lesson that was
    not edited is found all the same."""

    def with_a_fault(document: Document) -> bytes:
        """A heading on the last side is lost between setting and writing."""
        *others, last = document.pages
        kept = tuple(each for each in last.placed if each.role is not Role.HEADING)
        short = replace(last, placed=kept)
        return write_pdf(replace(document, pages=(*others, short)))

    desk.replace("tuesday", "{difference: 36}", "{difference: 39}")
    monkeypatch.setattr("typeset.setting.pdf.write_pdf", with_a_fault)
    results = make_week(Order(desk.week, desk.to, only="answer booklet", kept=desk.kept))
    found = {each.document for result in results for each in result.findings}
    assert "answer-booklet.pdf" in found


def test_a_class_is_never_kept(desk: Desk, tmp_path: Path) -> None:
    pupils = tmp_path / "class.csv"
    pupils.write_text("name\nAsha B\nKofi\n", encoding="utf-8")
    kept = tmp_path / "kept of class"
    order = Order(desk.week, tmp_path / "named", "tuesday", class_list=pupils, kept=kept)
    make_week(order)
    held = b"".join(file.read_bytes() for file in kept.iterdir()) if kept.is_dir() else b""
    assert b"Asha" not in held and b"Kofi" not in held


def test_wrong_content_leaves_all_as_it_was(desk: Desk) -> None:
    before = _pdfs(desk.to)
    desk.replace("tuesday", "{difference: 36}", "{difference: 37}")
    with pytest.raises(TypesetError):
        desk.make()
    assert _pdfs(desk.to) == before
