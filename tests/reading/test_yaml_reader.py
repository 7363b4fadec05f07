"""YAML means what it looks like; hostile files stop early; places are exact."""

import time
from pathlib import Path

import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

from typeset.reading.tree import Keyed, Node, Scalar, bare, place_of
from typeset.reading.yaml_reader import MOST_LEVELS, MOST_NODES, parse_yaml

FILE = Path("lesson.yaml")


def root_of(text: str) -> Node:
    parsed = parse_yaml(text, FILE)
    assert parsed.complaints == ()
    assert parsed.root is not None
    return parsed.root


def problems_of(text: str) -> list[str]:
    return [each.problem for each in parse_yaml(text, FILE).complaints]


# What is typed, and what YAML 1.1 makes of it (design page; checked below with PyYAML itself,
# whose SafeLoader follows the YAML 1.1 types at yaml.org/type).
MISREADINGS = [
    ("3:1", 181),
    ("12:30", 750),
    ("1:30:00", 5400),
    ("no", False),
    ("yes", True),
    ("on", True),
    ("Off", False),
    ("010", 8),
    ("0x1F", 31),
    ("0b11", 3),
    ("1_000", 1000),
    ("2.50", 2.5),
    ("1.0e+3", 1000.0),
    (".5", 0.5),
    ("+7", 7),
    (".inf", float("inf")),
]


@pytest.mark.parametrize(("typed", "misread"), MISREADINGS)
def test_text_stays_as_typed_where_yaml_1_1_reads_something_else(
    typed: str, misread: object
) -> None:
    assert yaml.safe_load(f"value: {typed}") == {"value": misread}
    assert bare(root_of(f"value: {typed}")) == {"value": typed}
    assert bare(root_of(f"[{typed}, {{k: {typed}}}]")) == [typed, {"k": typed}]


@pytest.mark.parametrize("typed", ["2026-05-01", "2026-05-01 09:30:00", "=", "£2.50", "2 1/2"])
def test_dates_and_amounts_stay_as_typed(typed: str) -> None:
    assert bare(root_of(f"value: {typed}")) == {"value": typed}


def test_keys_stay_as_typed() -> None:
    assert bare(root_of("no: a\n5: b\n1:30: c\nnull: d\n~: e\n")) == {
        "no": "a",
        "5": "b",
        "1:30": "c",
        "null": "d",
        "~": "e",
    }


def test_nothing_is_an_empty_text() -> None:
    text = "a:\nb: null\nc: ~\nd: ''\ne: 'null'\nf: Nothing\n"
    assert bare(root_of(text)) == {
        "a": "",
        "b": "",
        "c": "",
        "d": "",
        "e": "null",
        "f": "Nothing",
    }


def test_quotation_marks_and_blocks_work_as_yaml_has_them() -> None:
    text = (
        "a: 'It''s £4'\n"
        'b: "×\\u00f7\\n"\n'
        "c: >-\n  For every {gulls}\n  there are {terns}.\n\n  How many?\n"
        "d: |\n  one\n   two\n"
        "e: plain\n  goes on\n"
    )
    assert bare(root_of(text)) == {
        "a": "It's £4",
        "b": "×÷\n",
        "c": "For every {gulls} there are {terns}.\nHow many?",
        "d": "one\n two\n",
        "e": "plain goes on",
    }


PLACES = [
    # Text, path, line and column of the value, line and column of its key.
    ("a: b", ["a"], (1, 4), (1, 1)),
    ("a: 'b'", ["a"], (1, 5), (1, 1)),
    ('a: "b"', ["a"], (1, 5), (1, 1)),
    ("a: ''", ["a"], (1, 4), (1, 1)),
    ("a:", ["a"], (1, 3), (1, 1)),
    ("a: >-\n\n    b\n", ["a"], (3, 5), (1, 1)),
    ("a: |\n  b\n", ["a"], (2, 3), (1, 1)),
    ("a:\n  - x\n  - é: 2\n    y: 3", ["a", 1, "y"], (4, 8), (4, 5)),
    ("a: {é: 1, b: 2}", ["a", "b"], (1, 14), (1, 11)),
    ("a: [x, '√', y]", ["a", 2], (1, 13), (1, 13)),
    ("# Remark\n\na: b # remark", ["a"], (3, 4), (3, 1)),
    ("a: 𝄞x\nb: {c: 𝄞, d: e}", ["b", "d"], (2, 14), (2, 11)),
]


@pytest.mark.parametrize(("text", "path", "value_at", "key_at"), PLACES)
def test_places(
    text: str, path: list[str | int], value_at: tuple[int, int], key_at: tuple[int, int]
) -> None:
    root = root_of(text)
    value, key = place_of(root, path), place_of(root, path, at_key=True)
    assert (value.line, value.column) == value_at
    assert (key.line, key.column) == key_at


texts = st.text(st.characters(categories=["L", "N", "P", "S", "Zs"]), max_size=12)
contents: st.SearchStrategy[object] = st.recursive(
    texts,
    lambda inner: (
        st.lists(inner, max_size=3)
        | st.dictionaries(texts.filter(lambda t: t not in {"", "<<"}), inner, max_size=3)
    ),
    max_leaves=8,
)


