#include "page/days.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <optional>

#include "loopwright/base/text.hpp"
#include "loopwright/store/area.hpp"
#include "page/job_files.hpp"
#include "page/replies.hpp"

namespace loopwright::page {
namespace {

using Json = nlohmann::json;

constexpr std::size_t most_lines = 40, longest_line = 400;

bool is_line(const Json& line) {
  if (!line.is_string()) return false;
  const std::string& text = line.get_ref<const std::string&>();
  return text.size() <= longest_line && std::ranges::none_of(text, [](char c) {
           return static_cast<unsigned char>(c) < ' ' || c == '#';
         });
}

/// The list as a file; none when the body says none.
std::optional<std::string> list_in(const Json& said) {
  if (!said.is_object() || !said.contains("lines") || !said["lines"].is_array() ||
      said["lines"].size() > most_lines)
    return std::nullopt;
  std::string text;
  for (const Json& line : said["lines"]) {
    if (!is_line(line)) return std::nullopt;
    text += line.get<std::string>() + "\n";
  }
  return text;
}

}  // namespace

Reply Days::begin(const std::string& body) {
  if (desk_.book.empty())
    return trouble(409, "a day is kept in the pupils' book: open the page with --book FILE");
  const Json said = Json::parse(body, nullptr, false);
  const auto list = list_in(said);
  const Json day = said.is_object() ? said.value("day", Json()) : Json();
  const auto date = day.is_string() ? read_date(day.get_ref<const std::string&>()) : std::nullopt;
  if (!list || !date)
    return trouble(400, "day: a date such as 2026-11-28; lines: such as 09:00 45 WREN roundabouts");
  const auto id = jobs_.add([&](const std::filesystem::path& folder) {
    Words words;
    if (!list->empty()) {
      store::write_whole(folder / "list", *list);
      words.push_back((folder / "list").string());
    }
    words.insert(words.end(),
                 {"--sheet", day_file(folder).string(), "--book", desk_.book.string()});
    return on_area(desk_, {"day", day.get<std::string>()}, std::move(words));
  });
  if (!id) return too_much();
  return told({{"job", *id}});
}

Reply Days::paper_of(const std::string& day) {
  if (desk_.book.empty())
    return trouble(409, "a day is kept in the pupils' book: open the page with --book FILE");
  if (!read_date(day)) return trouble(400, "day: a date such as 2026-11-28");
  Reply reply = paper({}, "lessons-" + day);
  const JobState state = jobs_.run(
      [&](const std::filesystem::path& folder) {
        return on_area(desk_, {"day", day},
                       {"-o", paper_file(folder).string(), "--book", desk_.book.string()});
      },
      [&](const JobState& over) { reply.body = bytes_of(paper_file(over.folder)); });
  return is_done(state) ? reply : line_to_read(422, complaint(state));
}

}  // namespace loopwright::page
