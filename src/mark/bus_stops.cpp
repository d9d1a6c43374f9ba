// Bus stops that one drives past.
//
// 1. highway=bus_stop, a pole beside the road or a node on it; and public_transport=platform with
//    bus=yes where no bus stop of its name stands near. Poles and platforms of one name (or without
//    one) within 30 m on the same side of the road are one stop.
// 2. A stop beside the road belongs to the nearest road within 25 m on whose near side it lies (left
//    where one drives on the left), seen the way its traffic runs. When that is a service road or
//    one a learner can't drive (a bus station, a bus road), it is nobody's we pass.
// 3. A stop on the road's own line belongs to both directions, unless direction=forward or backward
//    says which: which side it is on isn't mapped, so that is inferred.
// 4. The place is the foot of the stop on the road; the chance is the one stretch.
// 25 m and 30 m are ours. Sources: OSM wiki, pages Tag:highway=bus_stop ("placed beside the way")
// and Tag:public_transport=platform; Highway Code rule 223.
#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <string>

#include "loopwright/mark/rules.hpp"
#include "passing.hpp"
#include "public_road.hpp"
#include "tag_words.hpp"

namespace loopwright::mark {
namespace {

using road::Confidence;

constexpr double beside_m = 25, same_stop_m = 30, on_the_line_m = 0.5;

/// Where a stop is passed.
struct Passed {
  StretchId stretch;
  Foot foot;
  Confidence confidence = Confidence::certain;
};

bool is_platform(const Tags& tags) {
  return tags.is("public_transport", "platform") && tags.is("bus", "yes");
}

/// Which side of a line a point lies on, at its foot.
bool lies_left(std::span<const Point> line, const Foot& foot, Point at) {
  constexpr double step_m = 1;
  const Point before = point_along(line, foot.along_m - step_m);
  const Point after = point_along(line, foot.along_m + step_m);
  return heading_change_deg(bearing_deg(before, after), bearing_deg(foot.at, at)) < 0;
}

class BusStops {
 public:
  explicit BusStops(Draft& draft) : draft_(draft), roads_(draft.roads()) {}
  void mark();

 private:
  struct Stop {
    Point at;
    TextId name;
    StretchId stretch;
  };
  [[nodiscard]] std::vector<Passed> passed_at(const RawFeature& stop) const;
  [[nodiscard]] std::vector<Passed> on_the_line(const RawFeature& stop, PieceId piece) const;
  [[nodiscard]] bool may_pass(StretchId stretch) const;
  [[nodiscard]] bool same_side(StretchId a, StretchId b) const;
  [[nodiscard]] bool is_known(const Stop& stop) const;
  void add(const RawFeature& feature);

  Draft& draft_;
  road::Roads roads_;
  std::multimap<std::uint64_t, Stop> known_;  // by cell of the grid
};

bool BusStops::may_pass(StretchId stretch) const {
  return roads_.drivable(stretch) && is_public(roads_.piece(stretch));
}

/// Step 3.
std::vector<Passed> BusStops::on_the_line(const RawFeature& stop, PieceId piece) const {
  const Foot foot = nearest_on_line(roads_.shape_of(piece), stop.at);
  const std::string_view bound = stop.tags.get("direction");
  const bool told = bound == "forward" || bound == "backward";
  std::vector<Passed> passed;
  for (const bool against : {false, true}) {
    if (told && against != (bound == "backward")) continue;
    const StretchId stretch{piece, against};
    if (!may_pass(stretch)) continue;
    const bool one_way = (roads_.piece(stretch).flags & road::piece_flag::one_way) != 0;
    passed.push_back({stretch, foot, told || one_way ? Confidence::certain : Confidence::inferred});
  }
  return passed;
}

std::vector<Passed> BusStops::passed_at(const RawFeature& stop) const {
  Passed nearest;
  nearest.foot.off_m = beside_m;
  for (const PieceId piece : road::pieces_near(roads_, stop.at, beside_m)) {
    const auto shape = roads_.shape_of(piece);
    const Foot foot = nearest_on_line(shape, stop.at);
    if (foot.off_m <= on_the_line_m) return on_the_line(stop, piece);
    if (foot.off_m >= nearest.foot.off_m) continue;
    const bool left = lies_left(shape, foot, stop.at);
    const StretchId stretch{piece, left != (draft_.side() == Side::left)};
    if (traffic_takes(draft_, stretch)) nearest = {stretch, foot, Confidence::certain};
  }
  if (!nearest.stretch.known() || !may_pass(nearest.stretch)) return {};
  return {nearest};
}

bool BusStops::same_side(StretchId a, StretchId b) const {
  if (a.piece() == b.piece()) return a == b;
  constexpr double same_heading_deg = 60;
  const double turn =
      heading_change_deg(road::bearing_in_deg(roads_, a), road::bearing_in_deg(roads_, b));
  return std::abs(turn) <= same_heading_deg;
}

/// True when a pole or platform of this stop was taken before.
bool BusStops::is_known(const Stop& stop) const {
  constexpr std::int32_t margin_e7 = 5000;  // over 30 m, up to 55 degrees of latitude
  const std::array box{Point{stop.at.lat_e7 - margin_e7, stop.at.lon_e7 - margin_e7},
                       Point{stop.at.lat_e7 + margin_e7, stop.at.lon_e7 + margin_e7}};
  for (const std::uint64_t cell : road::grid_cells_of(box)) {
    const auto [first, end] = known_.equal_range(cell);
    const bool same = std::any_of(first, end, [&](const auto& entry) {
      const Stop& other = entry.second;
      const bool same_name = other.name == stop.name || other.name.value == 0 || !stop.name.value;
      return same_name && distance_m(other.at, stop.at) <= same_stop_m &&
             same_side(other.stretch, stop.stretch);
    });
    if (same) return true;
  }
  return false;
}

void BusStops::add(const RawFeature& feature) {
  const TextId name = draft_.text(feature.tags.get("name"));
  const std::string tag = is_platform(feature.tags) && !feature.tags.is("highway", "bus_stop")
                              ? "public_transport=platform"
                              : "highway=bus_stop";
  PlaceId place;
  const std::vector<Passed> all = passed_at(feature);
  if (all.empty()) draft_.report.count("bus stops beside no road a lesson drives on");
  for (const Passed& passed : all) {
    const Stop stop{feature.at, name, passed.stretch};
    if (!place.known() && is_known(stop)) return draft_.report.count("bus stops mapped twice");
    known_.emplace(road::grid_cell(stop.at), stop);
    if (!place.known()) {
      road::Place row;
      row.kind = road::Kind::bus_stop;
      row.source = feature.object;
      row.at = passed.foot.at;
      row.name = name;
      place = draft_.add_place(row, {}, {});
      draft_.report.count("bus stops");
    }
    add_passing(draft_, place, {passed.stretch},
                {.confidence = passed.confidence, .tag = tag, .source = feature.object});
  }
}

void BusStops::mark() {
  for (const RawFeature& feature : draft_.raw.features) {
    if (feature.tags.is("highway", "bus_stop")) add(feature);
  }
  for (const RawFeature& feature : draft_.raw.features) {
    if (!feature.tags.is("highway", "bus_stop") && is_platform(feature.tags)) add(feature);
  }
}

}  // namespace

void mark_bus_stops(Draft& draft) {
  BusStops(draft).mark();
}

}  // namespace loopwright::mark
