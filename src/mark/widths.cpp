// How wide a road is, and whether two cars get past each other.
//
// 1. The carriageway: width:carriageway, width, else est_width (a guess). Metres with a point, or
//    feet and inches; anything else is not read. Nothing mapped stays 0: no width is made up.
// 2. What is left: width:effective when mapped; else the carriageway less parked cars (parking.cpp)
//    less 1.5 m for a mandatory cycle lane. Less than a car leaves by mapping alone (2 m) means the
//    tags contradict each other: then what is left is not known.
// 3. Two-way roads. Single-track: a carriageway under 4.1 m, or one lane, or passing places; cars
//    parked on a wider road don't make it so (that is meeting traffic). Narrow: what is left under
//    4.8 m, narrow=yes, lanes=1.5, or cars parked in the street on both sides of a residential
//    street of unknown width that isn't mapped with two lanes beside them.
//    One lane on a carriageway of 4.8 m or more only means that no line is painted.
// 4. One-way roads are narrow only when less than 2.75 m is left.
// Sources: Manual for Streets (Department for Transport, 2007) figure 7.1: at 4.1 m two cars pass,
// at 4.8 m a car and a lorry (through secondary quotations). 2.75 m for single file: from memory,
// same figure. A standard two-lane carriageway is 7.3 m (DMRB), so with cars on both sides of a
// street that is no wider, under 4.8 m is left. OSM wiki: Key:width, Key:narrow,
// Key:passing_places.
#include <algorithm>
#include <array>
#include <utility>

#include "loopwright/base/text.hpp"
#include "loopwright/mark/rules.hpp"
#include "parking.hpp"
#include "tag_words.hpp"
#include "units.hpp"

