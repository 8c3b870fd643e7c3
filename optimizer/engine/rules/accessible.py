"""The way asked for has no steps: levels and ways are the judge's; no place is ruled out for them alone."""

from optimizer.engine.rules.part import JUDGED_ONLY

PART = JUDGED_ONLY
