"""What no single field can tell: names that must agree across the job file."""

from __future__ import annotations

import difflib
from collections.abc import Callable, Iterable, Iterator

from estimator.survey.electrical import Box, Run
from estimator.survey.records import Survey
from estimator.tables.box_fill import standard_boxes
from estimator.tables.facts import cable_kinds, editions, lumber_depths_in
from estimator.toml_lines import TomlPath

Found = tuple[TomlPath, str, str]


def cross_problems(survey: Survey) -> list[Found]:
    """Every disagreement between the parts of one survey, in the order of the file's tables."""
    checks: tuple[Callable[[Survey], Iterator[Found]], ...] = (
        _edition,
        _ids,
        _wall_names,
        _stud_sizes,
        _corner_walls,
        _box_places,
        _cables,
        _contents,
        _run_ends,
        _run_ways,
        _opening_names,
        _route_names,
        _stock,
    )
    return [found for check in checks for found in check(survey)]


def _edition(survey: Survey) -> Iterator[Found]:
    job = survey.job
    asked = (("edition", job.edition, "nec"), ("building_edition", job.building_edition, "irc"))
    for key, name, family in asked if job.country == "US" else ():
        known = [each for each, row in editions().items() if row["family"] == family]
        if name not in known:
            yield _no_such(("job", key), "edition", name, known)


def _ids(survey: Survey) -> Iterator[Found]:
    tables = {
        "rooms": [each.id for each in survey.rooms],
        "walls": [each.id for each in survey.walls],
        "boxes": [each.id for each in survey.boxes],
        "runs": [each.id for each in survey.runs],
        "openings": [each.id for each in survey.openings],
    }
    for table, ids in tables.items():
        for number, name in enumerate(ids):
            if name in ids[:number]:
                read = f'"{name}" is the id of two {table}'
                yield (table, number, "id"), read, "Give each its own id."


def _wall_names(survey: Survey) -> Iterator[Found]:
    known = [wall.id for wall in survey.walls]
    tables: dict[str, Iterable[tuple[str | None, ...]]] = {
        "tees": [(each.wall,) for each in survey.tees],
        "doors": [(each.wall,) for each in survey.doors],
        "windows": [(each.wall,) for each in survey.windows],
        "members": [(each.wall,) for each in survey.members],
        "obstacles": [(each.wall,) for each in survey.obstacles],
        "boxes": [(each.wall,) for each in survey.boxes],
        "openings": [(each.wall,) for each in survey.openings],
        "corners": [each.walls for each in survey.corners],
        "runs": [each.walls for each in survey.runs],
    }
    for table, named in tables.items():
        for number, names in enumerate(named):
            key = "walls" if table in ("corners", "runs") else "wall"
            for name in names:
                if name is not None and name not in known:
                    yield _no_such((table, number, key), "wall", name, known)
    for number, name in enumerate(survey.finish.paint_walls):
        if name not in known:
            yield _no_such(("finish", "paint_walls", number), "wall", name, known)


def _stud_sizes(survey: Survey) -> Iterator[Found]:
    known = lumber_depths_in()
    for number, wall in enumerate(survey.walls):
        if wall.stud is not None and wall.stud_depth_in is None and wall.stud not in known:
            place, read, write = _no_such(("walls", number, "stud"), "stud size", wall.stud, known)
            yield place, read, f"{write} Or measure it: stud_depth = ..."


def _corner_walls(survey: Survey) -> Iterator[Found]:
    rights = [corner.walls[0] for corner in survey.corners]
    lefts = [corner.walls[1] for corner in survey.corners]
    for number, (right, left) in enumerate(zip(rights, lefts, strict=True)):
        if right in rights[:number] or left in lefts[:number]:
            read = f'an end of "{right}" or "{left}" is already in another corner'
            write = "Each wall has one right end and one left end."
            yield ("corners", number, "walls"), read, write


def _box_places(survey: Survey) -> Iterator[Found]:
    lengths = {wall.id: wall.length_in for wall in survey.walls}
    used = {name for run in survey.runs if not run.legs for name in (run.from_box, run.to_box)}
    for number, box in enumerate(survey.boxes):
        if box.id in used:
            yield from _needed(number, box)
        if box.x_in is not None and box.wall in lengths and box.x_in > lengths[box.wall]:
            read = f'x is beyond the end of wall "{box.wall}"'
            yield ("boxes", number, "x"), read, "Measure from the wall's left end."


