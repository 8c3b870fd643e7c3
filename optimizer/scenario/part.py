"""What every mapping of a scenario file has in common."""

from pydantic import BaseModel, ConfigDict


class Part(BaseModel):
    """A mapping of the file: frozen, without keys of its own invention, types as written."""

    model_config = ConfigDict(extra="forbid", frozen=True, strict=True)
