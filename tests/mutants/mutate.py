"""Small changes to C++ source, as somebody might make them by mistake: one change, one mutant.

Text is changed, not a syntax tree: the house's formatting puts blanks round operators, so that templates and
references aren't taken for them. What doesn't compile is no mutant.
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
JOINS_TEXTS = re.compile(r"\"|to_string|std::string|name\(")    # a + there has no minus


def is_code(line):
    text = line.strip()
    return bool(text) and not text.startswith(("//", "#", "namespace", "using", "template", "///", "static_assert", "}"))


def hidden(line):
    """The line with its texts and its comment blotted out, as long as before."""
    bare = QUOTED.sub(lambda text: "\0" * len(text[0]), line)
    at = bare.find("//")
    return bare if at < 0 else bare[:at] + "\0" * (len(bare) - at)


def changes(line):
    """Every mutant of a line: (what was done, the new line)."""
    bare, found = hidden(line), []
    for old, new in SWAPS:
        for match in re.finditer(re.escape(old), bare):
            if old == " + " and JOINS_TEXTS.search(line):
                continue
            found.append((f"{old.strip()} -> {new.strip()}", line[:match.start()] + new + line[match.end():]))
    for match in WORD.finditer(bare):
        other = "false" if match[1] == "true" else "true"
        found.append((f"{match[1]} -> {other}", line[:match.start()] + other + line[match.end():]))
    for match in NUMBER.finditer(bare):
        found.append((f"{match[1]} -> {int(match[1]) + 1}",
                      line[:match.start()] + str(int(match[1]) + 1) + line[match.end():]))
    if condition := CONDITION.match(bare):
        head, body = condition.end(1), condition.end(2)
        found.append(("condition negated", f"{line[:head]}(!({line[head + 1:body]})){line[body + 1:]}"))
    if CALL.match(bare) and "auto " not in bare and "return" not in bare:
        found.append(("statement left out", ";"))
    return found


def mutants_of(text):
    """All mutants of a source: (line number, what was done, the whole new text)."""
    lines = text.split("\n")
    for number, line in enumerate(lines):
        if not is_code(line):
            continue
        for done, new in changes(line):
            yield number + 1, done, "\n".join(lines[:number] + [new] + lines[number + 1:])
