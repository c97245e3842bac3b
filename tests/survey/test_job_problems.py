"""Each kind of problem of a job file: its line, what was read, and what to write instead."""

from __future__ import annotations

import pytest

from tests.survey.made_job import changed, lines_named, marked_lines, problems, survey

# Old text, new text with the line marked, words on what was read, words on what to write.
Case = tuple[str, str, str, str]

KEYS: list[Case] = [
    ('finish]\nscope', 'finish]\nscpoe', 'key "scpoe" is not known', 'Did you mean "scope"?'),
    ('height = "8 ft"', 'hieght = "8 ft" # here', '"hieght" is not', 'Did you mean "height"?'),
    ('[circuit]', 'walls_x = 1 # here\n[circuit]', '"walls_x" is not known', "Known: address"),
    ('[job]', 'tree = 1 # here\n[job]', '"tree" is not known', 'Did you mean "tees"?'),
    ('[job]', '"x[y" = 1 # here\n[job]', '"x[y" is not known', "Known: acceptances"),
    ('[job]', '"function-x" = 1 # here\n[job]', '"function-x" is not', "Known: acceptances"),
    ('[job]', '"" = 1 # here\n[job]', 'key "" is not known', "Known: acceptances"),
    ('[job]', '"a\\nb" = 1 # here\n[job]', 'key "a?b" is not known', "Known: acceptances"),
    ('[job]\nid = "J1"', '[job] # here', 'the key "id" is missing', "Add it"),
    ('[[runs]]\nid = "1"', '[[runs]] # here', 'the key "id" is missing', "Add it"),
    ('[[walls]]\nid = "east"', '[[walls]] # here', 'the key "id" is missing', "Add it"),
]  # fmt: skip

TYPES: list[Case] = [
    ("breaker = 15", "breaker = 15.5 # here", "15.5 does not fit", "Write a whole number"),
    ("breaker = 15", "breaker = true # here", "true does not fit", "Write a number"),
    ("breaker = 15", "breaker = -15 # here", "-15 does not fit", "at least 0"),
    ("breaker = 15", 'breaker = "big" # here', '"big" does not fit', "Write a whole number"),
    ('title = "One more outlet"', "title = 5 # here", "5 does not fit", "Write text in quotes"),
    ('title = "One more outlet"', 'title = "" # here', '"title" is empty', "at least one"),
    ("existing = true", 'existing = "unknown" # here', '"unknown" does', "Write true or false"),
    ("[circuit]", "date = 5 # here\n[circuit]", "5 does not fit", "Write a date as 2026-03-09"),
    ('[circuit]', 'date = "soon" # here\n[circuit]', '"soon" does', "Write a date as"),
    ("[circuit]", 'date = "11/24/2026" # here\n[circuit]', "does not fit", "Write 2026-11-24"),
    ("[circuit]", 'country = "USA" # here\n[circuit]', '"USA" does', "at most 2 characters"),
    ("[circuit]", 'country = "U" # here\n[circuit]', '"U" does not fit', "at least 2 characters"),
    ("existing = true", "gangs = 5 # here", "5 does not fit", "at most 4"),
    ('at = "5 ft"', 'at = "5 ft"\nmembers = 9 # here', "9 does not fit", "at most 8"),
    ('length = "10 ft"', 'length = "10 ft"\ntop_plates = 5 # here', "5 does not", "at most 4"),
    ("existing = true", "gangs = 0 # here", "0 does not fit", "at least 1"),
    ("existing = true", "gangs = true # here", "true does not fit", "Write a number"),
    ('cables = ["14-2"]', 'cables = "14-2" # here', '"14-2" does not', "list in brackets"),
    ('cables = ["14-2"]', "cables = [14] # here", "14 does not fit", "Write text in quotes"),
    ("[job]", "doors = 3 # here\n[job]", "3 does not fit", "Write a [[doors]] table for each"),
    ("[job]", "overrides = 3 # here\n[job]", "3 does not fit", "table with named values"),
    ("[job]", "settings = 3 # here\n[job]", "3 does not fit", "names and values"),
    ('walls = ["north", "east"]', 'walls = ["north"] # here', "needs at least 2", "Add what is"),
    ('walls = ["north", "east"]', 'walls = ["a", "b", "c"] # here', "a list", "at most 2"),
    ('clamps = "no"', 'clamps = "maybe" # here', "not one of the words", '"yes", "no" or "unk'),
    ('clamps = "no"', "clamps = 0 # here", "0 is not one of the words", '"yes", "no"'),
    ('kind = "nog"', 'kind = "beam" # here', '"beam" is not one of the words', '"stud", "king"'),
    ('scope = "painted"', 'scope = "closd" # here', '"closd" is not', '"none", "closed"'),
    ("[job]", "format = 2 # here\n[job]", "2 is not one of the words", "Write 1."),
]  # fmt: skip

