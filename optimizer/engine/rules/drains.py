"""Levels follow from all rooms and ways together: the judge alone says whether water gets away."""

from optimizer.engine.rules.part import JUDGED_ONLY

PART = JUDGED_ONLY
