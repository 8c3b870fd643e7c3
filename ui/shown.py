"""A concept in hand: of which search, in which yard, and by which name the page knows it."""

from dataclasses import dataclass
from typing import Final

from optimizer.concepts import Option
from optimizer.errors import InputError
from optimizer.results import Result
from optimizer.scenario import Scenario
from ui.searches import Search, Searching

_OF: Final = "."


@dataclass(frozen=True, slots=True)
class Shown:
    """A concept of a search's result."""

    search: Search
    result: Result
    option: Option

    @property
    def name(self) -> str:
        """What an address calls it."""
        return f"{self.search.id}{_OF}{self.option.id}"

    @property
    def key(self) -> str:
        """What is remembered of it is known by this; the best so far of a running search changes under its name."""
        return f"{self.name}/{hash(self.option.layout):x}"

    @property
    def scenario(self) -> Scenario:
        """The yard and brief that it was found for."""
        return self.result.scenario


def shown_by(name: str | None, searching: Searching) -> Shown | None:
    """Return the concept that an address names, or None where it is not there any more."""
    search_id, _, option_id = (name or "").partition(_OF)
    search = searching.get(search_id)
    try:
        result = search.result() if search is not None else None
    except InputError:
        return None
    option = result.option(option_id) if result is not None else None
    return None if search is None or result is None or option is None else Shown(search, result, option)
