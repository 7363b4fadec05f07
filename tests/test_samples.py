"""samples/ is what the program makes of the demonstration week, byte for byte."""

from __future__ import annotations

import json
import zlib
from pathlib import Path

import pytest
from pypdf import PdfReader
from pypdf.generic import StreamObject

from typeset.press.checking import proof_made
from typeset.press.making import Order, make_week

SAMPLES = Path(__file__).parents[1] / "samples"
# The compressor that the samples were written with; another may pack the same content otherwise.
PACKED_BY = SAMPLES / "packed-by.txt"


def unpacked(file: Path) -> list[object]:
    """Every object of the file with its streams unpacked."""
    reader = PdfReader(file)
    objects: list[object] = []
    for number in range(1, len(reader.xref[0]) + 1):
        item = reader.get_object(number)
        if isinstance(item, StreamObject):
            own = {key: value for key, value in item.items() if key != "/Length"}
            objects.append((own, item.get_data()))
        else:
            objects.append(item)
    return objects


def test_samples_are_what_is_made(
    made_week: Path, demonstration_week: Path, request: pytest.FixtureRequest
) -> None:
    if request.config.getoption("--remake-samples"):
        for old in SAMPLES.glob("*.pdf"):
            old.unlink()
        make_week(Order(demonstration_week, SAMPLES))
        PACKED_BY.write_text(f"zlib {zlib.ZLIB_RUNTIME_VERSION}\n", encoding="utf-8")
    made_names = sorted(file.name for file in made_week.glob("*.pdf"))
    assert sorted(file.name for file in SAMPLES.glob("*.pdf")) == made_names
    packed_alike = PACKED_BY.read_text(encoding="utf-8") == f"zlib {zlib.ZLIB_RUNTIME_VERSION}\n"
    for name in made_names:
        if packed_alike:
            assert (SAMPLES / name).read_bytes() == (made_week / name).read_bytes(), name
        else:
            assert unpacked(SAMPLES / name) == unpacked(made_week / name), name


def test_the_readme_shows_pages_that_exist() -> None:
    readme = (SAMPLES.parent / "README.md").read_text(encoding="utf-8")
    shown = [part.split(")")[0] for part in readme.split("](samples/")[1:]]
    assert shown
    assert all((SAMPLES / name).is_file() for name in shown)


def test_the_record_names_every_made_file(made_week: Path) -> None:
    record = json.loads((made_week / "made.json").read_text(encoding="utf-8"))
    named = {each["file"] for each in record["made"]}
    assert named == {file.name for file in made_week.glob("*.pdf")}


def test_the_samples_proof_clean_where_they_stand() -> None:
    count, findings = proof_made(SAMPLES)
    assert (count, findings) == (len(list(SAMPLES.glob("*.pdf"))), [])
