"""Addresses of electronic mail, checked in syntax and shown shortened.

Syntax: RFC 5321 section 4.1.2 without quoted local parts and address literals, which no family
has; letters beyond ASCII before the @ as in RFC 6531, behind it by Python's own IDNA codec.
"""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass

# RFC 5321 sections 4.5.3.1.1 and 4.5.3.1.2, and RFC 1035 section 2.3.4 for a label.
_MOST_LOCAL, _MOST_DOMAIN, _MOST_LABEL = 64, 255, 63
_ATOM = re.compile(r"[A-Za-z0-9!#$%&'*+/=?^_`{|}~-]+", re.ASCII)
_LABEL = re.compile(r"[a-z0-9]([a-z0-9-]*[a-z0-9])?", re.ASCII)
_NAMED = re.compile(r"(?P<name>[^<>@]*)<(?P<address>[^<>]*)>\s*")
_LIKE_AN_ADDRESS = re.compile(r"[^\s<>@,;:\"']+@[^\s<>@,;:\"']+")
_WHOLE = "write it as name@school.example"
# Scripts that hold letters of the same look; no language mixes them within a word.
_ALIKE_SCRIPTS = {"LATIN", "CYRILLIC", "GREEK", "ARMENIAN", "CHEROKEE"}
# Cyrillic and Greek small letters that are drawn like Latin ones (from memory).
_LOOK_LATIN = set("авеһікмпорстухѕјԁԛԝьгαικνορτυχ")


@dataclass(frozen=True, slots=True)
class Address:
    """An address; `domain` is in small ASCII letters, as servers take it ('xn--…')."""

    local: str
    domain: str

    @property
    def text(self) -> str:
        """As it stands in a message."""
        return f"{self.local}@{self.domain}"

    @property
    def key(self) -> str:
        """The same for every way to write the address."""
        return self.text.casefold()

    @property
    def short(self) -> str:
        """'a…@school.example': enough to know it again, too little to write to."""
        return shortened(self.text)

    @property
    def is_ascii(self) -> bool:
        """False where a server must know SMTPUTF8 (RFC 6531)."""
        return self.local.isascii()


@dataclass(frozen=True, slots=True)
class Malformed:
    """Why a text is no address, without the address itself."""

    problem: str
    remedy: str = _WHOLE


@dataclass(frozen=True, slots=True)
class Sender:
    """Whom the messages are from: a name, which may be empty, and an address."""

    name: str
    address: Address


def shortened(text: str) -> str:
    """'a…@school.example'; without a domain that can be shown, the first character alone."""
    local, at, domain = text.strip().rpartition("@")
    if not at or not domain or not domain.isprintable() or " " in domain:
        return f"{text.strip()[:1]}…"
    return f"{local[:1] if len(local) > 1 and local.isprintable() else ''}…@{domain}"


def without_addresses(text: str) -> str:
    """The text with every address in it shortened, on one line."""
    line = " ".join(text.split())
    return _LIKE_AN_ADDRESS.sub(lambda found: shortened(found.group()), line)


def read_address(text: str) -> Address | Malformed:
    """The address, or why it is none."""
    if any(not character.isprintable() for character in text):
        return Malformed("the address holds a line break or another character that is not seen")
    text = unicodedata.normalize("NFC", text.strip())
    if " " in text or "," in text or ";" in text:
        return Malformed("the address holds a space, comma or semicolon", "one address a line")
    local, at, domain = text.rpartition("@")
    if not at or not local or not domain:
        return Malformed("this is no address of electronic mail")
    if "@" in local:
        return Malformed("the address has more than one @")
    return _amiss_before(local) or _amiss_behind(domain) or Address(local, _ascii(domain))


def read_sender(text: str) -> Sender | Malformed:
    """'Tern class <office@school.example>', or an address alone."""
    named = _NAMED.fullmatch(text)
    name, bare = (named["name"].strip(' "'), named["address"]) if named else ("", text)
    if not name.isprintable():
        return Malformed("the sender's name holds a character that is not seen")
    address = read_address(bare)
    return address if isinstance(address, Malformed) else Sender(name, address)


def looks_like_another(domain: str) -> bool:
    """True where a part of the domain looks Latin and is not: a human cannot tell it."""
    return any(
        not label.isascii() and set(label) - set("-0123456789") <= _LOOK_LATIN
        for label in _shown(domain).split(".")
    )


def _amiss_before(local: str) -> Malformed | None:
    if len(local.encode()) > _MOST_LOCAL:
        return Malformed(f"before the @ stand more than {_MOST_LOCAL} characters")
    for atom in local.split("."):
        if not atom:
            return Malformed("before the @ a full stop is at an end or stands twice")
        bare = "".join(each for each in atom if each.isascii())
        letters = all(each.isascii() or unicodedata.category(each)[0] in "LMN" for each in atom)
        if not letters or (bare and not _ATOM.fullmatch(bare)):
            return Malformed("a character stands before the @ that cannot stand there")
    if _mixes_scripts(local):
        return Malformed("letters of two alphabets that look alike are mixed before the @")
    return None


def _amiss_behind(domain: str) -> Malformed | None:
    if len(domain) > _MOST_DOMAIN:
        return Malformed(f"behind the @ stand more than {_MOST_DOMAIN} characters")
    labels = domain.split(".")
    if "" in labels:
        return Malformed("behind the @ a full stop is at an end or stands twice")
    if len(labels) < 2:
        return Malformed("behind the @ the ending of the domain is missing")
    try:
        there = _ascii(domain)
        back = _shown(there)
    except UnicodeError:
        return Malformed("behind the @ stands what cannot be a domain")
    if len(there) > _MOST_DOMAIN or any(len(each) > _MOST_LABEL for each in there.split(".")):
        return Malformed(f"a part behind the @ is longer than {_MOST_LABEL} characters")
    if not all(_LABEL.fullmatch(each) for each in there.split(".")) or labels[-1].isdigit():
        return Malformed("behind the @ stands what cannot be a domain")
    if back != domain.lower() and there != domain.lower():
        # The codec follows IDNA 2003, where ß becomes ss: by IDNA 2008 that is somebody else's.
        return Malformed("the domain may be read in two ways", "write it in the form 'xn--…'")
    if any(_mixes_scripts(label) for label in back.split(".")):
        return Malformed("letters of two alphabets that look alike are mixed in the domain")
    return None


def _ascii(domain: str) -> str:
    """The domain as servers take it. Raises UnicodeError."""
    return domain.encode("idna").decode("ascii").lower()


def _shown(domain: str) -> str:
    """The domain as people read it. Raises UnicodeError."""
    return domain.encode("ascii").decode("idna").lower()


def _mixes_scripts(text: str) -> bool:
    names = (unicodedata.name(each, "").split(" ")[0] for each in text if each.isalpha())
    return len({name for name in names if name in _ALIKE_SCRIPTS}) > 1
