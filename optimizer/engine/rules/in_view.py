"""Of what must be in view, at least half is seen, or the share that was asked for."""

from optimizer.engine.rules.sight import IN_VIEW

PART = IN_VIEW.part()
