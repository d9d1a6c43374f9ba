// Method:
// 1. Cut the file into lines; a line of '#' and "include" names a header in "" or <>.
// 2. "loopwright/<room>/…" and "<room>/…" must be of a room that the file's room may include, the
//    latter (a private header) of the file's own; a header in "" without '/' is of its own folder.
// 3. <name> without '.' or '/' is the C++ library's; any other must be listed for the file's room,
//    and none may stand under include/.
// 4. Lines are counted, and the blocks measured from their closing brace upwards.
#include "layout/house.hpp"

#include <algorithm>
#include <stdexcept>

#include "loopwright/base/table.hpp"
#include "loopwright/base/text.hpp"

namespace loopwright::test {
namespace {

std::vector<std::string_view> lines_of(std::string_view text) {
  std::vector<std::string_view> lines;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find('\n', at), text.size());
    lines.push_back(text.substr(at, end - at));
    at = end + 1;
  }
  return lines;
}

Rooms words_of(std::string_view text) {
  Rooms words;
  for (const std::string_view word : split(text, ' ')) {
    if (!word.empty()) words.emplace(word);
  }
  return words;
}

/// The folder after a prefix of a path, "" when the path doesn't begin so or has no folder there.
std::string folder_after(std::string_view path, std::string_view prefix) {
  if (!path.starts_with(prefix)) return {};
  const std::string_view rest = path.substr(prefix.size());
  const std::size_t slash = rest.find('/');
  return slash == std::string_view::npos ? std::string() : std::string(rest.substr(0, slash));
}

std::string room_of(std::string_view path) {
  const std::string room = folder_after(path, "include/loopwright/");
  return room.empty() ? folder_after(path, "src/") : room;
}

enum class Style { none, quoted, angled };

struct Include {
  Style style = Style::none;
  std::string_view header;
};

Include read_include(std::string_view line) {
  constexpr std::string_view directive = "include";
  line = trim(line);
  if (!line.starts_with('#')) return {};
  line = trim(line.substr(1));
  if (!line.starts_with(directive)) return {};
  line = trim(line.substr(directive.size()));
  const char close = line.starts_with('<') ? '>' : '"';
  const std::size_t end = line.find(close, 1);
  if (line.empty() || end == std::string_view::npos) return {};
  return {close == '>' ? Style::angled : Style::quoted, line.substr(1, end - 1)};
}

/// What is wrong with an include in this room; empty when nothing is.
std::string fault_of_quoted(const House& house, const std::string& room, std::string_view header) {
  const std::string published = folder_after(header, "loopwright/");
  const std::string inner = folder_after(header, "");
  if (published.empty()) {
    if (inner.empty() || inner == room) return {};
    return "room " + room + " may not include a private header of " + inner;
  }
  const bool allowed = published == room || house.may_include.at(room).contains(published);
  return allowed ? std::string() : "room " + room + " may not include room " + published;
}

std::string fault_of_angled(const House& house, const SourceFile& file, std::string_view header) {
  if (header.find_first_of("./") == std::string_view::npos) return {};
  if (file.path.starts_with("include/")) return "a public header may not include another library";
  const std::string room = room_of(file.path);
  for (const auto& [start, rooms] : house.headers) {
    if (header.starts_with(start) && rooms.contains(room)) return {};
  }
  return "room " + room + " may not include this library";
}

void check_includes(const House& house, const SourceFile& file,
                    std::vector<std::string>& complaints) {
  const std::string room = room_of(file.path);
  if (room.empty()) return;
  if (!house.may_include.contains(room)) {
    complaints.push_back(file.path + ": there is no room " + room);
    return;
  }
  const auto lines = lines_of(file.text);
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const Include include = read_include(lines[i]);
    std::string fault;
    if (include.style == Style::quoted) fault = fault_of_quoted(house, room, include.header);
    if (include.style == Style::angled) fault = fault_of_angled(house, file, include.header);
    if (fault.empty()) continue;
    complaints.push_back(file.path + ":" + std::to_string(i + 1) + ": " + fault + " (" +
                         std::string(include.header) + ")");
  }
}

/// Line of a block's beginning: the last one before `close` that is indented as it and is neither
/// a comment nor the end of something else.
std::size_t block_start(const std::vector<std::string_view>& lines, std::size_t close) {
  const std::size_t indent = lines[close].find('}');
  for (std::size_t i = close; i-- > 0;) {
    if (lines[i].find_first_not_of(' ') != indent) continue;
    const std::string_view content = lines[i].substr(indent);
    if (!content.starts_with("}") && !content.starts_with("//")) return i;
  }
  return close;
}

void check_lengths(const House& house, const SourceFile& file,
                   std::vector<std::string>& complaints) {
  const auto lines = lines_of(file.text);
  const auto own = house.lines.find(file.path);
  const std::size_t most = own == house.lines.end() ? house.most_file_lines : own->second;
  if (lines.size() > most) {
    complaints.push_back(file.path + ": " + std::to_string(lines.size()) + " lines, at most " +
                         std::to_string(most));
  }
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (trim(lines[i]) != "}") continue;
    const std::size_t start = block_start(lines, i);
    const std::size_t length = i - start + 1;
    if (length <= house.most_block_lines) continue;
    complaints.push_back(file.path + ":" + std::to_string(start + 1) + ": a block of " +
                         std::to_string(length) + " lines, at most " +
                         std::to_string(house.most_block_lines));
  }
}

void reach(const House& house, std::string_view room, Rooms& reached) {
  for (const std::string& next : house.may_include.at(std::string(room))) {
    if (reached.insert(next).second) reach(house, next, reached);
  }
}

}  // namespace

House read_house(std::string_view text) {
  House house;
  for (const TableRow& row : read_table(text)) {
    const std::string what(row.at(0));
    const std::string name(row.at(1));
    if (what == "room")
      house.may_include[name] = words_of(row.at(2));
    else if (what == "stranger")
      house.strangers[name] = words_of(row.at(2));
    else if (what == "header")
      house.headers[name] = words_of(row.at(2));
    else if (what == "lines")
      house.lines[name] = static_cast<std::size_t>(number_cell(row, 2));
    else if (name == "lines of a file")
      house.most_file_lines = static_cast<std::size_t>(number_cell(row, 2));
    else if (name == "lines of a block")
      house.most_block_lines = static_cast<std::size_t>(number_cell(row, 2));
    else
      throw std::logic_error("rooms.txt: unknown row '" + what + " | " + name + "'");
  }
  return house;
}

std::vector<std::string> complaints_about(const House& house, const SourceFile& file) {
  std::vector<std::string> complaints;
  check_includes(house, file, complaints);
  check_lengths(house, file, complaints);
  return complaints;
}

Rooms reached_from(const House& house, std::string_view room) {
  Rooms reached;
  reach(house, room, reached);
  return reached;
}

}  // namespace loopwright::test
