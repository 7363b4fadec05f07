"""What to tell a teacher whose sheet does not fit: by computation, not by rule of thumb.

Every change that the blocks offer is tried: does the sheet fit with it? Those that do come
first, the one that gives up least before the others.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from typeset.drawing.shapes import PT_PER_MM
from typeset.errors import FitError
from typeset.setting.blocks import Block, Saving
from typeset.setting.breaking import Span, fewest_pages, may_break_before, page_height
from typeset.setting.pieces import Room
from typeset.setting.stretch import TOLERANCE_PT, Stretch

_CHANGES = 3


@dataclass(frozen=True, slots=True)
class _Change:
    """Something that would help: whether it is enough alone, and what it gives up."""

    what: str
    saves_pt: float
    is_enough: bool


def too_long(blocks: Sequence[Block], room_pt: float, sides: int, size_pt: float) -> FitError:
    """The error for blocks that need more sides, with the changes that would help most."""
    needed = fewest_pages(blocks, room_pt)
    changes = _best_changes(blocks, room_pt, sides)
    advice = "; ".join(f"({n}) {change}" for n, change in enumerate(changes, 1))
    return FitError(
        f"this needs {_sides(needed)} and not {sides}, even at {size_pt:g} pt, the smallest "
        f"size of the layout, with every space at its least. What would help most: {advice}"
    )


def too_tall(blocks: Sequence[Block], room_pt: float, size_pt: float) -> FitError | None:
    """The error for blocks that must stand together and are taller than a page, if any are."""
    for span in _groups(blocks):
        height = page_height(blocks, span).least_pt
        if height > room_pt + TOLERANCE_PT:
            names = " with ".join(block.name for block in blocks[span.first : span.end])
            excess = (height - room_pt) / PT_PER_MM
            return FitError(
                f"{names} must stand on one page, and at {size_pt:g} pt is "
                f"{height / PT_PER_MM:.0f} mm high: {excess:.0f} mm more than a page holds; "
                f"{_shorter(blocks[span.first : span.end], height - room_pt)}"
            )
    return None


def parted(blocks: Sequence[Block], room_pt: float) -> list[Block]:
    """The blocks, those that may part parted where they are higher together than a page."""
    result = list(blocks)
    for span in _groups(blocks):
        if page_height(blocks, span).least_pt <= room_pt + TOLERANCE_PT:
            continue
        for index in range(span.first, span.end):
            if blocks[index].may_part:
                result[index] = replace(blocks[index], keep_with_next=False)
    return result


def too_few_blocks(blocks: Sequence[Block], sides: int) -> FitError:
    """The error for blocks that cannot be spread over so many sides."""
    groups = len(_groups(blocks))
    return FitError(
        f"{_sides(sides)} cannot be filled: there {'is' if groups == 1 else 'are'} only {groups} "
        f"part{'' if groups == 1 else 's'} that may stand on a side of "
        f"{'its' if groups == 1 else 'their'} own; ask for fewer sides, or add questions"
    )


def _best_changes(blocks: Sequence[Block], room_pt: float, sides: int) -> list[str]:
    """Up to three changes: another number of sides, and the two that give up least."""
    needed = fewest_pages(blocks, room_pt)
    changes = sorted(
        (*_omissions(blocks, room_pt, sides), *_savings(blocks, room_pt, sides)),
        key=_least_loss_first,
    )
    first = f"ask for {_sides(needed)}"
    rest = [_said(change) for change in changes[: _CHANGES - 1]]
    if not any(change.is_enough for change in changes[: _CHANGES - 1]):
        together = _omissions_together(blocks, room_pt, sides)
        rest = [together, *rest][: _CHANGES - 1] if together else rest
    return [first, *rest]


def _least_loss_first(change: _Change) -> tuple[bool, float, str]:
    """Changes that are enough, the smallest first; then the others, the largest first."""
    loss = change.saves_pt if change.is_enough else -change.saves_pt
    return (not change.is_enough, loss, change.what)


def _said(change: _Change) -> str:
    enough = "then it fits" if change.is_enough else "helps, but is not enough alone"
    return f"{change.what} (saves {change.saves_pt / PT_PER_MM:.0f} mm: {enough})"


def _omissions(blocks: Sequence[Block], room_pt: float, sides: int) -> Iterator[_Change]:
    for index, block in enumerate(blocks):
        if block.optional:
            rest = [*blocks[:index], *blocks[index + 1 :]]
            saves = block.piece.height.least_pt + block.before.least_pt
            yield _Change(f"leave out {block.name}", saves, fewest_pages(rest, room_pt) <= sides)


def _savings(blocks: Sequence[Block], room_pt: float, sides: int) -> Iterator[_Change]:
    """Of every block the smallest saving that is enough, or its largest."""
    for index, block in enumerate(blocks):
        tried = [
            _Change(
                saving.what,
                saving.saves_pt,
                fewest_pages(_with_saving(blocks, index, saving), room_pt) <= sides,
            )
            for saving in block.savings
        ]
        if tried:
            yield min(tried, key=_least_loss_first)


def _with_saving(blocks: Sequence[Block], index: int, saving: Saving) -> list[Block]:
    height = blocks[index].piece.height
    least = height.least_pt - saving.saves_pt
    lower = Stretch(least, max(least, height.natural_pt), max(least, height.greatest_pt))
    changed = replace(blocks[index], piece=Room(blocks[index].piece.width_pt, lower))
    return [*blocks[:index], changed, *blocks[index + 1 :]]


def _omissions_together(blocks: Sequence[Block], room_pt: float, sides: int) -> str | None:
    """What to leave out where no one block is enough: the tallest first, as few as it takes."""
    by_height = sorted(
        (index for index, block in enumerate(blocks) if block.optional),
        key=lambda index: -_least_height(blocks[index]),
    )
    for count in range(2, len(by_height) + 1):
        out = set(by_height[:count])
        rest = [block for index, block in enumerate(blocks) if index not in out]
        if fewest_pages(rest, room_pt) <= sides:
            gone = [blocks[index] for index in sorted(out)]
            saves = sum(_least_height(block) + block.before.least_pt for block in gone) / PT_PER_MM
            names = _listed([block.name for block in gone])
            return f"leave out {names} (saves {saves:.0f} mm: then it fits)"
    return None


def _least_height(block: Block) -> float:
    return block.piece.height.least_pt


def _shorter(blocks: Sequence[Block], excess_pt: float) -> str:
    """What to shorten: 'or' where the best saving is enough alone, else 'and'."""
    savings = [saving for block in blocks for saving in block.savings]
    if not savings:
        return "shorten its text or make its figure smaller"
    best = max(savings, key=lambda saving: saving.saves_pt)
    way = "or" if best.saves_pt >= excess_pt else "and"
    return f"shorten its text, {way} {best.what} (saves {best.saves_pt / PT_PER_MM:.0f} mm)"


def _groups(blocks: Sequence[Block]) -> tuple[Span, ...]:
    groups: list[Span] = []
    start = 0
    for end in range(1, len(blocks) + 1):
        if may_break_before(blocks, end):
            groups.append(Span(start, end))
            start = end
    return tuple(groups)


def _listed(names: Sequence[str]) -> str:
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"


def _sides(count: int) -> str:
    return f"{count} side" if count == 1 else f"{count} sides"
