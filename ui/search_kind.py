"""What the page can have searched for: the names of the commands that it starts."""

from typing import Literal

SearchKind = Literal["options", "budgets", "why", "improve"]
