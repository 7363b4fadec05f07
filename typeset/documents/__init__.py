"""Solved lessons and a layout in, one composed document each out."""
