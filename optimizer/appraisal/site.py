"""Measures of what the site's facts make of a layout."""

from collections.abc import Sequence
from typing import Final

from optimizer.appraisal.arrival import arrival_length_ft, arrival_of, arrival_view, risers_seen_share
from optimizer.appraisal.axis import axis_hits, focal_point
from optimizer.appraisal.groundwork import ground_measures
from optimizer.appraisal.site_measures import SiteMeasures
from optimizer.appraisal.smoke import smoke_shares
from optimizer.derived import Derived
from optimizer.fields import ground_at_ft
from optimizer.grading import Grading
from optimizer.layout import Placed
from optimizer.scenario import Scenario
from optimizer.site import Entrance

SeenShares = Sequence[tuple[str, str, str, float]]
LEAST_SMOKE: Final = 0.005
"""Shares of the season below this are left out of the record."""


def site_measures(derived: Derived, *, seen: SeenShares = ()) -> SiteMeasures:
    """Levels, smoke, arrival, axes and where ways meet; shares of sight as the caller gives them."""
    scenario, placed, grading, laid = derived.scenario, derived.placed, derived.grading, derived.laid
    arrival = arrival_of(scenario.site, scenario.brief.trips)
    return SiteMeasures(
        ground=ground_measures(grading),
        smoke=tuple(
            entry._replace(share=round(entry.share, 4))
            for entry in smoke_shares(scenario, placed)
            if entry.share >= LEAST_SMOKE
        ),
        arrival_ft=None if arrival is None else arrival_length_ft(laid.network, arrival, placed),
        sight=tuple(seen),
        risers_seen_share=None if arrival is None else _risers_seen(scenario, placed, grading, arrival),
        axes=tuple((hit.opening, hit.meets) for hit in axis_hits(scenario, placed)),
        focal_point=focal_point(laid.ways, placed.layout),
    )


def _risers_seen(scenario: Scenario, placed: Placed, grading: Grading, arrival: Entrance) -> float | None:
    """Share of the risers that a guest who stands just inside the entrance sees."""
    site, view = scenario.site, arrival_view(scenario.site, placed, arrival)
    flights = [(f.at, ground_at_ft(site, f.at), f.risers) for f in grading.built_flights]
    return risers_seen_share(flights, view.sees)
