"""Small changes to C++ source, as somebody might make them by mistake: one change, one mutant.

Text is changed, not a syntax tree: the house's formatting puts blanks round operators, so that templates and
references aren't taken for them. What doesn't compile is no mutant.

Some changes no test could or should tell, so these aren't made:
- in a line of assert or reserve: what a programmer takes for granted, and memory;
- the 4 of a std::array<T, 4> with listed values: fewer don't compile, one more is an empty one;
- return false after a claim that doesn't hold: it is kept already, the value only ends the look;
- the 0 of a width, a limit or metres "> 0", which asks whether it is known: none lies between 0 and 1.
And some would be too small to be a mistake anybody could see, so a bigger one is made instead:
- metres, degrees and percentages of the ground (not widths, which are tagged in round numbers) never lie just
  on a bound: < becomes > there, not <=;
- a bound of ours in metres, degrees or percent is doubled, not made greater by one, and a sum of them begins
  with 100, not with 1.
"""
import re

# What is written -> what stands there instead. In code, never in comments, texts or #includes.
SWAPS = [(" < ", " <= "), (" <= ", " < "), (" > ", " >= "), (" >= ", " > "), (" == ", " != "), (" != ", " == "),
         (" && ", " || "), (" || ", " && "), (" + ", " - "), (" - ", " + "), (" * ", " / "), (" / ", " * "),
         ("continue;", "break;"), ("std::min(", "std::max("),
         ("std::max(", "std::min("), (" += ", " -= "), ("++", "--"), ("any_of(", "all_of("), ("all_of(", "any_of("),
         (".front()", ".back()"), (".back()", ".front()")]
NUMBER = re.compile(r"(?<![\w.'\"])(\d+)(?![\w.'\"])")
CONDITION = re.compile(r"^(\s*(?:\} else )?if )\((?!.*;)(.*)\)( \{| return| continue| break|$)")
CALL = re.compile(r"^\s+[\w.>\-:\[\]]+\(.*\);$|^\s+[\w.>\-:\[\]]+ [+|&]?= .*;$")
QUOTED = re.compile(r"\"(?:[^\"\\]|\\.)*\"|(?<!\d)'(?:[^'\\]|\\.)'")
WORD = re.compile(r"\b(true|false)\b")
NOT_TO_CHANGE = re.compile(r"^\s*assert\(|\.reserve\(")
ARRAY_SIZE = re.compile(r"std::array<[\w:]+(?:<\w+>)?, (\d+)>")
MEASURE = r"(?!\w*width)\b\w*(?:_m|_deg|percent)\b"
BOUND = re.compile(MEASURE + r" = (\d+)(?= *[,;])")
SUM = re.compile(r"^\s*double (?:\w+ = \d+, )*\w*(?:_m|_deg|metres) = (0)(?=[,;])")
KNOWN = re.compile(r"(?:width_m|limit\.value|metres) > $")
TURNED = {" < ": " > ", " <= ": " >= ", " > ": " < ", " >= ": " <= "}
JOINS_TEXTS = re.compile(r"\"|to_string|std::string|name\(")    # a + there has no minus


def is_code(line):
    text = line.strip()
    return bool(text) and not text.startswith(("//", "#", "namespace", "using", "template", "///", "static_assert", "}"))


def hidden(line):
    """The line with its texts and its comment blotted out, as long as before."""
    bare = QUOTED.sub(lambda text: "\0" * len(text[0]), line)
    at = bare.find("//")
    return bare if at < 0 else bare[:at] + "\0" * (len(bare) - at)


def measures(bare, start, end):
    """True when what stands on either side of a comparison is a measure of the ground."""
    before, after = re.split(r"&&|\|\||[;?]|return", bare[:start])[-1], re.split(r"&&|\|\||[;?]", bare[end:])[0]
    return bool(re.search(MEASURE, before) or re.search(MEASURE, after))


def changes(line):
    """Every mutant of a line: (what was done, the new line)."""
    bare, found = hidden(line), []
    if NOT_TO_CHANGE.search(bare):
        return found
    for old, new in SWAPS:
        for match in re.finditer(re.escape(old), bare):
            if old == " + " and JOINS_TEXTS.search(line):
                continue
            turned = old in TURNED and measures(bare, match.start(), match.end())
            other = TURNED[old] if turned else new
            found.append((f"{old.strip()} -> {other.strip()}", line[:match.start()] + other + line[match.end():]))
    for match in WORD.finditer(bare):
        other = "false" if match[1] == "true" else "true"
        found.append((f"{match[1]} -> {other}", line[:match.start()] + other + line[match.end():]))
    sizes = {match.start(1) for match in ARRAY_SIZE.finditer(bare)}
    bounds = {match.start(1) for match in BOUND.finditer(bare) if "constexpr" in bare}
    for match in NUMBER.finditer(bare):
        if match.start() in sizes or match[1] == "0" and KNOWN.search(bare[:match.start()]):
            continue
        number = int(match[1])
        other = 2 * number if number > 0 and match.start() in bounds else number + 1
        if (sum_of := SUM.search(bare)) and match.start() == sum_of.start(1):
            other = 100
        found.append((f"{number} -> {other}", line[:match.start()] + str(other) + line[match.end():]))
    if condition := CONDITION.match(bare):
        head, body = condition.end(1), condition.end(2)
        found.append(("condition negated", f"{line[:head]}(!({line[head + 1:body]})){line[body + 1:]}"))
    if CALL.match(bare) and "auto " not in bare and "return" not in bare:
        found.append(("statement left out", ";"))
    return found


def ends_a_look(lines, number):
    """True for the return false that follows a claim of a proof."""
    if not lines[number].strip().endswith("return false;"):
        return False
    first = next((at for at in range(number, -1, -1) if lines[at].strip().startswith("if (")), number)
    return "claims" in " ".join(lines[first:number + 1])


def mutants_of(text):
    """All mutants of a source: (line number, what was done, the whole new text)."""
    lines = text.split("\n")
    for number, line in enumerate(lines):
        if not is_code(line):
            continue
        for done, new in changes(line):
            if done == "false -> true" and ends_a_look(lines, number):
                continue
            yield number + 1, done, "\n".join(lines[:number] + [new] + lines[number + 1:])
