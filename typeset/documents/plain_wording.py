"""Texts of a layout that are right at a glance, so that a check of a week needs no Jinja.

Such a text names things, and chooses between texts by a name, in the way in which our own
layouts do it. Whatever else Jinja can read is left to Jinja.
"""

from __future__ import annotations

import re
from collections.abc import Collection

_TAG = re.compile(
    r"\{\{ (?P<name>[a-z]+) \}\}"
    r"|\{% (?P<word>if|elif) (?P<asked>[a-z]+)(?: == (?:'[\w ]*'|\"[\w ]*\"))? %\}"
    r"|\{% (?P<end>else|endif) %\}"
)
_BRACE = re.compile(r"[{}]")


def only_names(text: str, names: Collection[str]) -> bool:
    """True where the text surely does no more than to name these; False says nothing."""
    # For every 'if' that is open, whether its 'else' has come.
    opened: list[bool] = []
    end = 0
    for tag in _TAG.finditer(text):
        if _BRACE.search(text, end, tag.start()):
            return False
        end = tag.end()
        asked = tag["name"] or tag["asked"]
        if (asked and asked not in names) or not _in_order(tag["word"] or tag["end"], opened):
            return False
    return not opened and not _BRACE.search(text, end)


def _in_order(word: str | None, opened: list[bool]) -> bool:
    """Takes a word of a choice into account; False where it cannot stand there."""
    if word == "if":
        opened.append(False)
    elif word == "endif" and opened:
        opened.pop()
    elif word == "else" and opened and not opened[-1]:
        opened[-1] = True
    elif word is not None:
        return word == "elif" and bool(opened) and not opened[-1]
    return True
