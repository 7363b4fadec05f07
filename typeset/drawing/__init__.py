"""Figures described as data in, lines, boxes and labels in points out."""
