"""Exact amounts with their units, how they are read and how they are written.

The vocabulary that every step shares: nothing here knows of files, lessons or pages.
"""
