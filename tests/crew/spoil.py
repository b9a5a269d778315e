"""Faults put into a good plan on purpose: each must be noticed by the rule it breaks. Also proves that no rule sleeps."""

import copy

import rules
from good_plan import ANN, BEN, DAY, at, box, good_plan, task, walk
from simulator import faults_of

SPOILS = []


def spoils(rule):
    """Marks a function that spoils a plan so that a rule has to notice."""
    def mark(change):
        SPOILS.append((rule, change))
        return change
    return mark


def piece(plan, name, area=None, coat=None, n=None, person=None):
    """The first piece of a kind."""
    return next(t for t in plan["tasks"] if t["task"] == name and area in (None, t["area"]) and coat in (None, t["coat"])
                and n in (None, t.get("n")) and (person is None or person in t["people"]))


def strip(plan, n, day="thu"):
    return next(s for s in plan["strips"] if s["n"] == n and s["date"] == DAY[day])


def coat(plan, area, number=1):
    return next(c for c in plan["coats"] if (c["area"], c["coat"]) == (area, number))


def day(plan, name):
    return next(d for d in plan["days"] if d["date"] == DAY[name])


def walks(plan, name, person, clock):
    return next(w for w in plan["walks"] if w["person"] == person and w["start"] == at(name, clock))


def move(thing, start, end):
    thing["start"], thing["end"] = start, end


def move_stroke(plan, n, what, start, end, name="thu"):
    """Moves cutting in, laying or wiping of a strip together with the piece in the crew's day."""
    kind = {"cut_in": "cut-in", "lay": "coat", "wipe": "wipe"}[what]
    for t in plan["tasks"]:
        if t["task"] == kind and t.get("n") == n and t["start"] == strip(plan, n, name)[what]["start"]:
            move(t, at(name, start), at(name, end))
    move(strip(plan, n, name)[what], at(name, start), at(name, end))


def area(plan, name):
    return next(a for a in plan["areas"] if a["name"] == name)


# ---- people and hours

@spoils("times_on_five_minutes")
def a_piece_begins_at_an_odd_minute(p):
    piece(p, "fix")["start"] = at("wed", "08:33")


@spoils("times_on_five_minutes")
def a_walk_begins_at_an_odd_minute(p):
    p["walks"][0]["start"] = at("mon", "09:01")


@spoils("pieces_have_a_length")
def a_piece_ends_before_it_begins(p):
    piece(p, "fix")["end"] = at("wed", "08:25")


@spoils("pieces_have_a_length")
def a_stranger_is_given_work(p):
    piece(p, "fix")["people"] = ["Zoe"]


@spoils("nobody_does_two_things")
def somebody_wipes_and_lays_at_once(p):
    strip(p, 3)["wipe"]["people"] = piece(p, "wipe", n=3)["people"] = [BEN]
    move_stroke(p, 3, "wipe", "09:30", "09:40")


@spoils("nobody_is_lost")
def an_hour_of_somebody_is_not_told(p):
    p["tasks"].remove(piece(p, "fix", "Porch"))


@spoils("nobody_is_lost")
def somebody_goes_early(p):
    piece(p, "pack-down")["people"] = [BEN]


@spoils("work_lies_on_site_days")
def work_on_a_day_without_crew(p):
    p["tasks"].append(task("tue", "08:00", "09:00", "fix", [ANN], "Deck"))


@spoils("work_lies_on_site_days")
def the_crew_comes_for_nothing(p):
    day(p, "tue").update(arrive=at("tue", "08:00"), home=at("tue", "09:00"))
    p["tasks"] += [task("tue", "08:00", "08:30", "set-up", [ANN, BEN]), task("tue", "08:30", "09:00", "pack-down", [ANN, BEN])]


@spoils("home_within_hours")
def home_too_late(p):
    day(p, "wed")["home"] = at("wed", "16:45")


@spoils("home_within_hours")
def on_site_before_the_hours(p):
    day(p, "wed")["arrive"] = at("wed", "07:30")


@spoils("days_are_set_up_and_packed")
def nobody_packs_down(p):
    piece(p, "pack-down")["task"] = "wait"


@spoils("days_are_set_up_and_packed")
def nobody_sets_up(p):
    piece(p, "set-up")["task"] = "wait"


@spoils("breaks_are_kept")
def a_break_is_worked_through(p):
    piece(p, "rest")["task"] = "wait"


@spoils("breaks_are_kept")
def a_break_comes_at_the_end_of_a_long_day(p):
    p["tasks"].remove(piece(p, "rest"))
    p["tasks"].append(task("wed", "14:15", "14:45", "rest", [ANN, BEN]))
    day(p, "wed")["home"] = at("wed", "14:45")


