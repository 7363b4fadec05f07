"""Tables: ratio tables with the arrows of a strategy, and two-way tables of choices."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from typeset.arithmetic.figures import Mark, RatioTable, Show, TwoWayTable
from typeset.drawing.figure_words import ratio_table_words, two_way_words
from typeset.drawing.jumps import (
    SIDE_GAP_PT,
    draw_jumps,
    draw_left_jumps,
    draw_side_jumps,
    side_jumps_width_pt,
)
from typeset.drawing.labels import Label, line_label, longest_word_pt, mark_label, wrapped_label
from typeset.drawing.pens import FINE_PT, OUTLINE_PT, rule
from typeset.drawing.shapes import BLACK, Drawing, Face, Rect
from typeset.drawing.sketch import OUTSIDE, Sketch, largest_with_names
from typeset.errors import FitError
from typeset.quantities.inline import words

_SIDE_PT = 6.0
_LEAST_SIDE_PT = 3.0
# A cell is large enough to write a number in by hand (12 by 9 mm).
_LEAST_CELL_PT = 34.0
# Where the width is short, 7 mm: the side of a square in a pupil's book.
_SMALLEST_CELL_PT = 20.0
_LEAST_ROW_PT = 25.5
# Columns that share what is left never grow beyond this many ems: a table, not a road.
_MOST_CELL_EMS = 7.0
_MOST_ROWS = 6
_MOST_COLUMNS = 7
# The first, the last, and '…' between them.
_FEWEST_COLUMNS = 3
# Where long names leave no room for the columns, they break into more lines.
_NARROW_NAMES = 0.2
_MORE = "…"


@dataclass(frozen=True, slots=True)
class _Grid:
    """The edges of a table's columns and rows; the first of each is the heads'."""

    xs_pt: tuple[float, ...]
    ys_pt: tuple[float, ...]

    def middle_x(self, column: int) -> float:
        """The middle of a column, heads not counted."""
        return (self.xs_pt[column + 1] + self.xs_pt[column + 2]) / 2

    def middle_y(self, row: int) -> float:
        """The middle of a row, heads not counted."""
        return (self.ys_pt[row + 1] + self.ys_pt[row + 2]) / 2


def draw_ratio_table(table: RatioTable, show: Show, width_pt: float, size_pt: float) -> Drawing:
    """The table, its arrows over, under and right of it. Raises FitError, GlyphError."""
    return largest_with_names(
        lambda size, share: _ratio(table, show, width_pt, (size, share)), size_pt
    )


def draw_two_way_table(table: TwoWayTable, show: Show, width_pt: float, size_pt: float) -> Drawing:
    """The table with its heads; of a large one the first rows and columns and the last.

    Raises FitError, GlyphError.
    """
    return largest_with_names(
        lambda size, share: _two_way(table, show, width_pt, (size, share)), size_pt
    )


def _ratio(table: RatioTable, show: Show, width_pt: float, plan: tuple[float, float]) -> Drawing:
    """`plan` is the label size and the names' share of the width."""
    size_pt, share = plan
    if share == OUTSIDE:
        return _turned(table, show, width_pt, size_pt)
    sketch = Sketch(width_pt)
    names = [wrapped_label(name, size_pt, share * width_pt) for name in table.row_names]
    cells = [[mark_label(mark, show, size_pt) for mark in row] for row in table.cells]
    full = [[mark_label(mark, Show.COMPLETE, size_pt) for mark in row] for row in table.cells]
    beside = side_jumps_width_pt(table.across, show, size_pt)
    # In every state each cell has the room that its value will need.
    grid = _grid(names, [], full, width_pt - beside, size_pt)
    _draw_cells(sketch, grid, cells)
    _draw_heads(sketch, grid, names, [])
    xs = [grid.middle_x(column) for column in range(len(table.cells[0]))]
    ys = [grid.middle_y(row) for row in range(len(table.cells))]
    for up in (True, False):
        jumps = [jump for jump in table.jumps if jump.below != up]
        base = grid.ys_pt[1] - SIDE_GAP_PT if up else grid.ys_pt[-1] + SIDE_GAP_PT
        draw_jumps(sketch, jumps, xs, (show, size_pt), base, up)
    draw_side_jumps(sketch, table.across, ys, (show, size_pt), grid.xs_pt[-1] + SIDE_GAP_PT)
    return sketch.finished(ratio_table_words(table, show))


