"""Faults put in on purpose: when a coat is laid, what comes before it, what it costs."""

import json

from good_plan import ANN, BEN, DAY, at, task
from spoiling import area, coat, day, move, piece, spoils


@spoils("laid_in_fit_hours")
def a_coat_in_the_rain(p):
    for h in p["hours"]:
        if h["at"] == at("thu", "09:00"):
            h.update(fit=False, reasons=["rain"])


@spoils("coats_follow_each_other")
def the_second_coat_without_the_first(p):
    p["coats"].remove(coat(p, "Deck", 1))


@spoils("recoat_window_is_kept")
def the_second_coat_too_soon(p):
    for c in p["coats"]:
        c["recoat_from"] = at("sat", "08:00")


@spoils("recoat_window_is_kept")
def the_second_coat_too_late_without_sanding(p):
    for c in p["coats"]:
        c["recoat_until"] = at("thu", "23:00")


@spoils("recoat_window_is_kept")
def a_billed_pass_that_nobody_does(p):
    the_second_coat_too_late_without_sanding(p)
    p["extra_passes"] = [{"area": a, "coat": 2, "why": "late"} for a in ("Porch", "Deck", "Rail")]


@spoils("drying_has_one_clock")
def walked_on_sooner_than_the_data_sheet_says(p):
    coat(p, "Deck")["walk"] = at("thu", "20:00")


@spoils("drying_has_one_clock")
def the_cold_slows_nothing(p):
    for d in p["drying"]:
        d["dries"] = 0.5


@spoils("no_dust_beside_wet_coats")
def dust_is_blown_beside_a_wet_coat(p):
    p["tasks"].append(task("thu", "11:00", "11:10", "blow", [ANN], "Porch", 2))


@spoils("boards_are_not_bare_for_long")
def boards_are_bare_for_a_week(p):
    p["rules"]["coat_within_days"] = 0


@spoils("tape_stands_briefly")
def the_tape_stands_for_days(p):
    for t in p["tasks"]:
        if t["task"] == "mask":
            move(t, at("mon", "14:00"), at("mon", "14:15"))


@spoils("tape_stands_briefly")
def the_tape_comes_after_the_coat(p):
    piece(p, "mask", "Deck")["area"] = "Yard"
    p["tasks"].append(task("thu", "09:30", "09:40", "mask", [ANN], "Deck"))


@spoils("boards_are_blown_before_a_coat")
def nobody_blows_the_deck(p):
    p["tasks"] = [t for t in p["tasks"] if not (t["task"] == "blow" and t["area"] == "Deck" and t["coat"] == 2)]


@spoils("tasks_follow_each_other")
def fine_grit_before_coarse(p):
    a, b = [t for t in p["tasks"] if t["task"] == "sand" and t["area"] == "Deck"]
    a["grit"], b["grit"] = b["grit"], a["grit"]


@spoils("tasks_follow_each_other")
def washed_after_sanding(p):
    piece(p, "wash", "Deck").update(start=at("wed", "13:15"), end=at("wed", "13:45"))


@spoils("washed_boards_dry")
def sanded_on_wet_boards(p):
    p["boards_dry"][2]["dry"] = at("thu", "08:00")
    p["boards_dry"][1]["dry"] = at("thu", "08:00")


@spoils("washed_boards_dry")
def boards_dry_in_an_hour(p):
    for b in p["boards_dry"]:
        b["dry"] = at("mon", "11:30")


@spoils("dry_work_keeps_out_of_the_rain")
def sanded_in_the_rain(p):
    for h in p["hours"]:
        if h["at"] == at("wed", "10:00"):
            h.update(fit=False, reasons=["rain"])


@spoils("top_down")
def the_deck_before_the_rail_above_it(p):
    area(p, "Rail")["order"] = 4


@spoils("top_down")
def the_lower_deck_first(p):
    area(p, "Deck")["order"], area(p, "Porch")["order"] = 2, 3


@spoils("behind_before_in_front")
def the_way_out_is_coated_first(p):
    area(p, "Deck")["order"], area(p, "Porch")["order"] = 2, 3


@spoils("last_times_hold")
def the_coat_begins_after_the_last_start(p):
    day(p, "thu")["last_start"] = at("thu", "08:30")


@spoils("last_times_hold")
def the_last_stroke_leaves_no_time_to_wipe(p):
    day(p, "thu")["last_stroke"] = at("thu", "16:00")


@spoils("tools_do_not_clash")
def an_electric_sander_in_the_wash_water(p):
    p["tasks"].append(task("mon", "09:30", "10:00", "sand", [BEN], "Deck", grit=60))


@spoils("the_site_is_not_left_for_weeks")
def washed_three_weeks_before_anything_else(p):
    early = json.loads(json.dumps(p).replace(DAY["mon"], "2027-05-24"))
    for date in ("2027-05-26", "2027-05-27"):
        early["days"].append({**day(p, "tue"), "date": date})
        early["hours"] += [{**h, "at": h["at"].replace(DAY["thu"], date)} for h in p["hours"] if h["at"].startswith(DAY["thu"])]
    p.update(early)


@spoils("days_are_complete")
def a_day_is_missing(p):
    p["days"].remove(day(p, "tue"))


@spoils("visits_are_counted")
def a_visit_is_not_counted(p):
    p["cost"]["site_days"] = 3


@spoils("paid_minutes_are_counted")
def idle_minutes_are_not_paid(p):
    p["cost"]["person_minutes"] -= 60


@spoils("costs_add_up")
def the_total_is_too_small(p):
    p["cost"]["total"] -= 1


@spoils("costs_add_up")
def hours_are_paid_at_another_rate(p):
    p["cost"]["per_person_hour"] = 20


@spoils("runners_up_cost_more")
def a_cheaper_calendar_was_left(p):
    p["runners_up"][0]["cost"] = 10


@spoils("all_work_is_done_once")
def half_the_sanding_is_left_out(p):
    next(w for w in p["work"] if w["task"] == "sand")["person_minutes"] *= 2


@spoils("all_work_is_done_once")
def a_day_is_a_quarter_of_an_hour_tighter(p):
    next(d for d in p["days"] if d["home"])["tighter_minutes"] = 15


@spoils("all_work_is_done_once")
def a_deck_is_fixed_twice(p):
    p["tasks"].append(task("wed", "13:30", "13:45", "fix", [ANN], "Deck"))


@spoils("coats_not_planned_are_named")
def a_third_coat_is_forgotten(p):
    p["work"].append({"task": "coat", "area": "Deck", "coat": 3, "person_minutes": 40})
