"""Risers between the kitchen, its door and the table are counted by the judge."""

from optimizer.engine.rules.part import JUDGED_ONLY

PART = JUDGED_ONLY