@spoils("no_work_on_days_off")
def work_on_a_public_holiday(p):
    p["holidays"].append({"date": DAY["thu"], "name": "Some Day"})


@spoils("no_work_on_days_off")
def work_on_a_day_off(p):
    day(p, "thu")["off"] = True


@spoils("pieces_are_worth_starting")
def five_minutes_of_a_task_that_goes_on_later(p):
    first = piece(p, "fix", "Deck")
    p["tasks"].append(dict(first, end=at("wed", "08:35")))
    first["start"] = at("wed", "08:45")


# ---- where people are

@spoils("walks_join_up")
def somebody_jumps_from_area_to_area(p):
    p["walks"].remove(walks(p, "wed", ANN, "11:30"))


@spoils("walks_join_up")
def somebody_stays_on_the_deck_overnight(p):
    p["walks"].remove(walks(p, "fri", BEN, "10:00"))


@spoils("walks_follow_ways")
def a_walk_through_the_wall(p):
    walks(p, "mon", ANN, "09:00")["over"] = []


@spoils("areas_have_a_way")
def a_deck_leads_nowhere(p):
    area(p, "Deck")["ways"].pop(0)


@spoils("areas_have_a_way")
def a_way_lies_beside_the_deck(p):
    area(p, "Deck")["ways"][0]["at"] = [9, 9]


@spoils("works_where_they_stand")
def work_on_the_deck_from_the_ground(p):
    for person in (ANN, BEN):
        p["walks"] = [w for w in p["walks"] if not (w["person"] == person and w["start"][:10] == DAY["wed"])]


@spoils("works_where_they_stand")
def wiping_from_the_ground_while_on_the_deck(p):
    walks(p, "thu", ANN, "09:50")["start"] = at("thu", "10:30")


@spoils("nobody_rests_on_the_work")
def a_break_on_the_wet_deck(p):
    p["walks"] = [w for w in p["walks"] if not (w["person"] == BEN and w["start"] == at("thu", "10:00"))]
    p["tasks"].append(task("thu", "11:00", "11:10", "rest", [BEN]))


@spoils("nobody_crosses_wet_boards")
def over_the_deck_an_hour_after_its_coat(p):
    p["walks"] += [walk("thu", "11:00", ANN, "ground", "Porch", ["Deck"])]


@spoils("nobody_stands_on_wet_boards")
def somebody_waits_on_the_wet_deck(p):
    walks(p, "thu", BEN, "10:00")["start"] = at("thu", "11:00")


@spoils("nobody_stands_on_wet_boards")
def the_next_day_before_the_coat_below_is_ready(p):
    for c in p["coats"]:
        if c["coat"] == 1:
            c["recoat_from"] = at("fri", "09:45")


@spoils("nobody_is_trapped_behind_a_strip")
def the_porch_is_laid_towards_the_wall(p):
    a, b = strip(p, 2), strip(p, 3)
    a["outline"], b["outline"] = b["outline"], a["outline"]
    a["boards"], b["boards"] = b["boards"], a["boards"]


@spoils("nobody_is_trapped_on_an_area")
def the_deck_is_laid_while_somebody_is_on_the_porch(p):
    walks(p, "thu", ANN, "09:10")["start"] = at("thu", "09:45")


# ---- strips

@spoils("strips_belong_to_coats")
def a_coat_without_strips(p):
    p["strips"] = [s for s in p["strips"] if s["area"] != "Rail"]


@spoils("strips_belong_to_coats")
def a_coat_says_other_times_than_its_strips(p):
    coat(p, "Deck")["end"] = at("thu", "10:30")


@spoils("strips_are_numbered")
def two_strips_have_one_number(p):
    strip(p, 4)["n"] = 5


@spoils("strips_are_numbered")
def strips_are_not_laid_in_their_order(p):
    strip(p, 4)["n"], strip(p, 5)["n"] = 0, 4
    strip(p, 0)["n"] = 5


@spoils("strips_have_their_work")
def nobody_is_told_to_wipe(p):
    piece(p, "wipe", n=4)["task"] = "wait"


@spoils("strips_have_their_work")
def the_day_says_another_time_than_the_strip(p):
    strip(p, 4)["lay"]["start"] = at("thu", "09:15")


@spoils("strips_cover_the_area")
def some_boards_are_forgotten(p):
    strip(p, 7)["outline"] = box(0, 3.5, 6, 3.6)


@spoils("strips_cover_the_area")
def a_strip_lies_in_the_garden(p):
    strip(p, 7)["outline"] = box(0, 4.2, 6, 4.9)


@spoils("strips_take_boards_once")
def a_board_is_laid_twice(p):
    strip(p, 5)["boards"] = [5, 10]


