"""Falsehoods about the wish, what of it is met, and what is told beside the loop."""
import copy

from falsehood import plants


@plants("wish: home")
def another_home(w):
    """a home that isn't the one asked for"""
    w.answer["wish"]["home"]["lat"] += 0.001


@plants("start")
def far_from_home(w):
    """a loop from a door a kilometre away"""
    lat, lon = map(float, w.words[w.words.index("--home") + 1].split(","))
    w.say("--home", f"{lat + 0.009:.6f},{lon:.6f}")


@plants("end")
def wrong_end(w):
    """a loop home where another end was asked for"""
    lat, lon = map(float, w.words[w.words.index("--home") + 1].split(","))
    w.say("--end", f"{lat + 0.009:.6f},{lon:.6f}")


@plants("back at the door")
def short_of_home(w):
    """an end thirty metres before the door"""
    last = w.stretches[-1]
    last["partial_m"] = [last["partial_m"][0], max(0, last["partial_m"][1] - 30)]


@plants("wish: wants")
def another_want(w):
    """a want the command line didn't name"""
    w.answer["wish"]["wants"][0]["count"] = 7


@plants("wish: level")
def another_level(w):
    """another learner's level"""
    w.answer["wish"]["level"] = 1


@plants("wish: pace")
def another_pace(w):
    """times of a slower learner"""
    w.answer["wish"]["pace"] = 1.3


@plants("wish: avoids")
def avoids_forgotten(w):
    """an avoided kind the file forgets"""
    w.say("--avoid", "ford")


@plants("avoided")
def avoided_driven(w):
    """a kind driven that was to be avoided"""
    w.say("--avoid", "emerge")


@plants("avoided")
def avoided_movement_driven(w):
    """a movement driven that was to be avoided"""
    row = next(row for row in w.answer["loops"][0]["passes"] if row["movement"])
    w.say("--avoid", f"{row['kind']}:{row['movement']}")
    w.answer["wish"]["avoids"] = [{"kind": row["kind"], "movement": row["movement"]}]


@plants("wish: start")
def another_day(w):
    """another day"""
    w.answer["wish"]["start"] = w.answer["wish"]["start"].replace("-27T", "-28T")


@plants("wish: minutes")
def another_length(w):
    """another length of the lesson"""
    w.answer["wish"]["minutes"] = 61


@plants("met: got")
def one_too_many(w):
    """a count one too many"""
    w.loop["met"][0]["got"] += 1


@plants("met: wants")
def asked_less(w):
    """fewer asked than were"""
    w.loop["met"][1]["asked"] = 99


def practised(w):
    return w.loop["met"][0]["practised"]


@plants("practised: order")
def practised_twice(w):
    """a pass that counts twice"""
    practised(w).append(practised(w)[-1])


@plants("practised: fits")
def practised_another(w):
    """a pass of another kind that counts"""
    other = next(k for k, row in enumerate(w.passes) if "roundabout" not in row["kind"]
                 and k > practised(w)[0])
    w.loop["met"][0]["practised"] = sorted(set(practised(w)) | {other})


@plants("practised: spaced")
def practised_at_once(w):
    """passes that count too soon after each other"""
    w.say("--spacing", "roundabout=10")
    w.loop["met"][0]["practised"] = [k for k, row in enumerate(w.passes) if "roundabout" in row["kind"]
                                     and "mini" not in row["kind"] and row["movement"] != "round"]


@plants("practised: caps")
def practised_too_often(w):
    """a place that counts more often than asked for"""
    w.say("--place-passes", "1")


@plants("bound")
def bound_below(w):
    """a bound below what was found"""
    w.loop["certificate"]["bound"] = w.loop["certificate"]["value"] - 1


@plants("gap")
def another_gap(w):
    """a gap that isn't bound by value"""
    known = w.loop["certificate"]
    known["bound"], known["gap"] = 2 * abs(known["value"]) + 1, 0.3


@plants("value")
def worth_more(w):
    """a worth of one more pass"""
    w.loop["certificate"]["value"] += 1000


@plants("hardness")
def too_hard(w):
    """a pass harder than the level allows"""
    w.a_pass(lambda row: "roundabout" not in row["kind"])["hardness"] = 6


