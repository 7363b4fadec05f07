"""Bytes to text: UTF-8 or a complaint with its place."""

from pathlib import Path

import pytest

from typeset.errors import ContentError, OutputError
from typeset.reading.text_file import MOST_BYTES, decoded, read_bytes

FILE = Path("f.yaml")


@pytest.mark.parametrize(
    ("data", "text"),
    [
        (b"a: b\n", "a: b\n"),
        ("£4 × 3".encode(), "£4 × 3"),
        (b"\xef\xbb\xbfa: b", "a: b"),
        (b"a\r\nb\rc\n", "a\nb\nc\n"),
        (b"", ""),
    ],
)
def test_text(data: bytes, text: str) -> None:
    assert decoded(data, FILE) == text


@pytest.mark.parametrize(
    ("data", "place"),
    [
        ("a: b\nc: Zoë".encode("latin-1"), (2, 6)),
        ("a: £4".encode("cp1252"), (1, 4)),
        ("a: b".encode("utf-16"), (1, 1)),
        ("é: ".encode() + b"\xff", (1, 4)),
        ("é\n".encode() + b"ab\x00", (2, 3)),
        ("a\u2028b".encode(), (1, 2)),
        ("a\ufeffb".encode(), (1, 2)),
    ],
)
def test_what_is_no_text_is_told_with_its_place(data: bytes, place: tuple[int, int]) -> None:
    with pytest.raises(ContentError) as caught:
        decoded(data, FILE)
    told = caught.value.complaints[0].place
    assert (told.line, told.column) == place


def test_size_is_bounded(tmp_path: Path) -> None:
    file = tmp_path / "large.yaml"
    file.write_bytes(b"#" * MOST_BYTES)
    assert len(read_bytes(file)) == MOST_BYTES
    file.write_bytes(b"#" * (MOST_BYTES + 1))
    with pytest.raises(ContentError, match="larger than 1,000,000 bytes"):
        read_bytes(file)


def test_a_file_that_cannot_be_read(tmp_path: Path) -> None:
    with pytest.raises(OutputError, match="cannot be read"):
        read_bytes(tmp_path / "none.yaml")
