"""The nearest layout to a sketch that keeps the rules.

Nothing is imported here, so that the command can name the result's types without the engine behind them.
"""
