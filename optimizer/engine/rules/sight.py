"""Sight as rules say it: towards a thing as far as the site and the room's own panel go, towards rooms as a look."""

from shapely import Geometry

from optimizer.brief import Relation
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.grid.sight_shares import extent_of, look_in, shares_from_site
from optimizer.engine.grid.variants import Variant
from optimizer.engine.rules.relations import RelationPart, everywhere


def _on_thing(context: Context, relation: Relation, variant: Variant, _thing: Geometry) -> Cells:
    look = look_in(context, relation)
    room = next(room for room in context.rooms if room.name in relation.between)
    screened = room.choices[variant.choice].is_screened
    seen = shares_from_site(context, look, extent_of(variant), screened=screened)
    return everywhere(context) if seen is None else look.keeps(seen)


IN_VIEW = RelationPart("in_view", _on_thing)
OUT_OF_VIEW = RelationPart("out_of_view", _on_thing)
