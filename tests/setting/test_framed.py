from __future__ import annotations

from typeset.drawing.shapes import Drawing, Rect
from typeset.setting.framed import Framed
from typeset.setting.frames import Role
from typeset.setting.pieces import DrawingPiece, Room
from typeset.setting.stretch import Stretch

BOX = Drawing(30, 20, (Rect(0, 0, 30, 20, 1.0),), baseline_pt=15)


def test_the_frame_is_furniture_around_its_body() -> None:
    piece = Framed(DrawingPiece(BOX), 6)
    assert (piece.width_pt, piece.height, piece.baseline_pt) == (42, Stretch(32, 32, 32), 21)
    frame, body = piece.place(100, 50, 32)
    assert frame.role is Role.FURNITURE
    assert (frame.x_pt, frame.y_pt, frame.width_pt, frame.height_pt) == (100, 50, 42, 32)
    assert (body.x_pt, body.y_pt) == (106, 56)


def test_a_frame_grows_with_its_height() -> None:
    piece = Framed(Room(30, Stretch(10, 20, 40)), 5)
    (frame,) = piece.place(0, 0, 45)
    assert frame.height_pt == 45
    assert piece.height == Stretch(20, 30, 50)
    assert piece.baseline_pt is None
