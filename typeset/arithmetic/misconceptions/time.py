"""Mistakes with times of day and lengths of time."""

from __future__ import annotations

from typeset.arithmetic.misconceptions.misconception import Misconception

MISTAKES = (
    Misconception(
        "100 minutes in an hour",
        "reckons with hours and minutes as with pounds and pence",
        "How many minutes are there before the next hour begins?",
    ),
    Misconception(
        "hour boundary not carried",
        "works out hours and minutes apart, and lets the hour that the minutes make "
        "(or use up) go uncounted",
        "Which full hour is passed on the way?",
    ),
    Misconception(
        "counting both ends",
        "counts the hours by naming the times, with the first of them as an hour already",
        "How much time has gone by when you say the first one?",
    ),
    Misconception(
        "minutes of the start added",
        "takes the minutes past the hour for the minutes up to the next hour",
        "How many minutes are still missing to the next full hour?",
    ),
    Misconception(
        "midnight overlooked",
        "takes the smaller time from the larger although a new day begins between them",
        "Which of the two times comes first in the story?",
    ),
    Misconception(
        "12 hours out",
        "takes a time of the afternoon for one of the morning",
        "Is it before or after noon, and how does a 24-hour clock show that?",
    ),
)