MEASURES: list[Case] = [
    ('length = "12 ft"', 'length = "12-6" # here', '"12-6": has numbers', "12'-6\" or 150 in"),
    ('length = "12 ft"', 'length = "2x4" # here', '"2x4": is the size of a board', "Write a len"),
    ('length = "12 ft"', 'length = "twelve" # here', "it has no digits", "Write a length such as"),
    ('length = "12 ft"', 'length = "unknown" # here', "cannot be left unknown", "Measure it"),
    ('length = "12 ft"', 'length = "0 in" # here', "0 does not fit", "above 0"),
    ('length = "12 ft"', "length = true # here", "true: this is not a length", "Write it as on"),
    ('length = "12 ft"', "length = -3 # here", "-3: is negative", "Write a length"),
    ('length = "12 ft"', "length = [1] # here", "a list: this is not a length", "Write it as"),
    ('length = "12 ft"', "length = {a = 1} # here", "a table: this is not a length", "Write it"),
    ('length = "12 ft"', "length = 2026-01-01 # here", "2026-01-01: this is not", "Write it as"),
    ('x = "34 in"', 'x = "-3 in" # here', "is negative", "Write a length such as"),
    ('x = "34 in"', 'x = "3,8 m" # here', "a comma where a decimal point", "Write 3.8"),
    ('volume = "18 in3"', 'volume = "18 in" # here', '"18 in": is not a volume', "18 in3"),
    ('volume = "18 in3"', "volume = [1] # here", "a list: this is not a volume", "stamped"),
    ('volume = "18 in3"', "volume = true # here", "true: this is not a volume", "stamped"),
    ('[finish]', '[finish]\npaint_area = [1] # here', "this is not an area", "156 ft2"),
    ('[finish]', '[finish]\npaint_area = "9 in" # here', '"9 in": is not an area', "2.5 ft2"),
    ('id = "strip"\nwall = "north"\nleft = "33 in"', 'id = "strip"', "no full size", "Give left"),
]  # fmt: skip

