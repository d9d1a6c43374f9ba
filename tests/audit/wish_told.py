"""The wish as the loop file repeats it, against the words it was asked with. DEVELOPERS.md, LOOP FILE."""
from datetime import datetime
from zoneinfo import ZoneInfo

from clock import zone_of
from files_given import sha256_of, terms_of, use_of
from second_reader import metres

SAME_M = 1
MOVED_M = 300  # to a road at most 150 m away, and to the middle of its piece when a junction is there
PLACES = ("home", "end", "drive_out", "drive_back")


def start_of(asked, region):
    """The instant of the start asked for; without an offset it is the area's clock."""
    moment = datetime.fromisoformat(asked.start)
    return moment if moment.tzinfo else moment.replace(tzinfo=ZoneInfo(zone_of(region)))


def wants_of(rows, count="count"):
    return [(row["kind"], row["movement"] or "", None if row[count] == "max" else row[count],
             row.get("verdict") or "", row.get("into") or "") for row in rows]


def same_place(told, asked):
    if told is None or asked is None:
        return told is asked
    return metres((told["lat"], told["lon"]), asked) < SAME_M


def same_places(told, asked):
    return len(told) == len(asked) and all(map(same_place, told, asked))


def same_minutes(told, asked):
    return told == asked if asked is not None else told is None


def parts_of(rows):
    return [(row["minutes"], row["roads"], row.get("hardest", 5), wants_of(row["wants"])) for row in rows]


def check(tally, told, asked, region):
    for name in PLACES:
        tally.check("wish: " + name.replace("_", " "), same_place(told.get(name), getattr(asked, name)),
                    told.get(name))
    tally.check("wish: through", same_places(told.get("through", []), asked.through), told.get("through"))
    tally.check("wish: start", datetime.fromisoformat(told["start"]) == start_of(asked, region),
                told["start"])
    tally.check("wish: minutes", same_minutes(told["minutes"], asked.minutes)
                and told["reserve_minutes"] == asked.reserve, told["minutes"], told["reserve_minutes"])
    tally.check("wish: level", told["level_given"] == (asked.level is not None)
                and told["level"] == (asked.level or 3), told["level"], told["level_given"])
    tally.check("wish: pace", abs(told.get("pace", 1) - asked.pace) < 0.005, told.get("pace"))
    tally.check("wish: wants", wants_of(told["wants"]) == [tuple(want) for want in asked.want],
                told["wants"])
    tally.check("wish: avoids", [(row["kind"], row.get("movement", "")) for row in told["avoids"]]
                == [tuple(one) for one in asked.avoid], told["avoids"])
    tally.check("wish: alternatives", told["alternatives"] == asked.alternatives)
    # Turning round is let unasked where nothing comes back otherwise.
    tally.check("wish: welcome", [kind for kind in told.get("welcome", []) if kind != "turn-in-road" or kind in asked.welcome]
                == asked.welcome, told.get("welcome"))
    tally.check("wish: spacings", [(row["kind"], row["seconds"]) for row in told.get("spacings", [])]
                == asked.spacing, told.get("spacings"))
    tally.check("wish: hardest", told.get("hardest", 5) == asked.hardest, told.get("hardest"))
    tally.check("wish: caps", (told.get("place_passes"), told.get("street_passes")) == (
        asked.place_passes, asked.street_passes), told.get("place_passes"), told.get("street_passes"))
    keep_offs(tally, told.get("keep_offs", []), asked.keep_off)
    takes = told.get("takes", [])
    tally.check("wish: takes", len(takes) == len(asked.take) and all(
        row["name"] == name and metres((row["at"]["lat"], row["at"]["lon"]), point) < MOVED_M
        for row, (name, point) in zip(takes, asked.take)), takes)
    lesson(tally, told, asked)


def keep_offs(tally, told, asked):
    """A point is moved to the road it means."""
    def same(row, one):
        if len(one.outline) > 1:
            return same_places(row["outline"], one.outline)
        return len(row["outline"]) == 1 and metres(
            (row["outline"][0]["lat"], row["outline"][0]["lon"]), one.outline[0]) < MOVED_M
    tally.check("wish: keep-offs", len(told) == len(asked) and all(
        same(row, one) and row.get("hours", "") == one.hours for row, one in zip(told, asked)), told)


def lesson(tally, told, asked):
    """Parts, planned stops, independent driving, who drives what."""
    tally.check("wish: parts", parts_of(told.get("parts", [])) == [
        (p.minutes, p.roads, p.hardest, [tuple(want) for want in p.wants]) for p in asked.part],
        told.get("parts"))
    tally.check("wish: easy first", told.get("easy_first", False) == asked.easy_first)
    stops = {"brief_minutes": asked.brief, "talk_minutes": asked.talk, "new_kinds": asked.new}
    plain = stops if asked.new or asked.talk else None
    own = told.get("stops")
    if own is not None and not asked.new:
        own = {**own, "brief_minutes": asked.brief}  # of no brief no length is asked
    tally.check("wish: stops", own == plain, told.get("stops"))
    tally.check("wish: independent", told.get("independent_minutes", 0) == asked.independent,
                told.get("independent_minutes"))


def check_files(tally, answer, asked, region, quiet):
    """Notes, terms and ledger are those of the files named. `quiet(way)`: True, False or None, unsure."""
    notes, told = answer["notes"], answer["wish"]
    tally.check("wish: notes", (notes["sha256"] if notes else None) == (
        sha256_of(asked.notes) if asked.notes else None), notes)
    terms = [(row["first"], row["last"]) for row in told.get("terms", [])]
    own = terms_of(asked.terms) if asked.terms else []
    tally.check("wish: terms", terms == [(str(a), str(b)) for a, b in own], terms)
    day = start_of(asked, region).date()
    uses = use_of(asked.driven, day) if asked.driven else {}
    rows = {row["way"]: (row["today"], row["month"]) for row in told.get("street_use", [])}
    for way in sorted(uses.keys() | rows.keys()):
        known = quiet(way)
        claim = rows.get(way) == uses.get(way) if known else way not in rows
        tally.check("wish: ledger", claim or (known is None and rows.get(way) in (None, uses.get(way))),
                    f"way/{way}: {rows.get(way)}, the ledger says {uses.get(way)}")
