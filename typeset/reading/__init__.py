"""YAML files in, checked and immutable content with positions out. Knows nothing of PDF."""
