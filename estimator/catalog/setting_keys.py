"""Every setting there is: its dotted name, the record field it fills, and how it is read."""

from __future__ import annotations

from typing import NamedTuple, get_args

from estimator.catalog import money_readers as money
from estimator.catalog import risk_readers
from estimator.catalog import setting_readers as read
from estimator.catalog.setting_readers import ALL_PCT, MOST_PCT, Reader
from estimator.language import CrewLanguage, LanguageCode
from estimator.settings import PriceFormKind, SupplyRunPolicy, TaxMode, TaxRounding
from estimator.settings_risk import LEAST_DRAWS, MOST_DRAWS, MOST_SEED

MARKUP = "price.materials_markup_pct"
MARGIN = "price.materials_margin_pct"
UNITS = "shop.units"
DECIMAL_COMMA = "shop.decimal_comma"
MOST_COUNT = 1000
MOST_DAYS = 3650
MOST_COATS = 10
MOST_CORRELATION_PCT = 95


class Setting(NamedTuple):
    """One setting: the field of its record, and its reader."""

    field: str
    read: Reader


SHOP = {
    "currency": Setting("currency", read.currency),
    "units": Setting("units", read.choice("us", "metric")),
    "decimal_comma": Setting("decimal_comma", read.flag),
    "stale_after_days": Setting("stale_after_days", read.whole(1, MOST_DAYS)),
}
PRACTICE = {
    "tail": Setting("tail_in", read.length),
    "tail_floor": Setting("tail_floor_in", read.length),
    "corner_extra": Setting("corner_extra_in", read.length),
    "obstacle_extra": Setting("obstacle_extra_in", read.length),
    "allowance_pct": Setting("allowance_pct", read.percent(MOST_PCT)),
    "order_step": Setting("order_step_in", read.some_length),
    "hole": Setting("hole_in", read.some_length),
    "plate_edge": Setting("plate_edge_in", read.length),
    "plate_behind_trim_always": Setting("plate_behind_trim_always", read.flag),
    "count_built_in_clamps": Setting("count_built_in_clamps", read.flag),
    "staple_first": Setting("staple_first_in", read.some_length),
    "staple_spacing": Setting("staple_spacing_in", read.some_length),
    "hole_end_supports": Setting("hole_end_supports", read.flag),
    "compound": Setting("compound_in3_per_in", read.volume_per_length),
    "feather": Setting("feather_in", read.length),
    "board_waste_pct": Setting("board_waste_pct", read.percent(MOST_PCT)),
    "backing_overlap": Setting("backing_overlap_in", read.length),
    "patch_screws": Setting("patch_screws_count", read.whole(0, MOST_COUNT)),
    "patch_screws_side": Setting("patch_screws_side_in", read.some_length),
    "patch_screws_extra": Setting("patch_screws_per_ft", read.count_per_length),
    "trim_nails": Setting("trim_nails_per_ft", read.count_per_length),
    "paint_coats": Setting("paint_coats", read.whole(0, MOST_COATS)),
    "paint_coverage": Setting("paint_in2_per_in3", read.area_per_volume),
    "primer_coverage": Setting("primer_in2_per_in3", read.area_per_volume),
    "consumables": Setting("consumables", read.consumables),
}
PRICE = {
    "labor_rate_per_hour": Setting("labor_rate_per_hour", money.rate_or_built),
    "hours_basis": Setting("hours_basis", read.choice("likely", "expected")),
    "materials_markup_pct": Setting("materials_markup_pct", read.percent(MOST_PCT)),
    "small_items_pct": Setting("small_items_pct", read.percent(MOST_PCT)),
    "minimum_charge": Setting("minimum_charge", read.number),
    "trip_charge": Setting("trip_charge", read.number),
    "overhead_pct": Setting("overhead_pct", read.percent(MOST_PCT)),
    "profit_pct": Setting("profit_pct", read.percent(MOST_PCT)),
    "permit_cost": Setting("permit_cost", read.amount_or_none),
    "permit_handling": Setting("permit_handling", read.number),
    "permit_visits": Setting("permit_visits", read.whole(0, MOST_COUNT)),
    "permit_filed_by": Setting("permit_filed_by", read.text),
    "supply_run_hours": Setting("supply_run_hours", read.number),
    "supply_run_policy": Setting("supply_run_policy", read.choice(*get_args(SupplyRunPolicy))),
    "contingency_pct": Setting("contingency_pct", read.percent(MOST_PCT)),
    "contingency_on": Setting("contingency_on", read.choice("labor", "built-up")),
    "contingency_from": Setting("contingency_from", read.choice("percent", "confidence")),
    "contingency_confidence_pct": Setting("contingency_confidence_pct", money.confidence),
    "contingency_shown": Setting("contingency_shown", read.flag),
    "offer_step": Setting("offer_step", read.number),
    "offer_rounding": Setting("offer_rounding", read.choice("nearest", "up")),
    "one_more_path": Setting("one_more_path_in", read.some_length),
}
RATE = {
    "wage_per_hour": Setting("wage_per_hour", read.number),
    "burden_pct": Setting("burden_pct", read.percent(MOST_PCT)),
    "paid_hours": Setting("paid_hours", money.above_zero),
    "billable_pct": Setting("billable_pct", money.some_share),
    "overhead_per_year": Setting("overhead_per_year", read.number),
    "profit_margin_pct": Setting("profit_margin_pct", read.margin),
}
TAX = {
    "mode": Setting("mode", read.choice(*get_args(TaxMode))),
    "rate_pct": Setting("rate_pct", money.below_all),
    "purchase_rate_pct": Setting("purchase_rate_pct", read.percent(ALL_PCT)),
    "purchase_tax": Setting(
        "purchase_tax", read.choice("before-markup", "after-markup", "not-recovered")
    ),
    "taxed_share_pct": Setting("taxed_share_pct", read.percent(ALL_PCT)),
    "materials_base": Setting("materials_base", read.choice("sold", "before-profit")),
    "gross_factor_pct": Setting("gross_factor_pct", money.factor_or_exact),
    "basis": Setting("basis", read.choice("invoice", "line")),
    "rounding": Setting("rounding", read.choice(*get_args(TaxRounding))),
    "prices_include_tax": Setting("prices_include_tax", read.flag),
}
TERMS = {
    "price_form": Setting("price_form", read.choice(*get_args(PriceFormKind))),
    "not_to_exceed_pct": Setting("not_to_exceed_pct", read.percent(MOST_PCT)),
    "fixed_line": Setting("fixed_line", read.text),
    "time_and_material_line": Setting("time_and_material_line", read.text),
    "not_to_exceed_line": Setting("not_to_exceed_line", read.text),
    "deposit_of": Setting("deposit_of", read.choice("total", "materials")),
    "deposit_pct": Setting("deposit_pct", read.percent(ALL_PCT)),
    "deposit_cap_pct": Setting("deposit_cap_pct", money.percent_or_none),
    "deposit_cap_amount": Setting("deposit_cap_amount", read.amount_or_none),
    "payment_steps": Setting("payment_steps", money.payments),
    "validity_days": Setting("validity_days", read.whole(1, MOST_DAYS)),
    "firm_name": Setting("firm_name", read.text),
    "firm_contact": Setting("firm_contact", read.text),
    "firm_license": Setting("firm_license", read.text),
    "included": Setting("included", read.texts),
    "excluded": Setting("excluded", read.texts),
    "permit_line": Setting("permit_line", read.text),
    "payment_line": Setting("payment_line", read.text),
    "workmanship_line": Setting("workmanship_line", read.text),
    "change_line": Setting("change_line", read.text),
    "start_line": Setting("start_line", read.text),
    "finish_line": Setting("finish_line", read.text),
    "cleanup_line": Setting("cleanup_line", read.text),
    "insurance_line": Setting("insurance_line", read.text),
    "lien_line": Setting("lien_line", read.text),
    "cancellation_file": Setting("cancellation_file", money.file_or_none),
    "language": Setting("language", read.choice(*get_args(LanguageCode))),
    "crew_language": Setting("crew_language", read.choice(*get_args(CrewLanguage))),
}
CHANGE = {
    "labor_rate_per_hour": Setting("labor_rate_per_hour", read.same_or(read.number)),
    "materials_markup_pct": Setting("materials_markup_pct", read.same_or(read.percent(MOST_PCT))),
    "trip_charge": Setting("trip_charge", read.same_or(read.number)),
    "minimum_charge": Setting("minimum_charge", read.number),
    "handling": Setting("handling", read.number),
    "credit_pct": Setting("credit_pct", read.percent(ALL_PCT)),
    "materials_bought": Setting("materials_bought", read.flag),
}
COMPARE = {
    "own_hour": Setting("own_hour", read.number),
    "hire_own_hours": Setting("hire_own_hours", read.number),
}
LEDGER = {
    "labor_cost_per_hour": Setting("labor_cost_per_hour", read.burdened_or(read.number)),
    "credibility_jobs": Setting("credibility_jobs", read.number),
}
# Keys of [conditions] are what a survey can tell about a place; each has a factor on hours.
CONDITIONS = {
    key: Setting(key, read.factor)
    for key in ("occupied-room", "plaster", "exterior-insulated", "upper-storey", "first-time")
}
RISK = {
    "draws": Setting("draws", read.whole(LEAST_DRAWS, MOST_DRAWS)),
    "seed": Setting("seed", read.whole(0, MOST_SEED)),
    "shape": Setting("shape", read.choice("triangular", "pert")),
    "correlation_pct": Setting("correlation_pct", read.percent(MOST_CORRELATION_PCT)),
    "price_low_pct": Setting("price_low_pct", read.percent(ALL_PCT)),
    "price_high_pct": Setting("price_high_pct", read.percent(MOST_PCT)),
    "waste_low_pct": Setting("waste_low_pct", read.percent(ALL_PCT)),
    "waste_high_pct": Setting("waste_high_pct", read.percent(MOST_PCT)),
    "usual": Setting("usual", risk_readers.risks),
}
CALENDAR = {
    "crew": Setting("crew", read.whole(1, MOST_COUNT)),
    "hours_per_day": Setting("day_h", risk_readers.day_hours),
    "lost_hours_per_day": Setting("lost_h", risk_readers.lost_hours),
    "day_measure": Setting("day_measure", read.choice("whole-day", "on-the-tools")),
    "availability_pct": Setting("availability_pct", risk_readers.some_percent(ALL_PCT)),
    "delay_factor": Setting("delay_factor", read.factor),
    "setting_minutes": Setting("setting_min", risk_readers.one_of(20, 45, 90)),
    "inspection_wait_days": Setting("inspection_wait_days", read.whole(0, MOST_DAYS)),
    "workdays": Setting("workdays", risk_readers.weekdays),
    "days_off": Setting("days_off", risk_readers.dates),
}
SECTIONS = {
    "shop": SHOP, "practice": PRACTICE, "price": PRICE, "rate": RATE, "tax": TAX, "terms": TERMS,
    "change": CHANGE,
    "conditions": CONDITIONS, "risk": RISK, "calendar": CALENDAR,
    "compare": COMPARE, "ledger": LEDGER,
}  # fmt: skip

# May stand in the place of the markup; it is turned into one.
MARGIN_SETTING = Setting("materials_margin_pct", read.margin)
SETTINGS: dict[str, Setting] = {
    f"{section}.{key}": setting
    for section, keys in SECTIONS.items()
    for key, setting in keys.items()
} | {MARGIN: MARGIN_SETTING}
