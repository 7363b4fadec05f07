"""One make in a fresh process, timed from after the imports; not called by hand.

    python -m tests.benchmarks.one_make '{"folder": …, "to": …}'

Prints a line of JSON, read by `make_in_process`.
"""

from __future__ import annotations

import importlib
import json
import pkgutil
import sys
from dataclasses import asdict, dataclass
from pathlib import Path
from typing import Any

from tests.benchmarks.processes import memory_now_mib, watch_python
from tests.benchmarks.timing import Took, timed

# What a make uses, so that nothing is imported while the clock runs.
_PACKAGES = ("typeset", "reportlab.pdfgen.canvas", "pypdf", "pdfplumber")
_NOT_NEEDED = ("typeset.posting", "typeset.verbs", "typeset.__main__", "typeset.command")


@dataclass(frozen=True, slots=True)
class OneMake:
    """What a make took. Memory is that of the largest of its processes above its imports."""

    took: Took
    pages: int
    memory_mib: float

    def a_page(self, seconds: float) -> float:
        """Seconds a page."""
        return seconds / self.pages


def make_in_process(
    folder: Path, to: Path, without_accelerator: bool = False, makes: int = 1, **order: object
) -> OneMake:
    """Makes the folder in a fresh process; `order` are further fields of `making.Order`, files
    as texts. Of several makes, each into another folder, the last is timed. Raises RuntimeError
    where it fails."""
    told: dict[str, object] = {"folder": str(folder), "to": str(to), "order": order}
    told |= {"without": without_accelerator, "makes": makes}
    said, peaks = watch_python(["-m", "tests.benchmarks.one_make", json.dumps(told)])
    result = json.loads(said)
    above = max(peaks.values(), default=0.0) - result["imports_mib"]
    return OneMake(Took(result["wall_s"], result["cpu_s"]), result["pages"], max(0.0, above))


def fresh_order(**order: Any) -> Any:
    """An order that makes everything anew on all cores, keeping nothing of earlier makes."""
    from typeset.press.making import Order
    from typeset.press.workers import cores

    return Order(**{"workers": cores(), "kept": None, **order})


def import_all() -> None:
    """Everything that a make can use."""
    for name in _PACKAGES:
        importlib.import_module(name)
    typeset = sys.modules["typeset"]
    for each in pkgutil.walk_packages(typeset.__path__, "typeset."):
        if not each.name.startswith(_NOT_NEEDED):
            importlib.import_module(each.name)


def main(told: dict[str, Any]) -> None:
    """Makes what is told, and prints what it took."""
    if told["without"]:
        # reportlab then takes its own Python instead of the accelerator's C.
        sys.modules["_rl_accel"] = None  # type: ignore[assignment]
    import_all()
    order = told["order"]
    if "class_list" in order:
        order["class_list"] = Path(order["class_list"])
    imports = memory_now_mib()
    for number in range(told["makes"], 0, -1):
        # The last goes to the folder itself.
        to = Path(told["to"] + (f"-{number}" if number > 1 else ""))
        took, pages = _make(fresh_order(folder=Path(told["folder"]), to=to, **order))
    result = {**asdict(took), "pages": pages, "imports_mib": imports}
    sys.stdout.write(json.dumps(result) + "\n")


def _make(order: Any) -> tuple[Took, int]:
    """One make: what it took, and how many pages it made."""
    from typeset.press.making import make_week

    results: list[Any] = []
    took = timed(lambda: results.extend(make_week(order)))
    findings = [finding for result in results for finding in result.findings]
    if findings:
        raise RuntimeError(f"{len(findings)} findings, the first: {findings[0]}")
    return took, sum(result.made.sides for result in results)


if __name__ == "__main__":
    main(json.loads(sys.argv[1]))
