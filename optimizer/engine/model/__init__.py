"""The CP-SAT model: variables, separation, rules and losses by name."""

from optimizer.engine.model.build import LayoutModel, build_model
from optimizer.engine.model.scope import Scope, arrangement_scope, program_scope, whole_scope

__all__ = ["LayoutModel", "Scope", "arrangement_scope", "build_model", "program_scope", "whole_scope"]
