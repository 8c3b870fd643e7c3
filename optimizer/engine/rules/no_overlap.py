"""No two rooms overlap."""

from optimizer.engine.pairs import Contact
from optimizer.engine.rules.part import Part

PART = Part(contact=lambda _context, _first, _second: Contact(may_overlap=False))
