"""Falsehoods about notes, terms, the ledger, what is kept off, and an own drive."""
import json
from datetime import datetime
from pathlib import Path

from falsehood import plants


def note(w, says, shape, **own):
    """Adds a note to the wish's file, and tells the loop file so."""
    path = Path(w.words[w.words.index("--notes") + 1])
    notes = json.loads(path.read_text(encoding="utf-8"))
    kind = "Point" if not isinstance(shape[0], list) else "LineString"
    notes["features"].append({"type": "Feature", "geometry": {"type": kind, "coordinates": shape},
                              "properties": {"says": says, "seen": "2026-10-03", **own}})
    other = w.folder / "spoilt.geojson"
    other.write_text(json.dumps(notes), encoding="utf-8")
    w.say("--notes", str(other))


def line_of(w, i):
    """A line along a stretch, longitude first."""
    stretch = w.stretches[i]
    a, b = sorted((stretch["from_index"], stretch["to_index"]))
    return [list(w.ground.at(n)[::-1]) for n in w.ground.map.ways[stretch["way"]].nodes[a:b + 1]]


def a_long_one(w, test=lambda tags: True):
    """The number of a long stretch of a street without another one close beside it."""
    return next(i for i, s in enumerate(w.stretches) if 3 < i < len(w.stretches) - 3 and s["metres"] > 120
                and len(w.ground.directions(s["way"])) == 2 and test(w.tags(s)))


@plants("wish: notes", "files")
def other_notes(w):
    """notes other than those the loop was made with"""
    w.answer["notes"]["sha256"] = "0" * 64


@plants("wish: notes", "files")
def notes_forgotten(w):
    """notes that the loop file doesn't name"""
    w.answer["notes"] = None


@plants("noted: shut", "files")
def through_what_is_never_driven(w):
    """a road driven that a note keeps off"""
    note(w, "never", line_of(w, a_long_one(w)))


@plants("noted: shut", "files")
def through_what_is_closed(w):
    """a road driven on a day on which a note closes it"""
    note(w, "closed", line_of(w, a_long_one(w)), **{"from": "2026-11-20", "until": "2026-11-27"})


@plants("noted: limit", "files")
def another_limit_noted(w):
    """the map's limit where another one is noted"""
    note(w, "limit", line_of(w, a_long_one(w)), limit=10, unit="mph")


@plants("noted: limit", "files")
def a_limit_nobody_noted(w):
    """a noted limit without a note"""
    w.stretches[a_long_one(w)]["limit"] = {"value": 50, "unit": "mph", "confidence": "noted"}


@plants("limit", "good")
def a_noted_limit(w):
    """a noted limit where there are no notes"""
    w.stretches[5]["limit"]["confidence"] = "noted"


@plants("noted: run", "files")
def a_note_unheard(w):
    """a narrow road noted and not told"""
    i = a_long_one(w, lambda tags: "width" not in tags)
    note(w, "practice", line_of(w, i), kind="tram")


@plants("noted: not", "files")
def told_all_the_same(w):
    """what a note denies told all the same"""
    row = w.a_pass(lambda row: row["kind"] in ("twenty-zone", "country-road", "one-way", "twenty-limit")
                   and any(w.stretches[i]["metres"] > 60 for i in range(row["first"], row["last"] + 1)))
    i = next(i for i in range(row["first"], row["last"] + 1) if w.stretches[i]["metres"] > 60)
    note(w, "not", line_of(w, i), kind=row["kind"])


@plants("noted: pass", "files")
def a_pass_nobody_noted(w):
    """a noted pass without a note"""
    w.a_pass(lambda row: row["confidence"] == "inferred").update(
        confidence="noted", source={"type": "way", "id": w.stretches[5]["way"], "tag": "noted 2026-10-03: narrow"})


@plants("pass: noted", "good")
def a_noted_pass(w):
    """a noted pass where there are no notes"""
    w.passes[2]["confidence"] = "noted"


