"""One input file, read and validated: site, brief and the text it came from."""

from dataclasses import dataclass, replace
from typing import Literal

from optimizer.brief import Brief, Sketch
from optimizer.catalogue import PriceBook, book_for
from optimizer.site import Site


@dataclass(frozen=True, slots=True)
class Scenario:
    """A whole scenario; lengths in feet whatever the file's unit, `text` as read, `digest` its SHA-256."""

    name: str
    units: Literal["ft", "m"]
    currency: str
    site: Site
    brief: Brief
    text: str
    digest: str
    sketches: tuple[Sketch, ...] = ()
    prices: PriceBook | None = None
    """Price book of one's own; None for the demonstration prices in the currency."""

    @property
    def book(self) -> PriceBook:
        """Price book that everything is priced by, before finish and allowances."""
        return book_for(self.currency) if self.prices is None else self.prices

    def at_level(self, name: str | None) -> "Scenario":
        """The scenario finished in another of the levels that its brief offers; as it is for None."""
        return self if name is None else replace(self, brief=self.brief.at_level(name))

    @property
    def unit_ft(self) -> float:
        """One of the file's units [ft]."""
        return 1.0 if self.units == "ft" else 1.0 / 0.3048

    @property
    def grid_step_ft(self) -> float:
        """One grid step [ft]."""
        return self.brief.options.grid_step * self.unit_ft
