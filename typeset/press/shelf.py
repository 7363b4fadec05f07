"""Finished sides of a file's parts, put down as bytes for another process or another day.

What is read back is taken for data, never for a program: only the plain records that sides are
made of are let in.
"""

from __future__ import annotations

import pickle
from io import BytesIO
from typing import Any

from typeset.setting.pages import PageLayout

_RECORDS = (
    "typeset.setting.frames",
    "typeset.setting.pages",
    "typeset.setting.structure",
    "typeset.drawing.shapes",
)


def put_down(pages: PageLayout) -> bytes:
    """The sides as bytes."""
    return pickle.dumps(pages, protocol=5)


def taken_up(data: bytes) -> PageLayout | None:
    """The sides; None for bytes that hold nothing of the kind."""
    try:
        pages = _Reader(BytesIO(data)).load()
    except Exception:
        # Damaged bytes can fail in any way; the sides are then set again.
        return None
    return pages if isinstance(pages, PageLayout) else None


class _Reader(pickle.Unpickler):
    """Knows the records of finished sides, and refuses everything else."""

    def find_class(self, module: str, name: str) -> Any:
        if module not in _RECORDS or "." in name:
            raise pickle.UnpicklingError(f"{module}.{name} does not belong on a side")
        found = super().find_class(module, name)
        if not isinstance(found, type) or found.__module__ != module:
            raise pickle.UnpicklingError(f"{module}.{name} is no record of a side")
        return found
