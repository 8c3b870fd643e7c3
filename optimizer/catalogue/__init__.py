"""The catalogue: kinds of rooms sized from people and equipment, their quantities, and what those cost."""

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
from optimizer.catalogue.kinds import FOCAL_KIND, kind_rules
from optimizer.catalogue.loss_rates import Rates, rates
from optimizer.catalogue.paving import PavingMaterials, paving_materials
from optimizer.catalogue.price_book import PriceBook, UnitPrice
from optimizer.catalogue.price_books import book_for, demo_price_book
from optimizer.catalogue.rooms import Cover, Item, KindRules, LocalSide, Quantity, SizedChoice, SizedRoom
from optimizer.catalogue.sizing import sized_room, sized_rooms

__all__ = [
    "FOCAL_KIND",
    "SITE",
    "Charge",
    "Cover",
    "Item",
    "KindRules",
    "LocalSide",
    "PavingMaterials",
    "PriceBook",
    "Quantity",
    "Rates",
    "Rings",
    "SizedChoice",
    "SizedRoom",
    "UnitPrice",
    "UsualDistance",
    "book_for",
    "charge",
    "clearance_ft",
    "demo_price_book",
    "distance_ft",
    "fire_clear_ft",
    "fixed_charges",
    "fixed_price",
    "keep_out_ft",
    "kind_rules",
    "least_table_length_ft",
    "line_clear_ft",
    "paving_materials",
    "rates",
    "room_charges",
    "room_price",
    "root_rings",
    "sized_room",
    "sized_rooms",
    "table_length_ft",
    "to_cents",
    "usual_distance",
    "usual_rings",
]
