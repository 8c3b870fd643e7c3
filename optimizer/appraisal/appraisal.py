"""The exact figures of one layout."""

from dataclasses import dataclass, field

from optimizer.appraisal.cook import CookMeasures
from optimizer.appraisal.cost_sheet import Cost
from optimizer.appraisal.destinations import Destination
from optimizer.appraisal.enclosure import EnclosureMeasures
from optimizer.appraisal.finish import FinishTakeOff
from optimizer.appraisal.order import OrderMeasures
from optimizer.appraisal.party.measures import PartyMeasures
from optimizer.appraisal.paths import PathMeasures
from optimizer.appraisal.site_measures import SiteMeasures
from optimizer.appraisal.table import TableWay
from optimizer.circulation import Leg, Way
from optimizer.planting import PlantingMeasures


@dataclass(frozen=True, slots=True)
class Appraisal:
    """Everything measured of a layout. Lengths in feet, hours of sun as daily means over the window."""

    cost: Cost
    ways: tuple[Way, ...]
    walking_ft: float
    """Feet walked in one gathering: the sum over trips of their way's length x count."""
    trips_ft: tuple[tuple[str, str, float], ...]
    worth: float
    seats: int
    aligned_share: float
    leftover_share: float
    paved_share: float
    sun_h: tuple[tuple[str, float, float], ...] = ()
    """Room, hours of direct sun in its window, hours missed against its wish."""
    sight_missed: tuple[tuple[str, str], ...] = ()
    """Pairs whose wish to be seen, or not, is not kept."""
    wishes_missed: tuple[str, ...] = ()
    site: SiteMeasures = field(default_factory=SiteMeasures)
    legs: tuple[Leg, ...] = ()
    """Paved stretches that the ways share."""
    paths: PathMeasures = field(default_factory=PathMeasures)
    order: OrderMeasures = field(default_factory=OrderMeasures)
    cook: tuple[CookMeasures, ...] = ()
    """Of each kitchen."""
    planting: PlantingMeasures = field(default_factory=PlantingMeasures)
    finish: FinishTakeOff = field(default_factory=FinishTakeOff)
    party: PartyMeasures = field(default_factory=PartyMeasures)
    enclosure: EnclosureMeasures = field(default_factory=EnclosureMeasures)
    destinations: tuple[Destination, ...] = ()
    overpaved_sqft: float = 0.0
    """Paved ground beyond the share of the open yard that looks paved over."""
    bare_doors: tuple[str, ...] = ()
    """Of the two garden doors of most trips, those at whose landing no terrace lies."""
    empty_roofs: tuple[str, ...] = ()
    """Existing structures under which no room with seats lies."""
    jogs: int = 0
    """Short steps of the paved outline that nothing on the site is the reason for."""
    later_walking_ft: float = 0.0
    """Feet on foot of the trips to what only has its pad and stubs yet: in the score, and walked once it is built."""
    shut_off: tuple[tuple[str, str], ...] = ()
    """Reserves with those of their futures to which surely no way leads for what would drive them in."""
    table: TableWay | None = None
    """How the everyday table lies to the kitchen door."""
