// Roads past schools and kindergartens.
//
// 1. A school's gates are the mapped gates and entrances within 5 m of its lines; every public road
//    within 60 m of one is the school's. Without a gate its frontage counts: roads that run along
//    its lines, the nearest to at least 20 m of them and at most 30 m off (a pavement and half a
//    road; beyond lie the neighbours' houses); when there is none, the same within 60 m. A school
//    that is a mere point has the one road nearest to it.
// 2. hazard=school_zone on the road, or a limit that varies for a school, is certain, with a school
//    beside it or not. What is told by distance is inferred.
// 3. A stretch belongs to one school, the first in order of the map's objects (those with lines
//    before mere points), so two schools on one street are two runs. Motorways and service roads
//    have no school gates.
// A School Street is a street by a school at the hours at which cars may drive it (access.cpp).
// All metres are ours. Sources: OSM wiki, pages Tag:amenity=school and Key:hazard; Highway Code
// rules 206 to 209.
#include <algorithm>
#include <map>
#include <string>

#include "loopwright/base/object_text.hpp"
#include "marked_nodes.hpp"
#include "public_road.hpp"
#include "run_rules.hpp"
#include "tag_words.hpp"

namespace loopwright::mark {
namespace {

using road::Confidence;
using road::Kind;

constexpr double near_m = 60, along_its_fence_m = 30, on_its_lines_m = 5, look_every_m = 10;
constexpr int least_looks = 2;  // 20 m of frontage

bool is_school(const Tags& tags) {
  return tags.is("amenity", "school") || tags.is("amenity", "kindergarten");
}

bool is_gate(const Tags& tags) {
  return tags.is("barrier", "gate") || (tags.has("entrance") && !tags.is("entrance", "no"));
}

/// The tag of a way that warns of a school; empty when none does.
std::string warning_tag(const Tags& tags, bool against) {
  const std::string_view own = against ? "hazard:backward" : "hazard:forward";
  for (const std::string_view key : {std::string_view("hazard"), own}) {
    if (tags.is(key, "school_zone")) return tag_text(tags, key);
  }
  const bool varies = tags.get("maxspeed:variable").find("school") != std::string_view::npos;
  return varies ? tag_text(tags, "maxspeed:variable") : std::string();
}

class Schools {
 public:
  explicit Schools(Draft& draft)
      : draft_(draft),
        roads_(draft.roads()),
        warnings_(draft.raw, [](const Tags& tags) { return tags.is("hazard", "school_zone"); }) {}
  std::vector<RunFamily> find();

 private:
  void sort_features();
  [[nodiscard]] std::vector<Point> gates_of(const RawFeature& school) const;
  [[nodiscard]] std::vector<PieceId> roads_of(const RawFeature& school) const;
  [[nodiscard]] std::vector<PieceId> frontage_of(const RawFeature& school, double limit_m) const;
  [[nodiscard]] std::map<PieceId, double> roads_near(Point at) const;
  [[nodiscard]] std::string certain_tag(StretchId stretch) const;
  [[nodiscard]] bool counts(PieceId piece) const;
  void take(StretchId stretch, TextId told, std::vector<RunMember>& members);
  [[nodiscard]] RunFamily family_of(const RawFeature& school);

