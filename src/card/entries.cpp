// Method: before a row stand the bands that begin there, behind it the stops planned before the next row.
// Rows that the instructor drives are left out.
#include "card/entries.hpp"

#include "card/independent.hpp"
#include "card/lesson.hpp"
#include "card/sheet.hpp"
#include "card/speech.hpp"
#include "card/stops.hpp"

namespace loopwright::card {
namespace {

class Entries {
 public:
  explicit Entries(const Subject& subject) : subject_(subject) {}

  std::vector<Entry> make() {
    const std::size_t rows = subject_.rows.size();
    for (std::size_t k = 0; k < rows; ++k) {
      for (const std::string& line : lines_before(subject_, k)) add_band(line, {});
      add_notices(k);
      if (!is_instructors(subject_.loop, subject_.rows[k])) add_row(k);
    }
    add_notices(rows);
    if (const std::string line = line_behind(subject_); !line.empty()) add_band(line, {});
    return std::move(entries_);
  }

 private:
  void add_band(std::string head, std::string lines) {
    Entry band;
    band.kind = EntryKind::band;
    band.say = std::move(head), band.then = std::move(lines);
    entries_.push_back(std::move(band));
  }

  void add_notices(std::size_t k) {
    for (const Notice& notice : independent_before(subject_, k)) {
      independent_ = notice.kind == NoticeKind::begins;
      add_band(notice.head, joined(notice.lines, ". "));
    }
  }

  void add_row(std::size_t k) {
    const say::Words& words = subject_.words;
    const say::Row& row = subject_.rows[k];
    Entry entry;
    entry.row = k;
    entry.number = std::to_string(k + 1);
    entry.say = say::capitalised(row.say);
    entry.where = where_of(row);
    entry.kerb = write_kerb(words, subject_.kerbs, k, subject_.rows.size());
    entry.next = next_of(row);
    if (!row.briefs.empty())
      entry.brief = words.fill("card.brief", {{"hazards", joined(row.briefs, "; ")}});
    if (!row.hazards.empty())
      entry.then = words.fill("card.then", {{"hazards", joined(row.hazards, "; ")}});
    entry.after = stop_after_words(subject_, k);
    if (row.new_limit) {
      entry.limit = limit_numeral(*row.new_limit);
      entry.limit_sure = road::is_sure(row.new_limit->confidence);
    }
    entry.hardness = row.hardness;
    entry.joins_previous = row.joined_to_previous;
    entry.independent = independent_;
    entries_.push_back(std::move(entry));
    for (const PlannedStop& stop : planned_stops(subject_, k)) add_stop(k, stop);
  }

  /// As the sign shows it.
  [[nodiscard]] std::string limit_numeral(const road::LimitOnDay& limit) const {
    return limit.value == 0 ? std::string(subject_.words.at("limit.none"))
                            : std::to_string(limit.value);
  }

  [[nodiscard]] std::string where_of(const say::Row& row) const {
    std::vector<std::string> parts;
    // A road that is spoken of needn't be printed once more.
    if (!row.where.empty() && !row.say.ends_with(row.where)) parts.push_back(row.where);
    if (row.counts) {
      const SpeedUnit unit = subject_.roads.info().region.unit;
      parts.push_back(subject_.words.fill("card.say_before",
                                          {{"distance", say::say_distance(row.speak_m, unit)}}));
    }
    return joined(parts, "; ");
  }

  [[nodiscard]] std::string next_of(const say::Row& row) const {
    // Less than a car's length to the next row: both are at one place.
    constexpr double same_place_m = 5;
    if (row.to_next_m <= same_place_m) return {};
    const SpeedUnit unit = subject_.roads.info().region.unit;
    return subject_.words.fill("card.next",
                               {{"distance", say::say_distance(row.to_next_m, unit)},
                                {"minutes", write_minutes(subject_.words, row.to_next_s)}});
  }

  void add_stop(std::size_t row, const PlannedStop& stop) {
    Entry entry;
    entry.kind = EntryKind::stop;
    entry.row = row;
    entry.number = "P";
    entry.say = say::capitalised(stop.say);
    entry.where = stop.street;
    entry.brief = stop.what;
    if (!stop.drive_on.empty()) entry.brief += "; " + stop.drive_on;
    entry.then = stop.place.why + "; " + stop.place.check;
    entry.independent = independent_;
    entries_.push_back(std::move(entry));
  }

  const Subject& subject_;
  std::vector<Entry> entries_;
  bool independent_ = false;
};

}  // namespace

std::vector<Entry> entries_of(const Subject& subject) {
  return Entries(subject).make();
}

}  // namespace loopwright::card
