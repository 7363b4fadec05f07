"""What is known of a mistake: its name, what it shows, and what an adult may ask."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Misconception:
    """A mistake by name. `shows` completes 'This pupil …'; `prompt` is a question to ask."""

    name: str
    shows: str
    prompt: str
