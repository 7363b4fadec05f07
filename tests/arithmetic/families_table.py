"""The table of families in DEVELOPERS.md, made from what the families do.

    python -m tests.arithmetic.families_table

writes it anew between its marks; `test_families_table.py` fails where it is out of date.
Strategies and mistakes are those that the example problems beside this file and the published
items bring out.
"""

from __future__ import annotations

import re
import tempfile
from collections.abc import Iterator
from functools import cache
from pathlib import Path

from tests.arithmetic.test_guard_of_every_family import ALL
from tests.published.published_items import HERE, Item, items_of, solved
from typeset.arithmetic.families import FAMILIES
from typeset.arithmetic.solving import Solution

PAGE = Path(__file__).parents[2] / "DEVELOPERS.md"
BEGIN, END = "<!-- families: begin -->", "<!-- families: end -->"
# What the data files of tests/published/ are called in the table.
SOURCES = {
    "ccssm-table-1": "CCSSM Table 1",
    "ccssm-table-2": "CCSSM Table 2",
    "common-factors": "Euclid and school standards",
    "common-multiples": "calendars and cycles",
    "cramer-post-currier": "Cramer, Post & Currier",
    "csms": "CSMS",
    "ks2-papers": "key stage 2 papers",
    "misailidou-williams": "Misailidou & Williams",
    "naep": "NAEP",
    "national-curriculum": "national curriculum",
    "nctm-brief": "NCTM brief",
    "noelting": "Noelting",
    "number-sentences": "CCSSM equations, Falkner et al.",
    "number-sequences": "OEIS, Nicomachus, Stacey",
    "posts": "standard result",
    "powers": "OEIS A000079",
    "time-and-measures": "curriculum, Weights and Measures Act",
    "van-dooren": "Van Dooren et al.",
    "verschaffel": "Verschaffel et al.",
}
# Libraries that the random problems are held against, by their names in the tests.
LIBRARIES = ("sympy", "pint", "itertools", "statistics", "math", "datetime")
# Where a strategy's name holds nouns of its story.
_STORY_NOUNS = (
    (
        re.compile(r"^((?:Making|Scaling|The) .*(?:amount|number)) of [\w ]+?(?= is| the|$)"),
        r"\1 of one",
    ),
    (re.compile(r"all are [\w ]+"), "all are of one sort"),
    (re.compile(r"^In \w+ first"), "In one unit first"),
    (re.compile(r"^Through (?:1|one) [\w ]+"), "Through one"),
)
_ASKED = re.compile(r'(?:solved|refused_unless_whole)\(\s*(?:reference,\s*)?"([a-z ]+)"')


def table() -> str:
    """The whole table in Markdown, one row a family in the order of registration."""
    rows = [
        "| family | strategies | misconceptions | outside checks |",
        "|---|---|---|---|",
        *(_row(name) for name in FAMILIES),
    ]
    return "\n".join(rows)


def page_table() -> str:
    """The table as it stands in DEVELOPERS.md."""
    page = PAGE.read_text(encoding="utf-8")
    return page.partition(BEGIN)[2].partition(END)[0].strip()


def _row(name: str) -> str:
    solutions = list(_solutions(name))
    strategies = dict.fromkeys(_plain(w.strategy) for s in solutions for w in s.workings)
    named = [[m.misconception for m in s.mistakes] for s in solutions]
    named += [[m.misconception for m in s.refused] for s in solutions]
    mistakes = dict.fromkeys(each for names in named for each in names)
    checks = [*_published(name), *_libraries(name)]
    return f"| {name} | {_told(strategies)} | {_told(mistakes)} | {'; '.join(checks)} |"


def _plain(strategy: str) -> str:
    """'Through a common chunk' for 'Through a common chunk: 2 floats'."""
    title = re.split(r"[:(]| of \d| by \d", strategy)[0].strip()
    for nouns, plain in _STORY_NOUNS:
        title = nouns.sub(plain, title)
    return title


def _told(names: dict[str, None]) -> str:
    return "; ".join(names)


@cache
def _items() -> tuple[tuple[str, Item], ...]:
    """Every published item with the stem of its file, read once."""
    return tuple(
        (file.stem, item) for file in sorted(HERE.glob("*.yaml")) for item in items_of(file)
    )


def _solutions(name: str) -> Iterator[Solution]:
    with tempfile.TemporaryDirectory() as folder:
        for index, example in enumerate(ALL):
            if example["structure"] == name:
                yield _solved(example, Path(folder) / str(index))
        for index, (_stem, item) in enumerate(_items()):
            if f"structure: {name}\n" in f"{item.problem}\n":
                yield solved(item.problem, _made(Path(folder) / f"published{index}"))


def _solved(example: dict[str, object], folder: Path) -> Solution:
    import yaml

    return solved(yaml.dump(example, sort_keys=False, allow_unicode=True), _made(folder))


def _made(folder: Path) -> Path:
    folder.mkdir()
    return folder


def _published(name: str) -> Iterator[str]:
    stems = (stem for stem, item in _items() if f"structure: {name}\n" in f"{item.problem}\n")
    yield from (SOURCES[stem] for stem in dict.fromkeys(stems))


def _libraries(name: str) -> list[str]:
    """What the random tests of the family import and use."""
    found: set[str] = set()
    for file in sorted(Path(__file__).parent.glob("test_random_*.py")):
        text = file.read_text(encoding="utf-8")
        if name in _ASKED.findall(text):
            found |= {
                each for each in LIBRARIES if re.search(rf"^(?:import|from) {each}\b", text, re.M)
            }
            found |= {"pint"} if "PINT" in text else set()
    return [each for each in LIBRARIES if each in found]


def main() -> None:
    """Writes the table into DEVELOPERS.md."""
    page = PAGE.read_text(encoding="utf-8")
    before, _, rest = page.partition(BEGIN)
    after = rest.partition(END)[2]
    PAGE.write_text(f"{before}{BEGIN}\n{table()}\n{END}{after}", encoding="utf-8")


if __name__ == "__main__":
    main()
