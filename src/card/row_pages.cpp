// Method: as many pages as the rows need. Where they end is found over all of them at once (the least sum of
// prices): a page may hold a row or two more when a page would otherwise end within one breath, and a breath is
// cut, its bracket left open, only when that isn't enough. What is left of a page's height is spread between
// its entries.
#include "card/row_pages.hpp"

#include <algorithm>
#include <limits>
#include <optional>

namespace loopwright::card {
namespace {

constexpr double most_spread = 3;      ///< between two entries, when a page has room to spare
constexpr double bracket_inset = 1.2;  ///< from the left edge
constexpr double bracket_end = 1.4;
constexpr double bracket_line = 0.7;
constexpr double bracket_gap = 0.8;  ///< above the first and below the last it joins

constexpr int most_more = 2;  ///< rows above those of a page

double height_of(std::span<const DrawnEntry> entries) {
  double height = 0;
  for (const DrawnEntry& entry : entries) height += entry.picture.height;
  return height;
}

std::size_t counted_in(std::span<const DrawnEntry> entries) {
  return static_cast<std::size_t>(std::ranges::count_if(
      entries, [](const DrawnEntry& entry) { return entry.kind != EntryKind::band; }));
}

constexpr int impossible = std::numeric_limits<int>::max();

/// Finds where the pages end, for a number of pages, at the least price.
class PageEnds {
 public:
  PageEnds(std::span<const DrawnEntry> entries, std::size_t rows, double height)
      : entries_(entries), rows_(rows), height_(height) {}

  /// How many entries each of so many pages holds; nothing where they are too high for that.
  [[nodiscard]] std::optional<std::vector<std::size_t>> on(std::size_t pages) const {
    const std::size_t count = entries_.size();
    std::vector<int> before(count + 1, impossible);
    before[0] = 0;
    std::vector<std::vector<std::size_t>> begins;
    for (std::size_t page = 0; page < pages; ++page) {
      std::vector<int> prices(count + 1, impossible);
      begins.emplace_back(count + 1);
      for (std::size_t begin = 0; begin < count; ++begin)
        if (before[begin] != impossible) try_ends(begin, before[begin], prices, begins.back());
      before = std::move(prices);
    }
    if (before[count] == impossible) return std::nullopt;
    return counts(begins);
  }

 private:
  /// Of equal prices the later beginning: the earlier pages are the fuller.
  void try_ends(std::size_t begin, int so_far, std::vector<int>& prices,
                std::vector<std::size_t>& begins) const {
    for (std::size_t end = begin + 1; end <= entries_.size(); ++end) {
      const auto page = entries_.subspan(begin, end - begin);
      const bool fits = counted_in(page) <= rows_ + most_more && height_of(page) <= height_;
      if (!fits && end > begin + 1) return;  // one entry alone has to fit
      const int price = so_far + price_of(page, end);
      if (price > prices[end]) continue;
      prices[end] = price;
      begins[end] = begin;
    }
  }

  [[nodiscard]] int price_of(std::span<const DrawnEntry> page, std::size_t end) const {
    constexpr int cut_breath = 100;  // far above any number of rows too many
    const std::size_t counted = counted_in(page);
    const int more = counted > rows_ ? static_cast<int>(counted - rows_) : 0;
    const bool last = end == entries_.size();
    // A band belongs to what follows it.
    const bool cut = !last && (entries_[end].joins_previous || page.back().kind == EntryKind::band);
    return more * more + (cut ? cut_breath : 0);
  }

  [[nodiscard]] std::vector<std::size_t> counts(
      const std::vector<std::vector<std::size_t>>& begins) const {
    std::vector<std::size_t> counts(begins.size());
    std::size_t end = entries_.size();
    for (std::size_t page = begins.size(); page-- > 0; end = begins[page][end])
      counts[page] = end - begins[page][end];
    return counts;
  }

  std::span<const DrawnEntry> entries_;
  std::size_t rows_;
  double height_;
};

class PageDrawing {
 public:
  explicit PageDrawing(Flow::Room room) : room_(std::move(room)) {}

  /// goes_on: the first entry of the next page is said in one breath with the last of this.
  draw::Picture draw(std::span<const DrawnEntry> entries, bool goes_on) {
    const double spare = room_.box.height - height_of(entries);
    const double gap = std::clamp(spare / static_cast<double>(entries.size()), 0.0, most_spread);
    double y = room_.box.y;
    for (std::size_t i = 0; i < entries.size(); ++i) {
      const bool last = i + 1 == entries.size();
      const Joins joins{entries[i].joins_previous, last ? goes_on : entries[i + 1].joins_previous};
      if (i > 0 && !joins.previous) add_rule(y - gap / 2);
      if (entries[i].independent) add_side(y, entries[i].picture.height + gap);
      draw::place(room_.page, entries[i].picture, {room_.box.x, y});
      const double top = joins.previous ? y - gap : y + bracket_gap;
      const double bottom = y + entries[i].picture.height - (joins.next ? 0 : bracket_gap);
      if (joins.previous || joins.next) add_bracket(top, bottom, joins);
      y += entries[i].picture.height + gap;
    }
    return std::move(room_.page);
  }

 private:
  struct Joins {
    bool previous = false, next = false;
  };

  void add_rule(double y) {
    room_.page.add(draw::Stroke{
        {{room_.box.x, y}, {room_.box.x + room_.box.width, y}}, 0.25, draw::Ink::grey});
  }

  void add_side(double y, double height) {
    const double x = room_.box.x;
    room_.page.add(draw::Stroke{{{x, y}, {x, y + height}}, 1.6, draw::Ink::pale});
  }

  /// The bracket of one entry, open towards the entries it joins.
  void add_bracket(double top, double bottom, Joins joins) {
    const double x = room_.box.x + bracket_inset;
    room_.page.add(draw::Stroke{{{x, top}, {x, bottom}}, bracket_line});
    const auto add_end = [&](double y) {
      room_.page.add(draw::Stroke{{{x, y}, {x + bracket_end, y}}, bracket_line});
    };
    if (!joins.previous) add_end(top);
    if (!joins.next) add_end(bottom);
  }

  Flow::Room room_;
};

}  // namespace

std::vector<std::size_t> entries_per_page(std::span<const DrawnEntry> entries, int rows,
                                          double height) {
  const auto most = static_cast<std::size_t>(rows);
  const PageEnds ends(entries, most, height);
  for (std::size_t pages = (counted_in(entries) + most - 1) / most; pages < entries.size(); ++pages)
    if (auto counts = ends.on(pages)) return *counts;
  return std::vector<std::size_t>(entries.size(), 1);
}

std::vector<draw::Picture> row_pages(
    const PageStyle& style, std::span<const DrawnEntry> entries,
    const std::function<Flow::Room(std::size_t, std::size_t)>& room) {
  const double height = room(1, 1).box.height;
  const std::vector<std::size_t> counts = entries_per_page(entries, style.rows, height);
  std::vector<draw::Picture> pages;
  std::size_t begin = 0;
  for (std::size_t p = 0; p < counts.size(); ++p) {
    const std::size_t end = begin + counts[p];
    const bool goes_on = end < entries.size() && entries[end].joins_previous;
    pages.push_back(
        PageDrawing(room(p + 1, counts.size())).draw(entries.subspan(begin, counts[p]), goes_on));
    begin = end;
  }
  return pages;
}

}  // namespace loopwright::card
