"""Listens to the words of hours (src/hours/spoken_rules.cpp) as a person would, knowing nothing of the text
behind them: clause after clause, each adding times or taking some. Heard are weekdays, bank holidays and
clock times; of other words nothing is concluded (NotHeard)."""
import re

DAYS = "Monday Tuesday Wednesday Thursday Friday Saturday Sunday".split()
LOW = ("twelve one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen "
       "sixteen seventeen eighteen nineteen twenty").split()
NUMBERS = {word: number for number, word in enumerate(LOW) if number}
NUMBERS.update({f"twenty-{LOW[k]}": 20 + k for k in range(1, 10)}, thirty=30, quarter=15, half=30)
PARTS = {"in the morning": 0, "in the afternoon": 12, "in the evening": 12, "at night": 12}
DAY = 1440


class NotHeard(Exception):
    """Words of which this listener concludes nothing."""


def listed(words):
    return [part for part in re.split(r", | and ", words) if part]


def clock(words):
    """"half past seven" -> 450 on a dial of twelve hours"""
    match = re.fullmatch(r"(?:([a-z-]+)(?: minutes?)? (past|to) )?([a-z]+)", words)
    if not match or match[3] not in NUMBERS:
        raise NotHeard(words)
    hour = NUMBERS[match[3]] % 12
    off = NUMBERS[match[1]] if match[1] else 0
    return (hour * 60 + (off if match[2] == "past" else -off)) % 720


def time_of(words):
    """minutes, and the part of the day that was said with it"""
    for part, hours in PARTS.items():
        if words.endswith(part):
            minutes = clock(words[:-len(part)].strip()) + hours * 60
            return minutes, part
    if words in ("noon", "midnight"):
        return (720 if words == "noon" else 0), words
    return clock(words), None


def span(words):
    match = re.fullmatch(r"(.+) till (.+?)( the next day)?", words)
    if not match:
        raise NotHeard(words)
    begin, part = time_of(match[1])
    end, end_part = time_of(match[2])
    if part is None and end_part in PARTS:
        begin += PARTS[end_part] * 60      # "six till ten in the morning"
    elif part is None and begin < 7 * 60:
        begin += 720                       # "four": a time between seven and seven
    if end_part is None and not (7 * 60 < end and end > begin - 720 * (part == "noon")) or \
            end_part is None and end <= begin:
        end += 720
    if end <= begin or match[3]:
        end += DAY
    return begin, end


def spans(words):
    parts, found = re.split(r", | and ", words), []
    for part in parts:
        found.append(span(part))
    return found


def weekdays(words):
    match = re.fullmatch(r"(\w+) to (\w+)", words)
    if match and match[1] in DAYS and match[2] in DAYS:
        first, last = DAYS.index(match[1]), DAYS.index(match[2])
        return {(first + k) % 7 for k in range((last - first) % 7 + 1)}
    if words in DAYS:
        return {DAYS.index(words)}
    raise NotHeard(words)


class Days:
    """Which days words name: weekdays, bank holidays, or bank holidays that fall on weekdays."""

    def __init__(self, words):
        self.weekdays, self.bank, self.both = set(), False, False
        if words == "every day":
            self.weekdays = set(range(7))
            return
        falling = re.fullmatch("bank holidays that fall on (.+)", words)
        self.both = bool(falling)
        for part in listed(falling[1] if falling else words):
            if part == "bank holidays":
                self.bank = True
            else:
                self.weekdays |= weekdays(part)

    def has(self, day, holidays):
        if self.both:
            return day % 7 in self.weekdays and day in holidays
        return day % 7 in self.weekdays or self.bank and day in holidays


def when(words):
    """(days, spans) of "Monday to Friday, seven till ten" """
    if words == "at any time":
        return Days("every day"), [(0, DAY)]
    parts = words.split(", ")
    for cut in range(len(parts), 0, -1):
        try:
            days = Days(", ".join(parts[:cut]))
        except NotHeard:
            continue
        return days, spans(", ".join(parts[cut:])) if cut < len(parts) else [(0, DAY)]
    raise NotHeard(words)


