// Method: a line is cut at its tabs; each region and each text is read once and kept. What comes
// after the third column is kept as it is, the answer goes behind it. A byte order mark before the
// first line is no part of it. What a terminal would take for commands is never printed.
#include "command/hours_batch.hpp"

#include <algorithm>
#include <istream>
#include <ostream>
#include <unordered_map>
#include <vector>

#include "command/arguments.hpp"
#include "loopwright/base/printable.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/hours/hours.hpp"

namespace loopwright::command {
namespace {

constexpr std::string_view no_answer = "ERR";
constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";  // some editors put it in front
constexpr std::size_t texts_kept = 50'000;                    // some hundred megabytes at most

class Batch {
 public:
  explicit Batch(const HoursPlace& place) : place_(place) {}

  std::string_view answer(std::string_view line) {
    const auto cells = split(line, '\t');
    if (cells.size() < 3) return no_answer;
    const auto when = read_time(cells[2]);
    const Nation* nation = nation_for(std::string(cells[0]));
    if (nation == nullptr || !when) return no_answer;
    const hours::Hours& hours = hours_of(std::string(cells[1]));
    if (!hours.readable()) return no_answer;
    // As `hours --at` takes it: a time that the clocks jump over is moved on by the jump.
    const Instant at = nation->setting.on_clock(moment(when, nation->zone));
    switch (hours.at(at.civil(), nation->setting).in_force) {
      case hours::Tri::no:
        return "C";
      case hours::Tri::yes:
        return "O";
      case hours::Tri::unknown:
        break;
    }
    return "U";
  }

 private:
  /// None for a code that is no region.
  const Nation* nation_for(const std::string& code) {
    auto known = nations_.find(code);
    if (known == nations_.end()) {
      std::optional<Nation> nation;
      if (const auto region = find_region(code)) nation = nation_of(*region, place_);
      known = nations_.emplace(code, std::move(nation)).first;
    }
    return known->second ? &*known->second : nullptr;
  }

  const hours::Hours& hours_of(const std::string& text) {
    if (texts_.size() > texts_kept) texts_.clear();
    const auto known = texts_.find(text);
    if (known != texts_.end()) return known->second;
    return texts_.emplace(text, hours::read_hours(text)).first->second;
  }

  const HoursPlace& place_;
  std::unordered_map<std::string, std::optional<Nation>> nations_;
  std::unordered_map<std::string, hours::Hours> texts_;
};

/// Tabs stay, since they part the columns.
std::string printable_cells(std::string_view line) {
  std::string shown;
  for (std::size_t at = 0; at <= line.size();) {
    const std::size_t end = std::min(line.find('\t', at), line.size());
    if (at > 0) shown += '\t';
    shown += printable(line.substr(at, end - at));
    at = end + 1;
  }
  return shown;
}

}  // namespace

std::size_t answer_batch(std::istream& in, std::ostream& out, const HoursPlace& place) {
  Batch batch(place);
  std::size_t without_answer = 0;
  bool first = true;
  for (std::string line; std::getline(in, line); first = false) {
    if (first && line.starts_with(byte_order_mark)) line.erase(0, byte_order_mark.size());
    if (line.ends_with('\r')) line.pop_back();
    const std::string shown = printable_cells(line);
    const std::string_view answer = shown == line ? batch.answer(line) : no_answer;
    if (answer == no_answer) ++without_answer;
    out << shown << '\t' << answer << '\n';
  }
  return without_answer;
}

}  // namespace loopwright::command
