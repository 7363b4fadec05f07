"""Home packs of another kind, version or week are not taken for what is wanted."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from tests.proofing.making import made_short_week
from tests.proofing.planting import Lines, redraw, runs_of
from typeset.arithmetic.building import solve_week
from typeset.arithmetic.lessons import SolvedWeek
from typeset.documents.home_pack import compose_home_answers, compose_home_pack
from typeset.documents.layout import Layout
from typeset.documents.layout_files import find_layout
from typeset.documents.letter import Answers
from typeset.proofing import proof_home_answers, proof_home_pack
from typeset.reading.week import read_week
from typeset.setting.pdf import write_pdf

WEEK = Path(__file__).parent / "pack_week"


@cache
def layout() -> Layout:
    return find_layout("standard", Path("nowhere"))


@cache
def _solved() -> list[SolvedWeek]:
    return [solve_week(read_week(WEEK))]


def solved_week() -> SolvedWeek:
    return _solved()[0]


@cache
def made(answers: Answers = Answers.END) -> bytes:
    return write_pdf(compose_home_pack(solved_week(), layout(), answers)[0])


def told(pdf: bytes, answers: str = "end") -> str:
    found = proof_home_pack(pdf, "p.pdf", solved_week(), layout(), answers)
    return "\n".join(map(str, found))


def test_a_pack_with_answers_is_none_without() -> None:
    """And the other way round: what is wanted is what must be there."""
    with_answers = told(made(), "none")
    assert "bookmark" in with_answers
    assert "is printed" in with_answers
    assert "the answers is missing" in told(made(Answers.NONE)).replace("are missing", "is missing")


def test_a_pack_of_another_version_or_week_is_found() -> None:
    other = write_pdf(compose_home_pack(made_short_week().solved, layout(), Answers.END)[0])
    assert "the sheet of Friday is missing" in told(other)


def test_answers_alone_are_proofed_like_the_part() -> None:
    solved = solved_week()
    pdf = write_pdf(compose_home_answers(solved, layout())[0])

    def spoil(pages: list[Lines]) -> None:
        run = next(run for run in runs_of(pages[0]) if "84 kites" in run.text)
        pages[0][run.index] = run.line(text=run.text.replace("84 kites", "85 kites"))

    found = proof_home_answers(redraw(pdf, spoil), "a.pdf", solved, layout())
    assert any("'85'" in str(each) for each in found)
