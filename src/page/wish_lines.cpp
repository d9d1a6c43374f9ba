#include "page/wish_lines.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>

namespace loopwright::page {
namespace {

using Json = nlohmann::json;

bool is_one_line(const std::string& text) {
  return std::ranges::none_of(text, [](char c) { return static_cast<unsigned char>(c) < ' '; });
}

bool is_word(const Json& pair) {
  return pair.is_array() && pair.size() == 2 && pair[0].is_string() && pair[1].is_string() &&
         is_one_line(pair[0]) && is_one_line(pair[1]);
}

}  // namespace

WishLines wish_lines(std::string_view body) {
  const Json said = Json::parse(body, nullptr, false);
  const auto refused = [](std::string why) {
    return WishLines{.text = "", .effort = "", .trouble = std::move(why)};
  };
  if (!said.is_object() || !said.contains("words") || !said["words"].is_array())
    return refused("a wish is {\"words\": [[name, text], …]}");
  WishLines lines;
  for (const Json& pair : said["words"]) {
    if (!is_word(pair)) return refused("a word of a wish is a pair of lines of text: [name, text]");
    lines.text += pair[0].get<std::string>() + " " + pair[1].get<std::string>() + "\n";
  }
  const Json effort = said.value("effort", Json("usual"));
  if (effort == "quick" || effort == "thorough") {
    lines.effort = effort.get<std::string>();
  } else if (effort != "usual") {
    return refused("effort: quick, usual or thorough");
  }
  return lines;
}

}  // namespace loopwright::page
