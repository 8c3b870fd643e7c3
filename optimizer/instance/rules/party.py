"""Rules about people at table and at the party: limits over the choices, wherever the rooms stand."""

from optimizer.brief import RuleId
from optimizer.instance.rules.part import Part, limit

PARTS: dict[RuleId, Part] = {"everyday_table": limit("table"), "party_seats": limit("party")}
