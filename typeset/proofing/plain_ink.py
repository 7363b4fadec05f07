"""A drawing is plain: with few operators, each of which shows on paper just as it is read back.

Our pages need no more than text at upright places, straight and bent lines, and fills of plain
colours. Whatever else a drawing says could show otherwise than it is read: letters made narrow
or slanted by their matrix, raised, filled with a pattern; lines too thin to print. And a remark
holds words that no page shows. Operators by ISO 32000-1, annex A.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

_STRINGS = re.compile(rb"\((?:\\.|[^\\()])*\)|<[0-9A-Fa-f\s]*>", re.DOTALL)
_OPERATOR = re.compile(rb"(?<![/\w.])[A-Za-z'\"][A-Za-z0-9]*\*?")
_MATRIX = re.compile(rb"([-\d.]+\s+[-\d.]+\s+[-\d.]+\s+[-\d.]+)\s+[-\d.]+\s+[-\d.]+\s+(?:Tm|cm)\b")
_WIDTH = re.compile(rb"(?<![\d.])([\d.]+)\s+w\b")
# What is told of for its own reasons (file_check.py) belongs here, too.
_KNOWN = frozenset(
    b"BT ET Tm Tf TL Td Tj T* Tc Tr Tz q Q cm w d g G rg RG n m l c h re S f f* B B*"
    b" BDC BMC EMC W W* Do sh BI gs DP BX J j M".split()
)
# The thinnest line that presses and printers hold (common practice).
_LEAST_LINE_PT = 0.25


def check_ink(drawing: bytes) -> Iterator[str]:
    """What is not plain about the drawing of a page."""
    data = _STRINGS.sub(b" ", drawing)
    if b"%" in data:
        yield "holds a remark that is not printed"
    strange = sorted(set(_OPERATOR.findall(data)) - _KNOWN)
    if strange and b"BI" not in data:
        told = ", ".join(each.decode("latin-1") for each in strange[:3])
        yield f"draws with '{told}': what that shows cannot be checked"
    matrices = {tuple(map(float, each.split())) for each in _MATRIX.findall(data)}
    if any(x_rise == y_lean == 0 and x != y for x, x_rise, y_lean, y in matrices):
        yield "holds something that is narrower or wider than it should be"
    if any(bool(x_rise) != bool(y_lean) for _, x_rise, y_lean, _ in matrices):
        yield "holds something that is slanted"
    if any(float(width) < _LEAST_LINE_PT for width in _WIDTH.findall(data)):
        yield f"holds lines thinner than {_LEAST_LINE_PT} pt, which may not print"
