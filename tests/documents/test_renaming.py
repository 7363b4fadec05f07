"""A sheet made from another pupil's is the very sheet that is laid out whole."""

from __future__ import annotations

import pytest

from tests.proofing.making import made_week
from tests.proofing.making_class import NAMES, layout_named, pupils
from typeset.documents.class_work import PupilsSheet
from typeset.documents.renaming import lay_out, model_of
from typeset.documents.task_sheet import compose_task_sheet
from typeset.errors import FitError

LAYOUTS = ("standard", "low-glare", "large-print-18", "large-print-24", "paper-saving")
# With initials; of one letter, and as long as a list allows.
MORE = ("Asha B", "I", "Mm", "Odette-Imogen Tomasz", "Wwwwwwwwwwwwwwwwwwwwwwww")
NARROW = "iiiiiiiiiiiiiiiiiiiiiiii"


def sheet(name: str, layout: str, lesson: str = "tuesday") -> PupilsSheet:
    made = made_week()
    (pupil,) = pupils((name,))
    return PupilsSheet(pupil, made.solved, made.lesson(lesson), layout_named(layout))


@pytest.mark.parametrize("layout", LAYOUTS)
def test_only_the_name_is_set_anew_and_all_else_is_as_laid_out_whole(layout: str) -> None:
    """Against the full composition, item by item with every shape."""
    laid_out = lay_out(sheet(NAMES[0], layout))
    model = model_of(laid_out, laid_out.pages())
    assert model is not None
    anew = 0
    for name in (*NAMES, *MORE, NARROW):
        other = sheet(name, layout)
        try:
            whole = lay_out(other)
        except FitError:
            # A name that is too wide at every size.
            assert model.pages_for(other) is None
            continue
        pages = model.pages_for(other)
        assert pages in (None, whole.pages())
        if pages is not None:
            anew += 1
            assert whole.bare.type_size_pt == laid_out.bare.type_size_pt
            assert whole.bare.notes == laid_out.bare.notes
    assert anew >= len(NAMES)


def test_the_items_of_the_body_are_the_models_own() -> None:
    """So that a class takes little more memory than one sheet."""
    laid_out = lay_out(sheet("Asha", "standard"))
    model = model_of(laid_out, laid_out.pages())
    assert model is not None
    pages = model.pages_for(sheet("Kofi", "standard"))
    assert pages is not None
    pairs = zip(pages, model.pages, strict=True)
    own = [sum(a is not b for a, b in zip(p.placed, q.placed, strict=True)) for p, q in pairs]
    assert own == [1] * len(pages)


def test_a_sheet_alone_is_the_same() -> None:
    made = made_week()
    one = sheet("Asha", "standard")
    document, _ = compose_task_sheet(made.solved, one.lesson, one.layout, "Asha")
    assert document.pages == lay_out(one).pages()


# The first three need a foot of two lines, the last is too wide at the largest size.
@pytest.mark.parametrize(
    ("layout", "name"),
    [
        ("low-glare", MORE[-1]),
        ("paper-saving", MORE[-2]),
        ("large-print-24", NARROW),
        ("large-print-24", MORE[-2]),
    ],
)
def test_a_name_that_changes_the_rest_of_the_sheet_is_laid_out_whole(
    layout: str, name: str
) -> None:
    laid_out = lay_out(sheet("Asha", layout))
    model, whole = model_of(laid_out, laid_out.pages()), lay_out(sheet(name, layout))
    assert model is not None and model.pages_for(whole.sheet) is None
    changed = (whole.frame.height_pt, whole.bare.type_size_pt)
    assert changed != (laid_out.frame.height_pt, laid_out.bare.type_size_pt)


def test_a_sheet_set_smaller_for_its_name_is_no_model() -> None:
    """Another name would fit at a larger size."""
    laid_out = lay_out(sheet(MORE[-2], "large-print-24"))
    assert laid_out.bare.type_size_pt < layout_named("large-print-24").type_size.largest
    assert model_of(laid_out, laid_out.pages()) is None
