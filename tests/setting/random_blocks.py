"""Random blocks for the property tests of pages: plain boxes that are seen when placed."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import strategies as st

from typeset.drawing.shapes import Rect
from typeset.setting.answer_spaces import SpacePiece
from typeset.setting.blocks import Block, Saving
from typeset.setting.stretch import Stretch

ROOM_PT = 100.0
WIDTH_PT = 50.0


def plain_block(name: str, height: Stretch, gap: Stretch = Stretch(0, 0, 0)) -> Block:  # noqa: B008
    """A block that draws its own outline."""

    def draw(height_pt: float) -> tuple[Rect, ...]:
        return (Rect(0.0, 0.0, WIDTH_PT, height_pt, 1.0),)

    return Block(name, SpacePiece(WIDTH_PT, height, draw, source=name), gap, optional=True)


def _stretches(greatest: float) -> st.SearchStrategy[Stretch]:
    steps = st.integers(0, 8).map(lambda n: n * greatest / 8)
    return st.tuples(steps, steps, steps).map(lambda t: Stretch(*sorted(t)))


@st.composite
def block_lists(draw: st.DrawFn, most: int = 12) -> list[Block]:
    """Up to `most` blocks, some kept with the next, some opening a page."""
    blocks: list[Block] = []
    for index in range(draw(st.integers(1, most))):
        block = plain_block(f"b{index}", draw(_stretches(60)), draw(_stretches(10)))
        keep, opens = draw(st.integers(0, 3)) == 0, draw(st.integers(0, 9)) == 0
        savings = (Saving(f"shorten b{index}", block.piece.height.least_pt / 2),)
        blocks.append(
            replace(
                block,
                keep_with_next=keep,
                starts_page=opens,
                optional=True,
                savings=savings,
            )
        )
    return blocks
