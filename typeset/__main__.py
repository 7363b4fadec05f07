"""`python -m typeset` is the command `typeset`."""

import sys

from typeset.command import main

if __name__ == "__main__":
    sys.exit(main())
