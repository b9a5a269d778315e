"""Faults put in on purpose: strips, wet edges, wiping."""

from good_plan import BEN, DAY, at, box, task
from spoiling import area, coat, move_stroke, piece, spoils, strip


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


@spoils("laid_within_reach")
def laid_from_the_ground_with_a_short_pole(p):
    strip(p, 5)["lay"]["from"] = "ground"
    p["rules"]["reach_m"] = 1


@spoils("nobody_is_trapped")
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
def a_part_of_two_pieces(p):
    for n, part in ((4, 1), (5, 2), (6, 1), (7, 2)):
        strip(p, n)["part"] = part
    coat(p, "Deck")["part"] = 1
    p["coats"].append(dict(coat(p, "Deck"), part=2))


@spoils("parts_meet_at_joints")
def two_parts_of_one_number(p):
    coat(p, "Deck")["part"] = 1
    p["coats"].append(dict(coat(p, "Deck")))


@spoils("strips_pour_something")
def a_strip_without_litres(p):
    strip(p, 4)["litres"] = 0


@spoils("strips_pour_something")
def one_strip_takes_all_the_oil(p):
    strip(p, 4)["litres"] = 5
