"""A mower has a clear way to every lawn: the judge alone says it."""

from optimizer.engine.rules.part import JUDGED_ONLY

PART = JUDGED_ONLY
