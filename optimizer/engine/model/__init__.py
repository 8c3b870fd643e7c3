"""The CP-SAT model: variables, separation, rules and losses by name."""

from optimizer.engine.model.build import LayoutModel, build_model
from optimizer.engine.model.dense import is_dense
from optimizer.engine.model.scope import Scope, arrangement_scope, program_scope, whole_scope

__all__ = ["LayoutModel", "Scope", "arrangement_scope", "build_model", "is_dense", "program_scope", "whole_scope"]
