"""The CP-SAT model: variables, separation, distances, objective."""

from optimizer.model.build import LayoutModel, build_model
from optimizer.model.scope import Scope, arrangement_scope, whole_scope

__all__ = ["LayoutModel", "Scope", "arrangement_scope", "build_model", "whole_scope"]
