"""One wall as it is looked at: its frame, its height, and the size of letters that suits it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from estimator.language import ENGLISH, Language
from estimator.measures import System, show_length
from estimator.route.members import WallFrame
from estimator.survey.place import Gap, Wall
from estimator.survey.records import Survey
from estimator.tables.facts import stud_default

ZERO = Fraction(0)
# A plate, a block and the narrow side of a stud are drawn as thick as lumber is (ps20).
THICK_IN = Fraction(3, 2)
_LETTERS_PER_WALL = 52
_LEAST_IN = 72


@dataclass(frozen=True, slots=True)
class View:
    """What every part of a drawing needs of its wall.

    Attributes:
        height_in: floor to ceiling, the usual one where nobody measured it.
        language: what labels are told in before they are placed.
    """

    survey: Survey
    frame: WallFrame
    height_in: Fraction
    language: Language = ENGLISH

    @property
    def wall(self) -> Wall:
        """The wall itself."""
        return self.frame.wall

    @property
    def system(self) -> System:
        """How lengths are shown."""
        return self.survey.job.units

    @property
    def text_in(self) -> Fraction:
        """Height of letters."""
        return letters_in(max(self.wall.length_in, self.height_in))

    @property
    def under_plates_in(self) -> Fraction:
        """Height of the underside of the top plates."""
        return self.height_in - self.wall.top_plates_count * THICK_IN

    def say(self, length_in: Fraction) -> str:
        """A length in the job's units."""
        return show_length(length_in, self.system)

    def placed_gaps(self) -> Iterator[tuple[str, Gap, Fraction]]:
        """Doors and windows whose place is known, with the x of the left edge."""
        for kind, gap in self.frame.gaps:
            if gap.left_in is not None:
                yield kind, gap, gap.left_in

    def floor_pieces(self) -> Iterator[tuple[Fraction, Fraction]]:
        """From where to where along the floor there is wall: all but the doors."""
        at = ZERO
        doors = sorted(
            (left, left + gap.width_in)
            for _, gap, left in self.placed_gaps()
            if not gap.bottom_in
        )  # fmt: skip
        for left, right in doors:
            if left > at:
                yield at, left
            at = max(at, right)
        if at < self.wall.length_in:
            yield at, self.wall.length_in


def view_of(survey: Survey, frame: WallFrame, language: Language = ENGLISH) -> View:
    """Look at one wall."""
    usual, measured = stud_default(survey.job.units).wall_height_in, frame.wall.height_in
    return View(survey, frame, usual if measured is None else measured, language)


def letters_in(size_in: Fraction) -> Fraction:
    """Height of letters for a drawing of this size."""
    return max(size_in, Fraction(_LEAST_IN)) / _LETTERS_PER_WALL
