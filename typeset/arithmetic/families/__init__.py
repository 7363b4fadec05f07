"""The families of problems by the name that a teacher types after `structure:`.

To add one: write its file here, and one line in `_FAMILIES`.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from importlib import import_module

from typeset.arithmetic.family import AnyFamily

# Where each is: its module in this folder, and its class.
_FAMILIES = {
    "ratio": "ratio.Ratio",
    "proportion": "proportion.Proportion",
    "constant difference": "constant_difference.ConstantDifference",
    "constant sum": "constant_sum.ConstantSum",
    "inverse proportion": "inverse_proportion.InverseProportion",
    "unchanging": "unchanging.Unchanging",
    "equal groups": "equal_groups.EqualGroups",
    "steps": "steps.Steps",
    "fixed charge": "fixed_charge.FixedCharge",
    "sum and difference": "sum_and_difference.SumAndDifference",
    "sum and multiple": "multiple_bars.SumAndMultiple",
    "difference and multiple": "multiple_bars.DifferenceAndMultiple",
    "fraction of a quantity": "fraction_of_quantity.FractionOfQuantity",
    "sharing": "sharing.Sharing",
    "grouping": "grouping.Grouping",
    "times as many": "times_as_many.TimesAsMany",
    "combinations": "combinations.Combinations",
    "arrangements": "arrangements.Arrangements",
    "handshakes": "handshakes.Handshakes",
    "highest common factor": "highest_common_factor.HighestCommonFactor",
    "lowest common multiple": "lowest_common_multiple.LowestCommonMultiple",
    "number sequence": "number_sequence.NumberSequence",
    "part whole": "part_whole.PartWhole",
    "change": "change.Change",
    "changes in a row": "changes_in_a_row.ChangesInARow",
    "both addends": "both_addends.BothAddends",
    "comparison": "comparison.Comparison",
    "chain of comparisons": "comparison_chain.ComparisonChain",
    "rectangle": "rectangle.Rectangle",
    "which is larger": "which_is_larger.WhichIsLarger",
    "simplest ratio": "simplest_ratio.SimplestRatio",
    "angles": "angles.Angles",
    "compound shape": "compound_shape.CompoundShape",
    "scale": "scale.Scale",
    "elapsed time": "elapsed_time.ElapsedTime",
    "think of a number": "think_of_a_number.ThinkOfANumber",
    "missing number": "missing_number.MissingNumber",
    "two sorts": "two_sorts.TwoSorts",
    "digits of a number": "digits_of_a_number.DigitsOfANumber",
    "mean": "mean.Mean",
    "repeated doubling": "repeated_doubling.RepeatedDoubling",
    "posts and gaps": "posts_and_gaps.PostsAndGapsFamily",
    "cuts and pieces": "cuts_and_pieces.CutsAndPieces",
    "sharing with exchange": "sharing_with_exchange.SharingWithExchange",
    "unit conversion": "unit_conversion.UnitConversion",
}


class _Families(Mapping[str, AnyFamily]):
    """Every family by its name. A week uses some of them, so each is loaded when it is first
    asked for; the names alone load none."""

    def __init__(self, places: Mapping[str, str]) -> None:
        self._places = places
        self._loaded: dict[str, AnyFamily] = {}

    def __getitem__(self, name: str) -> AnyFamily:
        if name not in self._loaded:
            module, family = self._places[name].split(".")
            found: AnyFamily = getattr(import_module(f"{__name__}.{module}"), family)()
            self._loaded[name] = found
        return self._loaded[name]

    def __contains__(self, name: object) -> bool:
        return name in self._places

    def __iter__(self) -> Iterator[str]:
        return iter(self._places)

    def __len__(self) -> int:
        return len(self._places)


FAMILIES: Mapping[str, AnyFamily] = _Families(_FAMILIES)