@plants("exit code")
def another_exit_code(w):
    """success told by the exit code, and a shortfall by the file"""
    w.answer["shortfall"] = {"why": "no reason", "missing": []}


@plants("met")
def not_met(w):
    """a want that isn't met, and nothing says so"""
    w.loop["met"][1]["got"] = 0


@plants("alternatives")
def the_same_again(w):
    """an alternative that is the same loop"""
    w.answer["loops"].append(copy.deepcopy(w.loop))


@plants("way home: end")
def home_to_nowhere(w):
    """a way home that ends on the way"""
    home = w.loop["ways_home"][0]
    home["stretches"] = home["stretches"][:len(home["stretches"]) // 2]


@plants("way home: time")
def home_in_no_time(w):
    """a way home in no time"""
    w.loop["ways_home"][0]["seconds"] = 1.0


@plants("way home: place")
def home_from_nowhere(w):
    """a way home from a stretch that isn't there"""
    w.loop["ways_home"][0]["from_stretch"] = len(w.stretches) + 1


@plants("joined")
def home_over_a_gap(w):
    """a way home with a gap"""
    del w.loop["ways_home"][0]["stretches"][1]


@plants("pull-up: place")
def beyond_its_stretch(w):
    """a place to pull up beyond its stretch"""
    w.loop["pull_ups"][0]["at_m"] += 2000


@plants("pull-up: side")
def on_the_right(w):
    """a place to pull up on the wrong side"""
    w.loop["pull_ups"][0]["side"] = "right"


@plants("pull-up: clear of junctions")
def at_a_junction(w):
    """a place to pull up at a junction"""
    streets = [i for i, s in enumerate(w.stretches) if len(
        [way for way in w.ground.ways_at[s["to"]] if w.ground.tags(way)["highway"] != "service"]) > 2]
    w.loop["pull_ups"][0].update(stretch=streets[3], at_m=w.stretches[streets[3]]["metres"] - 1)


@plants("stops after: passes")
def a_stop_forgotten(w):
    """a hard pass without a word of where to stop behind it"""
    del w.loop["stops_after"][1]


@plants("stops after: behind")
def a_stop_too_late(w):
    """a place to stop nine minutes behind a hard pass"""
    next(row for row in w.loop["stops_after"] if row["pull_up"] is not None)["seconds"] = 540.0


def short_of(w, **told):
    """Makes the answer one that falls short of one kind."""
    missing = {"kind": "zebra", "movement": None, "asked": 2, "got": 0, "nearest": None,
               "nearest_minutes": None, "needs_minutes": None, "why": "none was found"}
    missing.update(told)
    w.words += ["--want", "zebra=2"]
    w.answer["shortfall"] = {"why": missing["why"], "missing": [missing]}
    w.exit_code = 4


@plants("shortfall: no such")
def zebras_denied(w):
    """zebras denied that the map has"""
    short_of(w, why="the map has no zebra in this area")


@plants("shortfall: nearest minutes")
def nearer_than_it_is(w):
    """the nearest nearer than anyone can drive"""
    far = max(w.ground.ways_at, key=lambda n: abs(w.ground.at(n)[0] - 54.30))
    short_of(w, nearest={"type": "node", "id": far}, nearest_minutes=0.5, needs_minutes=1.0)


@plants("shortfall: needs")
def there_and_not_back(w):
    """there and home quicker than there"""
    short_of(w, nearest={"type": "node", "id": w.stretches[5]["to"]}, nearest_minutes=30.0,
             needs_minutes=10.0)


@plants("shortfall: missing")
def enough_and_missing(w):
    """missing told of what there is enough of"""
    short_of(w, got=2)


@plants("shortfall: fewer")
def other_numbers(w):
    """other numbers in words than in figures"""
    short_of(w, why="1 of 2 zebra found that fit into the minutes")


@plants("shortfall: avoided")
def avoided_by_nobody(w):
    """avoided told of what nobody avoids"""
    short_of(w, why="zebra is wanted and avoided by the same wish")


@plants("shortfall: too far")
def near_enough(w):
    """too far told of what is near enough"""
    short_of(w, why="the nearest zebra is 2 minutes away; there and home takes 4 of 40 minutes",
             nearest={"type": "node", "id": w.stretches[5]["to"]}, nearest_minutes=2.0,
             needs_minutes=4.0)
