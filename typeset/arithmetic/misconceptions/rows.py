"""Mistakes with posts and gaps, cuts and pieces."""

from __future__ import annotations

from typeset.arithmetic.misconceptions.misconception import Misconception

MISTAKES = (
    Misconception(
        "one post too few",
        "counts the gaps and forgets the post at the end, or takes one off where none is missing",
        "Draw a row with two gaps: how many posts has it?",
    ),
    Misconception(
        "one post too many",
        "counts a post where none stands",
        "Draw a row with two gaps just like this one: how many posts has it?",
    ),
    Misconception(
        "end post counted the wrong way",
        "takes one off where one has to be put on, or the other way round",
        "Are there more posts or more gaps? Draw a short row and see.",
    ),
    Misconception(
        "posts counted as gaps",
        "reckons with as many gaps as there are posts",
        "Draw three posts in a row: how many gaps are between them?",
    ),
    Misconception(
        "gaps counted as posts",
        "answers with the number of posts where the gaps are asked for",
        "Which do you count: the posts, or the stretches between them?",
    ),
    Misconception(
        "as many cuts as pieces",
        "counts a cut for every piece",
        "Into how many pieces does a single cut turn one rope?",
    ),
    Misconception(
        "one piece too many",
        "counts one piece more than there are, as if the end were a piece too",
        "Put the pieces together again: how long are they?",
    ),
    Misconception(
        "one cut too few",
        "takes one off where the cuts are known already",
        "What does the story say was counted: cuts or pieces?",
    ),
    Misconception(
        "one cut too few for a ring",
        "takes one off although a ring has no ends",
        "What does the first cut do to a ring?",
    ),
    Misconception(
        "one cut more than pieces",
        "puts one on where one has to be taken off",
        "Into how many pieces does a single cut turn one rope?",
    ),
)