def _turned(table: RatioTable, show: Show, width_pt: float, size_pt: float) -> Drawing:
    """The table on its side, names over its columns: for values too wide to stand in a row.

    Arrows that ran over the table run at its left, those under it at its right, and those
    from row to row over it.
    """
    sketch = Sketch(width_pt)
    turned = list(zip(*table.cells, strict=True))
    cells = [[mark_label(mark, show, size_pt) for mark in row] for row in turned]
    full = [[mark_label(mark, Show.COMPLETE, size_pt) for mark in row] for row in turned]
    over = [jump for jump in table.jumps if not jump.below]
    under = [jump for jump in table.jumps if jump.below]
    left = side_jumps_width_pt(over, show, size_pt)
    right = width_pt - left - side_jumps_width_pt(under, show, size_pt)
    heads = _heads_over(table.row_names, list(zip(*full, strict=True)), size_pt, right)
    grid = _grid([], heads, full, right, size_pt)
    grid = replace(grid, xs_pt=tuple(x + left for x in grid.xs_pt))
    _draw_cells(sketch, grid, cells)
    _draw_heads(sketch, grid, [], heads)
    ys = [grid.middle_y(row) for row in range(len(cells))]
    xs = [grid.middle_x(column) for column in range(len(table.cells))]
    look = (show, size_pt)
    draw_side_jumps(sketch, under, ys, look, grid.xs_pt[-1] + SIDE_GAP_PT)
    draw_left_jumps(sketch, over, ys, look, grid.xs_pt[1] - SIDE_GAP_PT)
    base = min(box.top for box in sketch.extents()) - SIDE_GAP_PT
    draw_jumps(sketch, table.across, xs, look, base, up=True)
    return sketch.finished(ratio_table_words(table, show))


def _heads_over(
    names: Sequence[str], columns: Sequence[Sequence[Label | None]], size_pt: float, room_pt: float
) -> list[Label]:
    """Names over columns that need their own width for what stands in them; what is left over
    is shared among the names, so that they take few lines."""
    least = [
        max([longest_word_pt(name, size_pt), *(label.width_pt for label in column if label)])
        for name, column in zip(names, columns, strict=True)
    ]
    spare = room_pt - sum(least) - 2 * _SIDE_PT * len(names)
    share = max(0.0, spare / len(names))
    return [
        wrapped_label(name, size_pt, need + share) for name, need in zip(names, least, strict=True)
    ]


def _two_way(table: TwoWayTable, show: Show, width_pt: float, plan: tuple[float, float]) -> Drawing:
    """As many columns as have room; fewer where their heads are long.

    Raises FitError.
    """
    size_pt, share = plan
    room = (share or _NARROW_NAMES) * width_pt
    problem = FitError(f"a table does not fit in {width_pt:.0f} pt")
    for most in _columns_to_try(len(table.across.options), width_pt - room):
        try:
            return _two_way_of(table, (show, most), (width_pt, room), size_pt)
        except FitError as error:
            problem = error
    raise problem


def _columns_to_try(count: int, room_pt: float) -> Iterator[int]:
    """All columns where they have any room, even a narrow one; else as many as have ample
    room, and then fewer and fewer."""
    if count <= min(_MOST_COLUMNS, int(room_pt / _SMALLEST_CELL_PT)):
        yield count
    ample = int(room_pt / (_LEAST_CELL_PT + _SIDE_PT))
    yield from range(max(_FEWEST_COLUMNS, min(_MOST_COLUMNS, ample)), _FEWEST_COLUMNS - 1, -1)


def _two_way_of(
    table: TwoWayTable, look: tuple[Show, int], widths: tuple[float, float], size_pt: float
) -> Drawing:
    """`look` is the state and the most columns, `widths` that of all and that of the names."""
    (show, most), (width_pt, room) = look, widths
    sketch = Sketch(width_pt)
    rows = _folded(len(table.down.options), _MOST_ROWS)
    columns = _folded(len(table.across.options), most)
    names = [_head(table.down.options, row, size_pt, room) for row in rows]
    title = wrapped_label(table.down.name, size_pt, room, Face.BOLD)
    first = max(name.width_pt for name in (*names, title)) + _SIDE_PT + 2
    heads = _heads(table.across.options, columns, size_pt, width_pt - first - 2 * OUTLINE_PT)
    cells = [[_cell(table, row, column, show, size_pt) for column in columns] for row in rows]
    grid = _grid([*names, title], heads, cells, width_pt, size_pt)
    _draw_cells(sketch, grid, cells)
    _draw_heads(sketch, grid, names, heads)
    _draw_title(sketch, table, grid, size_pt)
    sketch.put(title, 0.0, -title.height_pt - 2)
    total = mark_label(table.total, show, size_pt)
    if total is not None:
        sketch.put(total, grid.xs_pt[-1] - total.width_pt, grid.ys_pt[-1] + 4)
    return sketch.finished(two_way_words(table, show))


def _heads(
    options: Sequence[str], columns: Sequence[int | None], size_pt: float, room_pt: float
) -> list[Label]:
    """The heads of the columns: each an equal share where that holds its longest word, else
    that word's width, and the others less."""
    words_pt = [0.0 if at is None else longest_word_pt(options[at], size_pt) for at in columns]
    sides = 2 * _LEAST_SIDE_PT * len(columns)
    limit = (room_pt - sides) / len(columns)
    over = [width for width in words_pt if width > limit]
    if over and len(over) < len(columns):
        limit = (room_pt - sides - sum(over)) / (len(columns) - len(over))
    return [
        _head(options, at, size_pt, max(limit, width))
        for at, width in zip(columns, words_pt, strict=True)
    ]


