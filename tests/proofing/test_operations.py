"""Drawings taken apart as pdfminer.six takes them apart, or left to it."""

from __future__ import annotations

import random
from collections.abc import Iterator
from typing import Any

import pytest
from pdfminer.pdfinterp import PDFContentParser
from pdfminer.pdftypes import PDFStream
from pdfminer.psexceptions import PSEOF
from pdfminer.psparser import PSKeyword

from tests.proofing.making import made_week
from tests.proofing.odd_drawings import BROKEN, GOOD
from tests.proofing.planting import rebuild
from typeset.proofing.operations import Operation, operations_of

_BEFORE, _AFTER = "q 1 0 0 1 0 0 cm", "Q q (after) Tj"


def _by_pdfminer(drawing: bytes) -> list[Operation]:
    operations: list[Operation] = []
    values: list[Any] = []
    for each in _objects(drawing):
        if isinstance(each, PSKeyword):
            operations.append((each.name.decode("latin-1"), values))
            values = []
        else:
            values.append(each)
    return operations


def _objects(drawing: bytes) -> Iterator[Any]:
    stream = PDFStream({}, drawing)
    try:
        parser = PDFContentParser([stream])
        while True:
            yield parser.nextobject()[1]
    except PSEOF:
        return


@pytest.mark.parametrize("odd", [*GOOD, *BROKEN])
def test_a_drawing_is_taken_apart_as_pdfminer_does_or_not_at_all(odd: str) -> None:
    drawing = f"{_BEFORE}\n{odd}\n{_AFTER}".encode("latin-1")
    found = operations_of(drawing)
    assert found is None or found == _by_pdfminer(drawing)
    # Types too: a whole number is not a real one.
    assert found is None or repr(found) == repr(_by_pdfminer(drawing))


@pytest.mark.parametrize("odd", GOOD)
def test_a_usual_drawing_is_not_left_to_pdfminer(odd: str) -> None:
    assert operations_of(f"{_BEFORE}\n{odd}\n{_AFTER}".encode("latin-1")) is not None


def test_our_own_pages_are_usual_drawings() -> None:
    drawings: list[bytes] = []
    for pdf in made_week().pdfs.values():
        rebuild(
            pdf,
            lambda writer: drawings.extend(
                page.get_contents().get_data()  # type: ignore[union-attr]  # ours have contents
                for page in writer.pages
            ),
        )
    assert len(drawings) > 5
    for drawing in drawings:
        assert operations_of(drawing) == _by_pdfminer(drawing)


def test_bytes_by_chance_are_taken_apart_as_pdfminer_does_or_not_at_all() -> None:
    rng = random.Random(11)
    signs = b"()<>[]/%\\ \n\t.+-0123459abTjqQmlw*'\"\x00\x0b"
    taken = 0
    for _ in range(3000):
        drawing = bytes(rng.choice(signs) for _ in range(rng.randrange(1, 14)))
        found = operations_of(drawing)
        if found is not None:
            taken += 1
            assert repr(found) == repr(_by_pdfminer(drawing)), drawing
    assert taken > 100
