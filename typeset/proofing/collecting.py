"""The collector of lost objects, held back while a document is read and looked at."""

from __future__ import annotations

import gc
from collections.abc import Iterator
from contextlib import contextmanager

# Objects made since the last look for lost ones. A page is some ten thousand, so a look every
# few pages: what is lost in circles stays small, a few megabytes.
_FEW_LOOKS = 50_000


@contextmanager
def seldom_collecting() -> Iterator[None]:
    """Look for lost objects seldom.

    Reading makes letters, boxes and words by the hundred thousand, none of which is lost until
    the proof is done; looking through them after every 700 new objects, as Python does unless
    told otherwise, took a fifth of the time of reading.
    """
    before = gc.get_threshold()
    # A threshold of nought means that nobody is to look at all.
    if 0 < before[0] < _FEW_LOOKS:
        gc.set_threshold(_FEW_LOOKS, *before[1:])
    try:
        yield
    finally:
        gc.set_threshold(*before)
