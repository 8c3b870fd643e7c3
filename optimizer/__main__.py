"""`python -m optimizer`: the same as the command `outdoor-rooms`."""

import sys

from optimizer.cli import main

if __name__ == "__main__":
    sys.exit(main())
