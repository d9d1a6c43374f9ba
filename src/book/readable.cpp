// Method: a line for each of the export's rows, in words of its table; passes and streets are counted together. What a
// table's words leave out, such as a column of a later version, follows as "column: value", so that nothing is kept back.
#include "loopwright/book/readable.hpp"

#include <algorithm>
#include <array>
#include <cstdio>
#include <map>
#include <nlohmann/json.hpp>
#include <set>
#include <sstream>
#include <string>

#include "loopwright/book/rights.hpp"

namespace loopwright::book {
namespace {

using Json = nlohmann::ordered_json;
using Section = wish::ProgressSheet::Section;

constexpr std::size_t longest_value =
    4000;  // bytes: a remark of 1000 letters (read_log.cpp); files have far more

std::string with_spaces(std::string name) {
  for (char& letter : name)
    if (letter == '_' || letter == '-') letter = ' ';
  return name;
}

/// 22.7 of 22.73737; 43 of 43.0
std::string number_text(double number) {
  char text[32];
  std::snprintf(text, sizeof text, "%.1f", number);
  std::string shown = text;
  if (shown.ends_with(".0")) shown.resize(shown.size() - 2);
  return shown;
}

/// Empty for what says nothing.
std::string value_text(const Json& value) {
  if (value.is_null()) return "";
  if (value.is_number_float()) return number_text(value.get<double>());
  if (!value.is_string()) return value.dump();
  auto text = value.get<std::string>();
  if (text.size() > longest_value)
    return "a text of " + std::to_string(text.size()) + " bytes, whole in the JSON file";
  for (char& letter : text)
    if (letter == '\n') letter = ' ';
  return text;
}

/// The columns of one row, each told once.
class Columns {
 public:
  explicit Columns(const Json& row) : row_(row) {}

  /// The value, or nothing where it says nothing.
  std::string text(const std::string& name) {
    told_.insert(name);
    return row_.contains(name) ? value_text(row_.at(name)) : "";
  }
  /// before, the value and after; nothing where it says nothing.
  std::string part(std::string_view before, const std::string& name, std::string_view after = "") {
    const std::string value = text(name);
    return value.empty() ? "" : std::string(before) + value + std::string(after);
  }
  std::string spaced(const std::string& name) { return with_spaces(text(name)); }
  bool flag(const std::string& name) { return number(name) != 0; }
  double number(const std::string& name) {
    told_.insert(name);
    return row_.contains(name) && row_.at(name).is_number() ? row_.at(name).get<double>() : 0;
  }
  /// "2026-11-28 15:00"
  std::string moment(const std::string& name) {
    std::string when = text(name).substr(0, 16);
    if (when.size() == 16) when[10] = ' ';
    return when;
  }
  /// "once", "7 times"
  std::string times(const std::string& name) {
    const std::string count = text(name);
    return count == "1" ? "once" : count + " times";
  }
  /// "roundabout right", or nothing.
  std::string practice() {
    const std::string kind = spaced("kind"), movement = spaced("movement");
    return kind + (kind.empty() || movement.empty() || movement == "none" ? "" : " ") +
           (movement == "none" ? "" : movement);
  }
  /// The lines of a wish, which begin with a remark to whoever opens its file.
  std::string asked_for(const std::string& name) {
    told_.insert(name);
    std::istringstream lines(row_.contains(name) ? row_.at(name).get<std::string>() : "");
    std::string words;
    for (std::string line; std::getline(lines, line);)
      if (!line.empty() && line.front() != '#') words += (words.empty() ? "" : ", ") + line;
    if (words.size() > longest_value) words = "much, whole in the JSON file";
    return words.empty() ? "" : "; asked for: " + words;
  }
  /// What no words were made of.
  [[nodiscard]] std::string rest() const {
    std::string rest;
    for (const auto& [name, value] : row_.items())
      if (const std::string text = value_text(value); !text.empty() && !told_.contains(name))
        rest += "; " + with_spaces(name) + ": " + text;
    return rest;
  }

