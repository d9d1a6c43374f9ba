// Method: the text is cut into clauses; the first word of each says which of the grammar's it is. A practice's clause
// may have its parts in any order.
#include <algorithm>
#include <array>
#include <cctype>

#include "book/words_of_clause.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/base/printable.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/book/log_words.hpp"

namespace loopwright::book {
namespace {

constexpr int most_minutes = 600;        // as lessons are planned
constexpr int most_home_minutes = 6000;  // between two lessons
constexpr int most_faults = 99;
constexpr std::size_t most_text = 1000;  // characters; more is no pencil mark

std::string listed_codes(std::span<const std::string_view> codes) {
  std::string all;
  for (const std::string_view code : codes) all.append(all.empty() ? "" : ", ").append(code);
  return all;
}

/// Characters of UTF-8: bytes that begin one.
std::size_t letters_in(std::string_view text) {
  return static_cast<std::size_t>(std::ranges::count_if(
      text, [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80; }));
}

std::string text_of(Clause& clause) {
  if (clause.text().empty()) clause.refuse("behind the colon stands what was said");
  if (letters_in(clause.text()) > most_text)
    clause.refuse("is longer than " + std::to_string(most_text) + " letters");
  return std::string(clause.text());
}

void once(Clause& clause, bool is_said) {
  if (is_said) clause.refuse("this was said before");
}

/// "said: …", "remark: …", "goal: …", "reached: …". False for any other clause.
bool read_text(Said& said, Clause& clause) {
  if (!clause.has_text()) return false;
  std::string* const one = clause.word() == "said"     ? &said.log.said
                           : clause.word() == "remark" ? &said.log.remark
                                                       : nullptr;
  std::vector<std::string>* const many = clause.word() == "goal"      ? &said.log.goals
                                         : clause.word() == "reached" ? &said.log.reached
                                                                      : nullptr;
  if (one == nullptr && many == nullptr) return false;
  clause.take();
  clause.need_end();
  if (many != nullptr) {
    many->push_back(text_of(clause));
  } else {
    once(clause, !one->empty());
    *one = text_of(clause);
  }
  return true;
}

/// "light dusk", "weather dull-wet", "traffic heavy". False for any other clause.
bool read_condition(Said& said, Clause& clause) {
  Conditions& in = said.log.conditions;
  struct Of {
    std::string_view word;
    std::string* value;
    std::span<const std::string_view> codes;
  };
  for (const Of& of : {Of{"light", &in.light, lights()}, Of{"weather", &in.weather, weathers()},
                       Of{"traffic", &in.traffic, traffics()}}) {
    if (!clause.took(of.word)) continue;
    once(clause, !of.value->empty());
    for (const std::string_view code : of.codes)
      if (clause.word() == code) *of.value = code;
    if (of.value->empty())
      clause.refuse(std::string(of.word) + " is one of " + listed_codes(of.codes));
    clause.take();
    return true;
  }
  return false;
}

/// Clauses of one number or three. False for any other clause.
bool read_numbers(Said& said, Clause& clause) {
  if (clause.took("minutes")) {
    once(clause, said.log.minutes.has_value());
    said.log.minutes = clause.number("minutes", 1, most_minutes);
  } else if (clause.took("home")) {
    once(clause, said.log.private_minutes != 0);
    said.log.private_minutes = clause.number("home", 1, most_home_minutes);
  } else if (clause.took("rest")) {
    once(clause, said.rest.has_value());
    said.rest = clause.number("a level", lowest_level, highest_level);
  } else if (clause.took("mock")) {
    once(clause, said.log.mock.has_value());
    said.mock_unplanned = clause.took("unplanned");
    said.mock_by_faults = clause.ends();
    said.log.mock = MockTest{};
    if (said.mock_by_faults) return true;
    Faults faults;
    for (int* count : {&faults.driving, &faults.serious, &faults.dangerous})
      *count = clause.number("each of driving, serious and dangerous faults", 0, most_faults);
    said.log.mock = MockTest{{}, faults};
  } else {
    return false;
  }
  return true;
}

/// Stepping in, when it is at hand.
bool read_intervention(Said& said, Clause& clause, const std::optional<Practice>& what) {
  const auto how = parse_intervention(clause.word());
  if (!how) return false;
  clause.take();
  said.log.interventions.push_back(
      {*how, clause.count().value_or(1), what, std::string(clause.text())});
  return true;
}

bool read_fault(Said& said, Clause& clause, const std::optional<Practice>& what) {
  if (!clause.took("fault")) return false;
  said.log.faults.push_back(clause.fault());
  said.log.faults.back().what = what;
  return true;
}

void read_practice(Said& said, Clause& clause, const Practice& what) {
  SaidPractice of{what};
  for (const SaidPractice& other : said.practices) once(clause, other.what == what);
  while (!clause.ends()) {
    if (const auto passes = clause.count()) {
      once(clause, of.passes.has_value());
      of.passes = passes;
    } else if (const auto level = clause.level()) {
      once(clause, of.level.has_value());
      of.level = level;
    } else if (const auto help = parse_help(clause.word())) {
      once(clause, of.help.has_value());
      of.help = help;
      clause.take();
    } else if (!read_intervention(said, clause, what) && !read_fault(said, clause, what)) {
      clause.refuse("'" + std::string(clause.word()) +
                    "' is no level (1 to 5), help (talked, guided, prompted, alone), words, wheel, "
                    "pedals or fault");
    }
  }
  said.practices.push_back(of);
}

void read_not(Said& said, Clause& clause) {
  if (clause.took("driven")) {
    said.not_driven = true;
    return;
  }
  const auto what = clause.practice();
  if (!what)
    clause.refuse("behind 'not' stands what wasn't driven, such as 'not zebra', or 'driven'");
  for (const SaidPractice& other : said.practices) once(clause, other.what == *what);
  said.practices.push_back({*what, false});
}

void read_skill(Said& said, Clause& clause) {
  const std::string skill(clause.word());
  if (skill.empty())
    clause.refuse("behind 'skill' stand a skill and a level, such as 'skill mirrors 4'");
  clause.take();
  for (const Observation& other : said.log.observations) once(clause, other.skill == skill);
  said.log.observations.push_back(
      {skill, {}, clause.number("a level", lowest_level, highest_level), true});
}

/// "sheet KD". False for any other clause.
bool read_sheet(Said& said, Clause& clause) {
  if (!clause.took("sheet")) return false;
  once(clause, !said.sheet.empty());
  for (const char c : clause.word())
    said.sheet += static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
  if (said.sheet.size() != 2)
    clause.refuse("behind 'sheet' stand the two letters printed on it, such as 'sheet KD'");
  clause.take();
  return true;
}

/// "seen A C", "seen B: Mo-Fr 07:00-10:00", "seen all". False for any other clause.
bool read_seen(Said& said, Clause& clause) {
  constexpr std::size_t most_letters = 3;
  if (!clause.took("seen")) return false;
  std::size_t letters = 0;
  for (; !clause.ends(); clause.take(), ++letters) {
    std::string letter(clause.word());
    for (char& c : letter) c = static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
    const bool is_all = letter == "ALL";
    const bool is_letter =
        !letter.empty() && letter.size() <= most_letters &&
        letter.find_first_not_of("ABCDEFGHIJKLMNOPQRSTUVWXYZ") == std::string::npos;
    if (!is_all && !is_letter)
      clause.refuse("behind 'seen' stand letters of the sheet, such as 'seen A C', or 'seen all'");
    said.seen.push_back({is_all ? "*" : letter});
  }
  if (letters == 0)
    clause.refuse("behind 'seen' stand letters of the sheet, such as 'seen A C', or 'seen all'");
  if (!clause.has_text()) return true;
  if (letters > 1 || said.seen.back().letter == "*")
    clause.refuse("what stands there is said of one letter at a time, such as 'seen B: 20'");
  said.seen.back().says = text_of(clause);
  return true;
}

/// What steers a terminal, or is no text, would be kept and shown again. Tabs part words.
void need_printable(std::string_view clause) {
  std::string text(clause);
  std::ranges::replace(text, '\t', ' ');
  if (printable(text) != text)
    throw UsageError("'" + printable(text) + "': holds a sign that can't be printed; leave it out");
}

void read_clause(Said& said, std::string_view text) {
  Clause clause(text);
  if (read_text(said, clause)) return;
  if (clause.took("not")) {
    read_not(said, clause);
  } else if (clause.took("skill")) {
    read_skill(said, clause);
  } else if (const auto what = clause.practice()) {
    read_practice(said, clause, *what);
  } else if (!read_numbers(said, clause) && !read_seen(said, clause) && !read_sheet(said, clause) &&
             !read_condition(said, clause) && !read_intervention(said, clause, std::nullopt) &&
             !read_fault(said, clause, std::nullopt)) {
    clause.refuse(
        "begins with no kind of practice, nor with rest, not, skill, fault, words, wheel, pedals, "
        "minutes, "
        "home, light, weather, traffic, mock, sheet, seen, said:, remark:, goal: or reached:");
  }
  clause.need_end();
}

}  // namespace

void read_more(Said& said, std::string_view text) {
  for (const std::string_view line : split(text, '\n')) {
    if (line.starts_with('#')) continue;
    for (const std::string_view clause : split(line, ';')) {
      if (clause.empty()) continue;
      need_printable(clause);
      const std::string sheet = said.sheet;
      read_clause(said, clause);
      if (said.sheet == sheet) ++said.clauses;
    }
  }
  if (said.not_driven && said.clauses > 1)
    throw UsageError(
        "'not driven': it is said alone, and nothing else of that lesson is kept; leave out the "
        "rest, or say 'not' of each kind that wasn't driven");
}

Said read_log(std::string_view text) {
  Said said;
  read_more(said, text);
  return said;
}

}  // namespace loopwright::book
