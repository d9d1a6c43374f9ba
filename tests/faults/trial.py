"""Runs the program under a fault, and holds what it leaves against an undisturbed run."""
import os
import resource
import signal
import subprocess
import sys
import tempfile
from pathlib import Path

HOME = "54.2973,2.5988"
START = "2026-11-30T10:00"
MEGABYTE = 1 << 20


class Trial:
    """A scratch folder with an area, a loop file and what is found wrong.

    `area` and `loops` are made undisturbed; `make_loops`: of the county alone, whose door HOME is.
    """

    def __init__(self, programs, extract, region, make_loops=True):
        self.program = str(Path(programs).resolve() / "loopwright")
        self.shim = Path(programs).resolve() / "tests" / "fault_shim.so"
        self.extract, self.region = str(Path(extract).resolve()), region
        self._scratch = tempfile.TemporaryDirectory(prefix="faults-")
        self.folder = Path(self._scratch.name)
        self.complaints, self.counts = [], {}
        self.area, self.loops = self.folder / "town.area", self.folder / "loops.json"
        self.must(self.build(self.area))
        if make_loops:
            self.must(self.wish(self.loops))

    def build(self, area, *more):
        return ["build", self.extract, "--region", self.region, "-o", str(area), *more]

    def wish(self, loops, *more, minutes=10, area=None):
        return ["loops", str(area or self.area), "--home", HOME, "--start", START, "--minutes", str(minutes),
                "--want", "turn-off=1", "--alternatives", "1", "-o", str(loops), *more]

    def card(self, form, to, *more):
        return ["card", str(self.area), str(self.loops), "--format", form, "-o", str(to), *more]

    def start(self, words, *, before=None, **more):
        """The program, begun; `before` is run in it first, to take something away from it."""
        return subprocess.Popen([self.program, *words], cwd=self.folder, stdout=subprocess.PIPE,
                                stderr=subprocess.PIPE, preexec_fn=before, **more)

    def run(self, words, *, before=None, **more):
        """Exit code (below 0: a signal), standard output and standard error."""
        program = self.start(words, before=before, **more)
        out, err = program.communicate(timeout=300)
        return program.returncode, out.decode(errors="replace"), err.decode(errors="replace")

    def must(self, words, **more):
        code, out, err = self.run(words, **more)
        if code != 0:
            sys.exit(f"{' '.join(words)}: exit {code}: {err}")
        return out

    def count(self, what):
        self.counts[what] = self.counts.get(what, 0) + 1

    def expect(self, holds, complaint):
        if not holds:
            self.complaints.append(complaint)

    def told_in_one_line(self, where, code, err, exits=(1,)):
        """A failure: its exit code, and one line that begins with the program's name."""
        line = err.startswith("loopwright: ") and err.endswith("\n") and err.count("\n") == 1
        self.expect(code in exits and line and "bad_alloc" not in err, f"{where}: exit {code}: {err!r}")

    def parts(self, folder=None):
        """Files that the program makes on the way and is to leave none of."""
        return sorted(Path(folder or self.folder).glob("*.part"))

    def end(self, title):
        """Prints the counts and every complaint; the exit code."""
        counted = ", ".join(f"{count} {what}" for what, count in sorted(self.counts.items()))
        print(f"{title}: {counted}; {len(self.complaints)} wrong")
        print("".join(f"  {complaint}\n" for complaint in self.complaints), end="")
        self._scratch.cleanup()
        return 1 if self.complaints else 0


def without_core():
    resource.setrlimit(resource.RLIMIT_CORE, (0, 0))


def address_space(bytes_):
    def limit():
        without_core()
        resource.setrlimit(resource.RLIMIT_AS, (bytes_, bytes_))
    return limit


def kill(program):
    program.send_signal(signal.SIGKILL)
    program.communicate()


def skip(reason):
    """Ends a test as ctest's SKIP_RETURN_CODE wants it."""
    print("skipped:", reason)
    sys.exit(77)


def is_root():
    return os.geteuid() == 0