NAMES: list[Case] = [
    ('[circuit]', 'edition = "nec-2032" # here\n[circuit]', '"nec-2032"', '"nec-2023"?'),
    ('[circuit]', 'locale = "xx_YY" # here\n[circuit]', "is not a locale", "en_US"),
    ('[[corners]]', '[[walls]]\nid = "north" # here\nlength = 144\n[[corners]]',
     '"north" is the id of two walls', "its own id"),
    ('[[runs]]', '[[runs]]\nid = "1"\nfrom = "new"\nto = "source"\ncable = "14-2"\nway = "wall"\n'
     '[[runs]]', '"1" is the id of two runs', "its own id"),
    ('[[runs]]', '[[boxes]]\nid = "new" # here\nwall = "north"\nx = 1\nheight = 1\n[[runs]]',
     '"new" is the id of two boxes', "its own id"),
    ('wall = "north"\nx', 'wall = "nroth" # here\nx', 'no wall "nroth"', 'mean "north"?'),
    ('walls = ["north", "east"]', 'walls = ["west", "east"] # here', 'no wall "west"', "On file"),
    ('walls = ["north", "east"]', 'walls = ["east", "east"] # here', "meets itself", "two walls"),
    ('scope = "painted"', 'paint_walls = ["w"] # here', 'no wall "w"', "On file: east, north"),
    ('stud = "2x4"', 'stud = "2x5" # here', 'no stud size "2x5"', "measure it: stud_depth"),
    ('spacing = "16 in"', "spacing = 0 # here", "leave no bay", "centre to centre"),
    ('spacing = "16 in"', 'spacing = "1-1/2 in" # here', "leave no bay", "centre to centre"),
    ('x = "34 in"', 'x = "145 in" # here', 'beyond the end of wall "north"', "from the wall's"),
    ('cables = ["14-2"]', 'cables = ["14-9"] # here', 'no cable kind "14-9"', "On file: 10-2"),
    ('cable = "14-2"', 'cable = "14/2" # here', 'no cable kind "14/2"', 'mean "14-2"?'),
    ('from = "source"', 'from = "nwe" # here', 'no box "nwe"', 'mean "new"?'),
    ('to = "new"', 'to = "source" # here', "ends where it begins", "Name another box"),
    ('["source"]', '["east"] # here', 'no end of this run "east"', "On file: new, source"),
    ('top = "4-', 'joins_left = "a" # here\ntop = "4-', 'no opening "a"', "On file: strip"),
    ('top = "4-', 'route = "A" # here\ntop = "4-', 'no route "A"', "On file: none"),
    ('[circuit]', 'route = "A" # here\n[circuit]', 'no route "A"', "On file: none"),
    ('kind = "attic"', 'kind="attic"\n[[levels]]\nkind="attic" # here', "a second attic", "Keep"),
    ('to = "new"', 'to = "new"\ndevice = 1', 'key "device" is not known', "Known: bend_radius"),
    ('x = "105 in"', 'x = "105 in"\ndevice = "gfci receptacle"\ndevice_rating = 30 # here',
     "no gfci receptacle of 30 A", "Write 15 or 20, or leave it out."),
]  # fmt: skip

WAYS: list[Case] = [
    ('way = "wall"', "# no way", "either a way or typed legs", 'Write way = "wall"'),
    ('way = "wall"', 'way = "wall" # here\nlegs = [{go="up", length=3}]', "not both", "or legs"),
    ('way = "wall"', 'way = "over"', "needs the height of the level part", "from the floor"),
    ('way = "wall"', 'way = "trim"', "needs the height of the level part", "from the floor"),
    ('way = "wall"', 'way = "under"', "needs the level it goes by", 'level = "crawlspace"'),
    ('way = "wall"', 'way = "under"\nlevel = "basement" # here', "has no [[levels]] table", "Add"),
    ('way = "wall"', 'way = "wall" # here\nlevel = "attic"', "does not go by the attic", "over"),
    ('way = "wall"', 'way = "under" # here\nlevel = "attic"', "does not go by the attic", "over"),
    ('way = "wall"', 'way = "through" # here\nlevel = "attic"', "does not go by", "over"),
    ('wall = "north"\nx = "105 in"', 'wall = "north"', 'box "new" has no x', "type the run's legs"),
    ('x = "105 in"\nheight = "15 in"', 'x = "105 in"', 'box "new" has no height', "Measure it"),
    ('id = "new"\nwall = "north"', 'id = "new"', 'box "new" has no wall', "Measure it"),
    ('x = "105 in"', 'x = "105 in"\nmount = "ceiling"\nout = "2 ft"',
     "cannot reach a ceiling box", "with a level"),
    ('clamps = "no"', 'mount = "celing" # here', '"celing" is not one of', '"wall" or "ceiling"'),
]  # fmt: skip

