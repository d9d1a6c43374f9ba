#include "page/questions.hpp"

#include <algorithm>
#include <array>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <span>
#include <string>
#include <string_view>

namespace loopwright::page {
namespace {

/// What a question is about besides the area.
enum class About { area, book, notes };

struct Question {
  std::string_view name, command;
  std::span<const std::string_view> options;  ///< of the command, which the question may say
  About about = About::area;
};

constexpr std::array<std::string_view, 4> of_near{"home", "want", "within", "start"};
constexpr std::array<std::string_view, 2> of_ground{"near", "at"};
constexpr std::array<std::string_view, 1> of_streets{"days"};
constexpr std::array questions{
    Question{"near", "near", of_near},
    Question{"ground", "lanes", of_ground},
    Question{"streets", "streets", of_streets, About::book},
    Question{"notes", "note", {}, About::notes},
};

/// The command line of a question. Rules: the file it is about is there.
Words words_of(const Desk& desk, const Question& question, Words options) {
  if (question.about == About::notes)
    return {"note", "check", desk.notes.string(), desk.area.string()};
  if (question.about == About::area)
    return on_area(desk, {std::string(question.command)}, std::move(options));
  Words words{std::string(question.command), desk.area.string(), "--book", desk.book.string()};
  words.insert(words.end(), options.begin(), options.end());
  return words;
}

}  // namespace

Reply Questions::answer(const Address& address) {
  constexpr std::string_view before = "/told/";
  const std::string_view name = std::string_view(address.path).substr(before.size());
  const auto* question = std::ranges::find(questions, name, &Question::name);
  if (question == questions.end()) return trouble(404, "there is no such question");
  if (question->about == About::book && desk_.book.empty())
    return trouble(409, "streets are counted in a book: open the page with --book FILE");
  if (question->about == About::notes && !has_notes(desk_)) return told({{"said", ""}});
  Words options;
  for (const auto& [word, text] : address.words) {
    if (std::ranges::find(question->options, word) == question->options.end())
      return trouble(400, "this question has no word '" + word + "'");
    options.push_back("--" + word + "=" + text);
  }
  const JobState state = jobs_.run(
      [&](const std::filesystem::path&) { return words_of(desk_, *question, std::move(options)); });
  // Nothing within the minutes is an answer, too (exit code 4).
  return has_failed(state) ? trouble(422, complaint(state)) : told({{"said", state.said}});
}

}  // namespace loopwright::page
