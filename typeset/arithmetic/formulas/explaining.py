"""A formula told line by line, as a pupil would write it.

Every operation becomes a line or a part of one: a product inside a sum, or a sum inside a
product, is worked out on a line of its own first, and units are changed before they meet.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction

from typeset.arithmetic.equations import Equation, Expression, Operation, equation
from typeset.arithmetic.formulas.calls import lines_of_call
from typeset.arithmetic.formulas.ones import ONES
from typeset.arithmetic.formulas.plan import Definition
from typeset.arithmetic.formulas.tree import STRENGTH, Apply, As, Call, Formula, Name, told
from typeset.arithmetic.formulas.units import COUNTS, entered, in_unit, meeting, named
from typeset.arithmetic.phrases import head_of
from typeset.arithmetic.workings import Step, step
from typeset.errors import AmountError
from typeset.quantities.amount import Amount, Form
from typeset.quantities.inline import Rich
from typeset.quantities.units import Dimension, Unit
from typeset.quantities.writing import DIVIDE, say


@dataclass(frozen=True, slots=True)
class Line:
    """One operation done: for which step, under what sign (or function), by what equation."""

    name: str
    sign: str
    equation: Equation | None


@dataclass(frozen=True, slots=True)
class _Side:
    """One side of an operation: how it stands in the line, its amount, and its formula."""

    expression: Expression
    amount: Amount
    formula: Formula


@dataclass(slots=True)
class Explainer:
    """Tells definitions one after another. `amounts` grows by what each one makes."""

    amounts: dict[str, Amount]
    # The author's units by the name of a step, and the nouns of the story.
    units: Mapping[str, Unit]
    nouns: Collection[Unit] = ()
    steps: list[Step] = field(default_factory=list)
    lines: list[Line] = field(default_factory=list)
    # Every amount that was made, to be looked at for sense.
    made: list[Amount] = field(default_factory=list)
    # The units of measures that have counted as bare numbers (12 kg at £7.50 a kilogram).
    bared: set[Unit] = field(default_factory=set)
    _current: str = ""
    _converted: set[tuple[Fraction, Unit]] = field(default_factory=set)

    def tell_all(self, plan: Sequence[Definition]) -> None:
        """Every definition in order."""
        for index, each in enumerate(plan):
            self.define(each, opening_of(index, len(plan)))

    def define(self, definition: Definition, opening: str) -> Amount:
        """The lines that make one name; the last of them ends in its amount.

        Raises AmountError where amounts do not go together.
        """
        self._current = name = definition.name
        made = self._top(definition.formula, head_of(opening, name))
        telling = len(self.steps) - 1
        called = self._called(made, name)
        if definition.say:
            text = spoken(definition.say, {**self.amounts, name: called})
            self.steps[telling] = Step(text, self.steps[telling].equation)
        self.amounts[name] = called
        return called

    def arguments(self, call: Call) -> list[Amount]:
        """What the function is given, each worked out on lines of its own where it must be."""
        return [self._alone(each) for each in call.arguments]

    def sides(self, formula: Apply) -> tuple[Amount, Amount]:
        """Both sides of an operation, each worked out on lines of its own where it must be."""
        return self._alone(formula.left), self._alone(formula.right)

    def call(self, name: str, lines: Sequence[Step], made: Amount) -> None:
        """A function told in lines of its own: what it makes is called `name` from now on."""
        self._current = name
        self.steps.extend(lines)
        self.made.append(made)
        self.amounts[name] = self._called(made, name)

    def as_called(self, made: Amount, name: str) -> Amount:
        """What was made, in the unit or by the noun that the author gives it."""
        unit = self.units.get(name)
        return named(made, name, self.nouns) if unit is None else in_unit(made, unit, name)

    def _top(self, formula: Formula, head: str) -> Amount:
        """What a definition makes, its last line with the head's words."""
        if isinstance(formula, Call):
            return self._call(formula, head)
        side = self._express(formula)
        if isinstance(side.expression, Amount):
            self.steps.append(step(f"{head}: {{made}}.", made=side.amount))
        return self._line(side, f"{head}: {told(formula)}.", last=True)

    def _line(self, side: _Side, text: str, last: bool = False) -> Amount:
        """The side's operation on a line of its own."""
        if isinstance(side.expression, Amount):
            return side.amount
        shown = self._shown(side.amount) if last else side.amount
        result = equation(side.expression, shown)
        self.steps.append(step(text, result))
        formula = side.formula.inner if isinstance(side.formula, As) else side.formula
        if isinstance(formula, Apply):
            self.lines.append(Line(self._current, formula.sign, result))
        self.made.append(side.amount)
        return side.amount

    def _shown(self, made: Amount) -> Amount:
        """A count already called what the author calls it, where that leaves the line true."""
        unit = self.units.get(self._current)
        if unit is None or made.unit.dimension not in COUNTS:
            return made
        called = in_unit(made, unit, self._current)
        return called if called.base == made.base else made

    def _called(self, made: Amount, name: str) -> Amount:
        """What was made, in the unit that the author gives, or by the noun in its name."""
        unit = self.units.get(name)
        if unit is None:
            return named(made, name, self.nouns)
        called = in_unit(made, unit, name)
        if called.base != made.base:
            self.steps.append(step("That is {called}.", called=called))
        elif made.unit.dimension not in COUNTS and called.unit != made.unit:
            self.steps.append(step("That is {called}.", equation(made, called), called=called))
        return called

    def _express(self, formula: Formula) -> _Side:
        """The formula as it stands in a line."""
        match formula:
            case Name(name=name):
                amount = self.amounts[name] if name not in ONES else ONES[name]
                return _Side(amount, amount, formula)
            case As(inner=inner, unit=unit, name=name):
                made = in_unit(self._alone(inner), unit, name)
                return _Side(made, made, formula)
            case Call():
                made = self._call(formula, "")
                return _Side(made, made, formula)
            case Apply(sign=sign, left=left, right=right):
                sides = self._side(left, formula, False), self._side(right, formula, True)
                return self._met(sign, *sides, formula)

    def _side(self, inner: Formula, outer: Apply, is_right: bool) -> _Side:
        """An operand; worked out on its own line where it is of another strength."""
        if isinstance(inner, Apply) and not _goes_on(inner, outer, is_right):
            made = self._alone(inner)
            return _Side(made, made, inner)
        return self._express(inner)

    def _alone(self, formula: Formula) -> Amount:
        """A part of a formula worked out on a line of its own."""
        return self._line(self._express(formula), f"Work out {told(formula)}.")

    def _met(self, sign: str, left: _Side, right: _Side, formula: Formula) -> _Side:
        met = meeting(sign, left.amount.unit, right.amount.unit)
        one = self._entered(left, met.left, met.left_bare)
        other = self._entered(right, met.right, met.right_bare)
        made = _reckoned(sign, one.amount, other.amount, met.result)
        return _Side(Operation(sign, one.expression, other.expression), made, formula)

    def _entered(self, side: _Side, unit: Unit | None, is_bare: bool) -> _Side:
        """A side as it meets the other, told where its unit changes."""
        if unit is None and not is_bare:
            return side
        self._line(side, f"Work out {told(side.formula)}.")
        changed = entered(side.amount, unit, is_bare)
        if is_bare:
            self.bared.add(side.amount.unit)
        if unit is not None and (side.amount.base, unit) not in self._converted:
            self._converted.add((side.amount.base, unit))
            result = equation(side.amount, changed)
            text = "Use one unit: {old} is {new}."
            self.steps.append(step(text, result, old=side.amount, new=changed))
        return _Side(changed, changed, side.formula)

    def _call(self, call: Call, opening: str) -> Amount:
        arguments = self.arguments(call)
        lines = lines_of_call(call.function, arguments, opening)
        self.steps.extend(lines.steps)
        self.lines.append(Line(self._current, call.function, _division_in(lines.steps)))
        self.made.append(lines.made)
        return lines.made


