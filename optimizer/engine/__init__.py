"""The engine: the problem in whole numbers, its rules and terms, and what searches and proves it."""
