"""What no single field can tell: names that must agree across the job file."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from fractions import Fraction

from estimator.survey.electrical import Box
from estimator.survey.locales import is_locale
from estimator.survey.names import Found, no_such
from estimator.survey.records import Survey
from estimator.survey.run_checks import run_problems
from estimator.tables.box_fill import standard_boxes
from estimator.tables.facts import (
    NotOnFile,
    cable_kinds,
    device_kind,
    device_ratings_a,
    devices,
    editions,
    lumber_depths_in,
    rows,
)
from estimator.tables.limits import figures_on_file
from estimator.toml_lines import TomlPath

# A stud is 1-1/2 in thick (ps20).
_STUD_THICK_IN = Fraction(3, 2)


def cross_problems(survey: Survey) -> list[Found]:
    """Every disagreement between the parts of one survey, in the order of the file's tables."""
    checks: tuple[Callable[[Survey], Iterator[Found]], ...] = (
        _job,
        _ids,
        _wall_names,
        _stud_sizes,
        _corner_walls,
        _box_places,
        _box_kinds,
        _levels,
        run_problems,
        _contents,
        _opening_names,
        _route_names,
        _stock,
        _amendments,
    )
    return [found for check in checks for found in check(survey)]


def _job(survey: Survey) -> Iterator[Found]:
    job = survey.job
    asked = (("edition", job.edition, "nec"), ("building_edition", job.building_edition, "irc"))
    for key, name, family in asked if job.country == "US" else ():
        known = [each for each, row in editions().items() if row["family"] == family]
        if name not in known:
            yield no_such(("job", key), "edition", name, known)
    if job.country == "US" and job.units == "metric":
        read = "a job in the US is counted with AWG cable, and a metric job has none"
        write = 'Write units = "us" and bare_unit = "mm", or the country the house is in.'
        yield ("job", "units"), read, write
    if not is_locale(job.locale):
        read = f"{job.locale!r} is not a locale"
        yield ("job", "locale"), read, "Write one such as en_US, fr_CA or de_DE."


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
                    yield no_such((table, number, key), "wall", name, known)
    for number, name in enumerate(survey.finish.paint_walls):
        if name not in known:
            yield no_such(("finish", "paint_walls", number), "wall", name, known)


def _stud_sizes(survey: Survey) -> Iterator[Found]:
    known = lumber_depths_in()
    for number, wall in enumerate(survey.walls):
        if wall.spacing_in is not None and wall.spacing_in <= _STUD_THICK_IN:
            read = "studs this close would leave no bay between them"
            yield ("walls", number, "spacing"), read, "Write it centre to centre, such as 16 in."
        if wall.stud is not None and wall.stud_depth_in is None and wall.stud not in known:
            place, read, write = no_such(("walls", number, "stud"), "stud size", wall.stud, known)
            yield place, read, f"{write} Or measure it: stud_depth = ..."


def _corner_walls(survey: Survey) -> Iterator[Found]:
    rights = [corner.walls[0] for corner in survey.corners]
    lefts = [corner.walls[1] for corner in survey.corners]
    for number, (right, left) in enumerate(zip(rights, lefts, strict=True)):
        if right == left:
            yield ("corners", number, "walls"), "a wall meets itself here", "Name two walls."
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


def _box_kinds(survey: Survey) -> Iterator[Found]:
    """Cables that no table knows, and devices to buy that none does; one that stays may be any."""
    units = survey.job.units
    known = [name for name, kind in cable_kinds().items() if kind.units == units]
    for number, box in enumerate(survey.boxes):
        for place, name in enumerate(box.cables):
            if name not in known:
                yield no_such(("boxes", number, "cables", place), "cable kind", name, known)
        if box.existing and box.reuse_plate:
            continue
        try:
            device_kind(box.device, units, box.device_rating_a)
        except NotOnFile:
            yield _no_device(("boxes", number), box, units)


def _contents(survey: Survey) -> Iterator[Found]:
    known = [name for name, kind in cable_kinds().items() if kind.units == survey.job.units]
    for number, box in enumerate(survey.boxes):
        inside, at = box.contents, ("boxes", number, "contents")
        if inside.table_box is not None and inside.table_box not in standard_boxes():
            table = (*at, "table_box")
            yield no_such(table, "standard box", inside.table_box, standard_boxes())
        for which, side in enumerate(inside.sides):
            for place, name in enumerate(side.cables):
                if name not in known:
                    path = (*at, "sides", which, "cables", place)
                    yield no_such(path, "cable kind", name, known)


def _no_device(place: TomlPath, box: Box, units: str) -> Found:
    ratings = device_ratings_a(box.device, units)
    if not ratings:
        return no_such((*place, "device"), f"{units} device", box.device, devices(units))
    read = f"no {box.device} of {box.device_rating_a} A is on file"
    listed = " or ".join(str(each) for each in ratings)
    return (*place, "device_rating"), read, f"Write {listed}, or leave it out."


def _levels(survey: Survey) -> Iterator[Found]:
    kinds = [level.kind for level in survey.levels]
    for number, kind in enumerate(kinds):
        if kind in kinds[:number]:
            yield ("levels", number, "kind"), f"a second {kind}", "Keep one of the two."


def _opening_names(survey: Survey) -> Iterator[Found]:
    known = [opening.id for opening in survey.openings]
    for number, opening in enumerate(survey.openings):
        for key, name in (("joins_left", opening.joins_left), ("joins_right", opening.joins_right)):
            if name is not None and name not in known:
                yield no_such(("openings", number, key), "opening", name, known)


def _route_names(survey: Survey) -> Iterator[Found]:
    known = sorted({run.route for run in survey.runs if run.route is not None})
    chosen = survey.job.route
    if chosen is not None and chosen not in known:
        yield no_such(("job", "route"), "route", chosen, known)
    for number, opening in enumerate(survey.openings):
        if opening.route is not None and opening.route not in known:
            yield no_such(("openings", number, "route"), "route", opening.route, known)


def _stock(survey: Survey) -> Iterator[Found]:
    cables = {kind.item for kind in cable_kinds().values()}
    for number, stock in enumerate(survey.truck_stock):
        place = ("truck_stock", number)
        if (stock.length_in is None) == (stock.quantity is None):
            read = "truck stock is a length of cable or a quantity of pieces"
            yield place, read, "Write one of them: length or quantity."
        elif stock.item in cables and stock.length_in is None:
            read = "cable on the truck counts by the length of each piece"
            yield (*place, "quantity"), read, "Write length, in a table of its own for each piece."
        elif stock.item not in cables and stock.quantity is None:
            read = f'"{stock.item}" is no cable, so it counts by quantity'
            yield (*place, "length"), read, "Write quantity, in the unit of the materials book."


def _amendments(survey: Survey) -> Iterator[Found]:
    known = [row["rule"] for row in rows("rules")]
    for number, each in enumerate(survey.amendments):
        if each.rule not in known:
            yield no_such(("amendments", number, "rule"), "rule", each.rule, known)
        if each.figure in figures_on_file() and not _is_number(each.value):
            read = f"{each.value!r} is not a number"
            yield ("amendments", number, "value"), read, 'Write a number in quotes, such as "1.25".'


def _is_number(text: str) -> bool:
    try:
        Fraction(text)
    except (ValueError, ZeroDivisionError):
        return False
    return True
