"""The fixed wording of a layout: Jinja2 templates, sandboxed, checked before they are used.

Jinja itself is loaded with the first text that needs it.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache, lru_cache
from typing import TYPE_CHECKING

from typeset.documents.plain_wording import only_names
from typeset.errors import LayoutError
from typeset.reading.complaints import likely
from typeset.reading.content import ANSWER_GRID, DOCUMENTS, NAMED_SET

if TYPE_CHECKING:
    from jinja2 import Environment, Template

# Every text that a document may ask for, with the names it can be given.
KNOWN: Mapping[str, Mapping[str, frozenset[str]]] = {
    "headings": {
        "recap": frozenset(),
        "spot": frozenset(),
        "sort": frozenset(),
        "practise": frozenset(),
        "extension": frozenset({"title"}),
    },
    "instructions": {
        "recap": frozenset({"lessons"}),
        "recap first": frozenset(),
        "spot": frozenset({"pupil"}),
        "sort": frozenset(),
        "practise": frozenset(),
        "extension": frozenset(),
    },
    "sheet": {
        "name": frozenset(),
        "date": frozenset(),
        "aim": frozenset(),
        "answer": frozenset(),
        "working by": frozenset({"pupil"}),
        "set": frozenset({"letter"}),
        "because": frozenset(),
        "starter": frozenset(),
        "foot": frozenset({"week", "day", "class", "lesson", "version"}),
        "named foot": frozenset({"pupil", "foot"}),
        "page": frozenset({"page", "pages"}),
    },
    "versions": {"support": frozenset(), "core": frozenset(), "stretch": frozenset()},
    "choices": {
        "multiply": frozenset(),
        "add": frozenset(),
        "both": frozenset(),
        "neither": frozenset(),
    },
    "booklet": {
        "title": frozenset(),
        "subtitle": frozenset({"week", "class"}),
        "about": frozenset(),
        "lesson": frozenset({"day", "lesson"}),
        "answer": frozenset(),
        "version answer": frozenset({"version", "numbers", "answer"}),
        "one way": frozenset({"strategy"}),
        "another way": frozenset({"strategy"}),
        "listen for": frozenset(),
        "mistake line": frozenset({"wrong", "shows", "prompt"}),
        "the mistake": frozenset(),
        "what it shows": frozenset({"pupil", "shows", "wrong", "right"}),
        "ask": frozenset({"prompt"}),
        "sorted": frozenset({"decision"}),
        "why": frozenset(),
        "hints": frozenset(),
        "look for": frozenset(),
    },
    "cards": {
        "title": frozenset(),
        "number": frozenset({"number"}),
        "group": frozenset(),
        "key": frozenset(),
    },
    "class": {
        "set": frozenset(),
        "grid": frozenset(),
        "grid title": frozenset({"day", "lesson"}),
        "name": frozenset(),
        "version": frozenset(),
        "everybody": frozenset(),
        "who": frozenset({"version", "names"}),
    },
    "strip": {
        "title": frozenset(),
        "lesson": frozenset({"day", "lesson"}),
        "open": frozenset(),
        "mistake": frozenset({"mistake"}),
        "version answer": frozenset({"version", "answer"}),
    },
    "print": {
        "title": frozenset(),
        "about": frozenset(),
        "one side": frozenset({"paper"}),
        "long edge": frozenset({"paper"}),
        "short edge": frozenset({"paper"}),
        "cut": frozenset(),
        "stack": frozenset(),
        "card": frozenset(),
        "fold": frozenset(),
        "names": frozenset(),
        "file": frozenset({"file", "sides"}),
        "count": frozenset({"sides", "papers"}),
        **dict.fromkeys((*DOCUMENTS, NAMED_SET, ANSWER_GRID), frozenset()),
    },
    "own": {
        "about": frozenset({"count"}),
        "frame": frozenset({"number"}),
        "question": frozenset(),
        "model": frozenset(),
        "answer": frozenset(),
        "hard": frozenset(),
        "easy": frozenset(),
        "middling": frozenset(),
        "tricky": frozenset(),
        "because": frozenset(),
    },
    "home": {
        "title": frozenset({"week"}),
        "letter": frozenset({"week", "class", "aims", "cautions", "answers"}),
        "aim line": frozenset({"day", "lesson", "aim"}),
        "caution place": frozenset({"day", "number"}),
        "caution line": frozenset({"where", "caution"}),
        "contents": frozenset(),
        "contents line": frozenset({"day", "lesson"}),
        "contents page": frozenset({"page"}),
        "answers": frozenset(),
        "answers about": frozenset(),
        "foot": frozenset({"week", "class", "version"}),
        "answers foot": frozenset({"week", "class", "version"}),
    },
    "cautions": {
        "kitchen": frozenset(),
        "scissors": frozenset(),
        "allergies": frozenset(),
        "outdoors": frozenset(),
    },
}
# A school adds texts of its own here, and its lessons name them.
_OPEN = frozenset({"cautions"})


@dataclass(frozen=True, slots=True)
class Fault:
    """What is wrong with one text of a layout; `key` is empty where a whole group is."""

    group: str
    key: str
    problem: str
    remedy: str


def faults(wording: Mapping[str, Mapping[str, str]]) -> Iterator[Fault]:
    """Everything that is wrong with the texts of a layout."""
    for group, known in KNOWN.items():
        given = wording.get(group, {})
        for key in known:
            if key not in given:
                yield Fault(
                    group, "", f"the text '{key}' is missing in '{group}'", f"add '{key}: …'"
                )
        for key, text in given.items():
            yield from _text_faults(group, key, text, known)
    for group in wording:
        if group not in KNOWN:
            yield Fault(group, "", f"unknown group '{group}'", _near(group, tuple(KNOWN)))


def _text_faults(
    group: str, key: str, text: str, known: Mapping[str, frozenset[str]]
) -> Iterator[Fault]:
    if key not in known and group not in _OPEN:
        yield Fault(group, key, f"unknown text '{key}' in '{group}'", _near(key, tuple(known)))
        return
    names = known.get(key, frozenset())
    if only_names(text, names):
        return
    from jinja2 import TemplateSyntaxError, meta, nodes

    try:
        parsed = _environment().parse(text)
    except TemplateSyntaxError as error:
        why = (error.message or "").split(". ")[0].rstrip(".").lower()
        yield Fault(group, key, f"'{key}' cannot be read ({why})", "write names as {{ name }}")
        return
    if any(parsed.find_all((nodes.Getattr, nodes.Getitem, nodes.Call))):
        yield Fault(group, key, f"'{key}' does more than name things", "write names as {{ name }}")
        return
    used = meta.find_undeclared_variables(parsed)
    for name in sorted(used - names):
        yield Fault(group, key, f"'{key}' cannot name '{name}'", _near(name, tuple(names)))


def _near(word: str, known: tuple[str, ...]) -> str:
    meant = likely(word, known)
    if meant:
        return f"did you mean '{meant}'?"
    return f"it can name {', '.join(sorted(known))}" if known else "it takes no names"


def phrase(wording: Mapping[str, Mapping[str, str]], group: str, key: str, **names: str) -> str:
    """The text with its names filled in.

    Raises LayoutError where the template fails all the same.
    """
    from jinja2 import TemplateError

    try:
        return _filled(wording[group][key], tuple(names.items()))
    except (TemplateError, KeyError) as error:
        raise LayoutError(f"the layout's text '{group}: {key}' fails: {error}") from error


@lru_cache(maxsize=4096)
def _filled(text: str, names: tuple[tuple[str, str], ...]) -> str:
    """The template filled in; the same few headings and labels stand on every sheet."""
    return _template(text).render(dict(names))


@lru_cache(maxsize=512)
def _template(text: str) -> Template:
    return _environment().from_string(text)


@cache
def _environment() -> Environment:
    from jinja2 import StrictUndefined
    from jinja2.sandbox import ImmutableSandboxedEnvironment

    return ImmutableSandboxedEnvironment(undefined=StrictUndefined, autoescape=False)
