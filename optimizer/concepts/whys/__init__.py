"""Why something is not so: why nothing fits, or why a room is left out, not here, not larger, not in the sun.

Every answer was tried. What cannot be is proven by letting go of one thing at a time; a way out was applied to the
scenario's text, and a layout of it was judged, before it is offered.
"""
