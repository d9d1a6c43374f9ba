// 1. Leave out what follows " (" or ";", what is before ": ", and a leading "only ".
// 2. Part at commas and at " or "; every part must be one word.
#include "command/choices.hpp"

#include <algorithm>

namespace loopwright::command {
namespace {

bool is_word(std::string_view text) {
  return !text.empty() && std::ranges::all_of(text, [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-';
  });
}

std::string_view list_in(std::string_view help) {
  help = help.substr(0, std::min(help.find(" ("), help.find(';')));
  if (const auto colon = help.find(": "); colon != std::string_view::npos)
    help.remove_prefix(colon + 2);
  if (help.starts_with("only ")) help.remove_prefix(5);
  return help;
}

}  // namespace

std::vector<std::string> choices_in(std::string_view help) {
  std::vector<std::string> choices;
  for (std::string_view rest = list_in(help); !rest.empty();) {
    const auto comma = rest.find(", "), last = rest.find(" or ");
    const auto end = std::min({comma, last, rest.size()});
    if (!is_word(rest.substr(0, end))) return {};
    choices.emplace_back(rest.substr(0, end));
    const std::size_t between = end == rest.size() ? 0 : end == comma ? 2 : 4;
    rest.remove_prefix(end + between);
  }
  return choices.size() < 2 ? std::vector<std::string>() : choices;
}

}  // namespace loopwright::command
