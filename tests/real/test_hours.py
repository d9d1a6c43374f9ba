#!/usr/bin/python3
"""Our answers about hours against two outside readers of the grammar: the npm package opening_hours
and KDE's KOpeningHours. Real texts (hours_texts.txt) and texts made at random from the grammar, in the
four nations. Where the two agree ours must be the same, all of them. Where they differ, the case must
fit a class below, which names what the specification says and whose answer ours is.

Usage: test_hours.py BUILD_FOLDER [RANDOM_TEXTS [SEED]]
Specification: OSM wiki, Key:opening_hours/specification (0.7)."""
import collections
import os
import pathlib
import re
import subprocess
import sys
import tempfile

from hours_grammar import Grammar
from hours_told import tell

HERE = pathlib.Path(__file__).parent
REFUSED = {"ERR", "I"}

# name, does the case fit (text, npm, kde), which answers of ours may be right
CLASSES = [
    ("rule without time before ', ': npm refuses it; 'additional_rule_separator' allows any rule",
     lambda t, n, k: n == "ERR", "readable"),
    ("KDE refuses the text; it is in the grammar, or lacks a separator that npm guesses",
     lambda t, n, k: k == "ERR", "npm or none"),
    ("KDE has no interval outside a dated rule; 'selector_sequence': nothing matches, so closed",
     lambda t, n, k: k == "I", "npm"),
    ("<time>+ is a moment to KDE; 'time+': open from then, end unknown",
     lambda t, n, k: re.search(r"\d\+", t) is not None, "npm"),
    ("a year before months: npm takes year and months each by itself; 'monthday_range': "
     "a date from then on", lambda t, n, k: re.search(r"\d{4} [A-Z][a-z]{2}-[A-Z]", t) is not None,
     "either"),
    ("fallback past midnight: npm forgets that it is one; 'fallback_rule_separator'",
     lambda t, n, k: "||" in t, "either"),
    ("KDE adds where ';' replaces; 'normal_rule_separator': the later rule overwrites the day",
     lambda t, n, k: ";" in t, "npm"),
    ("a moved holiday in a list; 'plus_or_minus days' moves the holiday alone",
     lambda t, n, k: re.search(r"PH [+-]", t) is not None, "either"),
    ("a range over the end of the week or year, which KDE loses at times; 'weekday_range', "
     "'monthday_range': a range may wrap round",
     lambda t, n, k: re.search(r"(Tu|We|Th|Fr|Sa|Su)-(Mo|Tu|We|Th|Fr|Sa)|[A-Z][a-z]{2} "
                               r"(\d\d|[A-Z][a-z]\[-1\])-[A-Z]", t) is not None, "npm"),
    ("Feb 29 is every day to KDE; 'monthday': a day that most years lack",
     lambda t, n, k: "Feb 29" in t, "npm"),
    ("a span past midnight beside another one, which KDE loses in the small hours",
     lambda t, n, k: re.search(r"(1\d|2\d):\d\d-0\d:\d\d,", t) is not None, "npm"),
    ("sunrise and sunset to the minute", lambda t, n, k: re.search("sun|dawn|dusk", t) is not None,
     "either"),
    ("', ' parts rules whose texts run into each other", lambda t, n, k: ", " in t, "npm"),
]


def real_texts():
    for line in (HERE / "hours_texts.txt").read_text().splitlines():
        if not line.startswith("#"):
            yield line.split("\t", 1)[1]


def cases_of(count, seed):
    grammar = Grammar(seed)
    cases = [case for text in real_texts() for case in grammar.cases(text, 4)]
    for _ in range(count):
        cases += grammar.cases(grammar.text(), 3)
    return cases


def answers(command, text, **environment):
    run = subprocess.run(command, input=text, env=dict(os.environ, **environment), check=True,
                         stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True)
    return run.stdout.splitlines()


def ours(build, text):
    with tempfile.NamedTemporaryFile("w", suffix=".tsv") as file:
        file.write(text)
        file.flush()
        lines = answers([build / "loopwright", "hours", "--batch", file.name,
                         "--place", "51.5,-0.12"], "")
    return [line.rsplit("\t", 1)[1] for line in lines]


