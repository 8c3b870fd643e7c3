"""Types of the solver as our modules name them; nothing here imports it, so that rules can be read without it."""

from typing import Any

Linear = Any
"""A linear expression or a whole number; the solver's own union is one that its operators do not accept."""
Literal = Any
"""A variable that is true or false, or its negation."""
Model = Any
"""The solver's model."""
