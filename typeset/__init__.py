"""A week of primary maths lessons: solved, set as pages, and read back as proof."""

__version__ = "0.1.0"