@settings(max_examples=60, deadline=None)
@given(contents, st.sampled_from([None, False, True]))
def test_what_pyyaml_writes_is_read_back(content: object, flow: bool | None) -> None:
    """An outside writer: PyYAML's emitter, which quotes what YAML 1.1 would misread."""
    written = yaml.safe_dump(content, default_flow_style=flow, allow_unicode=True)
    parsed = parse_yaml(written, FILE)
    assert parsed.root is not None
    assert bare(parsed.root) == content


@settings(max_examples=150, deadline=None)
@given(st.text(st.sampled_from("ab12:-#'\"{}[],&*!|>%@` \n\t?~<"), max_size=30))
def test_any_text_is_read_or_complained_of_with_a_place_inside_it(text: str) -> None:
    parsed = parse_yaml(text, FILE)
    assert parsed.root is not None or parsed.complaints
    lines = text.split("\n")
    for complaint in parsed.complaints:
        place = complaint.place
        assert 1 <= place.line <= len(lines) + 1
        line = lines[place.line - 1] if place.line <= len(lines) else ""
        assert 1 <= place.column <= len(line) + 1
        assert "token" not in complaint.problem
        assert "mapping" not in complaint.problem
        assert "scalar" not in complaint.problem


class TestHostileFiles:
    """Each of these would run code, fill the memory or the stack in a careless reader."""

    @pytest.mark.parametrize(
        "tag",
        [
            "!!python/object/apply:os.system [echo]",
            "!!python/name:os.system",
            "!!python/object/new:type {}",
            "!!binary aGk=",
            "!!int '3'",
            "!!str 3",
            "!<tag:yaml.org,2002:int> 3",
            "!own x",
        ],
    )
    def test_tags_are_complained_of_and_make_nothing(self, tag: str) -> None:
        parsed = parse_yaml(f"a: {tag}\n", FILE)
        assert "has no meaning here" in parsed.complaints[0].problem
        assert isinstance(parsed.root, Keyed)

    def test_aliases_are_not_expanded(self) -> None:
        lines = ["a0: &a0 [x, x]"] + [
            f"a{level}: &a{level} [*a{level - 1}, *a{level - 1}]" for level in range(1, 60)
        ]
        began = time.perf_counter()
        parsed = parse_yaml("\n".join(lines), FILE)
        assert time.perf_counter() - began < 2
        assert len(parsed.complaints) == 60 + 59

    def test_an_alias_to_itself_ends(self) -> None:
        assert len(parse_yaml("a: &a [*a]\n", FILE).complaints) == 2

    @pytest.mark.parametrize("opening", ["[", "{a: ", "- ", "? "])
    def test_depth_is_bounded(self, opening: str) -> None:
        began = time.perf_counter()
        messages = problems_of(opening * 50_000)
        assert time.perf_counter() - began < 5
        assert messages == [f"the content goes deeper than {MOST_LEVELS} levels here"]

    def test_depth_that_is_allowed(self) -> None:
        root_of("[" * (MOST_LEVELS - 1) + "x" + "]" * (MOST_LEVELS - 1))

    def test_number_of_values_is_bounded(self) -> None:
        began = time.perf_counter()
        messages = problems_of("[" + "x," * 200_000 + "]")
        assert time.perf_counter() - began < 5
        assert messages == [f"the file holds more than {MOST_NODES:,} values"]

    def test_merge_keys_merge_nothing(self) -> None:
        parsed = parse_yaml("a: {b: 1, <<: {c: 2}}\n", FILE)
        assert [each.problem for each in parsed.complaints] == ["'<<' has no meaning here"]
        assert parsed.root is not None
        assert bare(parsed.root) == {"a": {"b": "1"}}


def test_the_first_of_repeated_keys_is_named_and_kept() -> None:
    parsed = parse_yaml("a: 1\nb: 2\na: 3\na: 4\n", FILE)
    assert [str(each) for each in parsed.complaints] == [
        "lesson.yaml:3:1: the key 'a' stands twice; it is first in line 1; keep one of them",
        "lesson.yaml:4:1: the key 'a' stands twice; it is first in line 1; keep one of them",
    ]
    assert parsed.root is not None
    assert bare(parsed.root) == {"a": "1", "b": "2"}


def test_a_remark_needs_a_space_after_its_hash() -> None:
    assert root_of("a: b # a remark") == root_of("a: b")
    assert bare(root_of("a: b#3")) == {"a": "b#3"}
    assert bare(root_of("a: 'b #3'")) == {"a": "b #3"}
    assert problems_of("a: b #3 c") == ["'#3' and what follows it would be dropped as a remark"]


@pytest.mark.parametrize("text", ["", "# only a remark\n", "---\n...\n", "\n\n"])
def test_an_empty_file_is_told_or_an_empty_text(text: str) -> None:
    parsed = parse_yaml(text, FILE)
    if parsed.root is None:
        assert [each.problem for each in parsed.complaints] == ["the file is empty"]
    else:
        assert isinstance(parsed.root, Scalar)
        assert parsed.root.text == ""
