"""Addresses: what is one, what is not, and how little of them is shown."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from typeset.posting.addresses import (
    Address,
    Malformed,
    looks_like_another,
    read_address,
    read_sender,
    shortened,
    without_addresses,
)

GOOD = {
    "asha@harbour.example": "asha@harbour.example",
    " asha.k+maths@Quay.Harbour.EXAMPLE ": "asha.k+maths@quay.harbour.example",
    # RFC 5322 section 3.2.3: what an atom may hold.
    "!#$%&'*+-/=?^_`{|}~@harbour.example": "!#$%&'*+-/=?^_`{|}~@harbour.example",
    # RFC 3492 section 7.1 has other strings; this one is known from countless registrations.
    "x@bücher.example": "x@xn--bcher-kva.example",
    "x@xn--bcher-kva.example": "x@xn--bcher-kva.example",
    # The test domains that IANA keeps (RFC 6761 names 'example'; from memory: Greek).
    "x@παράδειγμα.δοκιμή": "x@xn--hxajbheg2az3al.xn--jxalpdlp",
    "zoë@harbour.example": "zoë@harbour.example",
    f"{'a' * 64}@harbour.example": f"{'a' * 64}@harbour.example",
}


@pytest.mark.parametrize("typed", GOOD)
def test_an_address_is_read(typed: str) -> None:
    address = read_address(typed)
    assert isinstance(address, Address)
    assert address.text == GOOD[typed]


BAD = {
    "": "no address",
    "asha": "no address",
    "@harbour.example": "no address",
    "asha@": "no address",
    "asha@harbour": "ending of the domain is missing",
    "a@b@harbour.example": "more than one @",
    "asha @harbour.example": "a space, comma or semicolon",
    "asha@harbour.example,kofi@harbour.example": "a space, comma or semicolon",
    "asha@harbour.example;kofi@harbour.example": "a space, comma or semicolon",
    "asha..k@harbour.example": "before the @ a full stop",
    ".asha@harbour.example": "before the @ a full stop",
    "asha@harbour..example": "behind the @ a full stop",
    "asha@harbour.example.": "behind the @ a full stop",
    "asha@-harbour.example": "cannot be a domain",
    "asha@har_bour.example": "cannot be a domain",
    "asha@[192.0.2.1]": "cannot be a domain",
    "asha@192.0.2.1": "cannot be a domain",
    "asha@xn--a-.example": "cannot be a domain",
    '"as ha"@harbour.example': "a space, comma or semicolon",
    '"asha"@harbour.example': "cannot stand there",
    "as<ha@harbour.example": "cannot stand there",
    "as€ha@harbour.example": "cannot stand there",
    f"{'a' * 65}@harbour.example": "more than 64",
    f"a@{'b' * 64}.example": "cannot be a domain",
    f"a@{'b.' * 130}example": "more than 255",
    # IDNA 2003 makes 'ss' of it, IDNA 2008 (RFC 5891) a domain of its own.
    "asha@straße.example": "read in two ways",
    # A full-width letter would silently become a plain one.
    "asha@ｈarbour.example": "read in two ways",
    # Cyrillic 'а' among Latin letters.
    "asha@hаrbour.example": "mixed in the domain",
    "аsha@harbour.example": "mixed before the @",
    "asha@harbour.example\nBcc: all@harbour.example": "not seen",
    "asha\r\n@harbour.example": "not seen",
    "asha@harbour.example\0": "not seen",
    "ash\u200ba@harbour.example": "not seen",
    "asha\u202e@harbour.example": "not seen",
}


@pytest.mark.parametrize("typed", BAD, ids=range(len(BAD)))
def test_what_is_no_address_is_said_without_showing_it(typed: str) -> None:
    found = read_address(typed)
    assert isinstance(found, Malformed)
    assert BAD[typed] in found.problem
    assert "asha" not in found.problem and "asha" not in found.remedy


@given(st.text(max_size=30))
@settings(max_examples=300, deadline=None)
def test_any_text_is_an_address_or_is_not(text: str) -> None:
    for candidate in (text, f"{text}@harbour.example", f"asha@{text}.example"):
        found = read_address(candidate)
        if isinstance(found, Address):
            assert found.text.isprintable() and " " not in found.text
            assert found.domain.isascii() and found.text.count("@") == 1
            assert read_address(found.text) == found


def test_the_same_address_in_capitals_is_the_same() -> None:
    one, two = read_address("Asha@Harbour.example"), read_address("asha@harbour.EXAMPLE")
    assert isinstance(one, Address) and isinstance(two, Address)
    assert one.key == two.key and one.text != two.text


def test_a_domain_of_letters_that_look_latin_is_noticed() -> None:
    # All Cyrillic: а, с, е, о; beside a domain in Greek that nobody takes for Latin.
    assert looks_like_another("асео.example".encode("idna").decode())
    assert not looks_like_another("παράδειγμα.example".encode("idna").decode())
    assert not looks_like_another("bücher.example".encode("idna").decode())
    assert not looks_like_another("harbour.example")


def test_addresses_are_shown_shortened() -> None:
    assert shortened("asha@harbour.example") == "a…@harbour.example"
    assert shortened("a@harbour.example") == "…@harbour.example"
    assert shortened("asha") == "a…"
    assert shortened("asha@harbour.example\nBcc: x") == "a…"
    said = "5.1.1 <asha@harbour.example>: no such user;\n try kofi@harbour.example."
    assert without_addresses(said) == (
        "5.1.1 <a…@harbour.example>: no such user; try k…@harbour.example."
    )


def test_a_sender_has_a_name_or_none() -> None:
    named, bare = read_sender("Gull class <g@harbour.example>"), read_sender("g@harbour.example")
    assert not isinstance(named, Malformed) and not isinstance(bare, Malformed)
    assert (named.name, bare.name) == ("Gull class", "")
    assert named.address == bare.address
    for wrong in ("Gulls <g@harbour>", "Gulls g@harbour.example", "Gu\nlls <g@harbour.example>"):
        assert isinstance(read_sender(wrong), Malformed)
