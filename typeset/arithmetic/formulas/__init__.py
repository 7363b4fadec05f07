"""Formulas over named quantities, as an author types them in `steps`."""
