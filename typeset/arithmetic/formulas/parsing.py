"""A formula's text as a tree, by precedence climbing: 'of' binds most, then × ÷, then + −."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass

from typeset.arithmetic.formulas.tokens import FUNCTIONS, Mark, Token, tokens_of
from typeset.arithmetic.formulas.tree import STRENGTH, Apply, Call, Formula, Name
from typeset.errors import AmountError
from typeset.quantities.writing import DIVIDE

# Deeper brackets than any story has; guards against hostile texts.
_DEEPEST = 20
_LONGEST = 300


def parse_formula(text: str, names: Collection[str]) -> Formula:
    """The formula that the text says, over these names.

    Raises AmountError saying what is wrong and what would be right.
    """
    if not text.strip():
        raise AmountError("there is nothing after '='", "write such as cost = tickets × price")
    if len(text) > _LONGEST:
        raise AmountError(
            f"the formula has more than {_LONGEST} characters", "make it in several steps"
        )
    parser = _Parser(text.strip(), tokens_of(text, names))
    formula = parser.expression(1)
    parser.finish()
    return formula


@dataclass(slots=True)
class _Parser:
    """Reads tokens from the left. `depth` counts open brackets."""

    text: str
    tokens: list[Token]
    at: int = 0
    depth: int = 0

    @property
    def next(self) -> Token:
        return self.tokens[self.at]

    def take(self) -> Token:
        token = self.next
        self.at += 1
        return token

    def expression(self, weakest: int) -> Formula:
        """Operations at least as strong as `weakest`, from the left."""
        left = self.operand()
        while self.next.mark is Mark.SIGN and STRENGTH[self.next.text] >= weakest:
            sign = self.take().text
            left = Apply(sign, left, self.expression(STRENGTH[sign] + 1))
        return left

    def operand(self) -> Formula:
        token = self.take()
        match token.mark:
            case Mark.NAME:
                return Name(token.text)
            case Mark.OPEN:
                return self.bracket()
            case Mark.FUNCTION:
                return self.call(token.text)
        raise self.missing(token)

    def bracket(self) -> Formula:
        """What stands between '(' and ')'; the '(' is read already."""
        self.depth += 1
        if self.depth > _DEEPEST:
            raise self.fault("has too many brackets", "make it in several steps")
        inner = self.expression(1)
        if self.take().mark is not Mark.CLOSE:
            self.at -= 1
            self.expect_no_operand()
            raise self.fault("has a '(' that is never closed", "add ')'")
        self.depth -= 1
        return inner

    def call(self, function: str) -> Formula:
        self.take()
        arguments = [self.expression(1)]
        while self.next.mark is Mark.COMMA:
            self.take()
            arguments.append(self.expression(1))
        if self.take().mark is not Mark.CLOSE:
            self.at -= 1
            self.expect_no_operand()
            raise self.fault(f"has no ')' after {function}(", "add ')'")
        return _call(function, tuple(arguments))

    def finish(self) -> None:
        """Complains about anything that is left."""
        self.expect_no_operand()
        if self.next.mark is Mark.CLOSE:
            raise self.fault("has a ')' without a '('", "take it out or add '('")
        if self.next.mark is Mark.COMMA:
            raise self.fault("has a comma outside a function", "write one formula")

    def expect_no_operand(self) -> None:
        if self.next.mark in (Mark.NAME, Mark.OPEN, Mark.FUNCTION):
            before = self.tokens[self.at - 1].text
            raise self.fault(
                f"has no sign between '{before}' and '{self.next.text}'", "put + − × ÷ or of there"
            )

    def missing(self, token: Token) -> AmountError:
        """The complaint that a name is missing where `token` stands."""
        where = self.tokens[self.at - 2].text if self.at > 1 else "the beginning"
        if self.at == 1:
            return self.fault(f"begins with '{token.text}'", "begin with a name")
        what = "before the end" if token.mark is Mark.END else f"before '{token.text}'"
        return self.fault(f"has nothing after '{where}' {what}", "put a name there")

    def fault(self, problem: str, remedy: str) -> AmountError:
        return AmountError(f"'{self.text}' {problem}", remedy)


def _call(function: str, arguments: tuple[Formula, ...]) -> Formula:
    least, most = FUNCTIONS[function]
    if not least <= len(arguments) <= most:
        wanted = f"{least}" if least == most else f"{least} to {most}"
        raise AmountError(
            f"{function} is given {len(arguments)} amounts", f"give it {wanted}, with commas"
        )
    if function in ("round up", "round down"):
        return Call(function, _division(function, arguments))
    return Call(function, arguments)


def _division(function: str, arguments: tuple[Formula, ...]) -> tuple[Formula, ...]:
    """The dividend and divisor, typed as `a ÷ b` or as `a, b`."""
    if len(arguments) == 2:
        return arguments
    only = arguments[0]
    if isinstance(only, Apply) and only.sign == DIVIDE:
        return (only.left, only.right)
    raise AmountError(f"{function} rounds a division", f"write such as {function}(people ÷ seats)")
