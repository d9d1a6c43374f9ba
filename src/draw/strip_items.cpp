#include "draw/strip_items.hpp"

#include <algorithm>

namespace loopwright::draw {
namespace {

constexpr double air = 0.7;
constexpr double limit_ring = 3.1, rails_half = 2;

/// Metres from the first corner to the end of each stretch; the door's own have none.
std::vector<double> ends_of(const wish::Loop& loop) {
  std::vector<double> ends;
  double at = 0;
  for (std::size_t i = 0; i < loop.stretches.size(); ++i) {
    if (i > 0 && i + 1 < loop.stretches.size()) at += loop.stretches[i].metres;
    ends.push_back(at);
  }
  return ends;
}

bool is_junction(const StripRow& row, const wish::Loop& loop) {
  return row.exit > row.entry && row.exit < loop.stretches.size();
}

StripItem item_of(const StripRow& row, const wish::Loop& loop, double at_m, const Across& across) {
  StripItem item;
  item.at_m = at_m;
  item.row = &row;
  item.half = is_junction(row, loop) ? shape_height / 2 : 0;
  const double words = extent_of(row_words(item, across)).height / 2;
  item.above = item.below = std::max(item.half, std::max(words, 2.5)) + air;
  return item;
}

StripItem item_of(const StripMark& mark, double at_m, const Across& across) {
  StripItem item;
  item.at_m = at_m;
  item.mark = mark;
  double half = mark.text.empty() ? 1 : extent_of(mark_words(item, across)).height / 2;
  if (mark.sign == StripSign::limit) half = limit_ring;
  if (mark.sign == StripSign::level_crossing) item.half = rails_half;
  item.above = item.below = std::max(half, item.half) + air / 2;
  return item;
}

/// True for stretches between entry and exit of a row: the inside of its junction.
bool inside_a_row(const std::vector<StripRow>& rows, std::size_t stretch) {
  return std::any_of(rows.begin(), rows.end(), [&](const StripRow& row) {
    return stretch > row.entry && stretch < row.exit;
  });
}

/// Streets by name, where they begin.
void add_streets(const wish::Loop& loop, const StripAsked& asked, const std::vector<double>& ends,
                 const Across& across, std::vector<StripItem>& items) {
  std::string last;
  for (std::size_t i = 1; i + 1 < loop.stretches.size(); ++i) {
    const std::string& street = loop.stretches[i].street;
    if (street.empty() || street == last || inside_a_row(asked.rows, i)) continue;
    last = street;
    items.push_back(item_of(StripMark{i, 0, street}, ends[i - 1], across));
  }
}

}  // namespace

Label row_words(const StripItem& item, const Across& across) {
  return {{across.words, 0}, item.row->say, {9, true}, across.words_width()};
}

Label mark_words(const StripItem& item, const Across& across) {
  const bool street = item.mark.sign == StripSign::words;
  return {{across.words, 0},
          item.mark.text,
          {9, false, street ? Ink::grey : Ink::black},
          across.words_width()};
}

Strip strip_of(const wish::Loop& loop, const StripAsked& asked, const Across& across) {
  const std::vector<double> ends = ends_of(loop);
  Strip strip;
  for (const StripRow& row : asked.rows)
    strip.items.push_back(item_of(row, loop, ends[std::min(row.entry, ends.size() - 1)], across));
  add_streets(loop, asked, ends, across, strip.items);
  for (const StripMark& mark : asked.marks) {
    const double from = mark.stretch == 0 ? 0 : ends[mark.stretch - 1];
    strip.items.push_back(item_of(mark, std::min(from + mark.at_m, ends[mark.stretch]), across));
  }
  std::stable_sort(strip.items.begin(), strip.items.end(),
                   [](const StripItem& a, const StripItem& b) { return a.at_m < b.at_m; });
  strip.length_m = ends.back();
  strip.ends_m = ends;
  return strip;
}

double seconds_at(const Strip& strip, const wish::Loop& loop, double at_m) {
  const auto end = std::upper_bound(strip.ends_m.begin(), strip.ends_m.end(), at_m);
  const auto row =
      std::min(static_cast<std::size_t>(end - strip.ends_m.begin()), loop.stretches.size() - 1);
  return loop.stretches[row].arrive_s.likely;
}

}  // namespace loopwright::draw
