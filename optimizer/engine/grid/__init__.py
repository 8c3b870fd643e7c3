"""The posed yard on its grid: cells, windows, variants, and the tables that several rules and terms read."""
