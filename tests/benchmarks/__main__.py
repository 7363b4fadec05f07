"""How fast: our engine and its proof against floors, other engines, and what was promised.

    python -m tests.benchmarks                    everything but documents of 6,000 pages
    python -m tests.benchmarks --only drawing     one section; may be given several times
    python -m tests.benchmarks --quick            one round of little, to see whether it works
    python -m tests.benchmarks --long             6,000 pages, too
    python -m tests.benchmarks --write            puts the report into DEVELOPERS.md

Run it on a machine that does nothing else. `pip install '.[bench]'` brings the other engines;
those that are not there are left out. Never part of the tests.
"""

from __future__ import annotations

import argparse
import compileall
import sys
import time
from collections.abc import Callable, Iterator, Sequence
from importlib import import_module

from tests.benchmarks.developers_page import write_report
from tests.benchmarks.machine import about_the_machine
from tests.benchmarks.processes import ROOT
from tests.benchmarks.report import Section, Settings
from tests.benchmarks.summary import summary
from tests.benchmarks.timing import Clock

# A name, and the module here that has the function which makes the section. What each needs is
# imported only when it runs.
_SECTIONS = {
    "drawing": "drawing",
    "week_pages": "week_pages",
    "proofing": "proofing",
    "edits": "edits",
    "named": "named",
    "growth": "growth",
    "start_up": "start_up",
    "solving": "solved_problems",
    "sizes": "sizes",
    "accelerator": "accelerator",
}


def main(arguments: Sequence[str] | None = None) -> None:
    """Runs what is asked for, and prints the report."""
    options = _parser().parse_args(arguments)
    settings = Settings(Clock(options.clock == "cpu"), options.quick, options.long)
    # What a fresh process imports is compiled already, as it is in an installed package.
    for folder in ("typeset", "tests/benchmarks"):
        compileall.compile_dir(ROOT / folder, quiet=1)
    sections: list[Section] = []
    for name in options.only or _SECTIONS:
        start = time.perf_counter()
        sections.append(_section(name, settings))
        sys.stderr.write(f"{name}: {time.perf_counter() - start:.0f} s\n")
    if any(section.bounds for section in sections):
        sections.insert(0, summary(sections))
    report = "\n".join(_told(sections, settings))
    sys.stdout.write(report)
    if options.write:
        write_report(ROOT / "DEVELOPERS.md", report)


def _section(name: str, settings: Settings) -> Section:
    make: Callable[[Settings], Section] = getattr(
        import_module(f"tests.benchmarks.{_SECTIONS[name]}"), name
    )
    return make(settings)


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="python -m tests.benchmarks", description="How fast typeset is, as ratios."
    )
    parser.add_argument(
        "--only",
        action="append",
        choices=_SECTIONS,
        metavar="SECTION",
        help=f"only this section, one of {', '.join(_SECTIONS)}; may be given several times",
    )
    parser.add_argument("--quick", action="store_true", help="one round of little")
    parser.add_argument("--long", action="store_true", help="documents of 6,000 pages, too")
    parser.add_argument(
        "--clock",
        choices=("wall", "cpu"),
        default="wall",
        help="what is compared: what one waits for (the usual), or the time of all cores",
    )
    parser.add_argument(
        "--write", action="store_true", help="put the report into DEVELOPERS.md, between its marks"
    )
    return parser


def _told(sections: Sequence[Section], settings: Settings) -> Iterator[str]:
    yield about_the_machine()
    if settings.is_quick:
        yield "A quick run, of one round and little: it works, but these figures say nothing.\n"
    if settings.clock.is_cpu:
        yield "All times are those of all cores together.\n"
    for section in sections:
        yield f"### {section.title}\n\n{section.text}"


if __name__ == "__main__":
    main()