class Listener:
    """What is heard to hold in a window of days from -1 on; 0 is a Monday."""

    def __init__(self, holidays, rules, count=8):
        self.holidays, self.days, self.rules = holidays, range(-1, count), rules
        self.unsure = set()  # rows of which the words leave open which of several rules counts
        self.first = -DAY
        self.heard = ["C"] * ((count + 1) * DAY)
        self.begun = [None] * len(self.heard)  # the day on which what holds began

    def lay(self, letter, day, begin, end, only_free=False):
        for minute in range(day * DAY + begin, day * DAY + end):
            row = minute - self.first
            if 0 <= row < len(self.heard) and not (only_free and self.heard[row] != "C"):
                self.heard[row], self.begun[row] = letter, day

    def take_day(self, day, midnight_to_midnight):
        for row, begun in enumerate(self.begun):
            on_day = (row + self.first) // DAY == day
            if on_day if midnight_to_midnight else begun == day:
                self.heard[row], self.begun[row] = "C", None

    def clause(self, words, joint, brackets):
        """A clause without its joint and what stands behind it in brackets."""
        if joint == "otherwise " and words.startswith(("never", "not ")):
            return
        cut = "from midnight to midnight" in brackets
        letter = "U" if words.startswith("perhaps ") else "O"
        words = words.removeprefix("perhaps ")
        if words.startswith(("never", "not ")):
            self.take(words, cut)
            return self.kept_nights(brackets)
        days, times = when(words.removeprefix("on ") if joint == "but " else words)
        named = [day for day in self.days if days.has(day, self.holidays)]
        for day in named if joint == "but " or cut else []:
            self.take_day(day, cut)
        self.kept_nights(brackets)
        for day in named:
            for begin, end in times:
                self.lay(letter, day, begin, end, joint == "otherwise ")

    def take(self, words, cut):
        if words == "never":
            days, times = when("at any time")
            cut = True
        elif words.startswith("not from "):
            days, times = Days("every day"), spans(words[len("not from "):])
        else:
            days, times = when(words[len("not on "):])
        if times != [(0, DAY)]:
            return self.take_times(days, times)
        for day in self.days:
            if days.has(day, self.holidays):
                self.take_day(day, cut)

    def take_times(self, days, times):
        for day in self.days:
            for begin, end in times if days.has(day, self.holidays) else []:
                self.lay("C", day, begin, end)

    def kept_nights(self, brackets):
        for quoted, named in re.findall("“([^”]*)” earlier in the text doesn't count, but for what of it "
                                        r"lies after midnight on ([\w, ]+)", brackets):
            if named == "the day after":
                raise NotHeard(named)
            letter = "U" if quoted.startswith("perhaps ") else "C" if quoted.startswith("not ") else "O"
            words = quoted.removeprefix("not from ")
            words = words.split(", ", 1)[-1] if "day" in words.split(" till ")[0] else words
            for day in self.days:
                for _, end in spans(words) if Days(named).has(day, set()) else []:
                    self.lay(letter, day, 0, max(0, end - DAY))
                    if self.rules > 2:
                        begin = day * DAY - self.first
                        self.unsure.update(range(begin, begin + max(0, end - DAY)))


def heard(words, holidays):
    """Letters of every half hour of seven days from a Monday, "?" where more than two rules meet in small
    hours of which the words say only that one of them keeps them. Bank holidays are days from it, 0
    itself."""
    if "till" not in words and "time" not in words and "day" not in words and words != "never":
        raise NotHeard(words)
    clauses = re.split(r"; (?![^(]*\))", words)
    listener = Listener(holidays, len(clauses) + words.count("“"))
    for clause in clauses:
        joint = re.match("(but |and also |otherwise )?", clause)[0]
        clause = clause[len(joint):]
        joint = "but " if clause.startswith("not ") and joint != "otherwise " else joint
        brackets = re.search(r" \((.*)\)$", clause)
        if brackets:
            clause = clause[:brackets.start()]
        listener.clause(clause, joint, brackets[1] if brackets else "")
    rows = range(DAY, 8 * DAY, 30)
    return "".join("?" if row in listener.unsure else listener.heard[row] for row in rows)
