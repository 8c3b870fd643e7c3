"""The page: shows what the command writes, and starts the same command that a person would type."""
