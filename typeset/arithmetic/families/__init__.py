"""The families of problems by the name that a teacher types after `structure:`.

To add one: write its file here, and one line in `_FAMILIES`.
"""

from __future__ import annotations

from typeset.arithmetic.families.angles import Angles
from typeset.arithmetic.families.arrangements import Arrangements
from typeset.arithmetic.families.both_addends import BothAddends
from typeset.arithmetic.families.change import Change
from typeset.arithmetic.families.changes_in_a_row import ChangesInARow
from typeset.arithmetic.families.combinations import Combinations
from typeset.arithmetic.families.comparison import Comparison
from typeset.arithmetic.families.comparison_chain import ComparisonChain
from typeset.arithmetic.families.compound_shape import CompoundShape
from typeset.arithmetic.families.constant_difference import ConstantDifference
from typeset.arithmetic.families.constant_sum import ConstantSum
from typeset.arithmetic.families.cuts_and_pieces import CutsAndPieces
from typeset.arithmetic.families.digits_of_a_number import DigitsOfANumber
from typeset.arithmetic.families.elapsed_time import ElapsedTime
from typeset.arithmetic.families.equal_groups import EqualGroups
from typeset.arithmetic.families.fixed_charge import FixedCharge
from typeset.arithmetic.families.fraction_of_quantity import FractionOfQuantity
from typeset.arithmetic.families.grouping import Grouping
from typeset.arithmetic.families.handshakes import Handshakes
from typeset.arithmetic.families.highest_common_factor import HighestCommonFactor
from typeset.arithmetic.families.inverse_proportion import InverseProportion
from typeset.arithmetic.families.lowest_common_multiple import LowestCommonMultiple
from typeset.arithmetic.families.mean import Mean
from typeset.arithmetic.families.missing_number import MissingNumber
from typeset.arithmetic.families.multiple_bars import DifferenceAndMultiple, SumAndMultiple
from typeset.arithmetic.families.number_sequence import NumberSequence
from typeset.arithmetic.families.part_whole import PartWhole
from typeset.arithmetic.families.posts_and_gaps import PostsAndGapsFamily
from typeset.arithmetic.families.proportion import Proportion
from typeset.arithmetic.families.ratio import Ratio
from typeset.arithmetic.families.rectangle import Rectangle
from typeset.arithmetic.families.repeated_doubling import RepeatedDoubling
from typeset.arithmetic.families.scale import Scale
from typeset.arithmetic.families.sharing import Sharing
from typeset.arithmetic.families.sharing_with_exchange import SharingWithExchange
from typeset.arithmetic.families.simplest_ratio import SimplestRatio
from typeset.arithmetic.families.steps import Steps
from typeset.arithmetic.families.sum_and_difference import SumAndDifference
from typeset.arithmetic.families.think_of_a_number import ThinkOfANumber
from typeset.arithmetic.families.times_as_many import TimesAsMany
from typeset.arithmetic.families.two_sorts import TwoSorts
from typeset.arithmetic.families.unchanging import Unchanging
from typeset.arithmetic.families.unit_conversion import UnitConversion
from typeset.arithmetic.families.which_is_larger import WhichIsLarger
from typeset.arithmetic.family import AnyFamily

_FAMILIES: tuple[AnyFamily, ...] = (
    Ratio(),
    Proportion(),
    ConstantDifference(),
    ConstantSum(),
    InverseProportion(),
    Unchanging(),
    EqualGroups(),
    Steps(),
    FixedCharge(),
    SumAndDifference(),
    SumAndMultiple(),
    DifferenceAndMultiple(),
    FractionOfQuantity(),
    Sharing(),
    Grouping(),
    TimesAsMany(),
    Combinations(),
    Arrangements(),
    Handshakes(),
    HighestCommonFactor(),
    LowestCommonMultiple(),
    NumberSequence(),
    PartWhole(),
    Change(),
    ChangesInARow(),
    BothAddends(),
    Comparison(),
    ComparisonChain(),
    Rectangle(),
    WhichIsLarger(),
    SimplestRatio(),
    Angles(),
    CompoundShape(),
    Scale(),
    ElapsedTime(),
    ThinkOfANumber(),
    MissingNumber(),
    TwoSorts(),
    DigitsOfANumber(),
    Mean(),
    RepeatedDoubling(),
    PostsAndGapsFamily(),
    CutsAndPieces(),
    SharingWithExchange(),
    UnitConversion(),
)

FAMILIES: dict[str, AnyFamily] = {family.name: family for family in _FAMILIES}
