from __future__ import annotations

import pytest

from typeset.drawing.shapes import Face
from typeset.quantities.inline import (
    Blank,
    Equals,
    MissingBox,
    Rich,
    Solid,
    Stacked,
    Words,
    words,
)
from typeset.setting.boxes import boxes_of

NB = "\u00a0"
EQUATION = Equals((Solid((f"3{NB}×{NB}4",)), Solid((f"6{NB}×{NB}2",)), Solid(("12",))), ("=", "="))

CASES: list[tuple[str, Rich, list[str]]] = [
    ("words part at spaces", words("on the quay"), ["on", "the", "quay"]),
    ("no-break spaces hold", words(f"page{NB}3 of"), [f"page{NB}3", "of"]),
    ("white space is one space", words("  on \n\t the  "), ["on", "the"]),
    ("a comma stays with its number", (Solid(("36",)), Words(", or")), ["36,", "or"]),
    ("a question mark stays with a blank", (Words("is "), Blank(), Words("?")), ["is", "_?"]),
    ("a bracket stays with what it opens", (Words("see ("), Solid(("5",))), ["see", "(5"]),
    (
        "a quotation mark stays with what it opens",
        (Words("said ‘"), Solid(("5",)), Words("’ or")),
        ["said", "‘5’", "or"],
    ),
    (
        "an amount is one box",
        (Words("of "), Solid(("2", Stacked("3", "4"), f"{NB}kg")), Words(" rope")),
        ["of", f"23/4{NB}kg", "rope"],
    ),
    (
        "a word may change its face",
        (Words("Nell", bold=True), Words("’s kite")),
        ["Nell’s", "kite"],
    ),
    (
        "an equation that fits is one box",
        (EQUATION, Words(".")),
        [f"3{NB}×{NB}4{NB}={NB}6{NB}×{NB}2{NB}={NB}12."],
    ),
    ("a box for a number holds to its sign", (Solid(("6×", MissingBox())),), ["6×_"]),
    ("nothing", (), []),
    ("only spaces", words("   "), []),
]


@pytest.mark.parametrize(("rich", "expected"), [c[1:] for c in CASES], ids=[c[0] for c in CASES])
def test_a_text_is_cut_only_at_spaces(rich: Rich, expected: list[str]) -> None:
    assert [box.text for box in boxes_of(rich, 12, Face.REGULAR, 500)] == expected


def test_an_equation_too_wide_for_the_measure_parts_before_its_signs() -> None:
    boxes = boxes_of((EQUATION, Words(".")), 12, Face.REGULAR, 60)
    assert [box.text for box in boxes] == [f"3{NB}×{NB}4", f"={NB}6{NB}×{NB}2", f"={NB}12."]


def test_the_first_box_has_no_space_before_it_and_the_others_have() -> None:
    boxes = boxes_of(words("on the quay"), 10, Face.REGULAR, 500)
    # The space of the regular face is 280 thousandths of an em wide ('hmtx' table).
    assert [box.space_pt for box in boxes] == pytest.approx([0, 2.8, 2.8])
