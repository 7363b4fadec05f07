"""The arithmetic core: a problem in, its exact answer, workings, mistakes and kind out.

Knows nothing of YAML or PDF.
"""
