// Method: rows and marks are named by the stretches they belong to; where they come to stand is for room draw.
#include "card/map_pages.hpp"

#include <algorithm>

#include "card/stops.hpp"
#include "loopwright/say/limit_told.hpp"

namespace loopwright::card {
namespace {

void add_stops(draw::StripAsked& asked, const Subject& subject) {
  using draw::StripSign;
  for (const wish::PullUp& place : subject.loop.pull_ups)
    if (!place.purpose.empty())
      asked.marks.push_back({place.stretch, place.at_m, purpose_words(subject.words, place),
                             place.left ? StripSign::pull_up_left : StripSign::pull_up_right});
}

/// True when a row is said at the end of this stretch and drawn as it lies there.
bool has_row(const draw::StripAsked& asked, std::size_t stretch) {
  return std::ranges::any_of(asked.rows, [&](const draw::StripRow& row) {
    return row.entry == stretch && row.exit > row.entry;
  });
}

void add_crossings(draw::StripAsked& asked, const Subject& subject) {
  for (const wish::Pass& pass : subject.loop.passes)
    if (pass.kind == road::Kind::level_crossing && !has_row(asked, pass.first))
      asked.marks.push_back({pass.first, subject.loop.stretches[pass.first].metres, "",
                             draw::StripSign::level_crossing});
}

void add_limits(draw::StripAsked& asked, const Subject& subject) {
  const auto& stretches = subject.loop.stretches;
  for (std::size_t i = 1; i < stretches.size(); ++i)
    if (!(stretches[i].limit == stretches[i - 1].limit) && stretches[i].limit.value > 0 &&
        say::tells_limit(subject.roads, stretches[i]))
      asked.marks.push_back(
          {i, 0, std::to_string(stretches[i].limit.value), draw::StripSign::limit});
}

}  // namespace

draw::OverviewAsked overview_asked(const std::vector<Entry>& entries, const Subject& subject,
                                   const draw::Box& box) {
  draw::OverviewAsked asked;
  asked.width = box.width, asked.height = box.height;
  for (const Entry& entry : entries)
    if (entry.kind == EntryKind::row && entry.row > 0)
      asked.numbers.push_back({subject.rows[entry.row].stretch, entry.number});
  return asked;
}

draw::StripAsked strip_asked(const std::vector<Entry>& entries, const Subject& subject,
                             const draw::Box& box) {
  draw::StripAsked asked;
  asked.width = box.width, asked.height = box.height;
  for (const Entry& entry : entries) {
    if (entry.kind != EntryKind::row) continue;
    const say::Row& row = subject.rows[entry.row];
    asked.rows.push_back({row.stretch, row.exit, entry.number, entry.say});
  }
  add_stops(asked, subject);
  add_crossings(asked, subject);
  add_limits(asked, subject);
  return asked;
}

}  // namespace loopwright::card
