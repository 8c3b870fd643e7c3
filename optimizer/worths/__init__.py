"""What each wished room is worth, asked in pairs: what answers ask for, where they contradict each other, what
follows.
"""

from optimizer.worths.answers import HOWS, Answer, How, without
from optimizer.worths.asking import decided, most_useful
from optimizer.worths.contradiction import Contradiction, contradiction
from optimizer.worths.fit import fitted
from optimizer.worths.things import Thing, things_of

__all__ = [
    "HOWS",
    "Answer",
    "Contradiction",
    "How",
    "Thing",
    "contradiction",
    "decided",
    "fitted",
    "most_useful",
    "things_of",
    "without",
]
