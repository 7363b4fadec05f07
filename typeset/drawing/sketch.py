"""Collects the shapes of a figure, and refuses to hand over one whose labels collide."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise

from typeset.drawing.boxes import Box, Segment, bounds, clear_of, segments
from typeset.drawing.labels import Label
from typeset.drawing.pens import FINE_PT, rule
from typeset.drawing.placing import Rows
from typeset.drawing.shapes import Drawing, Shape, moved
from typeset.errors import FitError

# Sizes tried for the labels, as shares of the body type; never smaller (clear print asks
# for labels near body size: sources.md section 4, UKAAF).
LABEL_SHARES = (1.0, 0.9, 0.8)
# Shares of the width for the names at the left: long names take more than half, if they must.
# Where that is not enough, names stand over or under what they name.
OUTSIDE = 0.0
NAME_SHARES = (0.3, 0.55, OUTSIDE)
_TINY_PT = 0.05


@dataclass(frozen=True, slots=True)
class _Stroke:
    """The box of a line or area, and the straight pieces of its line."""

    box: Box
    pieces: tuple[Segment, ...]


class Sketch:
    """Shapes in one coordinate system; the top may lie anywhere until it is finished."""

    def __init__(self, width_pt: float) -> None:
        self.width_pt = width_pt
        self.shapes: list[Shape] = []
        self.boxes: list[tuple[Box, str]] = []
        self._strokes: list[_Stroke] = []
        self._room: list[float] = []

    def add(self, *shapes: Shape) -> None:
        """Lines and areas; labels go through `put`."""
        self.shapes.extend(shapes)
        for shape in shapes:
            if (box := bounds(shape)) is not None:
                self._strokes.append(_Stroke(box, tuple(segments(shape))))

    def put(self, label: Label, left_pt: float, top_pt: float) -> Box:
        """A label with its top left corner here."""
        box = Box(left_pt, top_pt, left_pt + label.width_pt, top_pt + label.height_pt)
        self.boxes.append((box, label.text))
        self.shapes.extend(moved(shape, left_pt, top_pt) for shape in label.shapes)
        return box

    def put_level(self, label: Label, centre_pt: float, middle_pt: float) -> Box:
        """A label centred at x, with the eye's middle of its text at this height."""
        return self.put(label, centre_pt - label.width_pt / 2, middle_pt - label.middle_pt)

    def put_rows(self, rows: Rows, base_pt: float, up: bool) -> None:
        """Rows of labels with their leaders, above or below the base."""
        way = -1.0 if up else 1.0
        for spot in rows.spots:
            near = base_pt + way * spot.near_pt
            top = near - spot.label.height_pt if up else near
            self.put(spot.label, spot.centre_pt - spot.label.width_pt / 2, top)
            points = [(x, base_pt + way * off) for x, off in spot.leader]
            for start, end in pairwise(points):
                # The last piece stops short of the letters.
                stop = (end[0], end[1] - way) if end == points[-1] else end
                self.add(rule(start, stop))

    def guide(self, x_pt: float, top_pt: float, bottom_pt: float, behind: Iterable[Box]) -> None:
        """A dashed upright line that passes behind the labels and the boxes given."""
        hiding = [
            Box(b.left - 2, b.top - 1.5, b.right + 2, b.bottom + 1.5) for b in self.label_boxes
        ]
        for start, end in clear_of([*hiding, *behind], ((x_pt, top_pt), (x_pt, bottom_pt))):
            self.add(rule(start, end, FINE_PT, dashed=True))

    def room_to(self, y_pt: float) -> None:
        """Leaves room up or down to this height, for a pupil to write in."""
        self._room.append(y_pt)

    def lowest_pt(self) -> float:
        """The bottom of everything so far, with the room that is left for writing."""
        return max([*self._room, *(box.bottom for box in self.extents())])

    def highest_pt(self) -> float:
        """The top of everything so far, with the room that is left for writing."""
        return min([*self._room, *(box.top for box in self.extents())])

    def extents(self) -> list[Box]:
        """The boxes of all lines and labels so far."""
        return [stroke.box for stroke in self._strokes] + self.label_boxes

    @property
    def label_boxes(self) -> list[Box]:
        """The boxes of all labels so far."""
        return [box for box, _ in self.boxes]

    def is_clear(self, box: Box, clear_pt: float) -> bool:
        """True where the box, grown by so much, meets no label and no line so far."""
        if any(box.overlaps(other, clear_pt) for other in self.label_boxes):
            return False
        grown = Box(
            box.left - clear_pt, box.top - clear_pt, box.right + clear_pt, box.bottom + clear_pt
        )
        return not self._is_crossed(grown)

    def _is_crossed(self, box: Box) -> bool:
        """True where a line so far crosses the box."""
        # Most lines are far from most labels: their boxes are asked first.
        return any(
            box.overlaps(stroke.box) and any(box.crossed_by(piece) for piece in stroke.pieces)
            for stroke in self._strokes
        )

    def finished(self, reads_as: str) -> Drawing:
        """The drawing, its top edge at the topmost shape.

        Raises FitError where two labels touch, a line crosses one, or something leaves the width.
        """
        extents = self.extents()
        if any(box.left < -_TINY_PT or box.right > self.width_pt + _TINY_PT for box in extents):
            raise FitError(f"the figure is wider than its {self.width_pt:.0f} pt; {_HELP}")
        self._check_labels()
        top = min([*self._room, *(box.top for box in extents)])
        bottom = max([*self._room, *(box.bottom for box in extents)])
        shapes = tuple(moved(shape, 0.0, -top) for shape in self.shapes)
        return Drawing(self.width_pt, bottom - top, shapes, reads_as=reads_as)

    def _check_labels(self) -> None:
        for index, (box, text) in enumerate(self.boxes):
            inner = Box(
                box.left + _TINY_PT, box.top + _TINY_PT, box.right - _TINY_PT, box.bottom - _TINY_PT
            )
            for other, other_text in self.boxes[:index]:
                if inner.overlaps(other):
                    raise FitError(f"the labels '{text}' and '{other_text}' collide; {_HELP}")
            if self._is_crossed(inner):
                raise FitError(f"a line of the figure crosses the label '{text}'; {_HELP}")


_HELP = "a wider column or shorter labels would help"


def largest_that_fits(draw: Callable[[float], Drawing], size_pt: float) -> Drawing:
    """The drawing with the largest labels that fit, from body size down to 0.8 of it.

    Raises FitError, the last one met, where none does.
    """
    return largest_with_names(lambda size, _share: draw(size), size_pt, (0.0,))


def largest_size(draw: Callable[[float], Drawing], size_pt: float) -> float:
    """The largest label size at which the figure can be drawn. Raises FitError."""
    problem = FitError("a figure was tried at no size")
    for share in LABEL_SHARES:
        try:
            draw(share * size_pt)
        except FitError as error:
            problem = error
        else:
            return share * size_pt
    raise problem


def largest_with_names(
    draw: Callable[[float, float], Drawing],
    size_pt: float,
    name_shares: Sequence[float] = NAME_SHARES,
) -> Drawing:
    """The same for a figure with names at its left: `draw` is told their share of the width too.

    Raises FitError, the last one met, where no size and no share does.
    """
    problem = FitError("a figure was tried at no size")
    for size_share in LABEL_SHARES:
        for name_share in name_shares:
            try:
                return draw(size_share * size_pt, name_share)
            except FitError as error:
                problem = error
    raise problem
