"""The wish as the loop file repeats it, against the words it was asked with. LOOP-FILE.md."""
from datetime import datetime
from zoneinfo import ZoneInfo

from clock import zone_of
from second_reader import metres


def start_of(asked, region):
    """The instant of the start asked for; without an offset it is the area's clock."""
    moment = datetime.fromisoformat(asked.start)
    return moment if moment.tzinfo else moment.replace(tzinfo=ZoneInfo(zone_of(region)))


def wants_of(rows):
    return [(row["kind"], row["movement"] or "", None if row["count"] == "max" else row["count"],
             row.get("verdict") or "", row.get("into") or "") for row in rows]


def same_place(told, asked):
    if told is None or asked is None:
        return told is asked
    return metres((told["lat"], told["lon"]), asked) < 1


def check(tally, told, asked, region):
    tally.check("wish: home", same_place(told["home"], asked.home), told["home"])
    tally.check("wish: end", same_place(told["end"], asked.end), told["end"])
    tally.check("wish: start", datetime.fromisoformat(told["start"]) == start_of(asked, region),
                told["start"])
    tally.check("wish: minutes", (told["minutes"], told["reserve_minutes"]) == (
        asked.minutes, asked.reserve), told["minutes"], told["reserve_minutes"])
    tally.check("wish: level", told["level_given"] == (asked.level is not None)
                and told["level"] == (asked.level or 3), told["level"], told["level_given"])
    tally.check("wish: wants", wants_of(told["wants"]) == [tuple(want) for want in asked.want],
                told["wants"])
    tally.check("wish: avoids", [row["kind"] for row in told["avoids"]] == asked.avoid, told["avoids"])
    tally.check("wish: alternatives", told["alternatives"] == asked.alternatives)
    tally.check("wish: welcome", told.get("welcome", []) == asked.welcome, told.get("welcome"))
    tally.check("wish: spacings", [(row["kind"], row["seconds"]) for row in told.get("spacings", [])]
                == asked.spacing, told.get("spacings"))
    tally.check("wish: hardest", told.get("hardest", 5) == asked.hardest, told.get("hardest"))
