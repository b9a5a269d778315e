"""Faults put in on purpose: people, their hours, where they are."""

from good_plan import ANN, BEN, DAY, at, box, task, walk
from spoiling import area, day, move_stroke, piece, spoils, strip, walks


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


@spoils("work_lies_on_site_days")
def somebody_works_who_does_not_come(p):
    day(p, "wed")["people"] = [ANN]


@spoils("work_lies_on_site_days")
def a_stranger_comes(p):
    day(p, "wed")["people"].append("Zoe")


@spoils("work_lies_on_site_days")
def nobody_comes(p):
    day(p, "wed")["people"] = []


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


@spoils("nobody_stands_on_wet_boards")
def somebody_waits_on_the_last_board(p):
    strip(p, 2).update(outline=box(0, 0, 6, 1.26), boards=[1, 9])
    strip(p, 3).update(outline=box(0, 1.26, 6, 1.4), boards=[10, 10])
    piece(p, "cut-in", "Deck", n=4).update(task="wait", area=None, coat=None, n=None)
    walks(p, "thu", ANN, "09:10")["start"] = at("thu", "09:20")


@spoils("nobody_is_trapped")
def the_porch_is_laid_towards_the_wall(p):
    a, b = strip(p, 2), strip(p, 3)
    a["outline"], b["outline"] = b["outline"], a["outline"]
    a["boards"], b["boards"] = b["boards"], a["boards"]


@spoils("nobody_is_trapped")
def the_deck_is_laid_while_somebody_is_on_the_porch(p):
    walks(p, "thu", ANN, "09:10")["start"] = at("thu", "09:45")
