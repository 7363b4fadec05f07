"""Ways to change the unit of one amount."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from typeset.arithmetic.equations import (
    Expression,
    Remainder,
    equation,
    minus,
    over,
    plus,
    times,
)
from typeset.arithmetic.families.conversion_view import (
    Change,
    Fact,
    decimal_of,
    plain_number,
)
from typeset.arithmetic.methods import Method
from typeset.arithmetic.multiplying import Lots, ways_to_multiply
from typeset.arithmetic.phrases import is_sensible
from typeset.arithmetic.workings import Step, step
from typeset.quantities.amount import Amount, Form
from typeset.quantities.inline import join
from typeset.quantities.writing import write

_TENS = {10: 1, 100: 2, 1000: 3}


def changing(view: Change, amount: Amount) -> Iterator[Method]:
    """The ways to bring this amount to the unit wanted."""
    if view.is_mixed:
        yield from _into_two_units(view, amount)
    elif amount.form is Form.COMPOUND and amount.parts:
        yield from _part_by_part(view, amount)
    elif view.together is not None:
        yield from _by_the_fact(view, amount)
    elif amount.unit == view.target:
        yield Method("", (), amount)
    else:
        yield from _by_the_number(view, amount)


def _by_the_number(view: Change, amount: Amount) -> Iterator[Method]:
    fact = view.fact(amount.unit)
    if _is_long(view, fact):
        yield from _through(view, amount)
        yield from _last_step_multiplied(view, amount)
        return
    if amount.value == fact.one.value:
        known = step("Know it by heart: {amount} is {made}.", equation(amount, fact.other),
                     amount=amount, made=fact.other)  # fmt: skip
        yield Method("Known fact", (known,), fact.converted(amount))
    else:
        yield _at_once(fact, amount)
    yield from _ten_by_ten(fact, amount)
    yield from _whole_ones_and_parts(fact, amount)
    yield from _through(view, amount)
    if fact.factor > 1 and amount.value > 1 and amount.is_whole and fact.factor not in _TENS:
        yield from ways_to_multiply(Lots(amount.value, fact.other, amount.unit))
    if fact.factor < 1 and amount.value != fact.one.value:
        yield _as_a_fraction_of(fact, amount)


def _is_long(view: Change, fact: Fact) -> bool:
    """True where nobody knows the number (1,440 minutes), and pupils go unit by unit."""
    return fact.factor > 1 and fact.factor not in _TENS and bool(view.between(fact.one.unit))


def _last_step_multiplied(view: Change, amount: Amount) -> Iterator[Method]:
    """Unit by unit, with the last multiplication worked out in each way that suits."""
    last = view.between(amount.unit)[-1]
    near = decimal_of(amount.base / last.per_base, last)
    if not near.is_whole:
        return
    told = step("{amount} is {near}.", equation(amount, near), amount=amount, near=near)
    size = Amount(last.per_base / view.target.per_base, view.target)
    one = step("1 {unit} is {size}.", unit=last.singular, size=size)
    for method in ways_to_multiply(Lots(near.value, size, last)):
        yield method.after(told, one)


def _at_once(fact: Fact, amount: Amount) -> Method:
    made = fact.converted(amount)
    if fact.one.value == 1:
        only = step(
            "{one} is {other}, so multiply by {n}: {made}.",
            equation(times(plain_number(amount.value), fact.other), made),
            one=fact.one, other=fact.other, n=Amount(fact.factor), made=made,
        )  # fmt: skip
        return Method("Multiplying", (only,), made)
    only = step(
        "{one} make {other}, so divide by {n}: {made}.",
        equation(over(amount, fact.one), plain_number(made.value)),
        one=fact.one, other=fact.other, n=Amount(fact.one.value), made=made,
    )  # fmt: skip
    return Method("Dividing", (only,), made)


def _ten_by_ten(fact: Fact, amount: Amount) -> Iterator[Method]:
    """Ten times as much, again and again; or a tenth of it."""
    by = fact.factor if fact.one.value == 1 else fact.one.value
    rounds = _TENS.get(int(by)) if by.denominator == 1 else None
    if rounds is None or rounds == 1:
        return
    is_up, reached = fact.factor > 1, amount.value
    stops: list[Amount] = []
    for _ in range(rounds):
        reached = reached * 10 if is_up else reached / 10
        stops.append(plain_number(reached))
    ten = Amount(Fraction(10))
    worked: Expression = plain_number(amount.value)
    for _ in range(rounds):
        worked = times(worked, ten) if is_up else over(worked, ten)
    made = fact.converted(amount)
    listed = join([(write(each),) for each in stops], ", ")
    way = "Make the number 10 times as large" if is_up else "Take a tenth of the number"
    often = {2: "twice", 3: "three times"}[rounds]
    opening = step("{one} is {other}." if is_up else "{one} make {other}.", one=fact.one,
                   other=fact.other)  # fmt: skip
    told = step(f"{way} {often}: {{stops}}. So {{made}}.", equation(worked, stops[-1]),
                stops=listed, made=made)  # fmt: skip
    yield Method("Ten by ten", (opening, told), made)


def _whole_ones_and_parts(fact: Fact, amount: Amount) -> Iterator[Method]:
    """2.35 kg as 2 kg and 0.35 kg; 2,350 g as 2,000 g and 350 g."""
    size = fact.one.value
    whole, rest = amount.value // size * size, amount.value % size
    if not whole or not rest:
        return
    pieces = [decimal_of(Fraction(each), amount.unit) for each in (whole, rest)]
    made = [fact.converted(each) for each in pieces]
    if not all(is_sensible(each, False) for each in made):
        return
    steps = [
        step("{piece} is {made}.", equation(piece, each), piece=piece, made=each)
        for piece, each in zip(pieces, made, strict=True)
    ]
    total = fact.converted(amount)
    steps.append(step("Together: {total}.", equation(plus(*made), total), total=total))
    yield Method("Whole ones and parts", tuple(steps), total)


def _through(view: Change, amount: Amount) -> Iterator[Method]:
    """Unit by unit: days to hours to minutes."""
    between = view.between(amount.unit)
    if not between:
        return
    steps: list[Step] = []
    reached = amount
    for unit in (*between, view.target):
        factor = reached.unit.per_base / unit.per_base
        now = decimal_of(reached.value * factor, unit)
        if factor > 1:
            one, size = Amount(Fraction(1), reached.unit), Amount(factor, unit)
            text = "{one} is {size}." if reached.value == 1 else "{one} is {size}: {now}."
            worked = equation(times(plain_number(reached.value), size), now)
        else:
            one, size = Amount(1 / factor, reached.unit), Amount(Fraction(1), unit)
            text = "{one} make {size}: {now}."
            worked = equation(over(reached, one), plain_number(now.value))
        steps.append(step(text, worked, one=one, size=size, now=now))
        reached = now
    if is_sensible(reached, False):
        yield Method("Unit by unit", tuple(steps), reached)


def _as_a_fraction_of(fact: Fact, amount: Amount) -> Method:
    """90 min as 90 of the 60 that make an hour."""
    made = fact.converted(amount)
    part = Amount(amount.value / fact.one.value, form=Form.FRACTION)
    first = step("{one} make {other}, so look how much of that {amount} is: {part}.",
                 equation(over(amount, fact.one), part), one=fact.one, other=fact.other,
                 amount=amount, part=part)  # fmt: skip
    last = step("So {made}.", equation(times(part, fact.other), made), made=made)
    return Method("As a fraction", (first, last), made)


def _by_the_fact(view: Change, amount: Amount) -> Iterator[Method]:
    """By the author's fact: scaled as a whole, through one, or in whole steps and a rest."""
    fact = view.fact(amount.unit)
    made = fact.converted(amount)
    scale = amount.value / fact.one.value
    if scale.denominator == 1 and scale > 1:
        steps = (
            step("{amount} is {n} times {one}.", equation(over(amount, fact.one), Amount(scale)),
                 amount=amount, n=Amount(scale), one=fact.one),
            step("So take {n} times {other}: {made}.",
                 equation(times(Amount(scale), fact.other), made), n=Amount(scale),
                 other=fact.other, made=made),
        )  # fmt: skip
        yield Method("Scale factor", steps, made)
    each = decimal_of(fact.factor, fact.other.unit)
    single = decimal_of(Fraction(1), fact.one.unit)
    if is_sensible(each, False):
        steps = (
            step("{single} is {each}.", equation(over(fact.other, plain_number(fact.one.value)),
                 each), single=single, each=each),
            step("So {amount}: {made}.",
                 equation(times(plain_number(amount.value), each), made), amount=amount,
                 made=made),
        )  # fmt: skip
        yield Method("Through one", steps, made)
    yield from _in_steps_of_the_fact(fact, amount, made)
    if scale.denominator != 1 or scale <= 1:
        factor = Amount(scale, form=Form.FRACTION)
        steps = (
            step("{amount} as a part of {one}: {factor}.",
                 equation(over(amount, fact.one), factor), amount=amount, one=fact.one,
                 factor=factor),
            step("The same part of {other}: {made}.", equation(times(factor, fact.other), made),
                 other=fact.other, made=made),
        )  # fmt: skip
        yield Method("As a fraction", steps, made)


