"""What holds where a piece of work is done: the conditions that hour factors hang on."""

from __future__ import annotations

from estimator.survey.place import Wall
from estimator.survey.records import Survey

OCCUPIED = "occupied-room"
PLASTER = "plaster"
EXTERIOR_INSULATED = "exterior-insulated"


def wall_conditions(survey: Survey, wall_id: str | None) -> tuple[str, ...]:
    """Conditions at one wall, with those of the whole job."""
    wall = next((each for each in survey.walls if each.id == wall_id), None)
    return job_conditions(survey) + (_of_wall(wall) if wall is not None else ())


def job_conditions(survey: Survey) -> tuple[str, ...]:
    """Conditions that hold for the whole job."""
    return (OCCUPIED,) if survey.job.occupied == "yes" else ()


def _of_wall(wall: Wall) -> tuple[str, ...]:
    found = []
    if wall.finish == "plaster":
        found.append(PLASTER)
    if wall.exterior == "yes" and wall.insulated == "yes":
        found.append(EXTERIOR_INSULATED)
    return tuple(found)
