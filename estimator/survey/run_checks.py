"""What a run must agree with: its boxes, its cable, its way, and the level it goes by."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from estimator.survey.electrical import Box, Run
from estimator.survey.names import Found, no_such
from estimator.survey.records import Survey
from estimator.tables.facts import cable_kinds
from estimator.toml_lines import TomlPath

_LEVELS_BY_WAY = {"over": ("attic",), "under": ("basement", "crawlspace")}


def run_problems(survey: Survey) -> Iterator[Found]:
    """Every disagreement of each run, run by run."""
    boxes = {box.id: box for box in survey.boxes}
    levels = [level.kind for level in survey.levels]
    known = [name for name, kind in cable_kinds().items() if kind.units == survey.job.units]
    for number, run in enumerate(survey.runs):
        place = ("runs", number)
        if run.cable not in known:
            yield no_such((*place, "cable"), "cable kind", run.cable, known)
        yield from _ends(place, run, boxes)
        yield from _way(place, run)
        yield from _drawn(place, run, boxes)
        if run.level is not None and run.level not in levels:
            read = f"the run goes by the {run.level}, which has no [[levels]] table"
            write = f'Add [[levels]] with kind = "{run.level}" and its height.'
            yield (*place, "level"), read, write


def _ends(place: TomlPath, run: Run, boxes: Mapping[str, Box]) -> Iterator[Found]:
    for key, name in (("from", run.from_box), ("to", run.to_box)):
        if name not in boxes:
            yield no_such((*place, key), "box", name, boxes)
    if run.from_box == run.to_box:
        yield (*place, "to"), "a run ends where it begins", "Name another box."
    ends = (run.from_box, run.to_box)
    if not all(name in boxes for name in ends):
        return
    for number, name in enumerate(run.stapled_at):
        if name not in ends:
            yield no_such((*place, "stapled_at", number), "end of this run", name, ends)


def _way(place: TomlPath, run: Run) -> Iterator[Found]:
    """A way or typed legs, never both; a way with the height or the level that it needs."""
    if (run.way is None) == (not run.legs):
        read = "a run needs either a way or typed legs" + ("" if run.way is None else ", not both")
        write = 'Write way = "wall" (trim, over, under, through), or legs = [...].'
        yield (*place, "way"), read, write
        return
    if run.way in ("trim", "over") and run.height_in is None and run.level is None:
        read = f'way = "{run.way}" needs the height of the level part'
        yield (*place, "height"), read, "Write its height from the floor."
    if run.way == "under" and run.level is None:
        read = 'way = "under" needs the level it goes by'
        yield (*place, "level"), read, 'Write level = "crawlspace" or "basement".'
    fitting = _LEVELS_BY_WAY.get(run.way or "", ())
    if run.way is not None and run.level is not None and run.level not in fitting:
        read = f'way = "{run.way}" does not go by the {run.level}'
        write = 'Write way = "over" for the attic, "under" for a basement or crawlspace.'
        yield (*place, "way"), read, write


def _drawn(place: TomlPath, run: Run, boxes: Mapping[str, Box]) -> Iterator[Found]:
    """What walls that were drawn cannot tell of a run."""
    ends = [boxes[name] for name in (run.from_box, run.to_box) if name in boxes]
    if run.way is None or run.legs:
        return
    if run.way == "through" and len({box.wall for box in ends}) > 1:
        read = 'way = "through" joins the two faces of one wall, and these boxes are on two walls'
        yield (*place, "way"), read, "Put both boxes on one wall, or name another way."
    if run.level is None and any(box.mount == "ceiling" for box in ends):
        read = "inside the walls this run cannot reach a ceiling box"
        yield (*place, "way"), read, 'Write way = "over" with a level, or type the run\'s legs.'
