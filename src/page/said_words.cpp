#include "page/said_words.hpp"

#include <algorithm>
#include <array>
#include <nlohmann/json.hpp>
#include <optional>
#include <span>
#include <utility>

namespace loopwright::page {
namespace {

using Json = nlohmann::json;
using Pairs = std::vector<std::pair<std::string, std::string>>;

/// What a note may say of itself; which file and which area is ours to say.
constexpr std::array<std::string_view, 12> of_note{"at",     "to",      "says",  "kind",
                                                   "hours",  "from",    "until", "limit",
                                                   "length", "heading", "seen",  "remark"};
/// What may be changed of one: not where it is.
constexpr std::array<std::string_view, 10> of_changed_note{
    "says", "kind", "hours", "from", "until", "limit", "length", "seen", "remark", "without"};

constexpr std::array<std::string_view, 8> of_pupil{
    "home", "scheme", "licence-seen", "eyesight-read", "theory-passed", "test", "avoid", "sides"};
constexpr std::array<std::string_view, 3> of_centre{"outline", "hours", "since"};
constexpr std::array<std::string_view, 8> of_task{"start", "within", "today",  "minutes",
                                                  "quiet", "at",     "lesson", "length"};

bool is_one_line(const std::string& text) {
  return std::ranges::none_of(text, [](char c) { return static_cast<unsigned char>(c) < ' '; });
}

bool is_pair(const Json& pair) {
  return pair.is_array() && pair.size() == 2 && pair[0].is_string() && pair[1].is_string() &&
         is_one_line(pair[0]) && is_one_line(pair[1]);
}

/// None when the body isn't an object with such pairs as its words.
std::optional<Pairs> pairs_in(const Json& said) {
  if (!said.is_object() || !said.contains("words") || !said["words"].is_array())
    return std::nullopt;
  Pairs pairs;
  for (const Json& pair : said["words"]) {
    if (!is_pair(pair)) return std::nullopt;
    pairs.emplace_back(pair[0], pair[1]);
  }
  return pairs;
}

constexpr std::string_view no_pairs = "words: pairs of lines of text, [name, text]";

/// what: "a note", for refusals.
OptionWords options_in(std::string_view body, std::span<const std::string_view> known,
                       std::string_view what) {
  const auto pairs = pairs_in(Json::parse(body, nullptr, false));
  OptionWords options;
  if (!pairs) return options.trouble = no_pairs, options;
  for (const auto& [name, text] : *pairs) {
    if (std::ranges::find(known, name) == known.end())
      return options.trouble = std::string(what) + " has no word '" + name + "'", options;
    options.words.emplace_back("--").append(name).append("=").append(text);
  }
  return options;
}

}  // namespace

WishLines wish_lines(std::string_view body) {
  const Json said = Json::parse(body, nullptr, false);
  const auto pairs = pairs_in(said);
  WishLines lines;
  if (!pairs) return lines.trouble = no_pairs, lines;
  for (const auto& [name, text] : *pairs) {
    if (name == "start") lines.start = text;
    lines.text.append(name).append(" ").append(text).append("\n");
  }
  const Json effort = said.value("effort", Json("usual"));
  if (effort == "quick" || effort == "soon" || effort == "thorough") {
    lines.effort = effort.get<std::string>();
  } else if (effort != "usual") {
    lines.trouble = "effort: quick, soon, usual or thorough";
  }
  return lines;
}

OptionWords note_words(std::string_view body) {
  return options_in(body, of_note, "a note");
}

OptionWords changed_note_words(std::string_view body) {
  return options_in(body, of_changed_note, "a note that is changed");
}

OptionWords pupil_words(std::string_view body) {
  return options_in(body, of_pupil, "a pupil");
}

OptionWords centre_words(std::string_view body) {
  return options_in(body, of_centre, "a test centre");
}

OptionWords task_words(std::string_view body) {
  return options_in(body, of_task, "a task for a pupil");
}

}  // namespace loopwright::page
