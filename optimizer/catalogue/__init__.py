"""The catalogue: kinds of rooms sized from people and equipment, their quantities, and what those cost."""

from optimizer.catalogue.affordable import Affordable, affordable
from optimizer.catalogue.bill import (
    SITE,
    Charge,
    charge,
    fixed_charges,
    fixed_price,
    room_charges,
    room_price,
    to_cents,
)
from optimizer.catalogue.clearances import clearance_ft, least_table_length_ft, table_length_ft
from optimizer.catalogue.counter import counter_middle_ft, front_run, side_run
from optimizer.catalogue.distances import (
    Rings,
    UsualDistance,
    distance_ft,
    fire_clear_ft,
    keep_out_ft,
    line_clear_ft,
    root_rings,
    usual_distance,
    usual_rings,
)
from optimizer.catalogue.finish import (
    ChosenFinish,
    Palette,
    border_width_ft,
    cuts_share,
    finished_book,
    material_facts,
    palette_of,
)
from optimizer.catalogue.ideas import IDEAS, IdeaName, IdeaRules, idea_rules
from optimizer.catalogue.kinds import FOCAL_KIND, kind_rules
from optimizer.catalogue.loss_rates import Rates, rates
from optimizer.catalogue.party import (
    Asked,
    Holds,
    asked_by,
    held,
    holds,
    most_held,
    party_is_held,
    standing_each_sqft,
    table_is_held,
)
from optimizer.catalogue.party_evening import Phase, best_grade_flow, party_phases, passing_ft, walkway_grade
from optimizer.catalogue.paving import PavingMaterials, paving_materials
from optimizer.catalogue.price_book import PriceBook, UnitPrice
from optimizer.catalogue.price_books import book_for, demo_price_book
from optimizer.catalogue.rooms import Cover, Item, KindRules, LocalSide, Quantity, SizedChoice, SizedRoom
from optimizer.catalogue.sizing import COVERED, SCREENED, is_hot, most_stools, sized_room, sized_rooms, too_long
from optimizer.catalogue.worth import worth_rate

__all__ = [
    "COVERED",
    "FOCAL_KIND",
    "IDEAS",
    "SCREENED",
    "SITE",
    "Affordable",
    "Asked",
    "Charge",
    "ChosenFinish",
    "Cover",
    "Holds",
    "IdeaName",
    "IdeaRules",
    "Item",
    "KindRules",
    "LocalSide",
    "Palette",
    "PavingMaterials",
    "Phase",
    "PriceBook",
    "Quantity",
    "Rates",
    "Rings",
    "SizedChoice",
    "SizedRoom",
    "UnitPrice",
    "UsualDistance",
    "affordable",
    "asked_by",
    "best_grade_flow",
    "book_for",
    "border_width_ft",
    "charge",
    "clearance_ft",
    "counter_middle_ft",
    "cuts_share",
    "demo_price_book",
    "distance_ft",
    "finished_book",
    "fire_clear_ft",
    "fixed_charges",
    "fixed_price",
    "front_run",
    "held",
    "holds",
    "idea_rules",
    "is_hot",
    "keep_out_ft",
    "kind_rules",
    "least_table_length_ft",
    "line_clear_ft",
    "material_facts",
    "most_held",
    "most_stools",
    "palette_of",
    "party_is_held",
    "party_phases",
    "passing_ft",
    "paving_materials",
    "rates",
    "room_charges",
    "room_price",
    "root_rings",
    "side_run",
    "sized_room",
    "sized_rooms",
    "standing_each_sqft",
    "table_is_held",
    "table_length_ft",
    "to_cents",
    "too_long",
    "usual_distance",
    "usual_rings",
    "walkway_grade",
    "worth_rate",
]
