"""Things worked out once for an object that many ask the same of: the chain of a problem, say.

Only what never changes may be asked about: frozen values, whose answer stays the same.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import wraps
from typing import ParamSpec, TypeVar

P = ParamSpec("P")
T = TypeVar("T")

# A problem is solved from beginning to end before the next one: enough for all its workings.
_MOST_KEPT = 64
# More problems than a week has.
_MOST_OF_A_WEEK = 160


def once_for_each(make: Callable[P, T]) -> Callable[P, T]:
    """The function, with its results for the last few arguments kept, told apart by identity.

    Frozen values with mappings inside cannot be hashed, and hashing large ones is slow. The
    arguments are kept beside the result, so no other object can come to have the identity of
    one. What raises is asked again.
    """
    return _keeping(make, _MOST_KEPT)


def once_for_each_of_a_week(make: Callable[P, T]) -> Callable[P, T]:
    """As `once_for_each`, for what every pupil of a class asks of each problem of a week."""
    return _keeping(make, _MOST_OF_A_WEEK)


def _keeping(make: Callable[P, T], most: int) -> Callable[P, T]:
    kept: dict[tuple[int, ...], tuple[object, T]] = {}

    @wraps(make)
    def asked(*args: P.args, **kwargs: P.kwargs) -> T:
        if kwargs:
            return make(*args, **kwargs)
        key = tuple(map(id, args))
        found = kept.get(key)
        if found is None:
            found = (args, make(*args, **kwargs))
            if len(kept) >= most:
                kept.pop(next(iter(kept)), None)
            kept[key] = found
        return found[1]

    return asked
