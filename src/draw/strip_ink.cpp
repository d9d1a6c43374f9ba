// Method: the road as a pale band with our way in it, opened where something hides it; then what stands
// on it and beside it.
#include "draw/strip_ink.hpp"

#include <algorithm>
#include <cmath>
#include <string>

#include "draw/taken.hpp"
#include "loopwright/draw/sketch.hpp"

namespace loopwright::draw {
namespace {

constexpr double road_mm = 5, way_mm = 1.5, bar_mm = 5;
constexpr double quarter_mile_m = 1760 * 0.9144 / 4, half_km_m = 500;

class Column {
 public:
  Column(Picture& page, const StripColumnInk& ink, Spot foot)
      : page_(page),
        ink_(ink),
        foot_(foot),
        column_(ink.columns[ink.column]),
        taken_(Box{foot.x, foot.y - column_.top - head_mm, ink.across.width,
                   column_.top + head_mm + foot_mm}) {}

  void draw() {
    draw_ribbon();
    for (const SetItem& set : column_.items) draw_item(set);
    draw_ends();
    draw_ticks();
  }

 private:
  /// A place in the column: millimetres from the middle of the road and above the foot.
  [[nodiscard]] Spot spot(double off, double y) const {
    return {foot_.x + ink_.across.ribbon + off, foot_.y - y};
  }
  [[nodiscard]] const StripItem& item(const SetItem& set) const {
    return ink_.strip.items[set.item];
  }

  void draw_ribbon() {
    double from = 0;
    for (const SetItem& set : column_.items) {
      // It reaches a little under a junction, whose way begins at its lower edge.
      const double under = item(set).row != nullptr && item(set).half > 0 ? 0.8 : 0;
      draw_piece(from, set.y - item(set).half + under, set.broken);
      from = set.y + item(set).half;
    }
    draw_piece(from, column_.top, column_.broken);
  }

  void draw_piece(double from, double to, bool broken) {
    if (to <= from) return;
    page_.add(Stroke{{spot(0, from), spot(0, to)}, road_mm, Ink::pale});
    page_.add(Stroke{{spot(0, from), spot(0, to)}, way_mm});
    if (broken) draw_break((from + to) / 2);
  }

  void draw_break(double y) {
    constexpr double half = 4, slant = 1, gap = 0.8;
    page_.add(Stroke{{spot(-half, y - slant), spot(half, y + slant)}, 2 * gap, Ink::paper});
    for (const double side : {-gap, gap})
      page_.add(Stroke{{spot(-half, y - slant + side), spot(half, y + slant + side)}, 0.5});
  }

  void write(Label label, double y) {
    const Extent extent = extent_of(label);
    label.at = {foot_.x + label.at.x, foot_.y - y - extent.height / 2};
    page_.add(label);
    taken_.add({label.at + Spot{extent.width / 2, extent.height / 2}, extent.width, extent.height});
  }

  void draw_item(const SetItem& set) {
    const StripItem& one = item(set);
    if (one.row != nullptr) {
      draw_row(set, *one.row);
    } else {
      draw_mark(set, one.mark);
    }
  }

  void draw_row(const SetItem& set, const StripRow& row) {
    const StripItem& one = item(set);
    if (one.half > 0) {
      place(page_,
            row_shape(ink_.roads, ink_.loop, {row.entry, row.exit}, {shape_width, shape_height}),
            spot(-shape_width / 2, set.y + shape_height / 2));
      taken_.add({spot(0, set.y), shape_width, shape_height});
    }
    write(row_words(one, ink_.across), set.y);
    const Label number{{0, 0}, row.number, {12, true}};
    const Extent extent = extent_of(number);
    const Area area{{foot_.x + ink_.across.number - extent.width / 2, foot_.y - set.y},
                    extent.width,
                    extent.height};
    page_.add(label_in(area, row.number, {12, true}));
    taken_.add(area);
  }

  void draw_mark(const SetItem& set, const StripMark& mark) {
    draw_sign(mark, set.y);
    if (mark.sign == StripSign::limit || mark.text.empty()) return;
    write(mark_words(item(set), ink_.across), set.y);
  }

  void draw_sign(const StripMark& mark, double y) {
    switch (mark.sign) {
      case StripSign::words:
        return;
      case StripSign::pass:
        return page_.add(Disc{spot(0, y), 1.7, Ink::paper, 0.7});
      case StripSign::hazard:
        return draw_edges(y);
      case StripSign::limit:
        return draw_limit(mark.text, y);
      case StripSign::pull_up_left:
        return draw_pull_up(-1, y);
      case StripSign::pull_up_right:
        return draw_pull_up(1, y);
      case StripSign::level_crossing:
        return draw_rails(y);
    }
  }

  void draw_edges(double y) {
    for (const double side : {-1.0, 1.0})
      page_.add(Stroke{{spot(side * 1.6, y), spot(side * 3.8, y)}, 1.3});
  }

