"""One file in a fresh process; not called by hand.

    python -m tests.benchmarks.one_file material COUNT SEED OUT
    python -m tests.benchmarks.one_file ENGINE MATERIAL OUT

The first writes what the engines are given, so that what our own engine remembers of making it
dies with the process; the second reads it and lets one engine make its file.
"""

from __future__ import annotations

import pickle
import sys
from pathlib import Path

from tests.benchmarks.engines.table import ENGINES
from tests.benchmarks.sheets import Material


def write_material(count: int, seed: int, file: Path) -> None:
    """The material of so many sheets."""
    from tests.benchmarks.engines.ours import material_of

    file.write_bytes(pickle.dumps(material_of(count, seed)))


def read_material(file: Path) -> Material:
    """What was written so; a file of our own."""
    material: Material = pickle.loads(file.read_bytes())
    return material


def main(arguments: list[str]) -> None:
    """Does as the arguments say."""
    if arguments[0] == "material":
        write_material(int(arguments[1]), int(arguments[2]), Path(arguments[3]))
        return
    engine = next(each for each in ENGINES if each.name == arguments[0])
    Path(arguments[2]).write_bytes(engine.make()(read_material(Path(arguments[1]))))


if __name__ == "__main__":
    main(sys.argv[1:])
