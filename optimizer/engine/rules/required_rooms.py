"""Every required room is placed."""

from optimizer.engine.rules.part import Part

PART = Part(whole=True)
