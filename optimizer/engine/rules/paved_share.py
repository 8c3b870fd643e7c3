"""Paved rooms cover at most the share of the open yard that is allowed; the judge counts paths too."""

from collections.abc import Iterator

import shapely

from optimizer.catalogue import PriceBook
from optimizer.engine.amounts import Amount
from optimizer.engine.grid.context import Context
from optimizer.engine.rules.part import Part, Variants
from optimizer.fields.existing_paving import kept_paving
from optimizer.layout.shapes import DRAWN_SHARE

_SLACK_SQFT = 0.05


def _cells_paved(context: Context, variants: Variants, _book: PriceBook) -> Iterator[Amount]:
    share = context.site.paved_share_limit
    if share is None:
        return
    kept_sqft = float(kept_paving(context.site).area)  # no room stands on it: it comes on top of the rooms
    yard = context.boundary.difference(shapely.union_all(context.buildings))
    uses = tuple(
        tuple(int(variant.area * DRAWN_SHARE) if room.rules.paved else 0 for variant in of_room)
        for room, of_room in zip(context.rooms, variants, strict=True)
    )
    yield Amount(
        "paved_share", uses, most=int((share * yard.area - kept_sqft + _SLACK_SQFT) / context.lattice.step_ft**2)
    )


PART = Part(amounts=_cells_paved)
