"""What is wanted: rooms, relations, trips, guests, weights and money; and the sentence of every hard rule."""

from optimizer.brief.budget import Allowances, Budget, Later
from optimizer.brief.finish import WORTH_DIGITS, Finish, FinishLevel, FinishPartName, FinishWish, Material, Pattern
from optimizer.brief.holds import Hold, Side
from optimizer.brief.rules import RULES, Rule, RuleId
from optimizer.brief.sketches import Sketch, SketchedRoom
from optimizer.brief.wishes import (
    LATER_PHASE,
    Brief,
    Choice,
    Equipment,
    Guests,
    Interim,
    OptionsWanted,
    Relation,
    RelationKind,
    RoomKind,
    RoomShape,
    RoomWish,
    SunWish,
    Trip,
    Weights,
)

__all__ = [
    "LATER_PHASE",
    "RULES",
    "WORTH_DIGITS",
    "Allowances",
    "Brief",
    "Budget",
    "Choice",
    "Equipment",
    "Finish",
    "FinishLevel",
    "FinishPartName",
    "FinishWish",
    "Guests",
    "Hold",
    "Interim",
    "Later",
    "Material",
    "OptionsWanted",
    "Pattern",
    "Relation",
    "RelationKind",
    "RoomKind",
    "RoomShape",
    "RoomWish",
    "Rule",
    "RuleId",
    "Side",
    "Sketch",
    "SketchedRoom",
    "SunWish",
    "Trip",
    "Weights",
]
