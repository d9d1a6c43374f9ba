// Method: a line is cut at its tabs; each region and each text is read once and kept. What comes
// after the third column is kept as it is, the answer goes behind it.
#include "command/hours_batch.hpp"

#include <algorithm>
#include <istream>
#include <ostream>
#include <unordered_map>
#include <vector>

#include "loopwright/base/text.hpp"
#include "loopwright/hours/hours.hpp"

namespace loopwright::command {
namespace {

constexpr std::string_view no_answer = "ERR";
constexpr std::size_t texts_kept = 50'000;  // some hundred megabytes at most

class Batch {
 public:
  explicit Batch(const HoursPlace& place) : place_(place) {}

  std::string_view answer(std::string_view line) {
    const auto cells = split(line, '\t');
    if (cells.size() < 3) return no_answer;
    const auto when = read_time(cells[2]);
    const hours::Setting* setting = setting_of(std::string(cells[0]));
    if (setting == nullptr || !when) return no_answer;
    const hours::Hours& hours = hours_of(std::string(cells[1]));
    if (!hours.readable()) return no_answer;
    const CivilTime at = when->offset_s ? on_the_wall(*when, *setting) : when->civil;
    switch (hours.at(at, *setting).in_force) {
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
  static CivilTime on_the_wall(const WrittenTime& when, const hours::Setting& setting) {
    const Instant at{civil_seconds(when.civil) - *when.offset_s, *when.offset_s};
    return setting.on_clock(at).civil();
  }

  /// None for a code that is no region.
  const hours::Setting* setting_of(const std::string& code) {
    auto known = settings_.find(code);
    if (known == settings_.end()) {
      std::optional<hours::Setting> setting;
      if (const auto region = find_region(code)) setting = nation_of(*region, place_).setting;
      known = settings_.emplace(code, std::move(setting)).first;
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
  std::unordered_map<std::string, std::optional<hours::Setting>> settings_;
  std::unordered_map<std::string, hours::Hours> texts_;
};

}  // namespace

std::size_t answer_batch(std::istream& in, std::ostream& out, const HoursPlace& place) {
  Batch batch(place);
  std::size_t without_answer = 0;
  for (std::string line; std::getline(in, line);) {
    if (line.ends_with('\r')) line.pop_back();
    const std::string_view answer = batch.answer(line);
    if (answer == no_answer) ++without_answer;
    out << line << '\t' << answer << '\n';
  }
  return without_answer;
}

}  // namespace loopwright::command
