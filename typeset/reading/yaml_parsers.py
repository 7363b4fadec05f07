"""Two parsers of one library: PyYAML's own, and the quick one in C where both read the same.

What a file means is what PyYAML's parser in Python says, on every machine. Its twin in C
(libyaml) takes a twentieth of the time, and differs in a few things, so that it is believed only
where none of them is there; where it is not believed, or refuses the text, nothing is lost but
that time.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from itertools import islice

import yaml
from yaml.events import (
    Event,
    MappingEndEvent,
    MappingStartEvent,
    ScalarEvent,
    SequenceEndEvent,
    SequenceStartEvent,
)

# The twin takes a tab for white space where the other refuses it, and '>#' for a block of text.
_TAB, _REMARK_AT_BLOCK = "\t", re.compile(r"[>|][-+\d]*#")
# A file with more is too long for its reader, who takes one event after the other.
_MOST_EVENTS = 50_000


def events_of(text: str) -> Iterator[Event]:
    """The events of the text. Raises YAMLError, at the event at which the text is no YAML."""
    return iter(yaml.parse(text, Loader=yaml.SafeLoader))


def quick_events_of(text: str) -> Sequence[Event] | None:
    """The same events as `events_of`, but for the marks at which they end and the style of plain
    texts, which is '' for None; or None, where they might be others or there is no quick way."""
    if not yaml.__with_libyaml__ or _TAB in text or _REMARK_AT_BLOCK.search(text):
        return None
    try:
        events = list(islice(yaml.parse(text, Loader=yaml.CSafeLoader), _MOST_EVENTS))
    except yaml.YAMLError:
        return None
    return None if len(events) == _MOST_EVENTS or _might_differ(events) else events


def _might_differ(events: Sequence[Event]) -> bool:
    """True where a value is left out, which the parsers see in different places, or brackets
    hold a plain text with a question mark, at which they part it in different ways."""
    depth = 0
    for event in events:
        if isinstance(event, ScalarEvent):
            if not event.style and (not event.value or (depth and "?" in event.value)):
                return True
        elif isinstance(event, MappingStartEvent | SequenceStartEvent):
            # Within brackets everything is in brackets.
            depth += bool(depth or event.flow_style)
        elif isinstance(event, MappingEndEvent | SequenceEndEvent) and depth:
            depth -= 1
    return False