def _in_steps_of_the_fact(fact: Fact, amount: Amount, made: Amount) -> Iterator[Method]:
    whole, rest = divmod(amount.value, fact.one.value)
    if not whole or not rest:
        return
    some = decimal_of(whole * fact.one.value, amount.unit)
    left = decimal_of(rest, amount.unit)
    pieces = [fact.converted(each) for each in (some, left)]
    if not all(is_sensible(each, False) for each in pieces):
        return
    count, factor = Amount(Fraction(whole)), Amount(rest / fact.one.value, form=Form.FRACTION)
    yield Method(
        "In whole steps and the rest",
        (
            step("{some}: {n} times {other}, {made}.",
                 equation(times(count, fact.other), pieces[0]), some=some, n=count,
                 other=fact.other, made=pieces[0]),
            step("{left}: {factor} of {other}, {made}.",
                 equation(times(factor, fact.other), pieces[1]), left=left, factor=factor,
                 other=fact.other, made=pieces[1]),
            step("Together: {made}.", equation(plus(*pieces), made), made=made),
        ),
        made,
    )  # fmt: skip


def _split(amount: Amount) -> list[Amount]:
    """The parts of a compound amount, each in its own unit."""
    parts: list[Amount] = []
    rest = amount.base
    for unit in amount.parts:
        count = rest / unit.per_base
        if unit is not amount.parts[-1]:
            count = Fraction(count.numerator // count.denominator)
        if count:
            parts.append(decimal_of(count, unit))
            rest -= count * unit.per_base
    return parts


def _part_by_part(view: Change, amount: Amount) -> Iterator[Method]:
    """2 m 35 cm: the metres in cm, the cm as they are; or all in the smallest unit first."""
    parts = _split(amount)
    made = [decimal_of(each.base / view.target.per_base, view.target) for each in parts]
    steps = [
        step("{part} is {made}.", equation(part, each), part=part, made=each)
        for part, each in zip(parts, made, strict=True)
        if part.unit != view.target
    ]
    total = decimal_of(amount.base / view.target.per_base, view.target)
    if made[1:]:
        steps.append(step("Together: {total}.", equation(plus(*made), total), total=total))
    yield Method("Part by part", tuple(steps), total)
    first, second = amount.parts[0], amount.parts[-1]
    if second == view.target:
        whole = Amount(Fraction(parts[0].value + 1), first)
        up = decimal_of(whole.base / view.target.per_base, view.target)
        short = decimal_of(up.value - total.value, view.target)
        told = (
            step("{whole} would be {up}.", equation(whole, up), whole=whole, up=up),
            step("{amount} is {short} short of that: {total}.",
                 equation(minus(up, short), total), amount=amount, short=short, total=total),
        )  # fmt: skip
        yield Method("From the next full one back", told, total)
        return
    small = decimal_of(amount.base / second.per_base, second)
    fact = view.fact(second)
    opening = step("Write it all in {unit}: {small}.", equation(amount, small),
                   unit=second.plural, small=small)  # fmt: skip
    yield _at_once(fact, small).after(opening)


def _into_two_units(view: Change, amount: Amount) -> Iterator[Method]:
    """155 min as 2 h 35 min: whole ones taken off; or divided with a remainder."""
    large, small = view.problem.fields.parts
    told, opening = amount, list[Step]()
    if amount.unit != small or amount.form is Form.COMPOUND:
        told = decimal_of(amount.base / small.per_base, small)
        opening.append(step("Write {old} as {new}.", equation(amount, told), old=amount, new=told))
    size = Amount(large.per_base / small.per_base, small)
    count, rest = divmod(told.value, size.value)
    whole, left = Amount(Fraction(count), large), decimal_of(rest, small)
    used = decimal_of(count * size.value, small)
    answer = view.answered(told)
    steps = [*opening, step("{size} make {one}.", size=size, one=Amount(Fraction(1), large))]
    if rest:
        steps += [
            step("{whole} is {used}. That leaves {left}.", equation(minus(told, used), left),
                 whole=whole, used=used, left=left),
            step("So {answer}.", equation(plus(whole, left), answer), answer=answer),
        ]  # fmt: skip
    else:
        steps.append(step("So {answer}.", equation(used, whole), answer=answer))
    yield Method("Whole ones first", tuple(steps), told)
    division = over(told, size)
    number = Amount(Fraction(count))
    result: Expression = Remainder(number, left) if rest else number
    text = "{size} make {one}, so divide: {answer}."
    one = Amount(Fraction(1), large)
    steps = [*opening, step(text, equation(division, result), size=size, one=one, answer=answer)]
    yield Method("Dividing", tuple(steps), told)
