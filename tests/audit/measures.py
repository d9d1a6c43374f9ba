"""Lengths, limits and times by arithmetic."""
from collections import defaultdict
from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

from asked import kept_for_stops_s
from clock import zone_of

SHARE = 0.001  # two ways of measuring on the ellipsoid
ROUNDING_M = 0.02
ROUNDING_S = 0.002
FASTEST = 200  # where no limit is told: nobody drives so fast, in either unit
MPS = {"mph": 0.44704, "km/h": 1 / 3.6}
WINDOW_LEAST = 0.95  # DECISIONS.md, Time: 95 to 100 % of the minutes less the reserve
TENTHS = 1.2816  # the 90th percentile of a normal spread, in standard deviations


def lengths(tally, drive, loop):
    for i, stretch in enumerate(drive.stretches):
        own = drive.length(i)
        a, b = stretch.get("partial_m", [0, own])
        told = stretch["metres"]
        tally.check("length", abs(told - (b - a)) <= ROUNDING_M + SHARE * own
                    and -ROUNDING_M <= a <= b <= own * (1 + SHARE) + ROUNDING_M,
                    f"stretch {i}: {told} m, by its nodes {b - a:.2f} m")
    total = sum(s["metres"] for s in drive.stretches)
    tally.check("length of all", abs(total - loop["metres"]) <= ROUNDING_M * len(drive) / 2 + 0.1,
                f"{loop['metres']} m, its stretches sum to {total:.2f}")


def driven_again(drive, first=0, last=None):
    """Metres of road driven a second time, either way, on some stretches: of each stretch of road, all
    that is driven less what of it is driven at all."""
    spans = defaultdict(list)
    last = len(drive) - 1 if last is None else last
    for i, stretch in enumerate(drive.stretches[first:last + 1], first):
        a, b = stretch["from_index"], stretch["to_index"]
        own = drive.length(i)
        part = stretch.get("partial_m", [0, own])
        spans[stretch["way"], min(a, b), max(a, b)].append(
            part if a < b else [own - part[1], own - part[0]])
    return sum(sum(b - a for a, b in parts) - covered(parts) for parts in spans.values())


def stretches_again(drive):
    """The stretches of road that were driven before, either way."""
    met = set()
    for stretch in drive.stretches:
        key = stretch["way"], *sorted((stretch["from_index"], stretch["to_index"]))
        if key in met:
            yield stretch
        met.add(key)


def twice(tally, drive, loop):
    again = driven_again(drive)
    tally.check("driven twice", abs(again - loop["metres_twice"]) <= 1 + SHARE * (1 + again),
                f"{loop['metres_twice']} m, by its stretches {again:.1f}")


def covered(parts):
    """Metres that some of these parts cover."""
    total, reached = 0, -1.0
    for a, b in sorted(parts):
        total += max(0, b - max(a, reached))
        reached = max(reached, b)
    return total


def speeds(tally, drive, loop):
    """Nobody is reckoned faster than the limit told; later stretches are come to later."""
    stops = loop["stop_seconds"]
    last = {name: value + stops for name, value in loop["seconds"].items()}
    moments = [s["arrive_s"] for s in drive.stretches] + [last]
    tally.check("first moment", moments[0]["likely"] == 0, "the drive doesn't begin at 0 s")
    for i, (now, then) in enumerate(zip(moments, moments[1:])):
        tally.check("order of times", now["low"] <= now["likely"] <= now["high"]
                    and now["likely"] <= then["likely"] + ROUNDING_S,
                    f"stretch {i}: {now}, then {then}")
        limit = drive.stretches[i]["limit"]
        took = then["likely"] - now["likely"] - stops_on(loop, i)
        fastest = (limit["value"] or FASTEST) * MPS[limit["unit"]]
        tally.check("speed", took >= -ROUNDING_S
                    and drive.stretches[i]["metres"] <= (took + ROUNDING_S) * fastest + ROUNDING_M,
                    f"stretch {i}: {drive.stretches[i]['metres']} m in {took:.3f} s, limit "
                    f"{limit['value']} {limit['unit']}")


def stops_on(loop, row):
    """Seconds of the stops on a stretch: planned ones, and manoeuvres at its end."""
    return (sum(stop["seconds"] for stop in loop["pull_ups"] if stop["stretch"] == row)
            + sum(one.get("stop_s", 0) for one in loop["passes"] if one["last"] == row))


def spread(tally, loop):
    """The 10th and 90th percentile lie alike on both sides, but nobody takes less than half the likely
    driving time; variances add, so no spread shrinks."""
    widths, stops = [], 0
    moments = [(s["arrive_s"], stops_on(loop, i)) for i, s in enumerate(loop["stretches"])]
    for moment, stop in moments + [(loop["seconds"], None)]:
        if stop is None:
            stops = 0  # the seconds of a loop are driving alone
        above, below = moment["high"] - moment["likely"], moment["likely"] - moment["low"]
        widths.append(above)
        halved = abs(below - (moment["likely"] - stops) / 2) <= ROUNDING_S and below < above
        stops += stop or 0
        tally.check("spread", above >= -ROUNDING_S and (
            abs(above - below) <= 2 * ROUNDING_S or halved), f"{moment}")
    for one, other in zip(widths, widths[1:]):
        tally.check("spread grows", other >= one - 2 * ROUNDING_S, f"from {one:.3f} to {other:.3f} s")


def clock_times(tally, loop, region):
    """Start, end and minutes: the end is the likely one, stops counted, by the area's clock."""
    zone = ZoneInfo(zone_of(region))
    start = datetime.fromisoformat(loop["start"])
    away = timedelta(seconds=loop["seconds"]["likely"] + loop["stop_seconds"])
    end = (start + away).astimezone(zone)
    told = datetime.fromisoformat(loop["end"])
    tally.check("end time", abs((told - end).total_seconds()) <= 1
                and told.utcoffset() == end.utcoffset(), f"{loop['end']}, by sum {end.isoformat()}")
    tally.check("start time", start.utcoffset() == start.astimezone(zone).utcoffset(), loop["start"])


def stop_seconds(tally, loop):
    """All stops together: manoeuvres and planned ones."""
    own = sum(stops_on(loop, i) for i in range(len(loop["stretches"])))
    tally.check("stops", abs(own - loop["stop_seconds"]) <= ROUNDING_S, f"{loop['stop_seconds']} s, sum {own}")


def window(tally, loop, asked):
    """The minutes asked for are never exceeded, and 95 % of them filled. Minutes of a planned stop that
    has no place stay free of driving (DEVELOPERS.md, Planned stops). A drive of one's own takes what it takes."""
    if asked.through:
        return
    free = kept_for_stops_s(asked) - sum(stop["seconds"] for stop in loop["pull_ups"])
    away = loop["seconds"]["likely"] + loop["stop_seconds"] + free
    most = (asked.minutes - asked.reserve) * 60
    tally.check("minutes", away <= most + ROUNDING_S, f"{away:.0f} s of {most:.0f}")
    tally.check("minutes filled", away >= WINDOW_LEAST * most - ROUNDING_S, f"{away:.0f} s of {most:.0f}")


def check(tally, drive, loop, asked, region):
    lengths(tally, drive, loop)
    twice(tally, drive, loop)
    speeds(tally, drive, loop)
    spread(tally, loop)
    clock_times(tally, loop, region)
    stop_seconds(tally, loop)
    window(tally, loop, asked)
