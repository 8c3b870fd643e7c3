"""The exact figures of a layout, one measure a module."""

from optimizer.appraisal.appraisal import Appraisal
from optimizer.appraisal.appraise import Given, appraise, priced
from optimizer.appraisal.cook import CookMeasures, cook_loss
from optimizer.appraisal.cost import cost_of
from optimizer.appraisal.cost_sheet import Cost, CostLine, CostRange, share_of
from optimizer.appraisal.destinations import Destination, destinations, destinations_loss
from optimizer.appraisal.enclosure import EnclosureMeasures, RoomBacks
from optimizer.appraisal.finish import FieldArea, FinishPlan, FinishTakeOff, finish_plan, finish_take_off
from optimizer.appraisal.order import OrderMeasures, aligned_share, order_loss, order_measures, unaligned_ft
from optimizer.appraisal.outlooks import NowOrLater, Outlook, outlooks, pays_above
from optimizer.appraisal.party import PartyMeasures, PartyPhase, PartyRoom, party_measures
from optimizer.appraisal.paths import PathMeasures, WayRun
from optimizer.appraisal.paved import paved_share
from optimizer.appraisal.roofs import empty_roofs, empty_roofs_loss
from optimizer.appraisal.seats import people_seated, worth_placed
from optimizer.appraisal.site_measures import GroundMeasures, SiteMeasures, SmokeShare
from optimizer.appraisal.smoke import smoke_loss_units
from optimizer.appraisal.sun import sun_of
from optimizer.appraisal.table import TableWay, main_table
from optimizer.appraisal.take_off import take_off
from optimizer.appraisal.terraces import bare_doors, bare_doors_loss
from optimizer.appraisal.uncertainty import Mover, Uncertainty, uncertainty_of
from optimizer.appraisal.walking import trip_lengths, walking_ft
from optimizer.appraisal.way_in import shut_off_loss
from optimizer.appraisal.work_zone import Landing, WorkZone, work_zone

__all__ = [
    "Appraisal",
    "CookMeasures",
    "Cost",
    "CostLine",
    "CostRange",
    "Destination",
    "EnclosureMeasures",
    "FieldArea",
    "FinishPlan",
    "FinishTakeOff",
    "Given",
    "GroundMeasures",
    "Landing",
    "Mover",
    "NowOrLater",
    "OrderMeasures",
    "Outlook",
    "PartyMeasures",
    "PartyPhase",
    "PartyRoom",
    "PathMeasures",
    "RoomBacks",
    "SiteMeasures",
    "SmokeShare",
    "TableWay",
    "Uncertainty",
    "WayRun",
    "WorkZone",
    "aligned_share",
    "appraise",
    "bare_doors",
    "bare_doors_loss",
    "cook_loss",
    "cost_of",
    "destinations",
    "destinations_loss",
    "empty_roofs",
    "empty_roofs_loss",
    "finish_plan",
    "finish_take_off",
    "main_table",
    "order_loss",
    "order_measures",
    "outlooks",
    "party_measures",
    "paved_share",
    "pays_above",
    "people_seated",
    "priced",
    "share_of",
    "shut_off_loss",
    "smoke_loss_units",
    "sun_of",
    "take_off",
    "trip_lengths",
    "unaligned_ft",
    "uncertainty_of",
    "walking_ft",
    "work_zone",
    "worth_placed",
]
