// Method:
// 1. Each row's first cell names a list, its second the entry of that list (a level, a class of
//    road, a control …), the rest are numbers.
// 2. Entries are found by the names their own rooms give them, so a renamed one can't be missed.
// 3. Every entry must have been given exactly once.
#include "pace/numbers.hpp"

#include <stdexcept>
#include <string>

#include "loopwright/base/table.hpp"

namespace loopwright::pace {
namespace {

constexpr double mps_per_mph = 0.44704;  // exact: 1609.344 m / 3600 s

/// Rows of one list, by their second cell.
class List {
 public:
  List(const std::vector<TableRow>& rows, std::string_view list) : rows_(rows), list_(list) {}

  [[nodiscard]] double number(std::string_view entry, std::size_t column = 2) const {
    const TableRow* found = nullptr;
    for (const TableRow& row : rows_)
      if (row.size() > column && row[0] == list_ && row[1] == entry) {
        if (found != nullptr) complain("twice", entry);
        found = &row;
      }
    if (found == nullptr) complain("not", entry);
    return number_cell(*found, column);
  }

 private:
  [[noreturn]] void complain(std::string_view how_often, std::string_view entry) const {
    throw std::logic_error("rule table pace: row '" + std::string(list_) + " | " +
                           std::string(entry) + "' is there " + std::string(how_often));
  }
  const std::vector<TableRow>& rows_;
  std::string_view list_;
};

constexpr std::array<std::string_view, cap_count> cap_names{
    "winding", "humps", "parked_both", "narrow", "single_track", "ring", "ring_lanes"};

void read_levels(const std::vector<TableRow>& rows, Numbers& numbers) {
  for (std::size_t i = 0; i < level_count; ++i) {
    const std::string level = std::to_string(i + 1);
    numbers.share[i] = List(rows, "share").number(level);
    numbers.learner_delay[i] = List(rows, "learner_delay").number(level);
  }
}

void read_speeds(const std::vector<TableRow>& rows, Numbers& numbers) {
  for (std::size_t i = 0; i < class_count; ++i)
    numbers.class_mps[i] =
        mps_per_mph * List(rows, "class").number(road::name(static_cast<road::RoadClass>(i)));
  for (std::size_t i = 0; i < cap_count; ++i)
    numbers.cap_mps[i] = mps_per_mph * List(rows, "cap").number(cap_names[i]);
  numbers.narrow_m = List(rows, "width").number("narrow");
  numbers.single_track_m = List(rows, "width").number("single_track");
}

void read_waits(const std::vector<TableRow>& rows, Numbers& numbers) {
  const List delays(rows, "delay");
  for (std::size_t i = 0; i < road::control_count; ++i) {
    const std::string_view control = road::name(static_cast<road::Control>(i));
    numbers.waits[i] = {delays.number(control), delays.number(control, 3)};
  }
}

/// Rows that are found by their list alone.
void read_single_rows(const std::vector<TableRow>& rows, Numbers& numbers) {
  for (const TableRow& row : rows) {
    if (row[0] == "peak")
      numbers.peaks.push_back({number_cell(row, 1), number_cell(row, 2), number_cell(row, 3)});
    if (row[0] == "running_variance") numbers.running_variance = number_cell(row, 1);
  }
}

}  // namespace

Numbers read_numbers(std::string_view text) {
  const std::vector<TableRow> rows = read_table(text);
  Numbers numbers;
  read_levels(rows, numbers);
  read_speeds(rows, numbers);
  read_waits(rows, numbers);
  read_single_rows(rows, numbers);
  return numbers;
}

}  // namespace loopwright::pace