@plants("pull-up: noted", "files")
def a_place_nobody_noted(w):
    """a noted place to pull up without a note"""
    w.loop["pull_ups"][0]["why_legal"] = "noted 2026-10-03: pull-up"


@plants("wish: terms", "files")
def other_terms(w):
    """other school terms"""
    w.answer["wish"]["terms"][0]["first"] = "2026-01-01"


@plants("access", "files")
def shut_in_term(w):
    """a school street driven at an hour that is shut in term alone"""
    way = w.a_way(lambda t: "SH off" in t.get("motor_vehicle:conditional", ""))
    at = w.drive_along(way)
    eight = 35 * 60  # the loop starts at ten past eight: a quarter to nine
    for k in (at, at + 1):
        w.stretches[k]["arrive_s"] = {"low": eight, "likely": eight, "high": eight}


@plants("wish: ledger", "files")
def another_use(w):
    """a street driven less by the file than by the ledger"""
    w.answer["wish"]["street_use"][0]["month"] += 1


@plants("wish: ledger", "files")
def a_use_forgotten(w):
    """a quiet street of the ledger that the file forgets"""
    quiet = next(k for k, row in enumerate(w.answer["wish"]["street_use"]) if w.quiet(row["way"]))
    del w.answer["wish"]["street_use"][quiet]


@plants("quiet streets", "files")
def worn_out(w):
    """a street driven that the ledger leaves no more"""
    i = next(i for i, s in enumerate(w.stretches) if w.quiet(s["way"]) and w.is_far(s))
    day = datetime.fromisoformat(w.loop["start"]).date()
    path = w.folder / "worn.txt"
    path.write_text(f"{day} {w.stretches[i]['way']} 6\n", encoding="utf-8")
    w.say("--driven", str(path))


@plants("quiet streets", "good")
def three_times(w):
    """a quiet street driven more often than it may be"""
    i = next(i for i, s in enumerate(w.stretches) if w.quiet(s["way"]) and w.is_long(s))
    w.stretches[i:i] = [dict(w.stretches[i]) for _ in range(4)]


@plants("wish: caps", "good")
def caps_forgotten(w):
    """caps that the file forgets"""
    w.words += ["--street-passes", "1"]


@plants("wish: keep-offs", "files")
def kept_off_elsewhere(w):
    """another place to keep off"""
    w.answer["wish"]["keep_offs"][0]["outline"][0]["lat"] += 0.01


@plants("wish: keep-offs", "files")
def other_hours(w):
    """other hours to keep off"""
    w.answer["wish"]["keep_offs"][0]["hours"] = "Mo 05:00-06:00"


@plants("kept off", "files")
def through_the_area(w):
    """an area to keep off that is driven through"""
    lat, lon = w.ground.at(w.stretches[a_long_one(w)]["to"])
    w.words += ["--keep-off", ";".join(f"{lat + y:.6f},{lon + x:.6f}" for y, x in (
        (0.001, 0), (-0.001, 0.001), (-0.001, -0.001)))]


@plants("kept off", "files")
def along_the_street(w):
    """a street to keep off that is driven"""
    line = line_of(w, a_long_one(w, lambda tags: "name" in tags and tags["highway"] != "service"))
    lat, lon = ((a + b) / 2 for a, b in zip(line[0][::-1], line[1][::-1]))
    w.words += ["--keep-off", f"{lat:.6f},{lon:.6f} @ Mo-Su 08:00-09:30"]


@plants("kept off", "files")
def over_the_junction(w):
    """a junction to keep off that is driven over"""
    node = next(s["to"] for s in w.stretches[5:] if len(list(w.ground.arms_at(s["to"]))) > 3)
    w.words += ["--keep-off", "{:.7f},{:.7f}".format(*w.ground.at(node))]


@plants("wish: through", "own")
def another_point(w):
    """an own drive through another point"""
    w.answer["wish"]["through"][0]["lat"] += 0.01


@plants("through", "own")
def past_a_point(w):
    """an own drive that passes by a point"""
    points = w.words[w.words.index("--through") + 1].split(";")
    w.say("--through", ";".join(reversed(points)))
