"""Plotly: data in, figure out."""
