"""Mistakes with division and what is left over."""

from __future__ import annotations

from typeset.arithmetic.misconceptions.misconception import Misconception

MISTAKES = (
    Misconception(
        "remainder ignored",
        "drops what is left over although the story needs it",
        "What happens to the ones that are left over?",
    ),
    Misconception(
        "remainder added for every kind",
        "adds what is left over once for every kind of pack, though it is left only once",
        "Put your number into packs of one kind: what is left over then?",
    ),
    Misconception(
        "remainder rounded up",
        "counts an unfinished group although the story does not",
        "Is the last group a full one?",
    ),
    Misconception(
        "remainder given as the answer",
        "answers with what is left over, not with the number of groups",
        "What does each number in your division stand for?",
    ),
    Misconception(
        "quotient given as the remainder",
        "answers with the number of groups, not with what is left over",
        "What does each number in your division stand for?",
    ),
    Misconception(
        "remainder written behind the point",
        "writes what is left over behind a decimal point as it is",
        "How much of one more does each get from what is left over?",
    ),
    Misconception(
        "leftovers joined",
        "reckons as if the pieces that are left over could be put together to full ones",
        "Draw one of them: how many full pieces come out of it, and what happens to the rest?",
    ),
    Misconception(
        "remainder left as it is",
        "answers with a quotient and a remainder although the story asks for whole groups",
        "What would you do with the ones that are left over?",
    ),
    Misconception(
        "nought left out of the quotient",
        "leaves out the nought where a digit is too small to divide",
        "About how large must the answer be? Multiply yours back.",
    ),
    Misconception(
        "left over and missing exchanged",
        "mixes up what is left over with what is missing for one more full group",
        "Draw the last group: how many are in it, and how many are not?",
    ),
    Misconception(
        "subtracting instead of dividing",
        "takes one number from the other although equal shares are wanted",
        "Put the shares back together: do you get the total?",
    ),
    Misconception(
        "adding instead of dividing",
        "adds the numbers of the story although equal shares are wanted",
        "Can there be more sets, or longer pieces, than what you began with?",
    ),
    Misconception(
        "dividing instead of multiplying",
        "divides although the same amount repeats",
        "Is one of them all of them, or are there several?",
    ),
    Misconception(
        "multiplying instead of dividing",
        "multiplies although the total is known already",
        "Can one share be more than the whole?",
    ),
)
