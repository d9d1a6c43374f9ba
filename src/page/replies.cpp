#include "page/replies.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "loopwright/base/text.hpp"

namespace loopwright::page {

Reply told(const nlohmann::json& body) {
  return json(body.dump(-1, ' ', false, nlohmann::json::error_handler_t::replace));
}

std::string word(const Address& address, const std::string& name) {
  const auto known = address.words.find(name);
  return known == address.words.end() ? std::string() : known->second;
}

std::string plain_file_name(const std::string& name, const std::string& other) {
  const auto is_plain = [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' ||
           c == '_' || c == '.';
  };
  const bool plain = !name.empty() && name.size() <= 100 && name.front() != '.' &&
                     name.front() != '-' && std::ranges::all_of(name, is_plain);
  return plain ? name : other;
}

std::string complaint(const JobState& state) {
  std::string_view text = trim(state.complained);
  text = text.substr(0, text.find('\n'));
  constexpr std::string_view name = "loopwright: ";
  if (text.starts_with(name)) text.remove_prefix(name.size());
  if (text.empty()) return "it ended by itself: try again";
  std::string line(text);
  // A person asked by a form, and not by a file of ours.
  const std::string folder = state.folder.string() + "/";
  for (auto at = line.find(folder); at != std::string::npos; at = line.find(folder))
    line.erase(at, folder.size());
  constexpr std::string_view wish_line = "wish, line ";
  if (line.starts_with(wish_line))
    if (const auto colon = line.find(": "); colon != std::string::npos) line.erase(0, colon + 2);
  return line;
}

std::vector<std::string> warnings(const JobState& state) {
  std::vector<std::string> lines;
  for (const std::string_view each : split(trim(state.complained), '\n')) {
    if (each.empty()) continue;
    JobState one = state;
    one.complained = each;
    lines.push_back(complaint(one));
  }
  return lines;
}

}  // namespace loopwright::page
