#!/usr/bin/python3
"""The words of hours against the answers: a listener (hours_heard.py) that knows the words alone must
come to the same as the evaluator, half hour by half hour, in a plain week and in one with a bank holiday.
Real texts (hours_texts.txt), and texts of weekdays and times at random, since rules that take from one
another are what words get wrong.

Usage: test_hours_words.py BUILD_FOLDER [RANDOM_TEXTS [SEED]]"""
import pathlib
import subprocess
import sys

from hours_grammar import DAYS, Grammar
from hours_heard import NotHeard, heard
from hours_told import tell

HERE = pathlib.Path(__file__).parent
# Mondays; the bank holidays in the days from the Sunday before, as days from the Monday.
WEEKS = {"2026-11-02": set(), "2026-05-04": {0}}


class WeekGrammar(Grammar):
    """Texts of weekdays, bank holidays and times alone."""

    def days(self):
        return self.dice.choice(["", "Mo-Fr", "Mo-Sa", "Mo-Su", "Sa,Su", "PH", "Su,PH", "PH Mo", "Fr-Mo",
                                 self.dice.choice(DAYS), self.dice.choice(DAYS),
                                 ",".join(sorted(self.dice.sample(DAYS, 2), key=DAYS.index))])

    def times(self):
        night = f"{self.dice.randint(18, 23)}:00-0{self.dice.randint(1, 8)}:30"
        day = f"{self.dice.randint(6, 11):02d}:00-{self.dice.randint(12, 22)}:30"
        return self.dice.choice(["", day, day, day, night, night, "07:00-10:00,16:00-19:00", "08:00-08:00"])

    def rule(self):
        days, times = self.days(), self.times()
        state = self.dice.choice(["", "", "", "", "off", "unknown"])
        return " ".join(part for part in (days, times or ("" if days else "24/7"), state) if part)

    def week_text(self):
        text = self.rule()
        for _ in range(self.dice.choice([0, 1, 1, 2, 2, 3])):
            text += self.dice.choice(["; ", "; ", "; ", ", ", " || "]) + self.rule()
        return text


def texts_of(count, seed):
    texts = [line.split("\t", 1)[1] for line in (HERE / "hours_texts.txt").read_text().splitlines()
             if not line.startswith("#")]
    grammar = WeekGrammar(seed)
    return texts + [grammar.week_text() for _ in range(count)]


def agree(found, meant):
    return all(h in ("?", m) for h, m in zip(found, meant, strict=True))


def main():
    build = pathlib.Path(sys.argv[1])
    count = int(sys.argv[2]) if len(sys.argv) > 2 else 1000
    texts = texts_of(count, int(sys.argv[3]) if len(sys.argv) > 3 else 20261128)
    run = subprocess.run([build / "tests" / "hours_told_and_meant", *WEEKS], input="\n".join(texts),
                         check=True, stdout=subprocess.PIPE, text=True)
    wrong, listened, unheard = [], 0, 0
    for text, line in zip(texts, run.stdout.splitlines(), strict=True):
        words, *meant = line.split("\t")
        try:
            found = [heard(words, holidays) for holidays in WEEKS.values()]
        except NotHeard:
            unheard += 1
            continue
        listened += 1
        if not all(agree(h, m) for h, m in zip(found, meant, strict=True)):
            wrong.append(f"{text}\n  {words}\n" + "".join(
                f"  heard {h}\n  meant {m}\n" for h, m in zip(found, meant) if h != m))
    print("\n".join(wrong[:20]))
    tell(build, "words", [f"words of hours: of {len(texts)} texts a listener understood {listened} and came "
                          f"to the evaluator's answers on {listened - len(wrong)}; {unheard} have words "
                          "it doesn't know (dates, the sun, open ends, comments)"])
    assert listened > 0.6 * len(texts), "the listener hears too little"
    return 1 if wrong else 0


sys.exit(main())
