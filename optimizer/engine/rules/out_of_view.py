"""Of what must be out of view at most a fifth is seen by who looks, or the share that was asked for."""

from optimizer.engine.rules.sight import OUT_OF_VIEW

PART = OUT_OF_VIEW.part()
