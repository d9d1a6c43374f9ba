#include "page/replies.hpp"

#include <algorithm>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

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

Reply paper(std::string bytes, const std::string& name) {
  Reply reply{
      .status = 200, .type = std::string(type_of("pdf")), .body = std::move(bytes), .headers = {}};
  reply.headers["Content-Disposition"] = "inline; filename=\"" + name + ".pdf\"";
  return reply;
}

Reply too_much() {
  return trouble(503, "too much is being looked for at once; wait for it, or break something off");
}

std::string in_a_line(std::string_view said) {
  std::string line;
  for (const std::string_view part : split(said, '\n'))
    if (const std::string_view words = trim(part); !words.empty())
      line.append(line.empty() ? "" : " ").append(words);
  return line;
}

std::string without(std::string text, const std::filesystem::path& folder) {
  const std::string name = folder.string() + "/";
  for (auto at = text.find(name); at != std::string::npos; at = text.find(name))
    text.erase(at, name.size());
  return text;
}

std::string bytes_of(const std::filesystem::path& file) {
  std::ifstream in(file, std::ios::binary);
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

std::string_view type_of(std::string_view form) {
  if (form == "pdf") return "application/pdf";
  if (form == "html") return "text/html; charset=utf-8";
  if (form == "gpx") return "application/gpx+xml";
  if (form == "ics") return "text/calendar; charset=utf-8";
  if (form == "geojson") return "application/geo+json";
  if (form == "json") return "application/json";
  return form == "text" ? "text/plain; charset=utf-8" : "";
}

bool has_failed(const JobState& state) {
  return state.stage == Stage::failed ||
         (state.stage == Stage::over && state.code != 0 && state.code != 4);
}

bool is_done(const JobState& state) {
  return state.stage == Stage::over && state.code == 0;
}

bool has_notes(const Desk& desk) {
  std::error_code ignored;
  return !desk.notes.empty() && std::filesystem::exists(desk.notes, ignored);
}

Words on_area(const Desk& desk, Words command, Words others) {
  command.push_back(desk.area.string());
  command.insert(command.end(), others.begin(), others.end());
  if (has_notes(desk)) command.insert(command.end(), {"--notes", desk.notes.string()});
  if (!desk.terms.empty()) command.insert(command.end(), {"--terms", desk.terms.string()});
  return command;
}

std::string complaint(const JobState& state) {
  std::string_view text = trim(state.complained);
  text = text.substr(0, text.find('\n'));
  constexpr std::string_view name = "loopwright: ";
  if (text.starts_with(name)) text.remove_prefix(name.size());
  if (text.empty()) return "it ended by itself: try again";
  std::string line = without(std::string(text), state.folder);
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
