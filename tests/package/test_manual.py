#!/usr/bin/python3
"""The manual's pages and the shells' completions, held to what the commands say and tried in real shells.

    tests/package/test_manual.py BUILD SOURCES

Pages are read by mandoc, another reader of man(7) than the one they were written for, and must be without a warning of
its. Completions are tried in bash, zsh (each at a terminal, with the Tab key) and fish; a program that isn't installed is
told and passed over."""
import os
import pathlib
import pty
import re
import select
import shutil
import subprocess
import sys
import tempfile
import time

BUILD, SOURCES = (pathlib.Path(word).resolve() for word in sys.argv[1:3])
PROGRAM, MANUAL = BUILD / "loopwright", BUILD / "manual"
failed = []


def check(holds, what):
    if not holds:
        failed.append(what)
        print("FALSE:", what)


def there(tool):
    found = shutil.which(tool) is not None
    if not found:
        print(f"{tool} isn't installed: passed over")
    return found


def said(*words):
    return subprocess.run([PROGRAM, *words], stdout=subprocess.PIPE, encoding="utf-8", check=True).stdout


def listed(text):
    """Names in a list of verbs or deeds: two blanks, the name, a tab."""
    return re.findall(r"^  ([a-z-]+)\t", text, re.MULTILINE)


def commands():
    """Each command that has options, as words: ["loops"], ["pupil", "add"]."""
    for verb in listed(said("--help")):
        deeds = listed(said(verb, "--help"))
        yield from ([verb, deed] for deed in deeds) if deeds else [[verb]]


def options_of(words):
    names = []
    for line in said(*words, "--help").splitlines():
        if match := re.match(r"  (-[-\w,]+)", line):
            names += match[1].split(",")
    return names


def rendered(page):
    text = subprocess.run(["mandoc", "-Tutf8", "-O", "width=78", MANUAL / page], stdout=subprocess.PIPE,
                          encoding="utf-8", check=True).stdout
    return re.sub(r".\x08", "", text)


def test_pages():
    verbs = listed(said("--help"))
    check({p.name for p in MANUAL.glob("*.1")} == {"loopwright.1"} | {f"loopwright-{v}.1" for v in verbs},
          "there is a page for the program and for each verb, and no other")
    if not there("mandoc"):
        return
    lint = subprocess.run(["mandoc", "-Tlint", "-Wwarning", *sorted(MANUAL.glob("*.1"))], stdout=subprocess.PIPE,
                          encoding="utf-8", check=False)
    check(not lint.stdout, "mandoc warns: " + lint.stdout[:400])
    for words in commands():
        page = rendered(f"loopwright-{words[0]}.1")
        check("loopwright " + " ".join(words) in page, f"{words}: its synopsis is on the page")
        for option in options_of(words):
            check(re.search(rf"(^|[\s,]){option}\b", page), f"{words}: {option} is on the page")
    main = " ".join(rendered("loopwright.1").split())
    for words in (*verbs, "could not: input, files, system", "loopwright/pupils.book", "Never stop on a level crossing"):
        check(words in main, f"the program's page says '{words}'")


class Terminal:
    """A shell at a terminal of its own."""

    def __init__(self, *words, folder):
        self.child, self.side = pty.fork()
        if self.child == 0:
            os.chdir(folder)
            os.execve(shutil.which(words[0]), words, {"PATH": os.environ["PATH"], "TERM": "dumb", "LC_ALL": "C.UTF-8",
                                                      "HOME": str(folder), "COLUMNS": "200"})

    def until(self, wanted, seconds=8):
        """What is printed until the wanted text comes, or nothing more for so long."""
        text, end = "", time.monotonic() + seconds
        while wanted not in text and time.monotonic() < end:
            if select.select([self.side], [], [], 0.1)[0]:
                try:
                    text += os.read(self.side, 65536).decode("utf-8", "replace")
                except OSError:
                    break
        return text

    def types(self, text):
        os.write(self.side, text.encode())

    def leave(self):
        os.kill(self.child, 9)
        os.waitpid(self.child, 0)
        os.close(self.side)


# What is typed, and what the Tab key makes of it: each has one answer only.
TYPED = [
    ("loopwright str", "loopwright streets "),
    ("loopwright pupil not", "loopwright pupil not-met "),
    ("loopwright pupil add WREN --theo", "--theory-passed"),
    ("loopwright loops x.area --want multi-lane-roundabout:le", "multi-lane-roundabout:left"),
    ("loopwright card x.area y.json --format geo", "--format geojson"),
    ("loopwright build only-th", "only-this.osm.pbf"),
    ("loopwright note add n.geojson --says pull", "--says pull-up"),
]


