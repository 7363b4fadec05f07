"""The wrong ways that any story of two amounts invites, whatever its true structure."""

from __future__ import annotations

from typeset.arithmetic.equations import equation, minus, over, plus, times
from typeset.arithmetic.families.pair_rows import RowWriter, in_step
from typeset.arithmetic.families.pairs import Pair, mistaken
from typeset.arithmetic.phrases import the, title
from typeset.arithmetic.workings import MistakenWorking, Step, step
from typeset.quantities.amount import Amount


def as_proportion(pair: Pair) -> MistakenWorking:
    """Scales both alike (De Bock et al. 2007)."""
    writer = RowWriter(pair)
    return writer.mistake("over-use of proportionality", in_step(writer))


def as_inverse(pair: Pair, misconception: str) -> MistakenWorking:
    """Keeps the product, as if more of one meant less of the other."""
    steps: list[Step] = []
    reached: dict[str, Amount] = {}
    for name, amount in pair.others.items():
        product = amount.like(amount.value * pair.known.value)
        reached[name] = amount.like(product.value / pair.wanted.value)
        known, wanted = Amount(pair.known.value), Amount(pair.wanted.value)
        steps.append(
            step(
                f"For just one, {the(name)} would be {{product}}.",
                equation(times(known, amount), product),
                product=product,
            )
        )
        steps.append(
            step(
                "Share it among {wanted}."
                if pair.wanted.unit.is_noun
                else "Divide it by {wanted}.",
                equation(over(product, wanted), reached[name]),
                wanted=pair.wanted,
            )
        )
    return mistaken(pair, misconception, steps, reached)


def same_change(pair: Pair, misconception: str) -> MistakenWorking:
    """Adds to the other amount what was added to the first."""
    return _changed(pair, misconception, along=True)


def opposite_change(pair: Pair, misconception: str) -> MistakenWorking:
    """Takes from the other amount what was added to the first."""
    return _changed(pair, misconception, along=False)


def _changed(pair: Pair, misconception: str, along: bool) -> MistakenWorking:
    steps: list[Step] = [change_step(pair)]
    reached: dict[str, Amount] = {}
    by = abs(pair.change)
    rises = (pair.change > 0) == along
    for name, amount in pair.others.items():
        change = amount.like(by)
        reached[name] = amount.like(amount.value + by if rises else amount.value - by)
        sign = plus if rises else minus
        way = "more" if rises else "less"
        ending = "as well" if along else "instead"
        steps.append(
            step(
                f"{title(name)}: {{by}} {way} {ending}.",
                equation(sign(amount, change), reached[name]),
                by=Amount(by),
            )
        )
    return mistaken(pair, misconception, steps, reached)


def change_step(pair: Pair) -> Step:
    """By how much the first amount changes."""
    grows = pair.change >= 0
    high, low = (pair.wanted, pair.known) if grows else (pair.known, pair.wanted)
    by = pair.known.like(abs(pair.change))
    way = "more" if grows else "less"
    return step(
        f"{title(pair.base)}: from {{known}} to {{wanted}} is {{by}} {way}.",
        equation(minus(high, low), by),
        known=pair.known,
        wanted=pair.wanted,
        by=Amount(by.value) if by.unit.is_noun else by,
    )
