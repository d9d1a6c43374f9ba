#include <algorithm>
#include <array>
#include <cmath>

#include "county/truth_net.hpp"
#include "loopwright/base/text.hpp"

namespace loopwright::county {
namespace {

constexpr double foot_m = 0.3048, inch_m = 0.0254;
constexpr double two_cars_m = 4.8, one_car_m = 4.1, one_file_m = 2.75,
                 a_car_m = 2;  // Manual for Streets, fig. 7.1

/// Metres that cars parked on one side take of the carriageway: MAP-TAGS 1.3. Nothing for a word that
/// the tag pages don't know there.
std::optional<double> parked_m(const std::string& where, const std::string& orientation) {
  if (where == "half_on_kerb") return 1.0;
  if (where == "lane" || where == "yes" || where == "parallel" || where == "marked")
    return orientation == "diagonal" ? 4.5 : orientation == "perpendicular" ? 5.0 : 2.0;
  if (where == "diagonal") return 4.5;
  if (where == "perpendicular") return 5.0;
  const bool off = where.empty() || where == "no" || where == "street_side" || where == "on_kerb" ||
                   where == "separate" || where == "shoulder" || where.starts_with("no_");
  return off ? std::optional(0.0) : std::nullopt;
}

std::string first_of(const Road& road, const std::array<std::string, 2>& keys) {
  return road.tag(keys[0]).empty() ? road.tag(keys[1]) : road.tag(keys[0]);
}

std::optional<double> parked_beside_m(const Road& road, const std::string& side) {
  const std::string now = first_of(road, {"parking:" + side, "parking:both"});
  if (now == "diagonal" || now == "perpendicular") return {};  // words of the older scheme
  if (!now.empty()) {
    return parked_m(
        now, first_of(road, {"parking:" + side + ":orientation", "parking:both:orientation"}));
  }
  const std::string old = first_of(road, {"parking:lane:" + side, "parking:lane:both"});
  const std::string how =
      first_of(road, {"parking:lane:" + side + ":" + old, "parking:lane:both:" + old});
  return how == "half_on_kerb" ? 1.0 : how == "on_kerb" ? 0.0 : parked_m(old, "");
}

}  // namespace

int rank_of(const Road& road) {
  constexpr std::array classes{"motorway", "trunk", "primary", "secondary", "tertiary"};
  const auto found = std::ranges::find(classes, road.road_class);
  if (found != classes.end()) return static_cast<int>(found - classes.begin());
  return road.service() ? 7 : road.road_class == "road" ? 6 : 5;
}

std::optional<double> metres_of(const std::string& text) {
  if (const std::size_t feet = text.find('\''); feet != std::string::npos) {
    const std::string_view rest = std::string_view(text).substr(feet + 1);
    const auto whole = read_number(text.substr(0, feet));
    const auto inches = rest.empty() ? 0.0 : read_number(rest.substr(0, rest.find('"')));
    if (!whole || !inches) return {};
    return *whole * foot_m + *inches * inch_m;
  }
  return read_number(text.ends_with(" m") ? text.substr(0, text.size() - 2) : text);
}

Room room_of(const Road& road) {
  Room room;
  room.width = metres_of(road.tag(road.tag("width").empty() ? "width:carriageway" : "width"));
  const auto left = parked_beside_m(road, "left"), right = parked_beside_m(road, "right");
  room.parked = left.value_or(1) + right.value_or(1) > 0;
  if (!room.width || !left || !right) return room;
  const double rest = *room.width - *left - *right;
  // Less than a car is wide: the tags contradict each other, and nobody knows.
  if (rest >= a_car_m || !room.parked) room.usable = rest;
  return room;
}

Answer is_single_track(const Road& road) {
  if (!road.two_way()) return Answer::no;
  const auto lanes = read_number(road.tag("lanes"));
  if ((lanes && *lanes < 2) || road.tag("passing_places") == "yes") return Answer::yes;
  const Room room = room_of(road);
  if (room.width) return *room.width < one_car_m ? Answer::yes : Answer::no;
  return road.tag("est_width").empty() ? Answer::no : Answer::maybe;
}

Answer is_narrow(const Road& road) {
  const Room room = room_of(road);
  if (!road.two_way()) return room.usable && *room.usable < one_file_m ? Answer::yes : Answer::no;
  if (is_single_track(road) == Answer::yes || road.tag("narrow") == "yes") return Answer::yes;
  if (room.usable) return *room.usable < two_cars_m ? Answer::yes : Answer::no;
  return room.parked || !road.tag("est_width").empty() ? Answer::maybe : Answer::no;
}

int limit_mph(const Road& road, bool along) {
  const std::string& own = road.tag(along ? "maxspeed:forward" : "maxspeed:backward");
  const std::string& text = own.empty() ? road.tag("maxspeed") : own;
  if (!text.ends_with("mph")) return 0;
  return read_int(trim(std::string_view(text).substr(0, text.size() - 3))).value_or(0);
}

int lanes_of(const Road& road, bool along) {
  const std::string side = along ? ":forward" : ":backward";
  if (const auto lanes = read_int(road.tag("lanes" + side))) return *lanes;
  const std::string& turns =
      first_of(road, {"turn:lanes" + side, road.two_way() ? "" : "turn:lanes"});
  if (!turns.empty()) return static_cast<int>(std::ranges::count(turns, '|')) + 1;
  const int all = read_int(road.tag("lanes")).value_or(0);
  if (!road.two_way()) return all;
  return all >= 4 && all % 2 == 0 ? all / 2 : 0;
}

double incline_of(const Road& road) {
  const std::string& text = road.tag("incline");
  if (!text.ends_with("%")) return 0;
  return read_number(text.substr(0, text.size() - 1)).value_or(0);
}

bool passable(const Tags& tags) {
  for (const char* key : {"motorcar", "motor_vehicle", "vehicle", "access"}) {
    if (!value(tags, key).empty()) return says(tags, key, {"yes", "designated", "permissive"});
  }
  if (value(tags, "ford") == "yes") return false;
  const std::string& barrier = value(tags, "barrier");
  return barrier.empty() || value(tags, "locked") == "no" ||
         says(tags, "barrier",
              {"cattle_grid", "entrance", "toll_booth", "height_restrictor", "kerb",
               "border_control"});
}

}  // namespace loopwright::county
