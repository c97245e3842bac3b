"""Settings laid over each other: figures worked by hand, and every kind of fault."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest

from estimator.catalog.setting_readers import Manner
from estimator.catalog.shipped import shipped_catalogs
from estimator.catalog.shop import Layer, read_setting, read_shop
from estimator.problems import InputError
from estimator.reading import MeasureError
from estimator.settings import Consumable, Shop
from estimator.toml_files import read_toml

US, METRIC = (
    (shipped_catalogs(units) / "shop.toml").read_text("utf-8") for units in ("us", "metric")
)  # type: ignore[arg-type]


def shop(*texts: str, base: str = US) -> Shop:
    layers = [
        Layer(f"layer {place}", read_toml(text, "x"), text) for place, text in enumerate(texts, 1)
    ]
    return read_shop([Layer("shipped", read_toml(base, "shipped"), base), *layers])


def faults(text: str) -> list[tuple[str, str, str]]:
    with pytest.raises(InputError) as caught:
        shop(text)
    return [
        (one.where.removeprefix("layer 1: "), one.read, one.write) for one in caught.value.problems
    ]


# Worked by hand: 1 gal = 231 in3, 1 ft2 = 144 in2, 1 L = 1000 cm3, 1 in = 2.54 cm.
@pytest.mark.parametrize(
    ("base", "field", "want"),
    [
        (US, "tail_in", 12),
        (US, "plate_edge_in", Fraction(5, 4)),
        (US, "order_step_in", 12),
        (US, "compound_in3_per_in", Fraction(4, 100) * 231 / 12),
        (US, "paint_in2_per_in3", Fraction(350 * 144, 231)),
        (US, "primer_in2_per_in3", Fraction(300 * 144, 231)),
        (US, "patch_screws_per_ft", 2),
        (METRIC, "tail_in", Fraction(200 * 10, 254)),
        (METRIC, "order_step_in", Fraction(500 * 10, 254)),
        (METRIC, "compound_in3_per_in", Fraction(400, 100) / (Fraction(254, 100) ** 2)),
        (METRIC, "paint_in2_per_in3", Fraction(140_000, 1000) * Fraction(254, 100)),
        (METRIC, "patch_screws_per_ft", Decimal("2.1336")),
    ],
)
def test_shipped_measures_as_worked_by_hand(base: str, field: str, want: Fraction) -> None:
    assert getattr(shop(base=base).practice, field) == want


def test_shipped_defaults_are_those_of_the_conventions() -> None:
    read = shop()
    assert (read.practice.allowance_pct, read.practice.paint_coats) == (10, 2)
    assert (read.price.labor_rate_per_hour, read.price.minimum_charge) == (85, 225)
    assert (read.price.materials_markup_pct, read.price.permit_cost) == (30, None)
    assert (read.tax.mode, read.terms.deposit_pct, read.currency, read.units) == (
        "none",
        30,
        "USD",
        "us",
    )


@pytest.mark.parametrize("base", [US, METRIC])
def test_built_in_clamps_count_unless_the_shop_says_no(base: str) -> None:
    assert shop(base=base).practice.count_built_in_clamps is True
    no = "[practice]\ncount_built_in_clamps = false"
    assert shop(no, base=base).practice.count_built_in_clamps is False
    assert "count_built_in_clamps" in faults('[practice]\ncount_built_in_clamps = "maybe"')[0][0]


def test_the_last_layer_wins_and_its_name_is_kept() -> None:
    read = shop('[practice]\ntail = "8 in"\nhole = "7/8 in"', '[practice]\ntail = "10 in"')
    assert (read.practice.tail_in, read.practice.hole_in) == (10, Fraction(7, 8))
    origins = [read.origin[f"practice.{key}"] for key in ("tail", "hole", "feather")]
    assert origins == ["layer 2", "layer 1", "shipped"]


def test_settings_are_shown_as_they_were_written() -> None:
    read = shop("[practice]\nhole_end_supports = false\nallowance_pct = 12.50")
    assert read.shown["practice.allowance_pct"] == "12.50"
    assert read.shown["practice.hole_end_supports"] == "no"
    assert read.shown["practice.plate_edge"] == "1-1/4 in"
    assert read.shown["practice.consumables"].startswith("blade-saw 1 job; ")


# markup = margin / (1 - margin): trade table, and 1/3 does not end.
@pytest.mark.parametrize(
    ("margin", "markup"),
    [("20", "25"), ("50", "100"), ("0", "0"), ("25", "33.333333333333333334")],
)
def test_a_margin_becomes_a_markup_and_never_loses_a_half_cent(margin: str, markup: str) -> None:
    read = shop(f"[price]\nmaterials_margin_pct = {margin}")
    assert read.price.materials_markup_pct == Decimal(markup)
    assert "price.materials_markup_pct" not in read.shown


def test_a_later_markup_takes_the_place_of_an_earlier_margin() -> None:
    read = shop("[price]\nmaterials_margin_pct = 20", "[price]\nmaterials_markup_pct = 40")
    assert read.price.materials_markup_pct == 40


def test_a_list_of_consumables_replaces_the_shipped_one() -> None:
    text = '[[practice.consumables]]\nitem = "rag"\nquantity = 0.5\nper = "run"'
    assert shop(text).practice.consumables == (Consumable("rag", Decimal("0.5"), "run"),)


def test_bare_numbers_are_in_the_units_of_the_shop() -> None:
    assert shop("[practice]\ntail = 8").practice.tail_in == 8
    assert shop("[practice]\ntail = 254", base=METRIC).practice.tail_in == 10
    assert shop("[practice]\ntail = 254", '[shop]\nunits = "metric"').practice.tail_in == 10


def test_a_decimal_comma_holds_for_settings_too() -> None:
    practice = '[practice]\ncompound = "0,4 L per m"\ntrim_nails = "1,5 per ft"'
    read = shop(f"[shop]\ndecimal_comma = true\n{practice}")
    assert read.practice.compound_in3_per_in == Fraction(400, 100) / (Fraction(254, 100) ** 2)
    assert read.practice.trim_nails_per_ft == Decimal("1.5")


# section and line, place, what was read, what to write
WRONG = [
    ("practice", 'tail = "2x4"', "practice.tail", "is the size of a board", "Write"),
    ("practice", 'tail = "12-6"', "practice.tail", "12-6", "12'-6\""),
    ("practice", "tail = true", "practice.tail", '"true" is not a length.', "in quotes"),
    ("practice", "order_step = 0", "practice.order_step", '"0" is no length.', "above zero"),
    (
        "practice",
        "allowance_pct = -1",
        "practice.allowance_pct",
        '"-1" is below zero.',
        "zero or more",
    ),
    (
        "practice",
        "allowance_pct = 1001",
        "practice.allowance_pct",
        "is more than 1000 %",
        "10 for 10 %",
    ),
    ("practice", "paint_coats = 1.5", "practice.paint_coats", "not a number that fits", "0 to 10"),
    (
        "practice",
        'hole_end_supports = "yes"',
        "practice.hole_end_supports",
        "not true or false",
        "true or",
    ),
    (
        "practice",
        'compound = "0.04 gal"',
        "practice.compound",
        "is not an amount per unit",
        "gal per ft",
    ),
    ("practice", 'compound = "1 gal per 0 ft"', "practice.compound", "is no length", "above zero"),
    (
        "practice",
        'paint_coverage = "0 ft2 per gal"',
        "practice.paint_coverage",
        "covers nothing",
        "above",
    ),
    ("practice", "trim_nails = 2", "practice.trim_nails", "not an amount per unit", '"2 per ft"'),
    (
        "practice",
        "consumables = 3",
        "practice.consumables",
        "is not a list of tables",
        "[[practice",
    ),
    (
        "practice",
        'consumables = [{item = "a"}]',
        "practice.consumables[0]",
        "does not hold item",
        "in each",
    ),
    ("price", 'permit_cost = "free"', "price.permit_cost", '"free" is not an amount.', 'or "none"'),
    (
        "price",
        'hours_basis = "mean"',
        "price.hours_basis",
        '"mean" is not one of',
        '"likely" or "expected"',
    ),
    (
        "price",
        "materials_margin_pct = 100",
        "price.materials_margin_pct",
        "leaves nothing",
        "below 100",
    ),
    (
        "price",
        "labor_rate_per_hour = 9999999999",
        "price.labor_rate_per_hour",
        "too large",
        "1,000,000,000",
    ),
    ("tax", 'mode = "all"', "tax.mode", '"all" is not one of', '"none" or "paid-at-purchase"'),
    ("terms", "deposit_pct = 101", "terms.deposit_pct", "is more than 100 %", "at most 100"),
    ("terms", "firm_name = 3", "terms.firm_name", '"3" is not text.', '"quotes"'),
    ("terms", 'included = "all"', "terms.included", '"all" is not a list.', "Write a list"),
    ("terms", 'included = ["a", 3]', "terms.included[1]", '"3" is not text.', '"quotes"'),
    (
        "conditions",
        "plaster = 0",
        "conditions.plaster",
        "would leave no hours",
        "1.5 for half more",
    ),
    (
        "conditions",
        "plastr = 1",
        "conditions.plastr",
        "no such setting",
        "Did you mean conditions.plaster?",
    ),
    ("shop", 'currency = "US$"', "shop.currency", "is not a currency on file", "USD"),
    ("shop", "tail = 3", "shop.tail", "there is no such setting.", "Did you mean practice.tail?"),
    (
        "shop",
        "colour = 3",
        "shop.colour",
        "there is no such setting.",
        "Use one of currency, units",
    ),
    ("practise", "tail = 3", "practise", "there is no such setting.", "Did you mean practice?"),
]


@pytest.mark.parametrize(
    ("section", "line", "place", "says", "write"), WRONG, ids=[one[1] for one in WRONG]
)
def test_a_wrong_setting(section: str, line: str, place: str, says: str, write: str) -> None:
    ((where, read, hint),) = faults(f"[{section}]\n{line}\n")
    row = 1 if "." not in place else 2
    assert where == f"line {row}, {place}"
    assert says in read
    assert write in hint


def test_all_faults_come_at_once_in_the_order_of_the_file() -> None:
    price = "[price]\nmaterials_markup_pct = 1\nmaterials_margin_pct = 2"
    text = f"[tax]\nmode = 1\n[shop]\nunits = 2\n{price}\n[terms]\nx = 1\n"
    places = [where for where, *_ in faults(text)]
    assert places == [
        "line 2, tax.mode",
        "line 4, shop.units",
        "line 7, price.materials_margin_pct",
        "line 9, terms.x",
    ]


def test_a_section_that_is_no_table() -> None:
    assert faults("tax = 3")[0][:2] == ("line 1, tax", "is not a table of settings.")


def test_settings_of_a_job_are_named_with_the_line_of_the_job() -> None:
    job = '[survey]\nname = "x"\n[settings.practice]\ntail = "far"\n'
    layer = Layer("job.toml", read_toml(job, "job")["settings"], job, ("settings",))
    with pytest.raises(InputError, match=r"^job\.toml: line 4, settings\.practice\.tail: "):
        read_shop([Layer("shipped", read_toml(US, "shipped"), US), layer])


def test_a_base_without_all_settings_names_those_missing() -> None:
    with pytest.raises(InputError) as caught:
        read_shop([Layer("mine", {"tax": {"mode": "none"}})])
    wheres = [problem.where for problem in caught.value.problems]
    assert "mine: tax.rate_pct" in wheres
    assert "mine: price.materials_margin_pct" not in wheres


def test_one_setting_on_its_own() -> None:
    assert read_setting("practice.tail", "200 mm", Manner("metric")) == Fraction(2000, 254)
    with pytest.raises(MeasureError):
        read_setting("practice.tail", "", Manner())
