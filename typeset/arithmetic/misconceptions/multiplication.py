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
    Misconception(
        "common factor, not the greatest",
        "stops at a number that goes into all of them although a greater one does too",
        "Divide the numbers by yours. Does anything above 1 still go into all the results?",
    ),
    Misconception(
        "smallest number taken as the factor",
        "takes the smallest number of the story itself, although it does not go into the others",
        "Does that number go exactly into the other one?",
    ),
    Misconception(
        "number of groups and size of a group exchanged",
        "answers with how many are in each group where the number of groups is asked for, "
        "or the other way round",
        "Does your number count the groups, or what is in one of them?",
    ),
    Misconception(
        "product taken as the lowest common multiple",
        "multiplies the numbers, which gives a common multiple but not always the first one",
        "Do they not meet earlier? List the first few multiples of each.",
    ),
    Misconception(
        "largest number taken as the multiple",
        "takes the largest number of the story, although it is no multiple of the others",
        "Is that number in the times table of the other one?",
    ),
    Misconception(
        "sum taken as the multiple",
        "adds the numbers to find when both come together",
        "Is that number in both times tables?",
    ),
    Misconception(
        "difference taken as the multiple",
        "takes one number from the other to find when both come together",
        "Is that number in both times tables?",
    ),
)
