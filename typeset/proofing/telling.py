"""Turns what does not balance in the account into findings that a teacher can act on."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby, takewhile

from typeset.proofing.account import Account, FigureGap, Gap
from typeset.proofing.copies import find_copies
from typeset.proofing.finding import Finding
from typeset.proofing.page_marks import OPEN_BOX, WRITING_RULE, Word
from typeset.proofing.places import around

# Longer quotations are cut in the middle.
_MOST_QUOTED = 12
# Up to so many words that stand for as many others are told one by one.
_MOST_PAIRS = 5
_MARKS = {WRITING_RULE: "a line to write on", OPEN_BOX: "an empty box"}
_PUNCTUATION = ".,;:?!()[]‘’“”"


def tell_account(
    account: Account, document: str, secrets: Sequence[tuple[str, str]] = ()
) -> list[Finding]:
    """A finding for everything in the account that does not balance."""
    teller = _Teller(account, document, secrets)
    findings = [each for gap in account.gaps for each in teller.gap(gap)]
    findings += [each for gap in account.figures for each in teller.figure(gap)]
    return findings


def quoted(words: Sequence[str]) -> str:
    """The words in quotation marks; rules and boxes are named, a long text is cut short."""
    if words and all(word in _MARKS for word in words):
        return _MARKS[words[0]]
    shown = [word for word in words if word not in _MARKS]
    if len(shown) > _MOST_QUOTED:
        half = _MOST_QUOTED // 2
        shown = [*shown[:half], "…", *shown[-half:]]
    return f"'{' '.join(shown)}'"


class _Teller:
    def __init__(self, account: Account, document: str, secrets: Sequence[tuple[str, str]]) -> None:
        self.account = account
        self.document = document
        self.secrets = secrets
        self.told_missing = set(self._moved())

    def gap(self, gap: Gap) -> Iterator[Finding]:
        """Copies of other passages first, then what is wrong, missing or too much."""
        extra = list(gap.extra)
        for copy in reversed(list(find_copies(self.account.passages, extra))):
            yield self._copy(copy.about, extra[copy.first : copy.end])
            del extra[copy.first : copy.end]
        missing = [position for position in gap.missing if not self._is_gone(position)]
        yield from self._gone(gap)
        if missing and len(missing) == len(extra) <= _MOST_PAIRS:
            for position, word in zip(missing, extra, strict=True):
                yield self._instead(position[0], [self._expected(position)], [word])
        elif missing and extra and len({passage for passage, _ in missing}) == 1:
            yield self._instead(missing[0][0], [self._expected(m) for m in missing], extra)
        else:
            yield from self._lacking([m for m in missing if not self._is_told(m[0])])
            yield from self._too_much(extra, gap.after)

    def _moved(self) -> Iterator[str]:
        """What is printed as a whole, but elsewhere: it is told there, and not as missing."""
        for gap in self.account.gaps:
            for copy in find_copies(self.account.passages, gap.extra):
                yield copy.about

    def figure(self, gap: FigureGap) -> Iterator[Finding]:
        passage = self.account.passages[gap.passage]
        if passage.about in self.told_missing:
            return
        found = self.account.words_of(gap.passage)
        near = gap.extra or found or self._before(gap.passage)
        what = f"the figure of {passage.about}"
        if gap.extra:
            text = f"{what} shows {quoted([word.text for word in gap.extra])}"
            yield self._finding(near, text, quoted(gap.missing), passage.source, "figure")
        elif found:
            text = f"{what} lacks {quoted(gap.missing)}"
            yield self._finding(near, text, "", passage.source, "figure")
        else:
            yield self._finding(near, f"{what} is missing", "", passage.source, "figure")

    def _expected(self, position: tuple[int, int]) -> str:
        return self.account.passages[position[0]].words[position[1]]

    def _is_gone(self, position: tuple[int, int]) -> bool:
        """True for a word of something that is missing as a whole."""
        about = self.account.passages[position[0]].about
        return bool(self._all_of(about)) and not any(
            word for index in self._all_of(about) for word in self.account.found[index]
        )

    def _is_told(self, index: int) -> bool:
        """True for a passage of which nothing is found here, since it is printed elsewhere."""
        about = self.account.passages[index].about
        return about in self.told_missing and not self.account.words_of(index)

    def _all_of(self, about: str) -> list[int]:
        passages = self.account.passages
        several = [i for i, each in enumerate(passages) if each.about == about and each.words]
        # A heading or an instruction of a few words may be wrong as a whole without being gone.
        words = sum(len(passages[index].words) for index in several)
        return several if words > _MOST_PAIRS or len(several) > 1 else []

    def _gone(self, gap: Gap) -> Iterator[Finding]:
        """What is missing as a whole, once."""
        for position in gap.missing:
            passage = self.account.passages[position[0]]
            if not self._is_gone(position) or passage.about in self.told_missing:
                continue
            self.told_missing.add(passage.about)
            near = self._before(position[0])
            what = f"{passage.about} is missing"
            yield self._finding(near, what, "", passage.source, "order")

    def _copy(self, about: str, words: Sequence[Word]) -> Finding:
        passage = next(each for each in self.account.passages if each.about == about)
        index = self.account.passages.index(passage)
        own = self._all_of(about) or [index]
        elsewhere = any(word for each in own for word in self.account.found[each])
        what = f"{about} is printed here as well" if elsewhere else f"{about} is printed here"
        should = "it should stand only once" if elsewhere else "this is not its place in the order"
        return self._finding(words, what, should, passage.source, "order")

    def _instead(self, index: int, wanted: Sequence[str], printed: Sequence[Word]) -> Finding:
        passage = self.account.passages[index]
        texts = [word.text for word in printed]
        kind = "number" if any(_has_digit(each) for each in (*wanted, *texts)) else "wording"
        what = f"{passage.about} prints {quoted(texts)}"
        return self._finding(printed, what, quoted(wanted), passage.source, kind)

    def _lacking(self, missing: Sequence[tuple[int, int]]) -> Iterator[Finding]:
        for index, group in groupby(missing, key=lambda position: position[0]):
            passage = self.account.passages[index]
            wanted = [passage.words[word] for _, word in group]
            near = self.account.words_of(index) or self._before(index)
            only_marks = all(word in _MARKS for word in wanted)
            kind = "space" if only_marks else "wording"
            if any(_has_digit(word) for word in wanted):
                kind = "number"
            what = f"{passage.about} lacks {quoted(wanted)}"
            yield self._finding(near, what, "", passage.source, kind)

    def _too_much(self, extra: Sequence[Word], after: int) -> Iterator[Finding]:
        passage = self.account.passages[after]
        for _page, group in groupby(extra, key=lambda word: word.page):
            words = list(group)
            texts = [word.text for word in words]
            told = self._secret_in(texts)
            if told:
                what = f"the answer to {told[0]} is printed: '{told[1]}'"
                yield self._finding(words, what, "", passage.source, "answer")
            else:
                what = f"{quoted(texts)} is printed after {passage.about}"
                yield self._finding(words, what, "nothing", passage.source, "wording")

    def _secret_in(self, texts: Sequence[str]) -> tuple[str, str] | None:
        """The answer that the words give away."""
        bare = [text.strip(_PUNCTUATION) for text in texts]
        line = f" {' '.join(bare)} "
        for about, answer in self.secrets:
            if f" {answer} " in line:
                return about, answer
        for about, answer in self.secrets:
            number = _leading_number(answer)
            if number and f" {number} " in line:
                return about, number
        return None

    def _before(self, index: int) -> Sequence[Word]:
        """The nearest words that were found before a passage."""
        for each in range(index - 1, -1, -1):
            if words := self.account.words_of(each):
                return words[-1:]
        return ()

    def _finding(
        self, words: Sequence[Word], what: str, should: str, source: str, kind: str
    ) -> Finding:
        page = words[0].page if words else 0
        place = around(word.box for word in words if word.page == page).place_mm if words else None
        return Finding(self.document, page, place, what, should, source, kind)


def _leading_number(answer: str) -> str:
    """The number that an answer begins with: '7 1/2' of '7 1/2 pints'."""
    return " ".join(takewhile(_has_digit, answer.split()))


def _has_digit(text: str) -> bool:
    return any(letter.isdigit() for letter in text)