STOCK: list[Case] = [
    ("[finish]", '[[truck_stock]] # here\nitem = "a"\n[finish]', "a length of cable or", "one of"),
    ("[finish]", '[[truck_stock]] # here\nitem = "a"\nquantity = 1\nlength = 1\n[finish]',
     "a length of cable or a quantity", "Write one of them"),
    ("[finish]", '[[truck_stock]]\nitem = "a"\nquantity = 0 # here\n[finish]', "0 does", "above 0"),
    ("[finish]", '[[truck_stock]]\nitem = "a"\nlength = "9 ft" # here\n[finish]',
     '"a" is no cable', "Write quantity"),
    ("[finish]", '[[truck_stock]]\nitem = "cable-14-2"\nquantity = 9 # here\n[finish]',
     "by the length of each piece", "Write length"),
    ("[finish]", "[overrides]\nlabor_hours = -1 # here\n[finish]", "-1 does not fit", "at least 0"),
    ("[finish]", "[overrides.prices]\na = -1 # here\n[finish]", "-1 does not", "at least 0"),
    ("[finish]", "[overrides.hours]\na = true # here\n[finish]", "true does", "Write a number"),
    ('way = "wall"', 'legs = [{go="up", length=3, members={king=-2}}] # here', "-2", "at least 0"),
    ('way = "wall"', 'legs = [{go="up", length=3, studs=true}] # here', "true", "Write a number"),
]  # fmt: skip


@pytest.mark.parametrize(
    ("old", "new", "said", "write"), KEYS + TYPES + MEASURES + NAMES + WAYS + STOCK
)
def test_one_problem_is_said_where_it_stands(old: str, new: str, said: str, write: str) -> None:
    text = changed((old, new))
    found = problems(text)
    assert len(found) == 1, [str(each) for each in found]
    assert said in found[0].read
    assert write in found[0].write
    if marked := marked_lines(text):
        assert lines_named(found) == marked


def test_a_device_that_a_metric_house_does_not_have() -> None:
    metric = ('title = "One more outlet"', 'title = "x"\nunits = "metric"\ncountry = "GB"')
    kinds = ('cables = ["14-2"]', "cables = []"), ('cable = "14-2"', 'cable = "2.5 mm2 2-core"')
    text = changed(metric, *kinds, ('id = "new"', 'id = "new"\ndevice = "gfci receptacle"'))
    device, cable = problems(text)
    assert 'no metric device "gfci receptacle"' in device.read
    assert 'Did you mean "2.5 mm2 2-core and earth"?' in cable.write


def test_a_metric_job_in_the_us_is_asked_for_its_units() -> None:
    text = changed(('title = "One more outlet"', 'title = "x"\nunits = "metric" # here'))
    first = problems(text)[0]
    assert "counted with AWG cable" in first.read
    assert 'units = "us" and bare_unit = "mm"' in first.write


def test_boxes_on_two_walls_are_not_back_to_back() -> None:
    swaps = ('wall = "north"\nx = "105 in"', 'wall = "east"\nx = "5 in"'), ('"wall"', '"through"')
    (found,) = problems(changed(*swaps))
    assert "these boxes are on two walls" in found.read


def test_a_ceiling_box_needs_its_distance_from_the_wall() -> None:
    swaps = ('id = "new"', 'id = "new"\nmount = "ceiling"'), ('"wall"', '"over"\nlevel = "attic"')
    (found,) = problems(changed(*swaps))
    assert 'box "new" has no out' in found.read


def test_no_boxes_at_all() -> None:
    text = "boxes = []\nruns = []\n[job]\nid = 'a'\ntitle = 'b'\n"
    assert [each.read for each in problems(text)] == ['"boxes" is empty', '"runs" is empty']


@pytest.mark.parametrize("text", ["", "# nothing\n"])
def test_an_empty_job_names_what_it_needs(text: str) -> None:
    found = problems(text)
    assert [each.where for each in found] == ["job.toml: job", "job.toml: boxes", "job.toml: runs"]
    assert all("is missing" in each.read for each in found)


def test_a_device_that_stays_may_be_any() -> None:
    stays = ('clamps = "no"', 'clamps = "no"\ndevice_rating = 30')
    assert survey(changed(stays)).boxes[0].device_rating_a == 30
    renewed = ('clamps = "no"', 'clamps = "no"\nreuse_plate = false\ndevice_rating = 30')
    assert "no receptacle of 30 A" in problems(changed(renewed))[0].read
