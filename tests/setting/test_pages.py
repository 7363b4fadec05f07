from __future__ import annotations

import itertools

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.drawing.random_texts import rich_texts
from tests.setting.random_blocks import ROOM_PT, WIDTH_PT, block_lists, plain_block
from typeset.drawing.fonts import width_pt
from typeset.drawing.shapes import PT_PER_MM as MM
from typeset.drawing.shapes import Face, Rect, Rule, TextRun
from typeset.errors import FitError
from typeset.quantities.inline import Rich, words
from typeset.setting.answer_lines import AnswerLine
from typeset.setting.answer_spaces import AnswerSpace, Rows, SpaceKind
from typeset.setting.blocks import Block, Column, Question, question_block
from typeset.setting.frames import Page, Placed, Role
from typeset.setting.pages import (
    FULL_SHARE,
    LAST_FULL_SHARE,
    Compose,
    PageFrame,
    PageLayout,
    fill_sides,
    flow,
)
from typeset.setting.paragraphs import TextStyle
from typeset.setting.pieces import text
from typeset.setting.stretch import Stretch, fixed

SMALL = PageFrame(70, 130, 10, 20, WIDTH_PT, ROOM_PT)
# A4 is 210 × 297 mm (ISO 216, sources.md section 4).
A4 = PageFrame(210 * MM, 297 * MM, 20 * MM, 18 * MM, 170 * MM, 257 * MM)


def always(blocks: list[Block]) -> Compose:
    return lambda size_pt: blocks


def check_laws(blocks: list[Block], layout: PageLayout) -> None:
    """Every block once, whole, in order, in the frame, over no other."""
    names = [item.source for page in layout.pages for item in page.placed]
    assert names == [block.name for block in blocks]
    for page in layout.pages:
        foot = SMALL.top_pt
        for item in page.placed:
            assert item.y_pt >= foot - 0.01
            foot = item.y_pt + item.height_pt
        assert foot <= SMALL.top_pt + ROOM_PT + 0.02
    last = {page.placed[-1].source for page in layout.pages[:-1]}
    for block, following in itertools.pairwise(blocks):
        assert not (block.keep_with_next and block.name in last) or following.starts_page
        if following.starts_page:
            assert block.name in last


@settings(max_examples=80, deadline=None)
@given(block_lists(), st.integers(1, 4))
def test_exactly_the_sides_asked_for_or_a_clear_error(blocks: list[Block], sides: int) -> None:
    try:
        layout = fill_sides(always(blocks), SMALL, sides, (12,))
    except FitError as error:
        said = str(error)
        assert any(word in said for word in ("needs", "must stand", "cannot be filled"))
        return
    assert len(layout.pages) == sides
    check_laws(blocks, layout)
    for block in blocks:
        (height,) = [i.height_pt for p in layout.pages for i in p.placed if i.source == block.name]
        bounds = block.piece.height
        assert bounds.least_pt - 0.01 <= height <= bounds.greatest_pt + 0.01
    short = [f < LAST_FULL_SHARE - 0.001 for f in layout.fills[-1:]]
    short = [f < FULL_SHARE - 0.001 for f in layout.fills[:-1]] + short
    assert len(layout.notes) == sum(short)
    for is_short, looseness in zip(short, layout.looseness, strict=True):
        assert not is_short or looseness == 2


@settings(max_examples=80, deadline=None)
@given(block_lists())
def test_flow_takes_any_length(blocks: list[Block]) -> None:
    try:
        layout = flow(always(blocks), SMALL, 12)
    except FitError as error:
        assert "must stand on one page" in str(error)
        return
    check_laws(blocks, layout)
    assert layout.looseness[-1] <= 1


def test_flow_of_nothing_is_no_pages() -> None:
    assert flow(always([]), SMALL, 12).pages == ()


def test_the_largest_size_that_fits_is_taken() -> None:
    def compose(size: float) -> list[Block]:
        return [plain_block(str(n), fixed(size * 2)) for n in range(4)]

    sizes = (14, 13, 12.5, 12)
    assert fill_sides(compose, SMALL, 1, sizes).type_size_pt == 12.5
    assert fill_sides(compose, SMALL, 2, sizes).type_size_pt == 14


def test_a_size_at_which_a_word_is_too_wide_is_passed_over() -> None:
    def compose(size: float) -> list[Block]:
        if size > 12:
            raise FitError("too wide")
        return [plain_block("a", fixed(90))]

    assert fill_sides(compose, SMALL, 1, (14, 12)).type_size_pt == 12
    with pytest.raises(FitError, match="too wide"):
        fill_sides(compose, SMALL, 1, (14, 13))


