"""The type of sums of variables."""

from typing import Any

Linear = Any
"""A linear expression or a whole number; the solver's own union is one that its operators do not accept."""