 private:
  const Json& row_;
  std::set<std::string> told_;
};

std::string of_pupil(Columns& row) {
  return row.text("code") + row.part("; home: ", "home") +
         row.part("; in the book since ", "added") + row.part("; skills recorded as ", "scheme") +
         row.part("; test on ", "test_day") +
         (row.flag("my_your") ? "; spoken to of my side and your side" : "");
}

std::string of_tick(Columns& row) {
  return row.spaced("what") + " on " + row.text("day");
}

std::string of_avoided(Columns& row) {
  return row.spaced("kind");
}

std::string of_lesson(Columns& row) {
  row.number("start_s");  // the same moment
  std::string line = "lesson " + row.text("number") + ", " + row.moment("start") + ", " +
                     row.text("length_minutes") + " min, " + row.text("state") +
                     row.part(" in ", "minutes", " min");
  if (const double planned_s = row.number("likely_s"); planned_s > 0)
    line += "; planned as " + number_text(planned_s / 60) + " min of driving";
  line += row.part("; light: ", "light") + row.part("; weather: ", "weather") +
          row.part("; traffic: ", "traffic");
  if (const double minutes = row.number("private_minutes"); minutes > 0)
    line += "; practised at home before it: " + number_text(minutes) + " min";
  return line + row.part("; told as: ", "said") + row.part("; own words: ", "remark") +
         row.asked_for("wish") + row.part("; area: ", "area") + row.part("; notes: ", "notes") +
         row.part("; terms: ", "terms") + row.part("; loops: ", "loop_file");
}

std::string of_pass(Columns& row) {
  return "lesson " + row.text("lesson") + ": " + row.practice() + ", " + row.times("rows") +
         (row.flag("driven") ? ", driven" : ", not driven") + row.part(", level ", "level") +
         row.part(", help: ", "help") + (row.flag("traced") ? ", as recorded" : "");
}

std::string of_road(Columns& row) {
  return "lesson " + row.text("lesson") + ": " + row.spaced("road") + ", " + row.text("minutes") +
         " min";
}

/// "lesson 1: 30 mph, 22.7 min"
std::string of_limit(Columns& row) {
  const bool is_none = row.number("value") == 0;
  const std::string limit = row.text("value") + " " + row.text("unit");
  return "lesson " + row.text("lesson") + ": " + (is_none ? "no limit" : limit) + ", " +
         row.text("minutes") + " min";
}

std::string at_practice(Columns& row) {
  const std::string where = row.practice();
  return where.empty() ? "" : ", at " + where;
}

std::string of_fault(Columns& row) {
  return "lesson " + row.text("lesson") + ": " + row.spaced("heading") + ", " + row.text("grade") +
         ", " + row.times("count") + at_practice(row);
}

std::string of_intervention(Columns& row) {
  return "lesson " + row.text("lesson") + ": " + row.text("how") + ", " + row.times("count") +
         at_practice(row) + row.part(": ", "why");
}

std::string of_observation(Columns& row) {
  return row.text("day") + ", lesson " + row.text("lesson") + ": " + row.spaced("skill") +
         ", level " + row.text("level") + (row.flag("said") ? " as said" : " by the passes driven");
}

std::string of_goal(Columns& row) {
  return "lesson " + row.text("lesson") + ": " + row.text("text") +
         row.part(", reached in lesson ", "reached_in");
}

std::string of_mock_test(Columns& row) {
  return row.text("day") + ", lesson " + row.text("lesson") + ": faults " + row.text("driving") +
         " driving, " + row.text("serious") + " serious, " + row.text("dangerous") + " dangerous";
}

std::string of_trace(Columns& row) {
  return "lesson " + row.text("lesson") + ": from " + row.moment("start") + " on, " +
         number_text(row.number("metres") / 1000) + " km in " +
         number_text(row.number("seconds") / 60) + " min, " +
         number_text(row.number("standing_s") / 60) + " of them standing" +
         row.part("; the recording: ", "recording");
}

std::string of_trace_time(Columns& row) {
  const std::string control = row.spaced("control");
  return "lesson " + row.text("lesson") + ": " + (control == "none" ? "no control" : control) +
         ", " + row.times("count") + ", " + number_text(row.number("took_s") / 60) +
         " min where the usual learner takes " + number_text(row.number("expected_s") / 60);
}

std::string of_to_check(Columns& row) {
  return "lesson " + row.text("lesson") + ", " + row.text("letter") + ": " + row.spaced("what") +
         ", " + row.text("object") + row.part(", on the map: ", "map_text");
}

std::string of_streets(Columns& row) {
  const bool near = row.flag("near_door");
  return row.text("day") + ": " + row.text("rows") + " pieces of street" +
         (near ? " near the door" : "");
}

std::string of_entry(Columns& row) {
  row.text("entry");  // a name made up for it
  row.text("mark");   // a sum over the lesson, which tells nothing
  return "lesson " + row.text("lesson") + ": logged away from the school's book, " +
         (row.text("state") == "kept" ? "to be handed in" : row.text("state"));
}

std::string of_proposal(Columns& row) {
  row.text("mark");
  return "for " + row.text("day") + row.part(", made ", "made") + row.part(": ", "says") +
         row.asked_for("wish") + row.part("; map: ", "area");
}

std::string of_file(Columns& row) {
  row.text("sha256");  // tells it from a file of another's of that name: no more of the pupil
  return row.text("path") + row.part(", for lesson ", "lesson");
}

struct TableWords {
  std::string_view table, heading;
  std::string (*of)(Columns&);
};
/// A table without a row here is headed by its own name: a test holds the list to the schema.
constexpr std::array table_words{
    TableWords{"pupil", "What is kept of you", of_pupil},
    TableWords{"tick", "What was seen or passed, and when", of_tick},
    TableWords{"avoided", "What is kept off", of_avoided},
    TableWords{"lesson", "Lessons", of_lesson},
    TableWords{"pass", "What was planned and driven", of_pass},
    TableWords{"road_minutes", "Minutes by sort of road", of_road},
    TableWords{"limit_minutes", "Minutes by speed limit", of_limit},
    TableWords{"fault", "Faults that were noted", of_fault},
    TableWords{"intervention", "Where the instructor stepped in", of_intervention},
    TableWords{"observation", "Levels that were seen", of_observation},
    TableWords{"goal", "Goals", of_goal},
    TableWords{"mock_test", "Mock tests", of_mock_test},
    TableWords{"trace", "Recorded drives", of_trace},
    TableWords{"trace_time", "How long roads and junctions took", of_trace_time},
    TableWords{"to_check", "What your sheets asked to look at on the road", of_to_check},
    TableWords{"street_use", "Quiet streets that your drives used", of_streets},
    TableWords{"log_entry", "Lessons that were logged in a day's copy", of_entry},
    TableWords{"proposal", "What was proposed for the next lesson", of_proposal},
    TableWords{"written_file", "Files that were written for you", of_file},
};

/// Rows that are alike in these columns, as one row with how many there are in "rows".
Json counted(const Json& rows, const std::vector<std::string>& columns) {
  Json all = Json::array();
  std::map<std::string, std::size_t> place;
  for (const Json& row : rows) {
    Json named = Json::object();
    for (const std::string& column : columns) named[column] = row.at(column);
    const auto [found, is_new] = place.emplace(named.dump(), all.size());
    if (is_new) {
      named["rows"] = 0;
      all.push_back(std::move(named));
    }
    Json& count = all[found->second]["rows"];
    count = count.get<int>() + 1;
  }
  return all;
}

Json rows_to_tell(const std::string& table, const Json& rows) {
  if (table == "pass")
    return counted(rows, {"lesson", "kind", "movement", "driven", "level", "help", "traced"});
  if (table == "street_use") return counted(rows, {"day", "near_door"});
  return rows;
}

Section section_of(const std::string& table, const Json& rows) {
  const auto words = std::find_if(table_words.begin(), table_words.end(),
                                  [&](const TableWords& one) { return one.table == table; });
  Section section{words == table_words.end() ? table : std::string(words->heading), {}};
  for (const Json& row : rows_to_tell(table, rows)) {
    Columns columns(row);
    std::string line = words == table_words.end() ? "" : words->of(columns);
    line += columns.rest();
    section.lines.push_back(line.starts_with("; ") ? line.substr(2) : line);
  }
  return section;
}

}  // namespace

std::vector<Section> readable_record(const Book& book, std::string_view code) {
  const Json all = Json::parse(export_pupil(book, code));
  std::vector<Section> sections;
  for (const auto& [table, rows] : all.items())
    if (rows.is_array() && !rows.empty()) sections.push_back(section_of(table, rows));
  return sections;
}

}  // namespace loopwright::book