  void draw_limit(const std::string& number, double y) {
    constexpr double radius = 2.7, off = -10;
    page_.add(Stroke{{spot(off + radius, y), spot(-road_mm / 2, y)}, 0.4});
    page_.add(Disc{spot(off, y), radius, Ink::paper, 0.7});
    const Extent extent = extent_of(Label{{}, number, {9, true}});
    page_.add(label_in({spot(off, y), extent.width, extent.height}, number, {9, true}));
    taken_.add_disc(spot(off, y), radius + 0.4);
  }

  void draw_pull_up(double side, double y) {
    page_.add(Stroke{{spot(side * road_mm / 2, y), spot(side * (road_mm / 2 + 2.2), y)}, 0.9});
    const Extent extent = extent_of(Label{{}, "P", {9, true}});
    const Area area{spot(side * 6.4, y), extent.width, extent.height};
    page_.add(label_in(area, "P", {9, true}));
    taken_.add(area);
  }

  void draw_rails(double y) {
    constexpr double half = 6, gauge = 1.2, sleeper = 2.6;
    for (double x = -half + 0.6; x < half; x += 1.2)
      page_.add(Stroke{{spot(x, y - sleeper / 2), spot(x, y + sleeper / 2)}, 0.4});
    for (const double rail : {-gauge / 2, gauge / 2})
      page_.add(Stroke{{spot(-half, y + rail), spot(half, y + rail)}, 0.4});
    taken_.add({spot(0, y), 2 * half, sleeper});
  }

  void draw_ends() {
    const bool first = ink_.column == 0, last = ink_.column + 1 == ink_.columns.size();
    if (first) page_.add(Stroke{{spot(-bar_mm / 2, 0), spot(bar_mm / 2, 0)}, way_mm});
    if (last)
      page_.add(Stroke{{spot(-bar_mm / 2, column_.top), spot(bar_mm / 2, column_.top)}, way_mm});
    const bool page_ends = (ink_.column + 1) % ink_.per_page == 0;
    const double seconds = seconds_at(ink_.strip, ink_.loop, column_.from_m);
    const say::Words& words = ink_.words;
    const std::string minutes = std::to_string(std::lround(seconds / 60));
    const std::string_view on = words.at(page_ends ? "strip.next_page" : "strip.next_column");
    write_end(first ? words.at("map.start") : words.fill("strip.driven", {{"n", minutes}}),
              -foot_mm / 2, first);
    write_end(last ? words.at("map.end") : on, column_.top + head_mm / 2, last);
  }

  void write_end(std::string_view said, double y, bool strong) {
    const std::string words(said);
    const Type type{9, strong, strong ? Ink::black : Ink::grey};
    const Extent extent = extent_of(Label{{}, words, type});
    const double middle = std::max(ink_.across.ribbon, extent.width / 2 + 1);
    const Area area{{foot_.x + middle, foot_.y - y}, extent.width, extent.height};
    page_.add(label_in(area, words, type));
    taken_.add(area);
  }

  /// Where a length driven lies in this column; between what hides the ribbon metres run evenly.
  [[nodiscard]] double y_of(double at_m) const {
    double from_m = column_.from_m, from_y = 0;
    for (const SetItem& set : column_.items) {
      const double to_m = item(set).at_m, to_y = set.y - item(set).half;
      if (at_m <= to_m) return on(at_m, from_m, to_m, from_y, to_y);
      from_m = to_m, from_y = set.y + item(set).half;
    }
    return on(at_m, from_m, column_.to_m, from_y, column_.top);
  }

  static double on(double at_m, double from_m, double to_m, double from_y, double to_y) {
    return to_m > from_m ? from_y + (to_y - from_y) * (at_m - from_m) / (to_m - from_m) : from_y;
  }

  void draw_ticks() {
    const bool miles = ink_.roads.info().region.unit == SpeedUnit::mph;
    const double each = miles ? quarter_mile_m : half_km_m;
    const int whole = miles ? 4 : 2;
    for (int i = std::max(1, static_cast<int>(std::ceil(column_.from_m / each)));
         i * each < column_.to_m; ++i) {
      const double y = y_of(i * each);
      const double length = i % whole == 0 ? 2.4 : 1.3;
      page_.add(Stroke{{spot(-road_mm / 2 - length, y), spot(-road_mm / 2, y)}, 0.35});
      if (i % whole == 0) write_length(static_cast<std::size_t>(i / whole), miles, y);
    }
  }

  void write_length(std::size_t count, bool miles, double y) {
    const std::string words = ink_.words.count(miles ? "map.miles" : "map.kilometres", count);
    const Type type{9, false, Ink::grey};
    const Extent extent = extent_of(Label{{}, words, type});
    const Area area{spot(-road_mm / 2 - 3 - extent.width / 2, y), extent.width, extent.height};
    if (!taken_.free(area)) return;
    page_.add(label_in(area, words, type));
    taken_.add(area);
  }

  Picture& page_;
  const StripColumnInk& ink_;
  Spot foot_;
  const StripColumn& column_;
  Taken taken_;
};

}  // namespace

void draw_column(Picture& page, const StripColumnInk& ink, Spot foot) {
  Column(page, ink, foot).draw();
}

}  // namespace loopwright::draw
