"""How large a message becomes: files grow by more than a third on their way."""

from __future__ import annotations

import re
from decimal import Decimal

# RFC 2045 section 6.8: three octets become four characters, in lines of 76 at most; with the
# line end, 57 octets take 78.
_OCTETS_A_LINE, _LINE_WITH_END, _END = 57, 78, 2
_UNITS = {"": 1, "b": 1, "kb": 1_000, "mb": 1_000_000}
_SIZE = re.compile(r"(\d{1,9}(?:\.\d{1,3})?)\s*([a-z]{0,2})", re.ASCII | re.IGNORECASE)
# Common practice, no standard: servers take 10 to 35 MB.
USUAL_LIMIT = "10MB"


def encoded_size(octets: int) -> int:
    """The octets of a file of that many in base64, with line ends."""
    lines, rest = divmod(octets, _OCTETS_A_LINE)
    return lines * _LINE_WITH_END + (-(-rest // 3) * 4 + _END if rest else 0)


def read_size(text: str) -> int | None:
    """The octets of '10MB', '900 kB' or '1.5 MB' (of 1,000,000); None where it is no size."""
    found = _SIZE.fullmatch(text.strip())
    unit = _UNITS.get(found[2].lower()) if found else None
    size = int(Decimal(found[1]) * unit) if found and unit else 0
    return size or None


def told(octets: int) -> str:
    """'0.5 MB', rounded up, so that nothing is told smaller than it is."""
    tenths = -(-octets // 100_000)
    return f"{tenths // 10}.{tenths % 10} MB"
