"""Sizes: the formula against Python's own encoder and the finished message."""

from __future__ import annotations

import base64

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from typeset.posting.size import encoded_size, read_size, told


@given(st.integers(0, 4000))
@settings(max_examples=100, deadline=None)
def test_the_encoded_size_is_that_of_the_encoder(octets: int) -> None:
    # encodebytes writes lines of 76 characters ended by one character, a message by two.
    encoded = base64.encodebytes(bytes(octets)).replace(b"\n", b"\r\n")
    assert encoded_size(octets) == len(encoded)


def test_growth_is_that_of_the_standard() -> None:
    """RFC 2045 section 6.8: 57 octets a line of 76; with its end, 78/57."""
    assert encoded_size(57) == 78
    assert encoded_size(57_000_000) == 78_000_000


@pytest.mark.parametrize(
    ("typed", "octets"),
    [
        ("10MB", 10_000_000),
        ("1.5 MB", 1_500_000),
        ("900kb", 900_000),
        ("12", 12),
        ("0 MB", None),
        ("ten", None),
        ("10 GB", None),
        ("-1MB", None),
        ("", None),
    ],
)
def test_sizes_are_read(typed: str, octets: int | None) -> None:
    assert read_size(typed) == octets


def test_sizes_are_told_rounded_up() -> None:
    assert [told(n) for n in (1, 100_000, 100_001, 10_000_000)] == [
        "0.1 MB",
        "0.1 MB",
        "0.2 MB",
        "10.0 MB",
    ]
