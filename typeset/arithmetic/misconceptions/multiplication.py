"""Mistakes with multiplication."""

from __future__ import annotations

from typeset.arithmetic.misconceptions.misconception import Misconception

MISTAKES = (
    Misconception(
        "adding instead of multiplying",
        "adds the two numbers of the story although the groups repeat",
        "What would the total be for one group, two groups, three groups?",
    ),
    Misconception(
        "times as many taken as more than",
        "reads 'times as many' as 'more than' and adds",
        "Draw both bars: how many of the short bar fit into the long one?",
    ),
    Misconception(
        "one group left out",
        "adds once for every plus sign instead of once for every group",
        "Point to each group as you count: has every one of them been added?",
    ),
    Misconception(
        "only one part multiplied",
        "splits a number to multiply it, but multiplies only one of its parts",
        "What do the ones stand for, and how many times are they there?",
    ),
    Misconception(
        "adjusting by too little",
        "rounds a number up to multiply, then takes off too little",
        "How much too much was there, counted over all the groups?",
    ),
    Misconception(
        "factor and multiple exchanged",
        "looks for a number that both go into where one that goes into both is wanted, "
        "or the other way round",
        "Will the answer be larger than the numbers of the story, or smaller?",
    ),
)
