"""When and where the benchmark ran: date, versions, cores."""

from __future__ import annotations

import os
import platform
import re
from datetime import date
from importlib.metadata import PackageNotFoundError, version
from pathlib import Path

_PACKAGES = (
    "reportlab",
    "rl_accel",
    "pdfplumber",
    "pdfminer.six",
    "pypdf",
    "typst",
    "fpdf2",
    "weasyprint",
)


def about_the_machine() -> str:
    """A paragraph in Markdown."""
    packages = ", ".join(f"{name} {_version(name)}" for name in _PACKAGES)
    today = date.today()
    return (
        f"Measured on {today.day} {today:%B %Y}: {_processor()}, {os.cpu_count()} cores, "
        f"{platform.system()}; {platform.python_implementation()} {platform.python_version()}; "
        f"{packages}.\n"
    )


def _version(package: str) -> str:
    try:
        return version(package)
    except PackageNotFoundError:
        return "(not installed)"


def _processor() -> str:
    """Its name where the system tells it (Linux), else its kind."""
    try:
        told = Path("/proc/cpuinfo").read_text()
    except OSError:
        told = ""
    found = re.search(r"^model name\s*:\s*(.+)$", told, re.MULTILINE)
    return found[1] if found else platform.machine()