def class_of(text, npm, kde):
    for name, fits, follows in CLASSES:
        if fits(text, npm, kde):
            return name, follows
    return None, None


def is_world_cup_day(case):
    """A bank holiday by proclamation that neither outside table has (test_holidays.py)."""
    return case[0] == "GB-SCT" and case[2][:10] in ("2026-06-14", "2026-06-15", "2026-06-16")


def stays_unknown(text, mine):
    """An open end before a further span: both readers take it for a moment, so a ban would vanish.
    Ours stays unknown, on purpose."""
    return mine == "U" and re.search(r"\d\+ ?, ?[\d(sd]", text) is not None


def stands_at_night(case, mine):
    """A closed fallback past midnight ("19:15-03:45 || 22:00-06:15 off" at one): both readers let it close in
    the small hours what it leaves open at eleven. A fallback speaks only where nothing else does
    ('fallback_rule_separator'), before midnight and after: ours stays in force, so that a ban doesn't
    vanish. On purpose."""
    closed = re.search(r"\|\|[^|]*(\d-\d\d:\d\d|-dawn|-sunrise)[^|]* (off|closed)", case[1])
    return mine in ("O", "U") and closed is not None and case[2][11:13] < "10"


def is_lenient(npm, mine):
    """A text that both refuse and ours reads: "2026 Mar-Oct Mo-Th, 08:00-17:45", a rule without times before
    ', ', which the grammar allows ('additional_rule_separator')."""
    return npm == "ERR" and mine != "ERR"


def is_on_purpose(case, npm, mine):
    return (stays_unknown(case[1], mine) or is_lenient(npm, mine) and ", " in case[1] or
            npm == "C" and stands_at_night(case, mine))


def is_wrong(npm, kde, mine, follows):
    if npm == kde:
        return mine != npm
    allowed = {"npm": [npm], "kde": [kde], "either": [npm, kde], "npm or none": [npm, "ERR"],
               "readable": ["O", "C", "U"]}
    return mine not in allowed.get(follows, [])


def main():
    build = pathlib.Path(sys.argv[1])
    count = int(sys.argv[2]) if len(sys.argv) > 2 else 1500
    cases = cases_of(count, int(sys.argv[3]) if len(sys.argv) > 3 else 20261128)
    cases = [case for case in cases if not is_world_cup_day(case)]
    text = "".join("\t".join(case) + "\n" for case in cases)
    npm = answers(["node", HERE / "hours_npm.cjs"], text, TZ="Europe/London",
                  NODE_PATH=str(build / "npm" / "node_modules"))
    kde = answers([build / "tests" / "hours_kde"], text, QT_QPA_PLATFORM="offscreen")
    mine = ours(build, text)
    assert len(npm) == len(kde) == len(mine) == len(cases), (len(npm), len(kde), len(mine))

    on_purpose = 0
    wrong, classes, agreed = [], collections.Counter(), collections.Counter()
    for case, a, b, c in zip(cases, npm, kde, mine):
        name, follows = (None, None) if a == b else class_of(case[1], a, b)
        agreed.update({"both": a == b, "both and ours": a == b == c, "npm": a == c, "kde": b == c})
        if a != b:
            classes[name] += 1
        if a == b != c and is_on_purpose(case, a, c):
            on_purpose += 1
        elif a != b and name is None or is_wrong(a, b, c, follows):
            wrong.append(f"{case}: npm {a}, KDE {b}, ours {c} ({name})")
    print("\n".join(wrong[:40]))
    lines = [f"hours: {len(cases)} cases; ours as npm's opening_hours on {agreed['npm']}, as KDE's "
             f"KOpeningHours on {agreed['kde']}; these two agree on {agreed['both']}, and ours with "
             f"both on {agreed['both and ours']}; on {on_purpose} ours differs on purpose (an open end before "
             "a further span stays unknown; a closed fallback closes nothing, also past midnight; "
             "a rule without times before ', ' is read)"]
    lines += [f"  {cases_in:6d} differ: {name}" for name, cases_in in classes.most_common()]
    tell(build, "expressions", lines)
    return 1 if wrong else 0


sys.exit(main())
