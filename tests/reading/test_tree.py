"""The tree of a file and the places in it."""

from pathlib import Path

from typeset.errors import Place
from typeset.reading.tree import Entry, Keyed, Listing, Scalar, bare, place_of

FILE = Path("f.yaml")


def at(line: int) -> Place:
    return Place(FILE, line, 1)


TREE = Keyed(
    (
        Entry("a", Listing((Scalar("x", at(2)), Scalar("y", at(3))), at(2)), at(1)),
        Entry("b", Scalar("z", at(5)), at(4)),
    ),
    at(1),
)


def test_bare_values() -> None:
    assert bare(TREE) == {"a": ["x", "y"], "b": "z"}


def test_places_of_values_and_keys() -> None:
    assert place_of(TREE, ["a", 1]) == at(3)
    assert place_of(TREE, ["b"]) == at(5)
    assert place_of(TREE, ["b"], at_key=True) == at(4)
    assert place_of(TREE, []) == at(1)


def test_a_path_that_ends_early_gives_the_nearest_place() -> None:
    assert place_of(TREE, ["a", 7]) == at(2)
    assert place_of(TREE, ["a", "x"]) == at(2)
    assert place_of(TREE, ["b", "c", "d"]) == at(5)
    assert place_of(TREE, ["c"]) == at(1)


def test_entries_by_key() -> None:
    assert TREE.get("b") == Scalar("z", at(5))
    assert TREE.get("c") is None
    assert [entry.key for entry in TREE.only(["b", "c"])] == ["b"]
    assert [entry.key for entry in TREE.without(["b", "c"])] == ["a"]
