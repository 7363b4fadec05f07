"""Numbers that vary: ranges that an author types, conditions on them, recaps and versions.

Everything works on the tree of a problem's fields before its family reads it, so that every
family can vary, also one that is written tomorrow.
"""
