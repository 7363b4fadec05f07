"""Posts and gaps: the posts are counted out, and a long row is drawn in part."""

from __future__ import annotations

from itertools import pairwise

import pytest

from typeset.arithmetic.figures import Mark, PostsAndGaps, Show
from typeset.drawing.figures import draw_figure
from typeset.drawing.shapes import Drawing, Rect, TextRun
from typeset.quantities.inline import words


def row(posts: int, gaps: int) -> PostsAndGaps:
    asked = Mark(words(f"{posts} posts"), is_given=False)
    return PostsAndGaps(posts, gaps, Mark(words("3 m")), Mark(words(f"{3 * gaps} m")), asked)


def posts(drawing: Drawing) -> list[Rect]:
    return [shape for shape in drawing.shapes if isinstance(shape, Rect)]


@pytest.mark.parametrize(("count", "gaps"), [(9, 8), (8, 8), (7, 8), (2, 1), (1, 2)])
def test_a_short_row_has_all_its_posts_evenly(count: int, gaps: int) -> None:
    found = posts(draw_figure(row(count, gaps), Show.COMPLETE, 400.0, 12.0))
    assert len(found) == count
    steps = [b.x_pt - a.x_pt for a, b in pairwise(found)]
    assert steps == pytest.approx(steps[:1] * len(steps))


def test_a_long_row_is_drawn_in_part() -> None:
    drawing = draw_figure(row(101, 100), Show.COMPLETE, 400.0, 12.0)
    assert 4 <= len(posts(drawing)) <= 8
    texts = {s.text for s in drawing.shapes if isinstance(s, TextRun)}
    assert texts == {"3 m", "300 m", "101 posts"}


def test_the_empty_frame_has_one_post_and_no_number() -> None:
    frame = draw_figure(row(9, 8), Show.FRAME, 400.0, 12.0)
    assert len(posts(frame)) == 1
    assert not [s for s in frame.shapes if isinstance(s, TextRun)]