def _division_in(steps: Sequence[Step]) -> Equation | None:
    """The line of a function in which something is divided with a remainder, if any."""
    for each in steps:
        if each.equation is not None:
            first = each.equation.sides[0]
            if isinstance(first, Operation) and first.sign == DIVIDE:
                return each.equation
    return None


def opening_of(index: int, count: int) -> str:
    """How the line of one step among several begins."""
    if count == 1:
        return "Find"
    if index == 0:
        return "First find"
    return "Last, find" if index == count - 1 else "Then find"


def _goes_on(inner: Apply, outer: Apply, is_right: bool) -> bool:
    """True where the inner operation just stands in the same line (a + b + c)."""
    if is_right or STRENGTH[inner.sign] != STRENGTH[outer.sign]:
        return False
    return DIVIDE not in (inner.sign, outer.sign)


def _reckoned(sign: str, left: Amount, right: Amount, unit: Unit) -> Amount:
    """The result of one operation on the amounts as they are written."""
    one, other = left.base, right.base
    match sign:
        case "+":
            base = one + other
        case "\u2212":
            base = one - other
        case "\u00f7":
            if not other:
                raise AmountError("something is divided by 0", "choose other numbers")
            base = one / other
        case _:
            base = one * other
    return Amount(unit.of_base(base), unit, _form(left, right, unit))


def _form(left: Amount, right: Amount, unit: Unit) -> Form:
    """A result is written like what it was made of: as a fraction, or with a point."""
    if unit.dimension is not Dimension.NUMBER:
        return Form.AUTO
    forms = {left.form, right.form}
    return next((form for form in (Form.FRACTION, Form.DECIMAL) if form in forms), Form.AUTO)


def spoken(text: str, amounts: Mapping[str, Amount]) -> Rich:
    """The author's sentence with amounts put in.

    Raises AmountError for a name in braces that nothing has.
    """
    try:
        return say(text, **amounts)
    except (KeyError, ValueError, IndexError):
        raise AmountError(
            f"'{text}' has braces around something that is not known by then",
            "put a quantity or an earlier step in braces",
        ) from None
