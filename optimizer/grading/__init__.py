"""Levels of the rooms on the real ground, and what they ask for: steps, walls, earth, falls."""