@spoils("strips_take_boards_once")
def the_last_board_is_left_out(p):
    strip(p, 7)["boards"] = [16, 19]


@spoils("strips_lie_on_their_boards")
def a_strip_is_drawn_on_other_boards(p):
    strip(p, 4)["outline"], strip(p, 7)["outline"] = strip(p, 7)["outline"], strip(p, 4)["outline"]


@spoils("wet_edges_are_met")
def a_strip_comes_when_the_edge_has_dried(p):
    move_stroke(p, 7, "lay", "10:25", "10:35")


@spoils("wet_edges_are_met")
def on_a_hot_day_the_edge_is_too_old(p):
    for s in p["strips"]:
        s["open_minutes"] = 5


@spoils("a_strip_fits_its_open_time")
def the_open_time_is_longer_than_the_product_says(p):
    strip(p, 4)["open_minutes"] = 40


@spoils("cut_in_meets_the_coat")
def the_border_is_cut_in_too_early(p):
    move_stroke(p, 7, "cut_in", "09:10", "09:20")


@spoils("cut_in_meets_the_coat")
def the_border_is_cut_in_after_the_coat(p):
    move_stroke(p, 7, "cut_in", "10:00", "10:10")


@spoils("cut_in_one_strip_ahead")
def the_whole_border_first(p):
    for n in (4, 5, 6, 7):
        move_stroke(p, n, "cut_in", "09:10", "09:20")
        strip(p, n)["open_minutes"] = 200


@spoils("wiped_in_time")
def wiped_before_it_has_soaked_in(p):
    move_stroke(p, 7, "wipe", "10:10", "10:20")


@spoils("wiped_in_time")
def wiped_when_it_is_sticky(p):
    move_stroke(p, 2, "wipe", "11:20", "11:30")


@spoils("wiped_in_time")
def a_strip_is_never_wiped(p):
    strip(p, 2)["wipe"] = None


@spoils("wiped_from_a_dry_side")
def the_pole_is_too_short(p):
    p["rules"]["reach_m"] = 2


@spoils("wiped_from_a_dry_side")
def wiped_from_boards_that_are_all_laid(p):
    strip(p, 2)["wipe"]["from"] = "boards"


@spoils("last_strip_at_the_way_out")
def the_last_strip_is_far_from_the_way_out(p):
    area(p, "Deck")["ways"][0]["at"] = [0, 1.4]
    area(p, "Deck")["ways"][1]["at"] = [0, 1.4]


@spoils("coat_in_one_go")
def a_coat_goes_on_the_next_day(p):
    strip(p, 7)["date"] = DAY["fri"]


@spoils("coat_in_one_go")
def the_crew_rests_in_the_middle_of_a_deck(p):
    for n, start, end in ((6, "10:10", "10:20"), (7, "10:20", "10:30")):
        move_stroke(p, n, "lay", start, end)
    p["tasks"].append(task("thu", "09:40", "10:10", "rest", [BEN]))
    coat(p, "Deck")["end"] = at("thu", "10:30")


@spoils("parts_meet_at_joints")
def two_parts_without_a_joint(p):
    p["coats"].append(dict(coat(p, "Deck"), part=2))
    coat(p, "Deck")["part"] = 1


@spoils("strips_pour_something")
def a_strip_without_litres(p):
    strip(p, 4)["litres"] = 0


@spoils("strips_pour_something")
def one_strip_takes_all_the_oil(p):
    strip(p, 4)["litres"] = 5


# ---- coats

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


@spoils("days_are_complete")
def a_day_is_missing(p):
    p["days"].remove(day(p, "tue"))


# ---- money

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
def a_deck_is_fixed_twice(p):
    p["tasks"].append(task("wed", "13:30", "13:45", "fix", [ANN], "Deck"))


@spoils("coats_not_planned_are_named")
def a_third_coat_is_forgotten(p):
    p["work"].append({"task": "coat", "area": "Deck", "coat": 3, "person_minutes": 40})


def prove():
    """Spoils the good plan in every way; gives how many faults were put in, and what went unnoticed."""
    unnoticed = [f"the good plan: {sentence} [{rule}]" for rule, sentence in faults_of(good_plan())]
    for rule, change in SPOILS:
        plan = copy.deepcopy(good_plan())
        change(plan)
        if rule not in {name for name, _ in faults_of(plan)}:
            unnoticed.append(f"{change.__name__.replace('_', ' ')}: {rule} does not notice")
    proven = {rule for rule, _ in SPOILS}
    unnoticed += [f"no fault is put in for {check.__name__}" for check in rules.RULES if check.__name__ not in proven]
    return len(SPOILS), unnoticed
