// Method: before a row stand the bands that begin there, behind it the stops planned before the next row.
#include "card/entries.hpp"

#include <algorithm>

#include "card/independent.hpp"
#include "card/lesson.hpp"
#include "card/sheet.hpp"
#include "card/speech.hpp"
#include "card/stops.hpp"

namespace loopwright::card {
namespace {

/// As the sign shows it.
std::string limit_numeral(const Subject& subject, const road::LimitOnDay& limit) {
  return limit.value == 0 ? std::string(subject.words.at("limit.none"))
                          : std::to_string(limit.value);
}

std::string distance_of(const Subject& subject, double metres) {
  return say::say_distance(metres, subject.roads.info().region.unit, subject.words);
}

std::string where_of(const Subject& subject, const say::Row& row) {
  const say::Words& words = subject.words;
  std::vector<std::string> parts;
  // A road that is spoken of needn't be printed once more.
  if (!row.where.empty() && !row.say.ends_with(row.where)) parts.push_back(row.where);
  if (!row.signed_to.empty()) parts.push_back(words.fill("card.signs", {{"signs", row.signed_to}}));
  if (row.counts)
    parts.push_back(
        words.fill("card.say_before", {{"distance", distance_of(subject, row.speak_m)}}));
  return joined(parts, "; ");
}

std::string next_of(const Subject& subject, const say::Row& row) {
  // Less than a car's length to the next row: both are at one place.
  constexpr double same_place_m = 5;
  if (row.to_next_m <= same_place_m) return {};
  return subject.words.fill("card.next",
                            {{"distance", distance_of(subject, row.to_next_m)},
                             {"minutes", write_minutes(subject.words, row.to_next_s)}});
}

bool passes_kind(const Subject& subject, const say::Row& row, road::Kind kind) {
  return std::ranges::any_of(row.passes, [&](std::size_t index) {
    return road::meets(subject.loop.passes[index].kind, kind);
  });
}

/// Something that is new to the learner comes for the first time.
bool meets_new(const Subject& subject, const say::Row& row) {
  return std::ranges::any_of(subject.answer.wish.stops.new_kinds, [&](road::Kind kind) {
    const auto first = std::ranges::find_if(
        subject.rows, [&](const say::Row& one) { return passes_kind(subject, one, kind); });
    return first != subject.rows.end() && &*first == &row;
  });
}

/// Without that rows are said in one breath, which their bracket shows; with the help that is intended,
/// where it is more than the lesson's.
std::vector<std::string> briefs_of(const Subject& subject, const say::Row& row) {
  std::vector<std::string> briefs = row.briefs;
  if (meets_new(subject, row))
    briefs.insert(briefs.begin(), std::string(subject.words.at("pack.new")));
  std::erase(briefs, std::string(subject.words.at("hazard.close")));
  return briefs;
}

class Entries {
 public:
  explicit Entries(const Subject& subject) : subject_(subject) {}

  std::vector<Entry> make() {
    const std::size_t rows = subject_.rows.size();
    for (std::size_t k = 0; k < rows; ++k) {
      for (const Band& band : bands_before(subject_, k)) add_band(band.text, {});
      add_notices(k);
      add_row(k);
    }
    add_notices(rows);
    for (const Band& band : seats_behind(subject_)) add_band(band.text, {});
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
    Entry entry = row_entry(subject_, k);
    entry.independent = independent_;
    // After a stop a new breath begins.
    if (!entries_.empty() && entries_.back().kind == EntryKind::stop) entry.joins_previous = false;
    entries_.push_back(std::move(entry));
    for (const PlannedStop& stop : planned_stops(subject_, k)) add_stop(k, stop);
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

Entry row_entry(const Subject& subject, std::size_t k) {
  const say::Words& words = subject.words;
  const say::Row& row = subject.rows[k];
  Entry entry;
  entry.row = k;
  entry.number = std::to_string(k + 1);
  entry.say = say::capitalised(row.say);
  entry.where = where_of(subject, row);
  entry.lane = row.lane;
  entry.landmark = row.landmark;
  entry.kerb = write_kerb(words, subject.kerbs, k, subject.rows.size());
  entry.next = next_of(subject, row);
  if (const auto briefs = briefs_of(subject, row); !briefs.empty())
    entry.brief = words.fill("card.brief", {{"hazards", joined(briefs, "; ")}});
  if (!row.hazards.empty())
    entry.then = words.fill("card.then", {{"hazards", joined(row.hazards, "; ")}});
  entry.after = stop_after_words(subject, k);
  if (row.new_limit) {
    entry.limit = limit_numeral(subject, *row.new_limit);
    entry.limit_sure = road::is_sure(row.new_limit->confidence);
  }
  entry.hardness = row.hardness;
  entry.joins_previous = row.joined_to_previous;
  return entry;
}

std::vector<Entry> entries_of(const Subject& subject) {
  return Entries(subject).make();
}

}  // namespace loopwright::card
