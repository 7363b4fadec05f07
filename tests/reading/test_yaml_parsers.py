"""The quick parser against PyYAML's own in Python, which says what a file means."""

from __future__ import annotations

from pathlib import Path

import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

from typeset.errors import ContentError
from typeset.reading.text_file import decoded
from typeset.reading.yaml_parsers import events_of, quick_events_of
from typeset.reading.yaml_reader import Parsed, parse_events, parse_yaml

ROOT = Path(__file__).parents[2]
FILES = sorted(
    file
    for folder in ("content", "layouts", "tests", "typeset")
    for file in (ROOT / folder).rglob("*.yaml")
)
NAME = Path("lesson.yaml")
needs_quick_parser = pytest.mark.skipif(
    not yaml.__with_libyaml__, reason="PyYAML was built without its parser in C"
)


def read_slowly(text: str) -> Parsed:
    return parse_events(text, NAME, events_of(text))


def test_every_file_of_ours_is_read_alike() -> None:
    assert len(FILES) > 100
    for file in FILES:
        try:
            text = decoded(file.read_bytes(), file)
        except ContentError:
            continue
        assert parse_yaml(text, NAME) == read_slowly(text), file


@needs_quick_parser
@pytest.mark.parametrize("week", ["harbour-festival", "every-structure"])
def test_our_weeks_are_read_the_quick_way(week: str) -> None:
    for file in (ROOT / "content" / week).glob("*.yaml"):
        assert quick_events_of(file.read_text(encoding="utf-8")) is not None, file


# What lines of YAML are made of, and every mark that it keeps for itself.
PIECES = [
    *("a", "b: ", "c:", "1", "é", "𝄞", "word word", "it's", "5:30", ": ", ":", " ", "  ", "\t"),
    *(
        "\n",
        "\n",
        "\n  ",
        "\n  ",
        "\n    ",
        "\n- ",
        "\n\n",
        "- ",
        "? ",
        "?",
        "#",
        " # r",
        "~",
        "<<",
    ),
    *("'y'", '"z"', "'", '"', "\\", "{", "}", "[", "]", ",", ", ", "{p: 1, q: 2}", "[x, y]"),
    *(">-\n", "|\n", ">+", "|2", ">", "|", "&", "*", "!", "%", "@", "`", "---", "...", "--- "),
]


@settings(max_examples=1500)
@given(st.lists(st.sampled_from(PIECES), max_size=20).map("".join))
def test_any_text_is_read_alike(text: str) -> None:
    assert parse_yaml(text, NAME) == read_slowly(text)


@needs_quick_parser
@pytest.mark.parametrize(
    "text",
    [
        # Accepted by the parser in C alone.
        *("1\t", "a:\tb", "a: |#\n  b", "a: >-#\n  b", "{~?}", "[~2?'b\n- a]"),
        # A value left out is in another place for it.
        *("? a", "---", "{a:\n  }"),
        # Refused by both.
        *("a: [", "a: 'b", "@a"),
    ],
)
def test_where_the_two_differ_the_quick_one_is_not_believed(text: str) -> None:
    assert quick_events_of(text) is None


@needs_quick_parser
def test_a_file_without_end_is_not_read_to_its_end() -> None:
    assert quick_events_of("- a\n" * 60_000) is None
