"""What is remembered between documents is never taken for something else: another family of
type, another wording, another drawing."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from typing import Any

import pytest

from typeset.arithmetic.figures import Bar, BarModel, Mark, Part, Show
from typeset.documents import wording
from typeset.documents.wording import phrase
from typeset.drawing import figures, fonts, inline_maths, labels
from typeset.drawing.figures import draw_figure
from typeset.drawing.fonts import TypeFamily, in_family, own_family, width_pt
from typeset.drawing.labels import line_label, wrapped_label
from typeset.errors import GlyphError
from typeset.quantities.inline import words
from typeset.setting import content, paragraphs, pdf_objects
from typeset.setting.paragraphs import TextStyle, set_paragraph

STORY = words("For every five gulls on the quay there are two terns. How many terns are there?")
MODEL = BarModel(
    (Bar("the terns on the harbour wall", (Part(Fraction(3), Mark(words("36 terns"), True)),)),)
)
MADE: dict[str, Callable[[], Any]] = {
    "a width": lambda: width_pt("Kites over the harbour", 12),
    "a paragraph": lambda: set_paragraph(STORY, TextStyle(12), 200),
    "a label": lambda: line_label(words("36 terns"), 12),
    "a name": lambda: wrapped_label("the terns on the harbour wall", 12, 90),
    "a figure": lambda: draw_figure(MODEL, Show.COMPLETE, 300, 12),
}
CACHES = (
    content.number,
    content._size,
    fonts._width_per_mille,
    figures._draw_figure,
    inline_maths.atoms_of,
    labels._line_label,
    labels._wrapped_label,
    paragraphs._set_paragraph,
    pdf_objects.string,
    wording._filled,
    wording._template,
)


def swapped() -> TypeFamily:
    """The same two files, each in the place of the other: other widths, the same letters."""
    own = own_family()
    return TypeFamily(own.bold, own.regular, own.measures)


def forget() -> None:
    for cached in CACHES:
        cached.cache_clear()


@pytest.mark.parametrize("what", MADE)
def test_what_was_made_in_one_family_is_not_taken_for_another(what: str) -> None:
    make = MADE[what]
    forget()
    with in_family(swapped()):
        alone = make()
        forget()
    own = make()
    with in_family(swapped()):
        assert make() == alone
        with in_family(None):
            assert make() == own
    assert own != alone


def test_equal_families_share_and_unequal_ones_do_not() -> None:
    one, same = swapped(), swapped()
    assert one == same and hash(one) == hash(same)
    assert one != own_family()


def test_a_letter_that_lacks_is_told_again_and_in_the_family_in_use() -> None:
    for _ in range(2):
        with pytest.raises(GlyphError, match="the regular font has no '漢'"):
            width_pt("gull 漢", 12)
    with in_family(swapped()), pytest.raises(GlyphError, match="the bold font has no '漢'"):
        set_paragraph(words("gull 漢", bold=True), TextStyle(12), 200)


def test_a_paragraph_is_set_anew_for_another_measure_size_or_face() -> None:
    style = TextStyle(12)
    styles = [style, style.bold(), style.scaled(1.1), TextStyle(12, leading=1.2)]
    made = [set_paragraph(STORY, each, measure) for each in styles for measure in (200, 210)]
    assert len({repr(each) for each in made}) == len(made)


def test_a_bold_word_is_not_taken_for_a_plain_one() -> None:
    plain, bold = (set_paragraph(words("gulls", b), TextStyle(12), 200) for b in (False, True))
    assert plain.shapes != bold.shapes


def test_two_layouts_say_the_same_key_in_their_own_words() -> None:
    one = {"booklet": {"lesson": "{{ day }}: {{ lesson }}"}}
    other = {"booklet": {"lesson": "{{ lesson }} ({{ day }})"}}
    for day in ("Monday", "Tuesday"):
        assert phrase(one, "booklet", "lesson", day=day, lesson="Ropes") == f"{day}: Ropes"
        assert phrase(other, "booklet", "lesson", day=day, lesson="Ropes") == f"Ropes ({day})"


@pytest.mark.parametrize("cached", CACHES, ids=lambda each: each.__name__)
def test_no_cache_grows_without_end(cached: Any) -> None:
    assert cached.cache_info().maxsize is not None