def try_at_terminal(shell, words, begin):
    with tempfile.TemporaryDirectory() as folder:
        pathlib.Path(folder, "only-this.osm.pbf").touch()
        terminal = Terminal(*words, folder=folder)
        terminal.types(begin + "; echo rea''dy\n")
        terminal.until("ready")
        for typed, wanted in TYPED:
            terminal.types(typed + "\t")
            shown = terminal.until(wanted)
            check(wanted in shown.replace("\r", ""), f"{shell}: '{typed}' and Tab give '{wanted}', not {shown[-80:]!r}")
            terminal.types("\x15")  # the line is thrown away
        terminal.leave()


def test_shells():
    library = pathlib.Path("/usr/share/bash-completion/bash_completion")
    if library.exists():
        try_at_terminal("bash", ["bash", "--norc", "--noprofile", "-i"], f"PS1='$ '; source {library}; source {MANUAL}/loopwright")
    else:
        print("bash-completion isn't installed: passed over")
    if there("zsh"):
        try_at_terminal("zsh", ["zsh", "-f", "-i"],
                        f"PS1='$ '; fpath=({MANUAL} $fpath); autoload -U compinit; compinit -u -D")
    if not there("fish"):
        return
    with tempfile.TemporaryDirectory() as folder:
        pathlib.Path(folder, "only-this.osm.pbf").touch()
        for typed, wanted in TYPED:
            done = subprocess.run(["fish", "--no-config", "-c", f"source {MANUAL}/loopwright.fish; complete -C {typed!r}"],
                                  cwd=folder, env={**os.environ, "HOME": folder}, stdout=subprocess.PIPE,
                                  stderr=subprocess.STDOUT, encoding="utf-8", check=False)
            offered = [line.split("\t")[0] for line in done.stdout.splitlines()]
            check(offered == [wanted.split()[-1]], f"fish: '{typed}' is completed by {offered}, not '{wanted}'")


def test_completions():
    """Every option is offered for its command, by all three."""
    texts = {name: (MANUAL / name).read_text(encoding="utf-8") for name in ("loopwright", "_loopwright", "loopwright.fish")}
    for words in commands():
        name = " ".join(words)
        bash = re.search(rf"^    '{name}'\) offered='([^']*)'", texts["loopwright"], re.MULTILINE)
        zsh = re.search(rf"^    '{name}'\)\n(.*?) ;;$", texts["_loopwright"], re.MULTILINE | re.DOTALL)
        for option in options_of(words):
            check(bash and option in bash[1].split(), f"bash: {name} {option}")
            check(zsh and re.search(rf"[)*]{option}\[", zsh[1]), f"zsh: {name} {option}")
            flag = f"-l {option[2:]}" if option.startswith("--") else f"-s {option[1:]}"
            check(re.search(rf"__loopwright_at {name}' .*{flag}\b", texts["loopwright.fish"]), f"fish: {name} {option}")


def test_version():
    """--version tells the day of each table that has one in its head, and the formats as the files have them."""
    text = said("--version")
    for table in sorted((SOURCES / "src/rules").glob("*.txt")):
        if day := re.search(r"^#.*As of: ([^.\n]*)\.", table.read_text(encoding="utf-8"), re.MULTILINE):
            line = re.search(rf"^  {day[1]}: (.*)$", text, re.MULTILINE)
            check(line and table.stem.replace("_", " ") in line[1].split(", "), f"--version: {table.stem}, {day[1]}")
    years = re.findall(r"^(\d{4})-\d\d-\d\d", (SOURCES / "src/rules/bank_holidays.txt").read_text(encoding="utf-8"),
                       re.MULTILINE)
    check(f"bank holidays: {min(years)} to {max(years)};" in text, "--version: the years of bank holidays")
    with tempfile.TemporaryDirectory() as folder:
        home, area = ["--home", "54.2973,2.5988"], pathlib.Path(folder, "q.area")
        book = pathlib.Path(folder, "b.book")
        said("build", SOURCES / "maps/quillham.osm.pbf", "-o", area, "--region", "GB-ENG")
        said("pupil", "add", "WREN", "--book", book, *home)
        said("loops", area, *home, "--minutes", "20", "--quick", "--start", "2026-11-28T15:00", "-o", f"{folder}/l.json")
        loops = pathlib.Path(folder, "l.json").read_text(encoding="utf-8")
        numbers = (int.from_bytes(area.read_bytes()[8:12], "little"),  # DEVELOPERS.md, AREA FILE
                   int(re.search(r'"version": *(\d+)', loops)[1]),
                   int.from_bytes(book.read_bytes()[60:64], "big"))  # sqlite.org/fileformat: user_version
    check("formats: area file %d, loop file %d, book %d\n" % numbers in text, f"--version: the formats are {numbers}")


test_pages()
test_completions()
test_shells()
test_version()
print(f"{len(failed)} of the checks failed" if failed else "the manual, the completions and --version say what the program does")
sys.exit(bool(failed))
