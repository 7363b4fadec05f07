"""Ways to compare rates and mixtures: one of the two amounts made the same in all."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from math import lcm

from typeset.arithmetic.equations import equation, over, plus, times
from typeset.arithmetic.families.pair_rows import common_chunk
from typeset.arithmetic.families.which_is_larger_view import Candidate, View, comparing, head
from typeset.arithmetic.methods import TABLES_TO, is_counted
from typeset.arithmetic.phrases import bare
from typeset.arithmetic.workings import Step, Working, step
from typeset.quantities.amount import Amount, Form
from typeset.quantities.inline import Rich, plain
from typeset.quantities.units import Dimension
from typeset.quantities.writing import say

_LEAST_WAYS = 2
# Parts of one are spoken of down to twelfths.
_FINEST = 12


@dataclass(frozen=True, slots=True)
class _Face:
    """The rate seen from one side: `fixed` is made the same, `free` is then compared."""

    view: View
    fixes_second: bool

    @property
    def name(self) -> str:
        compared = self.view.compared
        return compared.second if self.fixes_second else compared.first

    def fixed(self, candidate: Candidate) -> Amount:
        return candidate.second if self.fixes_second else candidate.first

    def free(self, candidate: Candidate) -> Amount:
        return candidate.first if self.fixes_second else candidate.second

    def spoken(self, fixed: Amount, free: Amount) -> Rich:
        first, second = (free, fixed) if self.fixes_second else (fixed, free)
        return self.view.pair(first, second)

    def spoken_free(self, free: Amount) -> Rich:
        return self.view.first(free) if self.fixes_second else self.view.second(free)

    def spoken_fixed(self, fixed: Amount) -> Rich:
        return self.view.second(fixed) if self.fixes_second else self.view.first(fixed)


def ways_with_rates(view: View) -> Iterator[Working]:
    """Through one, by a common multiple, by a common chunk, scaled up to the other."""
    ways = [
        (_highest_factor(face, target), face, strategy, target)
        for face in (_Face(view, True), _Face(view, False))
        for strategy, target in _targets(face)
    ]
    ways.sort(key=lambda way: way[0])
    for index, (factor, face, strategy, target) in enumerate(ways):
        # A factor beyond the tables is worth it only where there is no second way.
        if factor <= TABLES_TO or index < _LEAST_WAYS:
            yield _made_same(face, target, strategy)
    if view.compared.word == "to":
        yield from _parts_of_the_whole(view)


def _highest_factor(face: _Face, target: Fraction) -> Fraction:
    return max(target / face.fixed(each).value for each in face.view.candidates)


def _targets(face: _Face) -> list[tuple[str, Fraction]]:
    """What the fixed amount may be brought to, and what that way is called."""
    values = [face.fixed(each).value for each in face.view.candidates]
    quantity = face.view.quantity(face.name)
    if len(set(values)) == 1:
        return [(f"The {quantity} is the same already", values[0])]
    multiple = _common_multiple(values)
    named = f"Making the {quantity} the same"
    if multiple in values:
        named = f"Scaling up to the same {quantity}"
    found = [(named, multiple)]
    chunk = values[0]
    for each in values[1:]:
        chunk = common_chunk(chunk, each)
    if chunk > 1 and _is_sound(face, chunk):
        found.append((f"Through a common chunk: {_plain(face, chunk)}", chunk))
    if _is_sound(face, Fraction(1)) and chunk.denominator == 1:
        found.append((f"Through {_plain(face, Fraction(1))}", Fraction(1)))
    return found


def _plain(face: _Face, value: Fraction) -> str:
    fixed = face.fixed(face.view.candidates[0])
    return plain(face.spoken_fixed(fixed.like(value)))


def _common_multiple(values: list[Fraction]) -> Fraction:
    under = lcm(*(each.denominator for each in values))
    return Fraction(lcm(*(int(each * under) for each in values)), under)


def _is_sound(face: _Face, target: Fraction) -> bool:
    """True where nothing turns up that cannot be told: cut things, pence that never end."""
    for each in face.view.candidates:
        free = face.free(each)
        reached = free.like(free.value * target / face.fixed(each).value)
        if free.unit.dimension in (Dimension.NUMBER, Dimension.COUNT):
            may_be_cut = face.view.compared.word == "to"
            if not reached.is_whole and (not may_be_cut or reached.value.denominator > _FINEST):
                return False
        elif (reached.value * 1000).denominator != 1:
            return False
    return True


def _made_same(face: _Face, target: Fraction, strategy: str) -> Working:
    steps, values = [], []
    for each in face.view.candidates:
        said, reached = _brought_to(face, each, target)
        steps.append(said)
        values.append(reached)
    values = _written_alike(values)
    spoken = [face.spoken_free(each) for each in values]
    steps.append(comparing(values, spoken, face.view.tells_things))
    if not face.fixes_second and len({each.base for each in values}) > 1:
        steps.append(_turned(face))
    return face.view.working(strategy, steps, values, not face.fixes_second)


def _written_alike(values: list[Amount]) -> list[Amount]:
    """All in pence where one of them has a part of a penny: 150p against 137.5p."""
    money = all(each.unit.dimension is Dimension.MONEY for each in values)
    if money and any((each.value * 100).denominator != 1 for each in values):
        return [each.written_as(Form.PENCE) for each in values]
    return values


def _brought_to(face: _Face, each: Candidate, target: Fraction) -> tuple[Step, Amount]:
    fixed, free = face.fixed(each), face.free(each)
    factor = target / fixed.value
    new, reached = fixed.like(target), free.like(free.value * factor)
    told = {"now": face.spoken(new, reached)}
    if factor == 1:
        return step(f"{head(each)}: {{now}}.", None, **told), reached
    if factor.numerator == 1:
        by = Amount(1 / factor)
        worked = equation(over(free, by), reached)
        text = (
            f"{head(each)}: {'halve both' if by.value == 2 else 'divide both by {by}'}, so {{now}}."
        )
        return step(text, worked, by=by, **told), reached
    by = Amount(factor)
    if factor == 2:
        text = f"{head(each)}: double both, so {{now}}."
    else:
        text = f"{head(each)}: take both {{by}} times, so {{now}}."
    return step(text, equation(times(free, by), reached), by=by, **told), reached


def _turned(face: _Face) -> Step:
    """With the first the same, less of the second means more of the first for each."""
    first, second = face.view.compared.first, face.view.compared.second
    if face.view.compared.word == "to":
        return step(f"Where there is less {second} for the same {first}, there is more {first} "
                    f"for the same {second}.")  # fmt: skip
    one = face.view.candidates[0].first
    less = f"fewer {first}" if is_counted(one) else f"less {first}"
    if one.unit.dimension is Dimension.MONEY:
        less = f"lower the {first}"
    return step(f"The more {second} for the same {first}, the {less} for the same {second}.")


def _parts_of_the_whole(view: View) -> Iterator[Working]:
    """The first as a fraction of both together, with one lower number for all."""
    pairs = [(bare(each.first), bare(each.second)) for each in view.candidates]
    if any(not amount.is_whole for pair in pairs for amount in pair):
        return
    wholes = [x.value + y.value for x, y in pairs]
    under = lcm(*(int(each) for each in wholes))
    steps, values = [], []
    for each, (x, y), whole in zip(view.candidates, pairs, wholes, strict=True):
        share = _fraction(x.value / whole, int(whole))
        text = (
            f"{head(each)}: {{x}} of {{whole}} parts {'is' if x.value == 1 else 'are'} "
            f"{view.compared.first}, so {{share}}."
        )
        worked = equation(plus(x, y), Amount(whole))
        steps.append(step(text, worked, x=x, whole=Amount(whole), share=share))
        values.append(_fraction(x.value / whole, under))
        if int(whole) != under:
            steps.append(
                step("Write that in parts of {under}.", equation(share, values[-1]),
                     under=Amount(Fraction(under)))
            )  # fmt: skip
    steps.append(comparing(values, [say("{v}", v=value) for value in values]))
    yield view.working("As a part of the whole", steps, values)


def _fraction(value: Fraction, under: int) -> Amount:
    return Amount(value, form=Form.FRACTION, places=under)
