"""Mistakes with the mean."""

from __future__ import annotations

from typeset.arithmetic.misconceptions.misconception import Misconception

MISTAKES = (
    Misconception(
        "total not divided",
        "adds the values up and stops there",
        "Can the mean be larger than every one of the values?",
    ),
    Misconception(
        "divided by the wrong count",
        "divides or multiplies by another number than there are values",
        "How many values are there, those that are nought among them?",
    ),
    Misconception(
        "middle value given for the mean",
        "puts the values in order and takes the one in the middle",
        "If all were equal and the total the same, how large would each be?",
    ),
    Misconception(
        "halfway between least and greatest",
        "takes the number halfway between the least and the greatest value",
        "What part do the other values play?",
    ),
    Misconception(
        "missing value taken as the mean",
        "takes the mean itself for the value that is missing",
        "Put your number in: what is the mean now?",
    ),
    Misconception(
        "total needed given for the missing value",
        "works out the total and does not take off what is there already",
        "How much of that total do you have already?",
    ),
)
