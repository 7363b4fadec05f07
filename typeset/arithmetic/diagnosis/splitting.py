"""Several answers written in one line, told apart: 'red 12, blue 24', '12 and 24'."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import TypeAlias

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.diagnosis.written import Reading, readings_of

# The ways to read what was written for each of the answers that something was written for.
Written: TypeAlias = dict[str, tuple[Reading, ...]]

_BETWEEN = re.compile(r"\s*(?:;|\n|,(?!\d{3}(?!\d))|\band\b|&)\s*")


def split(text: str, answers: Mapping[str, AnswerValue]) -> Written:
    """What was written for each answer, by its label where it has one, else in their order."""
    names = list(answers)
    if len(names) < 2:
        return {names[0]: readings_of(text)}
    parts = [part for part in _BETWEEN.split(text.strip()) if part]
    labelled = {name: part for part in parts if (name := _label(part, names)) is not None}
    free = [part for part in parts if part not in labelled.values()]
    left = [name for name in names if name not in labelled]
    by_order = dict(zip(left, free, strict=False))
    chosen = {**labelled, **by_order}
    return {
        name: readings_of(_without_label(chosen[name], name)) for name in names if name in chosen
    }


def _label(part: str, names: list[str]) -> str | None:
    """The one answer whose name stands in the part; None where none or several do."""
    found = [name for name in names if re.search(rf"\b{re.escape(name)}\b", part, re.IGNORECASE)]
    longest = [name for name in found if not any(name in other for other in found if other != name)]
    return longest[0] if len(longest) == 1 else None


def _without_label(part: str, name: str) -> str:
    """'red: 12' as '12'; a name after its number may be its noun, so it stays."""
    return re.sub(
        rf"^\W*{re.escape(name)}\b\s*(?:[:=\u2013-]\s|[:=]|is\b|are\b)?\s*",
        "",
        part,
        flags=re.IGNORECASE,
    )
