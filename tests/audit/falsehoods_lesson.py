"""Falsehoods about parts, who drives, planned stops and manoeuvres."""
from falsehood import plants


# --- in a lesson of parts, driven out to and back from ----------------------------------------------------

def part(w, p=0):
    return w.loop["parts"][p]


@plants("wish: parts", "parts")
def another_part(w):
    """a part of other minutes"""
    w.answer["wish"]["parts"][0]["minutes"] += 5


@plants("wish: drive out", "parts")
def another_seat(w):
    """another place where the learner begins"""
    w.answer["wish"]["drive_out"]["lat"] += 0.01


@plants("wish: drive back", "parts")
def a_seat_forgotten(w):
    """a place where the learner ends that the file forgets"""
    del w.answer["wish"]["drive_back"]


@plants("practice: seats", "parts")
def seats_elsewhere(w):
    """a learner who begins far from the place asked"""
    w.loop["practice"]["first"] = part(w)["first"] = len(w.stretches) // 3


@plants("practice: place", "parts")
def practice_untold(w):
    """practice that isn't told"""
    del w.loop["practice"]


@plants("practice: whole", "good")
def practice_cut(w):
    """an instructor who drives without having to"""
    w.loop["practice"] = {"first": 3, "last": len(w.stretches) - 1}


@plants("part: place", "parts")
def a_gap_between_parts(w):
    """a gap between two parts"""
    part(w, 1)["first"] += 1


@plants("parts", "parts")
def a_part_left_out(w):
    """a part left out"""
    w.loop["parts"].pop()


@plants("part: minutes", "parts")
def parts_of_other_lengths(w):
    """a first part that takes half of the second's time"""
    middle = (part(w, 1)["first"] + part(w, 1)["last"]) // 2
    part(w)["last"], part(w, 1)["first"] = middle, middle + 1


@plants("part: roads", "parts")
def busy_in_the_quiet_part(w):
    """a main road in the part of quiet streets"""
    w.words = [word.replace("busier", "quiet") for word in w.words]
    w.answer["wish"]["parts"][1]["roads"] = "quiet"


@plants("part: hardest", "parts")
def hard_in_a_part(w):
    """a part harder than it may be"""
    w.words = [word.replace("busier:", "busier hardest 1:") for word in w.words]


@plants("met: got", "parts")
def a_pass_of_another_part(w):
    """a pass that counts for another part's want"""
    part(w)["met"][0]["got"] += 1


@plants("met", "parts")
def a_part_unmet(w):
    """a part whose want isn't met, and nothing says so"""
    part(w)["met"][0]["got"] = 0


@plants("wish: easy first", "good")
def ease_forgotten(w):
    """easy first, which the file forgets"""
    w.words.append("--easy-first")


@plants("met", "good")
def hard_at_once(w):
    """what is hard at once in a lesson that was to be easy first"""
    w.words.append("--easy-first")
    w.answer["wish"]["easy_first"] = True
    next(row for row in w.passes if row["kind"] != "independent-stretch")["hardness"] = 5


# --- planned stops ----------------------------------------------------------------------------------------

def stop(w, purpose):
    return next(one for one in w.loop["pull_ups"] if one["for"] == purpose)


@plants("wish: stops", "stops")
def another_brief(w):
    """briefs of another length"""
    w.answer["wish"]["stops"]["brief_minutes"] = 9


@plants("stop: brief", "stops")
def a_brief_too_long(w):
    """a brief three times as long as asked"""
    stop(w, "brief")["seconds"] *= 3


@plants("stop: brief", "stops")
def a_brief_too_late(w):
    """a brief behind the first pass of what is new"""
    stop(w, "brief")["stretch"] = len(w.stretches) - 3


@plants("stop: talk", "stops")
def a_talk_at_the_beginning(w):
    """a talk long before the end"""
    stop(w, "talk")["stretch"] = 2


@plants("stop: place", "stops")
def a_stop_at_the_door(w):
    """a stop on the stretch of the door"""
    stop(w, "talk")["stretch"] = len(w.stretches) - 1


@plants("stop: for", "stops")
def a_stop_for_nothing(w):
    """minutes at a place for no purpose"""
    next(one for one in w.loop["pull_ups"] if one["for"] is None)["seconds"] = 240.0


@plants("stop: leave by", "stops")
def leave_too_late(w):
    """a moment to drive on that is ten minutes late"""
    stop(w, "talk")["leave_by_s"] += 600


@plants("stops", "stops")
def stops_not_summed(w):
    """a sum of stops that leaves one out"""
    w.loop["stop_seconds"] -= 240


@plants("speed", "stops")
def a_stop_in_no_time(w):
    """a stop after which nothing is later"""
    i = stop(w, "brief")["stretch"]
    for one in w.stretches[i + 1:]:
        for name in one["arrive_s"]:
            one["arrive_s"][name] -= stop(w, "brief")["seconds"]


@plants("met", "stops")
def a_talk_forgotten(w):
    """a talk without a place, and nothing says so"""
    stop(w, "talk").update({"for": None, "seconds": 0})


@plants("shortfall: stops", "stops")
def a_stop_denied(w):
    """a stop told to have no place, which has one"""
    w.answer["shortfall"] = {"why": "a planned stop has no place to pull up", "missing": [],
                             "stops": ["loop 1: the talk near the end has no place"]}


@plants("shortfall: of something", "stops")
def a_shortfall_of_nothing(w):
    """a shortfall where all is met"""
    w.answer["shortfall"], w.exit_code = {"why": "too little", "missing": []}, 4


# --- manoeuvres -------------------------------------------------------------------------------------------

@plants("manoeuvre: wanted", "stops")
def an_unasked_manoeuvre(w):
    """a manoeuvre that nobody asked for"""
    at = next(k for k, word in enumerate(w.words) if word.startswith("parallel-park"))
    del w.words[at - 1:at + 1]


@plants("manoeuvre: minutes", "stops")
def a_quick_manoeuvre(w):
    """a manoeuvre done in a minute"""
    w.a_pass(lambda row: row["kind"] == "parallel-park")["stop_s"] = 60.0


@plants("manoeuvre: times", "stops")
def a_manoeuvre_too_often(w):
    """a manoeuvre done more often than asked"""
    w.loop["met"][-1]["got"] += 1


@plants("pass: of its kind", "stops")
def parked_on_a_main_road(w):
    """parallel parking on a main road"""
    row = w.a_pass(lambda row: row["kind"] == "parallel-park")
    row["first"] = row["last"] = next(i for i, s in enumerate(w.stretches) if w.tags(s)["highway"] in (
        "primary", "secondary"))
