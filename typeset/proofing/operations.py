"""The operations of a page's drawing, taken apart by one pattern.

pdfminer takes a drawing apart letter by letter, which is most of the time that reading a page
takes. What nearly every drawing is made of (numbers, names, plain texts, arrays, entries of
marked content, operators) is told by the rules of ISO 32000-1, 7.2 and 7.3, here instead; a
drawing that holds anything else, or anything that is not as it should be, is left to pdfminer
as a whole. So the values are those that pdfminer would give, or none.
"""

from __future__ import annotations

import re
from typing import Any, TypeAlias

from pdfminer.psparser import LIT, PSLiteral

# An operator with the values that stand before it.
Operation: TypeAlias = tuple[str, list[Any]]

_TOKEN = re.compile(
    rb"""[\t\n\f\r\ ]*+(?:
    (?P<whole>[-+]?[0-9]++(?=[\t\n\f\r\ /\[\]()<>]|\Z))
    |(?P<real>[-+]?(?:[0-9]++\.[0-9]*+|\.[0-9]++)(?=[\t\n\f\r\ /\[\]()<>]|\Z))
    |\((?P<text>(?:[^()\\]++|\\(?:[0-3][0-7]{2}|[()\\nrtbf]))*+)\)
    |/(?P<name>[A-Za-z0-9+.,_:*-]++(?=[\t\n\f\r\ /\[\]()<>]|\Z))
    |(?P<operator>[A-Za-z][A-Za-z0-9]*+\*?(?=[\t\n\f\r\ /\[\]()<>]|\Z))
    |(?P<begin>\[|<<)
    |(?P<end>\]|>>)
    |(?P<last>\Z)
    |(?P<other>.)
    )""",
    re.VERBOSE | re.DOTALL,
)
_ESCAPED = re.compile(rb"\\([0-7]{3}|[()\\nrtbf])")
_MEANT = {b"n": b"\n", b"r": b"\r", b"t": b"\t", b"b": b"\b", b"f": b"\f"}
# Words that are values, and pictures within the drawing.
_SPECIAL = {"true", "false", "null", "BI", "ID", "EI", "R"}


def operations_of(drawing: bytes) -> list[Operation] | None:
    """The operations in turn, with values as pdfminer gives them; None for an unusual drawing.

    Values that no operator follows are left out: they do nothing.
    """
    operations: list[Operation] = []
    values: list[Any] = []
    # What stands around an array or a dictionary that is being read.
    around: list[tuple[bytes, list[Any]]] = []
    for match in _TOKEN.finditer(drawing):
        kind = match.lastgroup
        if kind == "real":
            values.append(float(match["real"]))
        elif kind == "whole":
            values.append(int(match["whole"]))
        elif kind == "operator":
            operator = match["operator"].decode()
            if around or operator in _SPECIAL:
                return None
            operations.append((operator, values))
            values = []
        elif kind == "text":
            values.append(_text(match["text"]))
        elif kind == "name":
            values.append(LIT(match["name"].decode()))
        elif kind == "begin":
            around.append((match["begin"], values))
            values = []
        elif kind == "end":
            if not around:
                return None
            begin, outer = around.pop()
            made = _gathered(begin + match["end"], values)
            if made is None:
                return None
            outer.append(made)
            values = outer
        elif kind == "last":
            return None if around else operations
        else:
            return None
    return None


def _text(written: bytes) -> bytes:
    return _ESCAPED.sub(_meant, written) if b"\\" in written else written


def _meant(match: re.Match[bytes]) -> bytes:
    code = match[1]
    return bytes((int(code, 8),)) if len(code) == 3 else _MEANT.get(code, code)


def _gathered(marks: bytes, values: list[Any]) -> list[Any] | dict[str, Any] | None:
    """An array or a dictionary; None where it is neither."""
    if marks == b"[]":
        return values
    keys = values[::2]
    are_pairs = len(values) % 2 == 0 and all(isinstance(key, PSLiteral) for key in keys)
    if marks != b"<<>>" or not are_pairs:
        return None
    return {str(key.name): value for key, value in zip(keys, values[1::2], strict=True)}
