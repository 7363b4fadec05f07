"""week.yaml: the week's title, its class, its own nouns, and the order of its lessons."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from typeset.errors import Complaint
from typeset.reading.complaints import KEYS, shown, unknown_word, wrong_kind
from typeset.reading.content import CORE, DOCUMENTS, LAST_WEEK, USUAL_DOCUMENTS, VERSIONS
from typeset.reading.keys import Keys, opened, plain_key
from typeset.reading.tree import Keyed, Node, Scalar

REQUIRED_KEYS = ("week", "class", "lessons")
OPTIONAL_KEYS = (
    "layout",
    "note",
    "year",
    "nouns",
    "seed",
    "versions",
    "makes",
    "sender",
    "subject",
)
STANDARD_LAYOUT = "standard"
# The year groups of pupils of 7 to 11.
YEARS = (3, 6)
FIRST_SEED = 1
_MOST_SEED = 999_999_999
_LESSON_NAME = re.compile(r"[A-Za-z0-9][A-Za-z0-9 _-]{0,59}", re.ASCII)


@dataclass(frozen=True, slots=True)
class WeekPlan:
    """What week.yaml says."""

    title: str
    class_name: str
    layout: str
    note: str
    nouns: Mapping[str, str]
    # The lessons' names, each with its place.
    lessons: tuple[Scalar, ...]
    year: int | None = None
    # What varied numbers are drawn from.
    seed: int = FIRST_SEED
    versions: tuple[str, ...] = (CORE,)
    makes: tuple[str, ...] = USUAL_DOCUMENTS
    sender: Scalar | None = None
    subject: Scalar | None = None

    @property
    def names(self) -> tuple[str, ...]:
        """The lessons' names in order."""
        return tuple(lesson.text for lesson in self.lessons)


NO_PLAN = WeekPlan("", "", STANDARD_LAYOUT, "", {}, ())


def read_plan(root: Node | None, complaints: list[Complaint]) -> WeekPlan:
    """What week.yaml says; what is wrong with it is added to complaints."""
    keys = opened(root, "week.yaml", complaints, "begin it with 'week: …'") if root else None
    if keys is None:
        return NO_PLAN
    keys.expect(REQUIRED_KEYS, OPTIONAL_KEYS)
    return WeekPlan(
        title=keys.text("week"),
        class_name=keys.text("class"),
        layout=keys.text("layout") or STANDARD_LAYOUT,
        note=keys.text("note"),
        nouns=_read_nouns(keys),
        lessons=_read_lesson_names(keys),
        year=keys.whole_number("year", *YEARS),
        seed=_read_seed(keys),
        versions=_chosen(keys, "versions", VERSIONS) or (CORE,),
        makes=_chosen(keys, "makes", DOCUMENTS) or USUAL_DOCUMENTS,
        sender=_line(keys, "sender"),
        subject=_line(keys, "subject"),
    )


def _line(keys: Keys, key: str) -> Scalar | None:
    """The text of the key on one line with its place; None where there is none."""
    text = keys.text(key)
    return Scalar(text, keys.place(key)) if text else None


def _chosen(keys: Keys, key: str, words: Sequence[str]) -> tuple[str, ...]:
    """Those of the words that are listed, each once and in their usual order."""
    found: set[str] = set()
    for text in keys.texts(key):
        word = next((each for each in words if each == plain_key(text.text).lower()), None)
        if word is None:
            keys.complaints.append(unknown_word(text.text, text.place, f"'{key}'", words))
        else:
            found.add(word)
    return tuple(word for word in words if word in found)


def _read_seed(keys: Keys) -> int:
    seed = keys.whole_number("seed", 0, _MOST_SEED)
    return FIRST_SEED if seed is None else seed


def _read_nouns(keys: Keys) -> dict[str, str]:
    """The author's own plurals: singular to plural. The keys are nouns, so hyphens stay."""
    value = keys.node.get("nouns")
    if value is None:
        return {}
    if not isinstance(value, Keyed):
        keys.complaints.append(wrong_kind(value, KEYS, "'nouns'"))
        return {}
    nouns = Keys(value, "'nouns'", keys.complaints)
    return {entry.key: nouns.text(entry.key) for entry in value}


def _read_lesson_names(keys: Keys) -> tuple[Scalar, ...]:
    names: dict[str, Scalar] = {}
    for name in keys.texts("lessons"):
        if name.text in names:
            problem = f"the lesson '{name.text}' stands twice"
            keys.complaints.append(Complaint(name.place, problem, "delete one of them"))
        elif not _LESSON_NAME.fullmatch(name.text) or name.text in {"week", LAST_WEEK}:
            keys.complaints.append(_bad_lesson_name(name))
        else:
            names[name.text] = name
    return tuple(names.values())


def _bad_lesson_name(name: Scalar) -> Complaint:
    stem = name.text.removesuffix(".yaml").removesuffix(".yml")
    if stem != name.text and _LESSON_NAME.fullmatch(stem):
        return Complaint(name.place, f"'{name.text}' has an ending", f"write '{stem}' alone")
    remedy = "use letters, digits and hyphens, such as 'monday'"
    return Complaint(
        name.place, f"{shown(name.text)} cannot be the name of a lesson's file", remedy
    )
