"""The party: a seat or ground for everybody, where people are through the evening, and where their ways pinch."""

from optimizer.appraisal.party.evening import party_measures
from optimizer.appraisal.party.measures import Grade, PartyMeasures, PartyPhase, PartyRoom, Pinch, Remedy

__all__ = ["Grade", "PartyMeasures", "PartyPhase", "PartyRoom", "Pinch", "Remedy", "party_measures"]
