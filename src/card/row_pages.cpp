// Method: pages are filled in turn; a page that would end within one breath ends before it. When that costs a
// page, a page may hold one or two rows more, and only then a breath is cut: its bracket stays open. What is
// left of a page's height is spread between its entries.
#include "card/row_pages.hpp"

#include <algorithm>

namespace loopwright::card {
namespace {

constexpr double most_spread = 3;      ///< between two entries, when a page has room to spare
constexpr double bracket_inset = 1.2;  ///< from the left edge
constexpr double bracket_end = 1.4;
constexpr double bracket_line = 0.7;
constexpr double bracket_gap = 0.8;  ///< above the first and below the last it joins

double height_of(std::span<const DrawnEntry> entries) {
  double height = 0;
  for (const DrawnEntry& entry : entries) height += entry.picture.height;
  return height;
}

/// Where a page may end at or before `end`: never within one breath, unless that began with the page.
std::size_t whole_breath(std::span<const DrawnEntry> entries, std::size_t begin, std::size_t end) {
  std::size_t cut = end;
  while (cut > begin && cut < entries.size() && entries[cut].joins_previous) --cut;
  // A band belongs to what follows it.
  while (cut > begin && cut < entries.size() && entries[cut - 1].kind == EntryKind::band) --cut;
  return cut > begin ? cut : end;
}

enum class Breath : std::uint8_t { whole, may_be_cut };

struct PageLimits {
  int rows = 0;
  double height = 0;
  Breath breath = Breath::whole;
};

/// How many entries each page holds when pages are filled in turn.
std::vector<std::size_t> filled(std::span<const DrawnEntry> entries, const PageLimits& limits) {
  std::vector<std::size_t> pages;
  for (std::size_t begin = 0; begin < entries.size();) {
    std::size_t end = begin;
    double taken = 0;
    for (int counted = 0; end < entries.size(); ++end) {
      const bool counts = entries[end].kind != EntryKind::band;
      const bool full =
          (counts && counted == limits.rows) || taken + entries[end].picture.height > limits.height;
      if (full && end > begin) break;
      taken += entries[end].picture.height;
      counted += counts ? 1 : 0;
    }
    const std::size_t cut =
        limits.breath == Breath::whole ? whole_breath(entries, begin, end) : end;
    pages.push_back(cut - begin);
    begin = cut;
  }
  return pages;
}

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
  const auto counted = std::ranges::count_if(
      entries, [](const DrawnEntry& entry) { return entry.kind != EntryKind::band; });
  const auto least = static_cast<std::size_t>((counted + rows - 1) / rows);
  constexpr int most_more = 2;
  for (int more = 0; more <= most_more; ++more) {
    auto pages = filled(entries, {rows + more, height, Breath::whole});
    if (pages.size() <= least) return pages;
  }
  return filled(entries, {rows, height, Breath::may_be_cut});
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
