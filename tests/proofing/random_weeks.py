"""Random weeks of one lesson, written as YAML: every stage and room, numbers by chance."""

from __future__ import annotations

import random
from pathlib import Path
from string import Template

_SPACES = ["line", "working", "lines", "squares", "bar model", "box", "none"]
_WEEK = "week: The gale\nclass: Tern class\nlayout: standard\nlessons: [tuesday]\n"
_LESSON = Template("""\
lesson: Kites in the gale
day: Tuesday
sides: 2
aim: I can scale two amounts.
stages:
  - spot the mistake:
      pupil: Femi
      mistake: difference taken as one part
      problem:
        structure: ratio
        parts: {kites: $large, ropes: $small}
        known: {difference: $difference}
        find: kites
        story: >-
          For every {kites} kites there are {ropes} ropes. There are {difference} more kites
          than ropes. How many kites are there?
  - sort:
      problems:
        - structure: proportion
          together: {length: $first m, mass: $second kg}
          wanted: {length: $scaled m}
          find: mass
          story: >-
            A rope {length} long weighs {mass}. How much does one {wanted} long weigh?
        - structure: constant difference
          together: {Petrel: $first crossings, Gannet: $second crossings}
          wanted: {Petrel: $later crossings}
          find: Gannet
          story: >-
            When Petrel has made {Petrel}, Gannet has made {Gannet}. They are equally fast. How
            many has Gannet made when Petrel has made {wanted}?
  - practise:
      - set: A
        problems:
$problems
  - extension:
      title: Your own gale
      story: Make up a story about a gale. Can Nell solve it?
      lines: $lines
""")
_PROBLEM = Template("""\
          - structure: ratio
            parts: {red: $large, white: $small}
            known: {whole: $whole$unit}
            find: $find
            space: $space
            model: $model
            story: >-
              Mix {red} parts of red and {white} parts of white, {whole} in all. How much of what
              was asked for is that?""")


def random_week(folder: Path, seed: int) -> None:
    """A week.yaml and a tuesday.yaml, the same for the same seed."""
    rng = random.Random(seed)
    small = rng.randrange(2, 6)
    large = small + rng.randrange(2, 4)
    first, second = rng.randrange(2, 9), rng.randrange(10, 20)
    lesson = _LESSON.substitute(
        small=small,
        large=large,
        difference=(large - small) * rng.randrange(2, 14),
        first=first,
        second=second,
        scaled=first * rng.randrange(2, 6),
        later=second + rng.randrange(2, 6),
        problems="\n".join(_problem(rng) for _ in range(rng.randrange(3, 7))),
        lines=rng.randrange(2, 7),
    )
    (folder / "week.yaml").write_text(_WEEK, encoding="utf-8")
    (folder / "tuesday.yaml").write_text(lesson, encoding="utf-8")


def _problem(rng: random.Random) -> str:
    small, large = sorted(rng.sample(range(1, 8), 2))
    return _PROBLEM.substitute(
        small=small,
        large=large,
        whole=(small + large) * rng.randrange(2, 400),
        unit=rng.choice(["", " litres", " kg"]),
        find=rng.choice(["red", "white", "[red, white]"]),
        space=rng.choice(_SPACES),
        model=rng.choice(["yes", "no"]),
    )