def _needed(number: int, box: Box) -> Iterator[Found]:
    needed = {"wall": box.wall, "x": box.x_in, "height": box.height_in}
    if box.mount == "ceiling":
        needed["out"] = box.out_in
    for key, value in needed.items():
        if value is None:
            read = f'box "{box.id}" has no {key}, and a run with a way needs it'
            yield ("boxes", number, key), read, "Measure it, or type the run's legs instead."


def _cables(survey: Survey) -> Iterator[Found]:
    known = [name for name, kind in cable_kinds().items() if kind.units == survey.job.units]
    for number, box in enumerate(survey.boxes):
        for place, name in enumerate(box.cables):
            if name not in known:
                yield _no_such(("boxes", number, "cables", place), "cable kind", name, known)
    for number, run in enumerate(survey.runs):
        if run.cable not in known:
            yield _no_such(("runs", number, "cable"), "cable kind", run.cable, known)


def _contents(survey: Survey) -> Iterator[Found]:
    known = [name for name, kind in cable_kinds().items() if kind.units == survey.job.units]
    for number, box in enumerate(survey.boxes):
        inside, at = box.contents, ("boxes", number, "contents")
        if inside.table_box is not None and inside.table_box not in standard_boxes():
            table = (*at, "table_box")
            yield _no_such(table, "standard box", inside.table_box, standard_boxes())
        for which, side in enumerate(inside.sides):
            for place, name in enumerate(side.cables):
                if name not in known:
                    path = (*at, "sides", which, "cables", place)
                    yield _no_such(path, "cable kind", name, known)


def _run_ends(survey: Survey) -> Iterator[Found]:
    known = [box.id for box in survey.boxes]
    for number, run in enumerate(survey.runs):
        for key, name in (("from", run.from_box), ("to", run.to_box)):
            if name not in known:
                yield _no_such(("runs", number, key), "box", name, known)
        if run.from_box == run.to_box:
            yield ("runs", number, "to"), "a run ends where it begins", "Name another box."
        for place, name in enumerate(run.stapled_at):
            if name not in (run.from_box, run.to_box):
                ends = (run.from_box, run.to_box)
                yield _no_such(("runs", number, "stapled_at", place), "end of this run", name, ends)


def _run_ways(survey: Survey) -> Iterator[Found]:
    kinds = [level.kind for level in survey.levels]
    for number, run in enumerate(survey.runs):
        yield from _one_way(number, run)
        if run.level is not None and run.level not in kinds:
            read = f"the run goes by the {run.level}, which has no [[levels]] table"
            write = f'Add [[levels]] with kind = "{run.level}" and its height.'
            yield ("runs", number, "level"), read, write


def _one_way(number: int, run: Run) -> Iterator[Found]:
    if (run.way is None) == (not run.legs):
        read = "a run needs either a way or typed legs" + ("" if run.way is None else ", not both")
        write = 'Write way = "wall" (trim, over, under, through), or legs = [...].'
        yield ("runs", number, "way"), read, write
    if run.way in ("trim", "over") and run.height_in is None and run.level is None:
        read = f'way = "{run.way}" needs the height of the level part'
        yield ("runs", number, "height"), read, "Write its height from the floor."
    if run.way == "under" and run.level is None:
        read = 'way = "under" needs the level it goes by'
        yield ("runs", number, "level"), read, 'Write level = "crawlspace" or "basement".'


def _opening_names(survey: Survey) -> Iterator[Found]:
    known = [opening.id for opening in survey.openings]
    for number, opening in enumerate(survey.openings):
        for key, name in (("joins_left", opening.joins_left), ("joins_right", opening.joins_right)):
            if name is not None and name not in known:
                yield _no_such(("openings", number, key), "opening", name, known)


def _route_names(survey: Survey) -> Iterator[Found]:
    known = sorted({run.route for run in survey.runs if run.route is not None})
    chosen = survey.job.route
    if chosen is not None and chosen not in known:
        yield _no_such(("job", "route"), "route", chosen, known)
    for number, opening in enumerate(survey.openings):
        if opening.route is not None and opening.route not in known:
            yield _no_such(("openings", number, "route"), "route", opening.route, known)


def _stock(survey: Survey) -> Iterator[Found]:
    for number, stock in enumerate(survey.truck_stock):
        if (stock.length_in is None) == (stock.quantity is None):
            read = "truck stock is a length of cable or a quantity of pieces"
            yield ("truck_stock", number), read, "Write one of them: length or quantity."


def _no_such(place: TomlPath, what: str, name: str, known: Iterable[str]) -> Found:
    listed = sorted(known)
    near = difflib.get_close_matches(name, listed, n=1)
    guess = f'Did you mean "{near[0]}"? ' if near else ""
    return place, f'there is no {what} "{name}"', f"{guess}On file: {', '.join(listed) or 'none'}."
