"""What a phase costs, and what stands in its way, depends on all rooms and ways: the judge alone says so."""

from optimizer.engine.rules.part import JUDGED_ONLY

PART = JUDGED_ONLY
