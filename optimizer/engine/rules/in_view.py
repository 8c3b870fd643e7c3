"""Of what must be in view at least half is seen by who looks, or the share that was asked for."""

from optimizer.engine.rules.sight import IN_VIEW

PART = IN_VIEW.part()
