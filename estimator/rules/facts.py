"""What a rule may look at, and how it says what it found."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from fractions import Fraction
from functools import cache, cached_property
from typing import get_args

from estimator.route.records import RunPath
from estimator.rules.records import Finding, Remedy, Verdict
from estimator.saying import word
from estimator.settings import Practice
from estimator.survey.electrical import Box
from estimator.survey.place import Room, RoomUse, Wall
from estimator.survey.records import Survey
from estimator.tables.facts import Row, editions, rows, sources
from estimator.tables.limits import Limit, cited, confidence_words, limit
from estimator.takeoff.amounts import Units, units_of
from estimator.takeoff.records import Takeoff

UNITED_STATES = "US"
CANADA = "CA"


@cache
def rule_rows() -> Mapping[str, Row]:
    """Every rule by its id: title, group, country, level, source."""
    return {row["rule"]: row for row in rows("rules")}


@dataclass(frozen=True)
class Facts:
    """Everything known of one route of a job."""

    survey: Survey
    paths: tuple[RunPath, ...]
    takeoff: Takeoff
    practice: Practice
    # Likely hours of one unit of a task, by task key; empty where no labor book is at hand.
    hours_each: Mapping[str, Decimal] = field(default_factory=dict)

    @cached_property
    def edition(self) -> str | None:
        """The electrical edition in force; None where none on file is the job's country's."""
        return self._of_country(self.survey.job.edition)

    @cached_property
    def building_edition(self) -> str | None:
        """The building edition in force; None where none on file is the job's country's."""
        return self._of_country(self.survey.job.building_edition)

    def _of_country(self, edition: str) -> str | None:
        row = editions().get(edition)
        if row is None or row["country"] != self.survey.job.country:
            return None
        return edition

    @cached_property
    def units(self) -> Units:
        """Units that sums are said in."""
        return units_of(self.survey.job.units)

    @cached_property
    def boxes(self) -> Mapping[str, Box]:
        """Boxes that a run of this route touches, by id, in the survey's order."""
        runs = self.survey.runs
        touched = {name for run in runs for name in (run.from_box, run.to_box)}
        return {box.id: box for box in self.survey.boxes if box.id in touched}

    @cached_property
    def new_boxes(self) -> tuple[Box, ...]:
        """Boxes that this job adds."""
        return tuple(box for box in self.boxes.values() if not box.existing)

    @cached_property
    def sources(self) -> tuple[Box, ...]:
        """Existing boxes that feed a run."""
        feeding = {run.from_box for run in self.survey.runs}
        return tuple(box for box in self.boxes.values() if box.existing and box.id in feeding)

    @cached_property
    def walls(self) -> Mapping[str, Wall]:
        """Walls by id."""
        return {wall.id: wall for wall in self.survey.walls}

    def room_of(self, box: Box) -> str:
        """The room a box opens to."""
        if box.room is not None:
            return box.room
        wall = self.walls.get(box.wall or "")
        return wall.room if wall is not None else "room"

    def use_of(self, room_id: str) -> RoomUse:
        """What a room is used for: as listed, else by its name, else unknown."""
        room = self.room(room_id)
        if room is not None and room.use != "unknown":
            return room.use
        return next((use for use in get_args(RoomUse) if use == room_id.lower()), "unknown")

    def room(self, room_id: str) -> Room | None:
        """The room as listed in the survey; None where it is not."""
        return next((room for room in self.survey.rooms if room.id == room_id), None)

    def is_in_force(self, rule: str) -> bool:
        """True for a rule that no local change has turned off or made a note."""
        return not any(
            each.rule == rule and each.change != "figure" for each in self.survey.amendments
        )

    def electrical(self, figure: str) -> Limit:
        """A figure of the electrical edition in force, with the job's amendment of it."""
        return self._amended(limit(figure, self.edition or ""))

    def building(self, figure: str) -> Limit:
        """A figure of the building edition in force, with the job's amendment of it."""
        return self._amended(limit(figure, self.building_edition or ""))

    def _amended(self, found: Limit) -> Limit:
        for each in self.survey.amendments:
            if each.change == "figure" and each.figure == found.figure:
                value = Fraction(each.value)
                return Limit(
                    found.figure, value, found.unit, "local", f"local: {each.reason}", "seen"
                )
        return found

    def cite(self, found: Limit) -> str:
        """The citation of a figure: edition and place, or its source by name."""
        if found.source == "local":
            return found.where
        for edition in (self.edition, self.building_edition):
            if edition is not None and editions()[edition]["family"] == found.source.split("-")[0]:
                return cited(edition, found.where, found.confidence)
        title = sources()[found.source]["title"]
        return f"{title}, {found.where}{confidence_words(found.confidence)}"

    def law(self, where: str, confidence: str = "") -> str:
        """A citation of the electrical edition in force, for a rule without a figure."""
        return cited(self.edition or "", where, confidence)

    def building_law(self, where: str, confidence: str = "") -> str:
        """A citation of the building edition in force, for a rule without a figure."""
        return cited(self.building_edition or "", where, confidence)

    def finding(
        self,
        rule_subject: tuple[str, str],
        verdict: Verdict,
        figures: str,
        cite: str,
        remedy: str = "",
        remedies: tuple[Remedy, ...] = (),
    ) -> Finding:
        """Make a finding; a fail blocks where the rule's row says block or fix."""
        rule, subject = rule_subject
        row = rule_rows()[rule]
        return Finding(
            rule=rule,
            subject=subject,
            verdict=verdict,
            figures=figures,
            cite=cite,
            edition=self.edition or "",
            remedy=remedy,
            blocking=verdict == "fail" and row["level"] != "note",
            title=word(row["title"]),
            remedies=remedies,
        )