def _folded(count: int, most: int) -> list[int | None]:
    """The rows or columns that are drawn; None stands for those left out."""
    if count <= most:
        return list(range(count))
    return [*range(most - 2), None, count - 1]


def _head(options: Sequence[str], index: int | None, size_pt: float, room_pt: float) -> Label:
    if index is None:
        return line_label(words(_MORE), size_pt)
    return wrapped_label(options[index], size_pt, room_pt)


def _cell(
    table: TwoWayTable, row: int | None, column: int | None, show: Show, size_pt: float
) -> Label | None:
    if row is None or column is None:
        return None
    mark: Mark | None = table.cells[row][column]
    return mark_label(mark, show, size_pt)


def _grid(
    names: Sequence[Label],
    heads: Sequence[Label],
    cells: Sequence[Sequence[Label | None]],
    width_pt: float,
    size_pt: float,
) -> _Grid:
    """Edges with room for every label. Raises FitError where they exceed the width."""
    first = max(name.width_pt for name in names) + _SIDE_PT + 2 if names else OUTLINE_PT / 2
    room = width_pt - first - 2 * OUTLINE_PT
    least = min(_LEAST_CELL_PT, max(_SMALLEST_CELL_PT, room / len(cells[0])))
    for side in (_SIDE_PT, _LEAST_SIDE_PT):
        needed = [
            _column_needs(column, heads, cells, (least, side)) for column in range(len(cells[0]))
        ]
        if sum(needed) <= room:
            break
    else:
        raise FitError(
            f"a table of {len(needed)} columns needs {first + sum(needed) + 2:.0f} pt and has "
            f"{max(0.0, width_pt):.0f} pt; fewer columns, shorter names or a wider column "
            "would help"
        )
    # Equal columns where the widest fits in all, each its own width otherwise.
    equal = min(room / len(needed), max(_MOST_CELL_EMS * size_pt, max(needed)))
    widths = [equal] * len(needed) if equal >= max(needed) else needed
    xs = [0.0, first]
    for width in widths:
        xs.append(xs[-1] + width)
    head_height = max((head.height_pt + 4 for head in heads), default=0.0)
    ys = [-head_height, 0.0]
    for index, row in enumerate(cells):
        tall = [label.level_height_pt + 6 for label in row if label is not None]
        tall += [name.level_height_pt + 3 for name in names[index : index + 1]]
        ys.append(ys[-1] + max([_LEAST_ROW_PT, 2 * size_pt, *tall]))
    return _Grid(tuple(xs), tuple(ys))


def _column_needs(
    column: int,
    heads: Sequence[Label],
    cells: Sequence[Sequence[Label | None]],
    least: tuple[float, float],
) -> float:
    """`least` is the least width of a cell, and the white beside what stands in it."""
    least_pt, side_pt = least
    labels = [row[column] for row in cells] + ([heads[column]] if heads else [])
    widths = [label.width_pt + 2 * side_pt for label in labels if label is not None]
    return max([least_pt, *widths])


def _draw_cells(sketch: Sketch, grid: _Grid, cells: Sequence[Sequence[Label | None]]) -> None:
    for row, labels in enumerate(cells):
        for column, label in enumerate(labels):
            left, right = grid.xs_pt[column + 1], grid.xs_pt[column + 2]
            top, bottom = grid.ys_pt[row + 1], grid.ys_pt[row + 2]
            sketch.add(Rect(left, top, right - left, bottom - top, FINE_PT, BLACK))
            if label is not None:
                sketch.put_level(label, (left + right) / 2, (top + bottom) / 2)
    left, top = grid.xs_pt[1], grid.ys_pt[1]
    outer = Rect(left, top, grid.xs_pt[-1] - left, grid.ys_pt[-1] - top, OUTLINE_PT)
    sketch.add(outer)


def _draw_heads(
    sketch: Sketch, grid: _Grid, names: Sequence[Label], heads: Sequence[Label]
) -> None:
    for row, name in enumerate(names):
        sketch.put(name, 0.0, grid.middle_y(row) - name.middle_pt)
    for column, head in enumerate(heads):
        sketch.put(
            head, grid.middle_x(column) - head.width_pt / 2, grid.ys_pt[1] - head.height_pt - 2
        )


def _draw_title(sketch: Sketch, table: TwoWayTable, grid: _Grid, size_pt: float) -> None:
    """What the columns are, over a rule over their heads."""
    across = wrapped_label(table.across.name, size_pt, grid.xs_pt[-1] - grid.xs_pt[1], Face.BOLD)
    middle = (grid.xs_pt[1] + grid.xs_pt[-1]) / 2
    above = grid.ys_pt[0] - 2
    sketch.add(rule((grid.xs_pt[1], above), (grid.xs_pt[-1], above), FINE_PT))
    sketch.put(across, middle - across.width_pt / 2, above - across.height_pt - 2)
