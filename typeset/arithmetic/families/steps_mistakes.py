"""The wrong ways through a chain of steps."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import reduce

from typeset.arithmetic.answers import AnswerValue
from typeset.arithmetic.equations import OF, PLUS, Operation, equation, operations, value_of
from typeset.arithmetic.families.steps_plan import Chain
from typeset.arithmetic.formulas.explaining import Explainer
from typeset.arithmetic.formulas.plan import Definition, needed
from typeset.arithmetic.formulas.tree import (
    Apply,
    As,
    Call,
    Formula,
    Name,
    names_in,
    parts_of,
    rebuilt,
    substituted,
)
from typeset.arithmetic.formulas.units import COUNTS
from typeset.arithmetic.phrases import bare, the
from typeset.arithmetic.workings import MistakenWorking, step
from typeset.errors import AmountError
from typeset.quantities.amount import Amount, Form
from typeset.quantities.units import Dimension, Unit
from typeset.quantities.writing import DIVIDE, MINUS, TIMES

_OPPOSITES = (
    (MINUS, PLUS, "adding instead of subtracting"),
    (PLUS, MINUS, "subtracting instead of adding"),
    (TIMES, PLUS, "adding instead of multiplying"),
    (DIVIDE, TIMES, "multiplying instead of dividing"),
    (TIMES, DIVIDE, "dividing instead of multiplying"),
)
_OTHER_CALLS = (
    ("round up", "round down", "remainder ignored"),
    ("round up", "remainder", "remainder given as the answer"),
    ("round down", "round up", "remainder rounded up"),
    ("quotient", "round up", "remainder rounded up"),
    ("quotient", "remainder", "remainder given as the answer"),
    ("remainder", "quotient", "quotient given as the remainder"),
    ("hcf", "lcm", "factor and multiple exchanged"),
    ("lcm", "hcf", "factor and multiple exchanged"),
)


_VERBS = {PLUS: "add", MINUS: "take off", TIMES: "multiply by", DIVIDE: "divide by"}


def chain_mistakes(chain: Chain, units: Mapping[str, Unit]) -> Iterator[MistakenWorking]:
    """Every wrong way that can be told; `units` are those asked for."""
    wrong = _Wrong(chain, units)
    yield from wrong.stopped_early()
    yield from wrong.in_reading_order()
    yield from wrong.other_operations()
    yield from wrong.other_calls()
    yield from wrong.percentage_as_amount()
    yield from wrong.without_quantities()
    yield from wrong.unconverted()


@dataclass(frozen=True, slots=True)
class _Wrong:
    """Tells changed plans; where units no longer go together, in bare numbers."""

    chain: Chain
    units: Mapping[str, Unit]

    def stopped_early(self) -> Iterator[MistakenWorking]:
        """The last step missing: its most telling part is given as the answer."""
        if len(self.chain.finds) > 1:
            return
        asked = self.chain.finds[0]
        last = next(each for each in self.chain.plan if each.name == asked)
        before = self.chain.plan[: self.chain.plan.index(last)]
        teller = self.chain.explainer()
        teller.tell_all(before)
        reached = _last_made(last.formula, before, teller)
        # Nobody takes grams for boxes.
        is_measured = reached is not None and reached.unit.dimension not in COUNTS
        if reached is not None and not (is_measured and self.units[asked].dimension in COUNTS):
            yield from self._mistake("step left out", teller, {asked: reached})

    def in_reading_order(self) -> Iterator[MistakenWorking]:
        """The signs of the whole story from left to right, brackets and strength forgotten."""
        if len(self.chain.finds) > 1:
            return
        asked = self.chain.finds[0]
        whole = self.chain.wholes[asked]
        if any(isinstance(part, Call) or _sign(part) == OF for part in parts_of(whole)):
            return
        yield from self._from_left(asked, *_flat(whole))

    def _from_left(
        self, asked: str, names: Sequence[str], signs: Sequence[str]
    ) -> Iterator[MistakenWorking]:
        """The numbers one after another, each under the sign before it."""
        numbers = [bare(self.chain.givens[name]) for name in names]
        reached, steps = numbers[0], []
        for index, (sign, name) in enumerate(zip(signs, names[1:], strict=True)):
            other = numbers[index + 1]
            if sign == DIVIDE and not other.value:
                return
            made = _joined(reached, sign, other)
            text = f"Then {_VERBS[sign]} {the(name)}."
            if not index:
                text = f"Work from left to right: {names[0]} {sign} {name}."
            steps.append(step(text, equation(Operation(sign, reached, other), made)))
            reached = made
        answer = self._as_asked(reached, self.units[asked])
        yield MistakenWorking("operations in reading order", tuple(steps), {asked: answer})

    def other_operations(self) -> Iterator[MistakenWorking]:
        """One sign taken for its opposite, the last step first."""
        for sign, instead, name in _OPPOSITES:
            for plan in self._changed_plans(sign, _with_sign(instead)):
                yield from self._told(name, plan)

    def other_calls(self) -> Iterator[MistakenWorking]:
        """A remainder read in another way, or a multiple for a factor."""
        for function, instead, name in _OTHER_CALLS:
            for plan in self._changed_plans(function, _with_function(instead)):
                # Half a metre that is left over is no number of planks on the way.
                if plan[-1].formula != self.chain.plan[-1].formula or instead != "remainder":
                    yield from self._told(name, plan)
        for function in ("quotient", "round down"):
            for plan in self._changed_plans(function, _divided_out):
                yield from self._told("leftovers joined", plan)
        for function, name in (("mean", "step left out"), ("difference", _OPPOSITES[0][2])):
            for plan in self._changed_plans(function, _sum_of):
                yield from self._told(name, plan)

    def percentage_as_amount(self) -> Iterator[MistakenWorking]:
        """15% taken for £15."""
        for plan in self._changed_plans(OF, _left):
            part = _only_part(self.chain)
            if part is None:
                return
            name, unit = part
            taken = Amount(self.chain.givens[name].value, unit)
            chain = replace(self.chain, givens={**self.chain.givens, name: taken})
            yield from _Wrong(chain, self.units)._told("percentage taken as the amount", plan)

    def without_quantities(self) -> Iterator[MistakenWorking]:
        """What is added, taken away or multiplied by is forgotten."""
        for sign, side in ((PLUS, _left), (TIMES, _left), (TIMES, _right), (MINUS, _left)):
            for plan in self._changed_plans(sign, side):
                if not any(_repeats(each.formula) for each in plan):
                    told = self._told("quantity left out", plan, only_with_units=True)
                    yield from (each for each in told if not _mixes_nouns(each))

    def unconverted(self) -> Iterator[MistakenWorking]:
        """The numbers as they are written, whatever their units."""
        if self.chain.mixes_units:
            yield from self._numbers_only("unit not converted", list(self.chain.plan))

    def _changed_plans(
        self, sign: str, change: Callable[[Formula], Formula]
    ) -> Iterator[list[Definition]]:
        """The plan with one operation of this sign changed, from the last step to the first."""
        for index in reversed(range(len(self.chain.plan))):
            each = self.chain.plan[index]
            for target in parts_of(each.formula):
                if _sign(target) != sign:
                    continue
                changed = Definition(each.name, _exchanged(each.formula, target, change(target)))
                rest = [replace(later, say="") for later in self.chain.plan[index + 1 :]]
                if isinstance(changed.formula, Name):
                    # Nothing is left to work out: the later steps take the amount as it is.
                    if each.name in self.chain.finds:
                        continue
                    known = {each.name: changed.formula}
                    rest = [
                        Definition(later.name, substituted(later.formula, known)) for later in rest
                    ]
                    yield needed([*self.chain.plan[:index], *rest], self.chain.finds)
                    continue
                yield needed([*self.chain.plan[:index], changed, *rest], self.chain.finds)

    def _told(
        self, name: str, plan: Sequence[Definition], only_with_units: bool = False
    ) -> Iterator[MistakenWorking]:
        try:
            teller = self.chain.told(plan)
        except AmountError:
            if not only_with_units:
                yield from self._numbers_only(name, plan)
            return
        yield from self._mistake(name, teller, {each: teller.amounts[each] for each in self.units})

    def _numbers_only(self, name: str, plan: Sequence[Definition]) -> Iterator[MistakenWorking]:
        """The plan in bare numbers, the unit put to the answer at the end."""
        numbers = {each: bare(amount) for each, amount in self.chain.givens.items()}
        teller = Explainer(numbers, {})
        try:
            teller.tell_all([replace(each, say="") for each in plan])
        except AmountError:
            return
        yield from self._mistake(name, teller, {each: teller.amounts[each] for each in self.units})

    def _mistake(
        self, name: str, teller: Explainer, reached: Mapping[str, Amount]
    ) -> Iterator[MistakenWorking]:
        """The working told; none where a pupil could not have written it: a wrong step may
        divide by a number below nothing, and then no remainder is right."""
        if any(each.equation and not each.equation.holds() for each in teller.steps):
            return
        answers: dict[str, AnswerValue] = {
            asked: self._as_asked(amount, self.units[asked]) for asked, amount in reached.items()
        }
        yield MistakenWorking(name, tuple(teller.steps), answers)

    def _as_asked(self, amount: Amount, unit: Unit) -> Amount:
        """A pupil puts the unit of the question to whatever number comes out."""
        if amount.unit.dimension is unit.dimension and unit.dimension not in COUNTS:
            return amount
        return Amount(amount.value, unit)


def _sign(formula: Formula) -> str:
    match formula:
        case Apply(sign=sign):
            return sign
        case Call(function=function):
            return function
    return ""


def _exchanged(formula: Formula, target: Formula, instead: Formula) -> Formula:
    return rebuilt(formula, lambda part: instead if part == target else part)


def _with_sign(sign: str) -> Callable[[Formula], Formula]:
    return lambda part: replace(part, sign=sign) if isinstance(part, Apply) else part


def _with_function(function: str) -> Callable[[Formula], Formula]:
    return lambda part: replace(part, function=function) if isinstance(part, Call) else part


def _left(formula: Formula) -> Formula:
    return formula.left if isinstance(formula, Apply) else formula


def _right(formula: Formula) -> Formula:
    return formula.right if isinstance(formula, Apply) else formula


def _sum_of(formula: Formula) -> Formula:
    """All arguments added."""
    if not isinstance(formula, Call):
        return formula
    first, *rest = formula.arguments
    return reduce(lambda total, each: Apply(PLUS, total, each), rest, first)


def _last_made(formula: Formula, before: Sequence[Definition], teller: Explainer) -> Amount | None:
    """What an earlier step made for this one; else the last part worked out inside it."""
    made = [each.name for each in before]
    used = [part.name for part in parts_of(formula) if isinstance(part, Name)]
    for name in reversed(made):
        if name in used:
            return teller.amounts[name]
    inner = [
        part for part in parts_of(formula) if part is not formula and isinstance(part, Apply | Call)
    ]
    if not inner:
        return None
    return teller.define(Definition("the first part", inner[0]), "Find")


def _joined(left: Amount, sign: str, right: Amount) -> Amount:
    """The numbers under the sign, written as they are."""
    value = value_of(Operation(sign, left, right))
    is_decimal = Form.DECIMAL in (left.form, right.form)
    return Amount(value, form=Form.DECIMAL if is_decimal else left.form)


def _only_part(chain: Chain) -> tuple[str, Unit] | None:
    """The one percentage of the story that is taken of something, and the unit of that."""
    amounts = chain.as_typed.amounts
    found = [
        (part.left.name, amounts[part.right.name].unit)
        for each in chain.plan
        for part in parts_of(each.formula)
        if isinstance(part, Apply) and part.sign == OF
        if isinstance(part.left, Name) and isinstance(part.right, Name)
    ]
    names = [n for each in chain.plan for n in names_in(each.formula)]
    if len(found) != 1 or names.count(found[0][0]) != 1:
        return None
    given = chain.givens.get(found[0][0])
    is_percentage = given is not None and given.unit.dimension is Dimension.PERCENT
    return found[0] if is_percentage else None


def _repeats(formula: Formula) -> bool:
    """True where a function would be given the same twice, which nobody does."""
    return any(
        isinstance(part, Call) and len(set(part.arguments)) < len(part.arguments)
        for part in parts_of(formula)
    )


def _mixes_nouns(mistake: MistakenWorking) -> bool:
    """True where strings are added to shells: who leaves a number out does not do that too."""
    sums = [
        each
        for line in mistake.steps
        if line.equation is not None
        for each in operations(line.equation.sides[0])
        if each.sign in (PLUS, MINUS)
    ]
    pairs = [(each.left, each.right) for each in sums]
    units = [
        (one.unit, other.unit)
        for one, other in pairs
        if isinstance(one, Amount) and isinstance(other, Amount)
    ]
    return any(one != other and (one.is_noun or other.is_noun) for one, other in units)


def _divided_out(formula: Formula) -> Formula:
    """The division without rounding, as if pieces that are left over could be joined."""
    if not isinstance(formula, Call):
        return formula
    return Apply(DIVIDE, *formula.arguments)


def _flat(formula: Formula) -> tuple[list[str], list[str]]:
    match formula:
        case Name(name=name):
            return [name], []
        case Apply(sign=sign, left=left, right=right):
            first, before = _flat(left)
            second, after = _flat(right)
            return [*first, *second], [*before, sign, *after]
        case As(inner=inner):
            return _flat(inner)
    raise AssertionError("functions are not flat")
