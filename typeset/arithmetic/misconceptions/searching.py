"""Mistakes in looking for a number that has to meet several conditions."""

from __future__ import annotations

from typeset.arithmetic.misconceptions.misconception import Misconception

MISTAKES = (
    Misconception(
        "only one condition used",
        "stops at the first number that meets one of the conditions",
        "Read the conditions again, one by one: does your answer meet every one?",
    ),
    Misconception(
        "digits turned round",
        "has the right digits in the wrong places",
        "Which digit stands in the tens, and which in the ones?",
    ),
    Misconception(
        "digits multiplied instead of added",
        "multiplies the digits where their sum is meant",
        "What do the digits of your number add up to?",
    ),
    Misconception(
        "greatest and least exchanged",
        "looks for the number at the wrong end",
        "Can you find one that is still larger, or still smaller?",
    ),
    Misconception(
        "nought put first",
        "lets the number begin with 0, so that it has a digit fewer",
        "How many digits does a number keep when its first digit is 0?",
    ),
    Misconception(
        "count halved",
        "takes half of each sort without a look at the total",
        "What would that many of each come to?",
    ),
    Misconception(
        "difference divided by one of them",
        "divides what is missing by what one of the sorts has, not by what an exchange brings",
        "When one is exchanged for one of the other sort, by how much does the total change?",
    ),
    Misconception(
        "sorts exchanged",
        "gives the number of the one sort for the other",
        "Check with the total: which of the two has more each?",
    ),
)