def test_equal_spaces_stay_equal_and_reach_the_foot() -> None:
    blocks = [plain_block(str(n), Stretch(10, 20, 60), Stretch(2, 4, 8)) for n in range(3)]
    layout = fill_sides(always(blocks), SMALL, 1, (12,))
    heights = [item.height_pt for item in layout.pages[0].placed]
    assert heights == pytest.approx([heights[0]] * 3)
    last = layout.pages[0].placed[-1]
    assert last.y_pt + last.height_pt == pytest.approx(SMALL.top_pt + ROOM_PT)
    assert layout.fills == (1.0,) and layout.notes == ()


def test_the_last_side_is_as_loose_as_the_others_not_more() -> None:
    soft = Stretch(20, 25, 90)
    blocks = [plain_block(str(n), soft) for n in range(5)]
    layout = fill_sides(always(blocks), SMALL, 2, (12,))
    assert layout.looseness[1] <= max(layout.looseness[0], soft.looseness(LAST_FULL_SHARE * 50))
    assert layout.fills[1] >= LAST_FULL_SHARE - 0.001


def test_a_side_that_cannot_be_filled_says_so() -> None:
    layout = fill_sides(always([plain_block("a", Stretch(10, 20, 40))]), SMALL, 1, (12,))
    (note,) = layout.notes
    assert note.startswith("side 1 is 40 % full")


def test_furniture_and_tint_are_on_every_page() -> None:
    def furniture(index: int, count: int) -> tuple[Placed, ...]:
        text = f"page {index + 1} of {count}"
        return (Placed(Role.FURNITURE, 0, 0, 10, 10, (), reads_as=text),)

    frame = PageFrame(70, 130, 10, 20, WIDTH_PT, ROOM_PT, furniture, tint=(1.0, 0.98, 0.9))
    blocks = [plain_block(str(n), fixed(60)) for n in range(3)]
    pages = flow(always(blocks), frame, 12).pages
    assert [page.placed[-1].reads_as for page in pages] == [
        "page 1 of 3",
        "page 2 of 3",
        "page 3 of 3",
    ]
    assert {page.tint for page in pages} == {(1.0, 0.98, 0.9)}
    assert {(page.width_pt, page.height_pt) for page in pages} == {(70, 130)}


KINDS = list(SpaceKind)


@settings(max_examples=40, deadline=None)
@given(
    st.lists(st.tuples(rich_texts, st.sampled_from(KINDS)), min_size=1, max_size=9),
    st.integers(1, 4),
)
def test_real_questions_stay_inside_the_frame_and_never_overlap(
    stories: list[tuple[Rich, SpaceKind]], sides: int
) -> None:
    def compose(size: float) -> list[Block]:
        column = Column(TextStyle(size), A4.width_pt)
        bold = TextStyle(size * 1.2, 1.2, Face.BOLD)
        heading = text(words("Recap"), bold, column.width_pt, Role.HEADING)
        blocks = [Block("recap", heading, keep_with_next=True)]
        for number, (story, kind) in enumerate(stories, 1):
            choices = (words("multiply"), words("do not"))
            answers = (AnswerLine(after=words("gulls")),)
            space = AnswerSpace(kind, Rows(1, 3, 12), answers, choices=choices)
            name = f"question {number}"
            question = Question(name, str(number), story, space, source=name)
            blocks.append(question_block(question, column))
        return blocks

    try:
        layout = fill_sides(compose, A4, sides, (14, 13, 12))
    except FitError:
        return
    for page in layout.pages:
        inside(page)
        boxes = [item for item in page.placed if item.shapes]
        for index, item in enumerate(boxes):
            assert not any(overlap(item, other) for other in boxes[index + 1 :])


def inside(page: Page) -> None:
    left, right = A4.left_pt - 0.02, A4.left_pt + A4.width_pt + 0.02
    top, foot = A4.top_pt - 0.5, A4.top_pt + A4.height_pt + 0.5
    for item in page.placed:
        for shape in item.shapes:
            x1, y1, x2, y2 = extent(shape)
            assert left <= x1 and x2 <= right and top <= y1 and y2 <= foot


def extent(shape: object) -> tuple[float, float, float, float]:
    if isinstance(shape, TextRun):
        # A line may end in a space, which is not seen.
        right = shape.x_pt + width_pt(shape.text.rstrip(), shape.size_pt, shape.face)
        return shape.x_pt, shape.y_pt - 0.7 * shape.size_pt, right, shape.y_pt
    if isinstance(shape, Rule):
        return shape.x1_pt, shape.y1_pt, shape.x2_pt, shape.y2_pt
    assert isinstance(shape, Rect)
    right, foot = shape.x_pt + shape.width_pt, shape.y_pt + shape.height_pt
    return shape.x_pt, shape.y_pt, right, foot


def overlap(a: Placed, b: Placed) -> bool:
    across = min(a.x_pt + a.width_pt, b.x_pt + b.width_pt) - max(a.x_pt, b.x_pt)
    down = min(a.y_pt + a.height_pt, b.y_pt + b.height_pt) - max(a.y_pt, b.y_pt)
    return across > 0.02 and down > 0.02
