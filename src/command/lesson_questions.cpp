// Method: each question is one clause of the log's grammar (book/log_words.hpp), whose first words it says itself.
#include "command/lesson_questions.hpp"

#include <array>
#include <istream>
#include <map>
#include <optional>
#include <ostream>
#include <string>

#include "command/folded.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/book/seen.hpp"

namespace loopwright::command {
namespace {

struct Question {
  const char* asks;
  const char* clause;  ///< what the answer is put behind
};
constexpr std::array questions{
    Question{"Level of all the rest, 1 to 5", "rest "},
    Question{"Minutes away from the door", "minutes "},
    Question{"Light: day, dusk or dark", "light "},
    Question{"Weather: bright-dry, bright-wet, raining, showers, fog, dull-dry, dull-wet, snow, "
             "ice, wind or other",
             "weather "},
    Question{"Traffic: light, usual or heavy", "traffic "},
    Question{"Minutes practised at home since the last lesson", "home "},
    Question{"In the pupil's own words", "said: "},
    Question{"Goal for next time", "goal: "},
};

std::string answer_to(std::istream& in, std::ostream& out, const std::string& question) {
  out << question << "? " << std::flush;
  std::string line;
  if (!std::getline(in, line))
    throw InputError("the answers end before the questions do; nothing is logged");
  return std::string(trim(line));
}

/// Adds the answer's clause; the refusal when it can't be meant.
std::optional<std::string> refusal(book::Said& said, const std::string& clause,
                                   const ToBeLogged& lesson) {
  try {
    book::Said with = said;
    book::read_more(with, clause);
    book::need_mock_meant(with, lesson.plan);
    book::need_same_sheet(with, lesson.plan);
    book::need_open_goals(with, lesson.open_goals);
    book::facts_seen(with.seen, lesson.plan.to_check, {});
    said = std::move(with);
    return std::nullopt;
  } catch (const UsageError& error) {
    return error.what();
  }
}

/// Someone at a terminal, who is asked of a lesson.
struct Talk {
  std::istream& in;
  std::ostream& out;
  const ToBeLogged& lesson;
};

void ask(const Talk& talk, book::Said& said, const Question& question) {
  for (;;) {
    const std::string answer = answer_to(talk.in, talk.out, question.asks);
    if (answer.empty()) return;
    const auto why = refusal(said, question.clause + answer, talk.lesson);
    if (!why) return;
    print_folded(talk.out, 2, *why);
  }
}

void ask_exceptions(const Talk& talk, book::Said& said) {
  for (;;) {
    const std::string answer = answer_to(talk.in, talk.out,
                                         "What was different, such as 'roundabout right 2 pedals' "
                                         "or 'not zebra' (nothing more: leave it empty)");
    if (answer.empty()) return;
    if (const auto why = refusal(said, answer, talk.lesson)) print_folded(talk.out, 2, *why);
  }
}

void list_planned(std::ostream& out, const std::vector<book::LessonPass>& planned) {
  std::map<book::Practice, int> counts;
  for (const book::LessonPass& pass : planned) ++counts[pass.what];
  std::string all;
  for (const auto& [what, count] : counts)
    all.append(all.empty() ? "" : ", ")
        .append(words_of(what))
        .append(" ")
        .append(std::to_string(count));
  print_folded(out, 0, "planned: " + (all.empty() ? std::string("nothing") : all));
}

}  // namespace

book::Said ask_log(std::istream& in, std::ostream& out, const ToBeLogged& lesson) {
  list_planned(out, lesson.planned);
  const Talk talk{in, out, lesson};
  book::Said said;
  if (!lesson.plan.loop_file.empty())
    ask(talk, said, {"Sheet, the two letters printed on it", "sheet "});
  ask_exceptions(talk, said);
  if (said.not_driven) return said;
  for (const Question& question : questions) ask(talk, said, question);
  if (!lesson.plan.to_check.empty())
    ask(talk, said, {"Seen on the ground, by letters of the sheet: A C, or all", "seen "});
  return said;
}

}  // namespace loopwright::command