  Draft& draft_;
  road::Roads roads_;
  MarkedNodes warnings_;
  std::vector<const RawFeature*> schools_;
  std::vector<const RawFeature*> gates_;  // from south to north
  std::vector<bool> taken_;               // by stretch
};

bool Schools::counts(PieceId piece) const {
  const road::Piece& row = roads_.pieces[piece.index()];
  return is_public(row) && row.road_class != road::RoadClass::motorway &&
         row.road_class != road::RoadClass::motorway_link;
}

void Schools::sort_features() {
  for (const RawFeature& feature : draft_.raw.features) {
    if (is_school(feature.tags)) schools_.push_back(&feature);
    if (is_gate(feature.tags)) gates_.push_back(&feature);
  }
  std::stable_partition(schools_.begin(), schools_.end(),
                        [](const RawFeature* s) { return !s->lines.empty(); });
  std::ranges::stable_sort(gates_, {}, [](const RawFeature* gate) { return gate->at.lat_e7; });
}

std::vector<Point> Schools::gates_of(const RawFeature& school) const {
  if (school.lines.empty()) return {};
  constexpr std::int32_t margin_e7 = 1000;  // over 5 m, up to 60 degrees of latitude
  Point low = school.at, high = school.at;
  for (const std::vector<Point>& line : school.lines) {
    for (const Point& at : line) {
      low = {std::min(low.lat_e7, at.lat_e7), std::min(low.lon_e7, at.lon_e7)};
      high = {std::max(high.lat_e7, at.lat_e7), std::max(high.lon_e7, at.lon_e7)};
    }
  }
  std::vector<Point> gates;
  const auto lat = [](const RawFeature* gate) { return gate->at.lat_e7; };
  auto gate = std::ranges::lower_bound(gates_, low.lat_e7 - margin_e7, {}, lat);
  for (; gate != gates_.end() && lat(*gate) <= high.lat_e7 + margin_e7; ++gate) {
    const Point at = (*gate)->at;
    if (at.lon_e7 < low.lon_e7 - margin_e7 || at.lon_e7 > high.lon_e7 + margin_e7) continue;
    if (distance_m(school, at) <= on_its_lines_m) gates.push_back(at);
  }
  return gates;
}

/// Public roads within reach of a point, and how far off each is.
std::map<PieceId, double> Schools::roads_near(Point at) const {
  std::map<PieceId, double> near;
  for (const PieceId piece : road::pieces_near(roads_, at, near_m)) {
    const double off_m = nearest_on_line(roads_.shape_of(piece), at).off_m;
    if (counts(piece) && off_m <= near_m) near.emplace(piece, off_m);
  }
  return near;
}

/// The roads nearest to points all along the school's lines, as far off as the limit.
std::vector<PieceId> Schools::frontage_of(const RawFeature& school, double limit_m) const {
  std::map<PieceId, int> looks;
  const auto look_from = [&](Point at, int worth) {
    const auto near = roads_near(at);
    const auto nearest = std::ranges::min_element(near, {}, [](const auto& n) { return n.second; });
    if (nearest != near.end() && nearest->second <= limit_m) looks[nearest->first] += worth;
  };
  if (school.lines.empty()) look_from(school.at, least_looks);
  for (const std::vector<Point>& line : school.lines) {
    const double length = length_m(line);
    for (double along = 0; along < length; along += look_every_m) {
      look_from(point_along(line, along), 1);
    }
  }
  std::vector<PieceId> pieces;
  for (const auto& [piece, count] : looks) {
    if (count >= least_looks) pieces.push_back(piece);
  }
  return pieces;
}

std::vector<PieceId> Schools::roads_of(const RawFeature& school) const {
  const std::vector<Point> gates = gates_of(school);
  if (gates.empty()) {
    std::vector<PieceId> along = frontage_of(school, along_its_fence_m);
    return along.empty() ? frontage_of(school, near_m) : along;
  }
  std::map<PieceId, double> all;
  for (const Point& gate : gates) all.merge(roads_near(gate));
  std::vector<PieceId> pieces;
  for (const auto& [piece, off_m] : all) pieces.push_back(piece);
  return pieces;
}

/// Step 2: of the way, or of a sign on its line.
std::string Schools::certain_tag(StretchId stretch) const {
  const RawWay& way = draft_.way(stretch.piece());
  std::string tag = warning_tag(way.tags, stretch.against());
  const road::Piece& piece = roads_.piece(stretch);
  if (!tag.empty()) return tag;
  const std::int64_t sign = warnings_.first_on(way, piece.from_index, piece.to_index);
  return sign == 0 ? tag : tag_on_node("hazard=school_zone", sign);
}

void Schools::take(StretchId stretch, TextId told, std::vector<RunMember>& members) {
  if (!roads_.drivable(stretch) || taken_[stretch.index()]) return;
  const std::string certain = certain_tag(stretch);
  if (certain.empty() && !told.known()) return;
  taken_[stretch.index()] = true;
  members.push_back({stretch, Kind::school,
                     certain.empty() ? Confidence::inferred : Confidence::certain,
                     certain.empty() ? told : draft_.text(certain)});
}

RunFamily Schools::family_of(const RawFeature& school) {
  RunFamily family{Kind::school, {}};
  std::string tag = tag_text(school.tags, "amenity");
  if (school.tags.has("name")) {
    tag.append(" ").append(school.tags.get("name"));
    family.name = draft_.text(school.tags.get("name"));
  }
  // The source is the road: the tag is that of what lies beside it.
  const TextId told = draft_.text(tag + " (" + text_of(school.object) + ")");
  for (const PieceId piece : roads_of(school)) {
    take({piece, false}, told, family.members);
    take({piece, true}, told, family.members);
  }
  return family;
}

std::vector<RunFamily> Schools::find() {
  sort_features();
  taken_.resize(roads_.stretch_count());
  std::vector<RunFamily> families;
  for (const RawFeature* school : schools_) {
    RunFamily family = family_of(*school);
    if (!family.members.empty()) families.push_back(std::move(family));
  }
  RunFamily warned{Kind::school, {}};
  for (std::size_t row = 0; row < roads_.stretch_count(); ++row) {
    const StretchId stretch{row};
    if (counts(stretch.piece())) take(stretch, {}, warned.members);
  }
  families.push_back(std::move(warned));
  return families;
}

}  // namespace

std::vector<RunFamily> school_runs(Draft& draft) {
  return Schools(draft).find();
}

}  // namespace loopwright::mark
