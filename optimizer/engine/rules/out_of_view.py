"""Of what must be hidden, at most a fifth is seen, or the share that was asked for."""

from optimizer.engine.rules.sight import OUT_OF_VIEW

PART = OUT_OF_VIEW.part()