namespace loopwright::mark {
namespace {

using road::RoadClass;

constexpr double two_cars_pass_m = 4.1, car_and_lorry_m = 4.8, single_file_m = 2.75;
constexpr double least_left_m = 2.0, cycle_lane_m = 1.5;
// What a carriageway can be; other figures are slips of the pen.
constexpr double least_carriageway_m = 1.5, most_carriageway_m = 60;

struct Carriageway {
  double metres = 0;
  bool measured = false;
  std::string tag;
};

/// What a road's tags say of the room on it, read once.
struct Room {
  const Tags& tags;
  Carriageway road;
  Parked parked;
};

bool may_be_carriageway(double metres) {
  return metres >= least_carriageway_m && metres <= most_carriageway_m;
}

Carriageway carriageway_of(const Tags& tags) {
  constexpr std::array<std::string_view, 3> keys{"width:carriageway", "width", "est_width"};
  for (const std::string_view key : keys) {
    if (!tags.has(key)) continue;
    const auto metres = read_width(tags.get(key));
    if (metres && may_be_carriageway(*metres)) {
      return {*metres, key != "est_width", tag_text(tags, key)};
    }
  }
  return {};
}

double cycle_lanes_m(const Tags& tags) {
  double sum = 0;
  for (const std::string side : {"left", "right"}) {
    for (const std::string& key : {"cycleway:" + side, std::string("cycleway:both")}) {
      if (tags.is(key, "lane") && tags.is(key + ":lane", "exclusive")) sum += cycle_lane_m;
    }
  }
  return sum;
}

/// Metres left to drive in; 0 when not known.
double left_to_drive_m(const Tags& tags, double carriageway_m, const Parked& parked) {
  const auto effective = read_width(tags.get("width:effective"));
  if (effective && may_be_carriageway(*effective)) return *effective;
  if (carriageway_m == 0) return 0;
  const double left = carriageway_m - parked.total_m() - cycle_lanes_m(tags);
  if (left <= 0) return 0;  // the tags contradict each other
  return left >= least_left_m || parked.total_m() == 0 ? left : 0;
}

double lanes_of(const Tags& tags) {
  return read_number(tags.get("lanes")).value_or(0);
}

bool is_street_with_houses(RoadClass road_class) {
  return road_class == RoadClass::residential || road_class == RoadClass::unclassified ||
         road_class == RoadClass::living_street;
}

/// One reason why a road is narrow: what says it, and whether it is more than a guess.
struct Reason {
  std::string tag;
  bool certain = false;
};

Reason single_track_reason(const Tags& tags, const Carriageway& road) {
  if (road.metres > 0 && road.metres < two_cars_pass_m) return {road.tag, road.measured};
  const bool wide = road.measured && road.metres >= car_and_lorry_m;
  if (lanes_of(tags) == 1 && !wide) return {tag_text(tags, "lanes"), true};
  if (tags.is("passing_places", "yes")) return {"passing_places=yes", true};
  return {};
}

/// Why what is left is less than it looks: the width, and what is parked there.
Reason left_reason(const Carriageway& road, const Parked& parked, const Tags& tags) {
  if (tags.has("width:effective")) return {tag_text(tags, "width:effective"), true};
  if (parked.tag.empty()) return {road.tag, road.measured};
  return {road.tag.empty() ? parked.tag : road.tag + " " + parked.tag, false};
}

Reason narrow_reason(const Room& room, RoadClass road_class, const Widths& so_far) {
  const auto& [tags, road, parked] = room;
  if (so_far.usable_m > 0 && so_far.usable_m < car_and_lorry_m)
    return left_reason(road, parked, tags);
  if (road.metres > 0 && so_far.usable_m == 0) return left_reason(road, parked, tags);
  if (tags.is("narrow", "yes")) return {"narrow=yes", true};
  const double lanes = lanes_of(tags);
  if (lanes > 1 && lanes < 2 && road.metres == 0) return {tag_text(tags, "lanes"), true};
  const bool street_full = parked.both() && road.metres == 0 && lanes < 2;
  if (street_full && is_street_with_houses(road_class)) return {parked.tag, false};
  return {};
}

void judge_one_way(const Room& room, Widths& widths) {
  if (widths.usable_m == 0 || widths.usable_m >= single_file_m) return;
  const Reason reason = left_reason(room.road, room.parked, room.tags);
  widths.narrow = true, widths.certain = reason.certain, widths.tag = reason.tag;
}

void judge_two_way(const Room& room, RoadClass road_class, Widths& widths) {
  const Reason single = single_track_reason(room.tags, room.road);
  const Reason narrow =
      single.tag.empty() ? narrow_reason(room, road_class, widths) : Reason(single);
  widths.single_track = !single.tag.empty();
  widths.narrow = !narrow.tag.empty();
  widths.certain = narrow.certain;
  if (widths.narrow) widths.tag = narrow.tag;
}

/// "12'6"", "12' 6"", "16'"; empty for anything else.
std::optional<double> read_feet(std::string_view text) {
  const std::size_t mark = text.find('\'');
  if (mark == std::string_view::npos) return std::nullopt;
  const auto feet = read_number(trim(text.substr(0, mark)));
  std::string_view rest = trim(text.substr(mark + 1));
  if (!feet || rest.empty()) return feet ? std::optional(*feet * feet_m) : std::nullopt;
  if (!rest.ends_with('"')) return std::nullopt;
  rest.remove_suffix(1);
  const auto inches = read_number(trim(rest));
  return inches ? std::optional(*feet * feet_m + *inches * inch_m) : std::nullopt;
}

}  // namespace

std::optional<double> read_width(std::string_view text) {
  text = trim(text);
  double unit_m = 1;
  for (const auto& [suffix, metres] :
       {std::pair<std::string_view, double>{"ft", feet_m}, {"m", 1}}) {
    if (!text.ends_with(suffix)) continue;
    text = trim(text.substr(0, text.size() - suffix.size()));
    unit_m = metres;
    break;
  }
  const auto number = read_number(text);
  if (number && *number >= 0) return *number * unit_m;
  return unit_m == 1 ? read_feet(text) : std::nullopt;
}

Widths widths_of(const Tags& tags, RoadClass road_class, bool one_way) {
  const Room room{tags, carriageway_of(tags), parked_on(tags)};
  const auto& [_, road, parked] = room;
  Widths widths;
  widths.width_m = road.metres;
  widths.usable_m = left_to_drive_m(tags, road.metres, parked);
  widths.parked_both = parked.both();
  widths.tag = road.tag.empty() ? parked.tag : road.tag;
  if (one_way) {
    judge_one_way(room, widths);
  } else {
    judge_two_way(room, road_class, widths);
  }
  return widths;
}

}  // namespace loopwright::mark
