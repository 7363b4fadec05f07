from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from tests.drawing.random_texts import rich_texts
from typeset.drawing.fonts import TEXT_ASCENT_EMS, TEXT_DESCENT_EMS
from typeset.drawing.shapes import Face, Rect, Rule, TextRun
from typeset.errors import FitError, GlyphError
from typeset.quantities.inline import Blank, MissingBox, Rich, Solid, Stacked, Words, plain, words
from typeset.setting.paragraphs import (
    Paragraph,
    TextStyle,
    natural_width_pt,
    set_paragraph,
)

STYLE = TextStyle(12)
STORY = words("For every five gulls on the quay there are two terns and a seal. " * 3)


def baselines(paragraph: Paragraph) -> list[float]:
    return [line.baseline_pt for line in paragraph.lines]


def test_baselines_are_a_leading_apart() -> None:
    paragraph = set_paragraph(STORY, STYLE, 200)
    steps = [b - a for a, b in pairwise(baselines(paragraph))]
    assert len(steps) > 2 and steps == pytest.approx([18.0] * len(steps))


def test_a_line_of_words_is_one_run() -> None:
    paragraph = set_paragraph(STORY, STYLE, 200)
    assert len(paragraph.shapes) == len(paragraph.lines)
    assert (
        "".join(s.text for s in paragraph.shapes if isinstance(s, TextRun)) == plain(STORY).strip()
    )


def test_fractions_at_a_leading_of_one_and_a_half_need_no_more_room() -> None:
    thirds: Rich = (Words("cut "), Solid((Stacked("1", "3"),)), Words(" of it and then "))
    paragraph = set_paragraph(thirds * 6, STYLE, 150)
    assert baselines(paragraph)[1] - baselines(paragraph)[0] == pytest.approx(18.0)


def test_tight_leading_gives_way_to_fractions_but_only_between_their_lines() -> None:
    tight = TextStyle(12, leading=1.1)
    rich = (*words("gulls and terns and "), Solid((Stacked("1", "3"),)))
    rich = (*rich, *words(" of the kites upon the harbour wall of the old town by the sea"))
    first, second, *rest = baselines(set_paragraph(rich, tight, 140))
    steps = [b - a for a, b in pairwise((second, *rest))]
    assert second - first > 1.1 * 12
    assert steps[-1] == pytest.approx(1.1 * 12)


def test_the_height_is_from_the_first_ascent_to_the_last_descent() -> None:
    one_line = set_paragraph(words("gulls"), STYLE, 200)
    line_pt = (TEXT_ASCENT_EMS + TEXT_DESCENT_EMS) * 12
    assert one_line.height_pt == pytest.approx(line_pt)
    two_lines = set_paragraph(words("gulls gulls"), STYLE, 40)
    assert two_lines.height_pt == pytest.approx(line_pt + 18)


def test_style_reaches_the_runs() -> None:
    (run,) = set_paragraph(words("Recap"), STYLE.bold().scaled(1.5), 200).shapes
    assert isinstance(run, TextRun)
    assert (run.face, run.size_pt) == (Face.BOLD, 18)


def test_width_on_one_line_is_the_least_measure_that_holds_it() -> None:
    width = natural_width_pt(STORY, STYLE)
    assert len(set_paragraph(STORY, STYLE, width).lines) == 1
    assert len(set_paragraph(STORY, STYLE, width - 1).lines) == 2


def test_a_missing_character_is_refused() -> None:
    with pytest.raises(GlyphError, match=r"U\+2153"):
        set_paragraph(words("gulls ⅓ terns"), STYLE, 200)


@settings(max_examples=80, deadline=None)
@given(rich_texts, st.floats(100, 480), st.sampled_from([12.0, 14.0, 24.0]))
def test_nothing_leaves_the_paragraph_and_lines_never_touch(
    rich: Rich, measure: float, size: float
) -> None:
    try:
        paragraph = set_paragraph(rich, TextStyle(size), measure)
    except FitError:
        assume(False)
    assert paragraph.width_pt <= measure + 0.011
    foot = 0.0
    for line in paragraph.lines:
        top = line.baseline_pt - line.drawing.baseline_pt
        assert top >= foot - 0.01
        foot = top + line.drawing.height_pt
    assert foot == pytest.approx(paragraph.height_pt)
    letters = "".join(s.text for s in paragraph.shapes if isinstance(s, TextRun)).replace(" ", "")
    assert letters == "".join(plain(rich).split()).translate(str.maketrans("", "", "/_[]"))


@settings(max_examples=60, deadline=None)
@given(rich_texts, st.floats(100, 300))
def test_solids_and_blanks_are_never_split(rich: Rich, measure: float) -> None:
    try:
        paragraph = set_paragraph(rich, STYLE, measure)
    except FitError:
        assume(False)
    rules = sum(isinstance(shape, Rule) for shape in paragraph.shapes)
    boxes = sum(isinstance(shape, Rect) for shape in paragraph.shapes)
    assert rules == count(rich, Stacked) + count(rich, Blank)
    assert boxes == count(rich, MissingBox)
    lines = [
        "".join(box.text for box in line.boxes).replace("\u00a0", "") for line in paragraph.lines
    ]
    for item in rich:
        if isinstance(item, Solid):
            whole = plain((item,)).replace(" ", "").replace("[]", "_")
            assert any(whole in line for line in lines)


def count(rich: Rich, kind: type) -> int:
    total = 0
    for item in rich:
        total += isinstance(item, kind)
        solids = [item] if isinstance(item, Solid) else list(getattr(item, "sides", ()))
        total += sum(isinstance(piece, kind) for solid in solids for piece in solid.pieces)
    return total
