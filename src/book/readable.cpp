// Method: the export's rows, each a line of "column: value"; rows of passes and streets are counted together.
#include "loopwright/book/readable.hpp"

#include <array>
#include <map>
#include <nlohmann/json.hpp>
#include <string>

#include "loopwright/book/rights.hpp"

namespace loopwright::book {
namespace {

using Json = nlohmann::ordered_json;
using Section = wish::ProgressSheet::Section;

constexpr std::size_t longest_value =
    400;  // bytes; a remark has at most 1000 letters, files far more

struct TableHeading {
  std::string_view table, words;
};
/// A table without a row here is headed by its own name: a test holds the list to the schema.
constexpr std::array table_headings{
    TableHeading{"pupil", "What is kept of you"},
    TableHeading{"tick", "What was seen or passed, and when"},
    TableHeading{"avoided", "What is kept off"},
    TableHeading{"lesson", "Lessons"},
    TableHeading{"pass", "What was planned and driven"},
    TableHeading{"road_minutes", "Minutes by sort of road"},
    TableHeading{"fault", "Faults that were noted"},
    TableHeading{"intervention", "Where the instructor stepped in"},
    TableHeading{"observation", "Levels that were seen"},
    TableHeading{"goal", "Goals"},
    TableHeading{"mock_test", "Mock tests"},
    TableHeading{"trace", "Recorded drives"},
    TableHeading{"trace_time", "How long roads and junctions took"},
    TableHeading{"street_use", "Quiet streets that your drives used"},
    TableHeading{"written_file", "Files that were written for you"},
};

std::string heading_of(const std::string& table) {
  for (const TableHeading& heading : table_headings)
    if (heading.table == table) return std::string(heading.words);
  return table;
}

std::string words_of_column(std::string name) {
  for (char& letter : name)
    if (letter == '_') letter = ' ';
  return name;
}

/// Empty for what says nothing.
std::string value_text(const Json& value) {
  if (value.is_null()) return "";
  if (!value.is_string()) return value.dump();
  auto text = value.get<std::string>();
  if (text.size() > longest_value)
    return "a text of " + std::to_string(text.size()) + " bytes, whole in the JSON file";
  for (char& letter : text)
    if (letter == '\n') letter = ' ';
  return text;
}

std::string line_of(const Json& row) {
  std::string line;
  for (const auto& [name, value] : row.items())
    if (const std::string text = value_text(value); !text.empty())
      line.append(line.empty() ? "" : "; ").append(words_of_column(name)).append(": ").append(text);
  return line;
}

/// Rows that are alike but for what isn't named, as one line with how many there are.
std::vector<std::string> counted(const Json& rows, const std::vector<std::string>& columns) {
  std::vector<std::string> order;
  std::map<std::string, int> counts;
  for (const Json& row : rows) {
    Json named = Json::object();
    for (const std::string& column : columns) named[column] = row.at(column);
    const std::string line = line_of(named);
    if (++counts[line] == 1) order.push_back(line);
  }
  for (std::string& line : order) line += "; times: " + std::to_string(counts[line]);
  return order;
}

std::vector<std::string> lines_of(const std::string& table, const Json& rows) {
  if (table == "pass")
    return counted(rows, {"lesson", "kind", "movement", "driven", "level", "help"});
  if (table == "street_use") return counted(rows, {"day", "near_door"});
  std::vector<std::string> lines;
  for (const Json& row : rows) lines.push_back(line_of(row));
  return lines;
}

}  // namespace

std::vector<Section> readable_record(const Book& book, std::string_view code) {
  const Json all = Json::parse(export_pupil(book, code));
  std::vector<Section> sections;
  for (const auto& [table, rows] : all.items())
    if (rows.is_array() && !rows.empty())
      sections.push_back({heading_of(table), lines_of(table, rows)});
  return sections;
}

}  // namespace loopwright::book
