// What the tags of its way say of each piece of road, one topic after the other.
//
// 1. Shape and kind: one-way, ring, bridge, tunnel, lamps, bus route, lanes, widths, humps.
// 2. Dual carriageways, since the national limit depends on them (dual_carriageways.cpp).
// 3. Limits of both directions (and those that neighbours tell, limits_among_streets.cpp), then
//    which roads wind (bend_runs.cpp) and which streets are quiet, since that depends on the limit.
// 4. Bus lanes, and limits that change by the hour (limit_hours.cpp; room read has kept the hours of
//    access).
// Humps slow a piece when its way says so, or when those on it make a series (humps.hpp).
#include <algorithm>
#include <array>
#include <optional>
#include <span>

#include "bus_lane_families.hpp"
#include "dual_carriageways.hpp"
#include "humps.hpp"
#include "law_days.hpp"
#include "limit_hours.hpp"
#include "limits_among_streets.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/mark/ordinary_car.hpp"
#include "loopwright/mark/rules.hpp"
#include "marked_nodes.hpp"
#include "piece_widths.hpp"
#include "shape_runs.hpp"
#include "tag_words.hpp"

namespace loopwright::mark {
namespace {

namespace flag = road::piece_flag;
using road::RoadClass;

constexpr int quiet_up_to_mph = 30, quiet_up_to_kmh = 50;

bool says_yes(const Tags& tags, std::string_view key) {
  return tags.has(key) && !tags.is(key, "no");
}

bool has_hump(std::string_view calming) {
  if (calming.empty()) return false;
  const auto parts = split(calming, ';');
  return std::ranges::any_of(parts, is_hump);
}

std::uint8_t lanes_of(const Tags& tags) {
  const auto count = [&](std::string_view key) { return read_number(tags.get(key)).value_or(0); };
  const double total =
      count("lanes") > 0 ? count("lanes") : count("lanes:forward") + count("lanes:backward");
  constexpr double most = 20;
  return total <= most ? static_cast<std::uint8_t>(total) : std::uint8_t{0};
}

class PieceFacts {
 public:
  explicit PieceFacts(Draft& draft)
      : draft_(draft),
        widths_(draft),
        humps_(draft.raw, [](const Tags& tags) { return has_hump(tags.get("traffic_calming")); }) {}
  void add_shape_and_kind(PieceId id);
  void add_limits(PieceId id);
  void add_quiet(PieceId id) { set(id, flag::quiet, is_quiet(id)); }
  void add_lanes_and_hours(PieceId id);

 private:
  [[nodiscard]] road::Piece& row(PieceId id) { return draft_.tables.pieces[id.index()]; }
  void set(PieceId id, std::uint32_t bits, bool on) {
    if (on) row(id).flags |= bits;
  }
  [[nodiscard]] bool starts_way(PieceId id) {
    return id.index() == 0 || draft_.tables.pieces[id.index() - 1].way != row(id).way;
  }
  void report_odd(PieceId id, std::string_view what, std::string_view key);
  void add_widths(PieceId id);
  [[nodiscard]] static std::uint32_t flags_of(const RawWay& way, RoadClass road_class);
  [[nodiscard]] bool has_humps(PieceId id);
  [[nodiscard]] bool is_quiet(PieceId id);
  void add_bus_lane(PieceId id, const BusLaneFact& fact);

  Draft& draft_;
  PieceWidths widths_;
  MarkedNodes humps_;
  // What is of a whole way is read once for all its pieces, which follow each other: the last way, and what it says.
  const RawWay *way_of_flags_ = nullptr, *way_of_limits_ = nullptr, *way_of_lanes_ = nullptr;
  std::uint32_t flags_ = 0;
  std::uint8_t lanes_ = 0;
  std::uint32_t dual_ = 0;  // bits of the piece that limits_ are of: those of a way may differ
  BothLimits limits_;
  std::vector<BusLaneFact> bus_lanes_;
  BothLimitHours limit_hours_;
};

void PieceFacts::report_odd(PieceId id, std::string_view what, std::string_view key) {
  if (!starts_way(id)) return;
  draft_.report.odd({row(id).way, ObjectType::way, {}}, what, tag_text(draft_.way_tags(id), key));
}

void PieceFacts::add_widths(PieceId id) {
  const Widths& widths = widths_.of(id);
  row(id).width_m = static_cast<float>(widths.width_m);
  row(id).usable_width_m = static_cast<float>(widths.usable_m);
  row(id).width_source = draft_.text(widths.tag);
  set(id, flag::parked_both, widths.parked_both);
  if (!starts_way(id)) return;  // oddities are told once a way
  const Tags& tags = draft_.way_tags(id);
  if (const std::string unread = unread_size_tag(tags); !unread.empty()) {
    report_odd(id, "a limit on size can't be read", unread.substr(0, unread.find('=')));
  }
  if (tags.has("width") && !read_width(tags.get("width"))) {
    report_odd(id, "width can't be read", "width");
  }
}

bool PieceFacts::has_humps(PieceId id) {
  const RawWay& way = draft_.way(id);
  if (has_hump(way.tags.get("traffic_calming"))) return true;
  return humps_slow(humps_.count_on(way, row(id).from_index, row(id).to_index), row(id).length_m);
}

/// Those that a way's tags tell.
std::uint32_t PieceFacts::flags_of(const RawWay& way, RoadClass road_class) {
  const Tags& tags = way.tags;
  const auto if_so = [](std::uint32_t bits, bool on) { return on ? bits : 0U; };
  return if_so(flag::one_way, one_way_of(tags, road_class).one_way) |
         if_so(flag::ring, tags.is("junction", "roundabout") || tags.is("junction", "circular")) |
         if_so(flag::bridge, says_yes(tags, "bridge")) |
         if_so(flag::tunnel, says_yes(tags, "tunnel")) |
         if_so(flag::lit, says_yes(tags, "lit") && !tags.is("lit", "disused")) |
         if_so(flag::minor_service, is_minor_service(tags));
}

void PieceFacts::add_shape_and_kind(PieceId id) {
  const RawWay& way = draft_.way(id);
  const Tags& tags = way.tags;
  if (way_of_flags_ != &way) {
    way_of_flags_ = &way;
    flags_ = flags_of(way, row(id).road_class);
    if (std::ranges::binary_search(draft_.raw.bus_route_ways, way.id)) flags_ |= flag::bus_route;
    lanes_ = lanes_of(tags);
  }
  row(id).flags |= flags_;
  set(id, flag::humps, has_humps(id));
  row(id).lanes = lanes_;
  add_widths(id);
  constexpr std::array<std::string_view, 10> known{
      "yes", "true", "1", "no", "false", "0", "-1", "reverse", "reversible", "alternating"};
  if (tags.has("oneway") && !one_of(tags.get("oneway"), known)) {
    report_odd(id, "oneway can't be read", "oneway");
  }
}

/// DEVELOPERS.md: residential, living street or unclassified in a built-up area, limit at most 30, no
/// bus route. A limit of 30 on such a road is itself the sign of a built-up area.
bool PieceFacts::is_quiet(PieceId id) {
  constexpr std::array classes{RoadClass::residential, RoadClass::living_street,
                               RoadClass::unclassified};
  if (std::ranges::find(classes, row(id).road_class) == classes.end()) return false;
  if ((row(id).flags & flag::bus_route) != 0) return false;
  for (const bool against : {false, true}) {
    const road::LimitFact& fact = draft_.tables.stretches[StretchId{id, against}.index()].limit;
    const road::LimitOnDay limit = draft_.law.on(fact, newest_day);
    const int most = limit.unit == SpeedUnit::mph ? quiet_up_to_mph : quiet_up_to_kmh;
    if (limit.value == 0 || limit.value > most) return false;
  }
  return true;
}

void PieceFacts::add_limits(PieceId id) {
  const RawWay& way = draft_.way(id);
  const std::uint32_t dual = row(id).flags & (flag::dual | flag::dual_inferred);
  if (way_of_limits_ != &way || dual_ != dual) {
    way_of_limits_ = &way, dual_ = dual;
    limits_ = limits_of(draft_, id);
  }
  draft_.tables.stretches[StretchId{id, false}.index()].limit = limits_.along;
  draft_.tables.stretches[StretchId{id, true}.index()].limit = limits_.against;
}

void PieceFacts::add_bus_lane(PieceId id, const BusLaneFact& fact) {
  road::BusLane lane;
  lane.piece = id;
  lane.direction = fact.direction, lane.side = fact.side;
  lane.contraflow = fact.contraflow ? 1 : 0, lane.doubtful = fact.doubtful() ? 1 : 0;
  lane.lane = fact.lane, lane.lanes = fact.lanes;
  lane.hours = draft_.text(fact.hours), lane.who = draft_.text(fact.who);
  lane.doubt = draft_.text(fact.doubt), lane.source = draft_.text(fact.source);
  draft_.tables.bus_lanes.push_back(lane);
  if (!fact.doubtful() || !starts_way(id)) return;
  draft_.report.odd({row(id).way, ObjectType::way, {}}, heading_of_doubt(fact), fact.doubt);
}

void PieceFacts::add_lanes_and_hours(PieceId id) {
  if (const RawWay& way = draft_.way(id); way_of_lanes_ != &way) {
    way_of_lanes_ = &way;
    const OneWay one_way = one_way_of(way.tags, row(id).road_class);
    bus_lanes_ = bus_lanes_of(way.tags, one_way, draft_.side());
    limit_hours_ = limit_hours_of(way.tags);
  }
  for (const BusLaneFact& lane : bus_lanes_) add_bus_lane(id, lane);
  keep_limit_hours(draft_, id, limit_hours_);
}

/// Such texts on points of the roads: barriers, low bridges.
void report_unread_sizes(Draft& draft) {
  for (const auto& [node, tags] : draft.raw.node_tags) {
    const std::string unread = unread_size_tag(tags);
    if (unread.empty()) continue;
    draft.report.odd({node, ObjectType::node, {}}, "a limit on size can't be read", unread);
  }
}

void count_facts(Draft& draft) {
  const auto with = [&](std::uint32_t bits) {
    return std::ranges::count_if(draft.tables.pieces,
                                 [&](const road::Piece& p) { return (p.flags & bits) != 0; });
  };
  draft.report.count("pieces: one-way", with(flag::one_way));
  draft.report.count("pieces: dual carriageway by tag", with(flag::dual));
  draft.report.count("pieces: dual carriageway by the partner beside", with(flag::dual_inferred));
  draft.report.count("pieces: quiet streets", with(flag::quiet));
  draft.report.count("pieces: not open to cars", with(flag::no_access));
  draft.report.count("pieces: for access only", with(flag::destination_only));
  for (const auto how : {road::LimitConfidence::certain, road::LimitConfidence::inferred,
                         road::LimitConfidence::check}) {
    const auto limits = std::ranges::count(
        draft.tables.stretches, how, [](const road::Stretch& s) { return s.limit.confidence; });
    draft.report.count("speed limits: " + std::string(road::name(how)), limits);
  }
  draft.report.count("bus lanes", static_cast<std::int64_t>(draft.tables.bus_lanes.size()));
  const auto rules = [&](road::Timed about) {
    return std::ranges::count(draft.tables.timed_rules, about, &road::TimedRule::about);
  };
  draft.report.count("directions open to cars by the hour", rules(road::Timed::access));
  draft.report.count("directions through bus gates, by the hour", rules(road::Timed::gate));
  draft.report.count("directions whose limit changes by the hour", rules(road::Timed::limit));
}

}  // namespace

void mark_piece_facts(Draft& draft) {
  PieceFacts facts(draft);
  const std::size_t count = draft.tables.pieces.size();
  for (std::size_t p = 0; p < count; ++p) facts.add_shape_and_kind(PieceId{p});
  find_dual_carriageways(draft);
  for (std::size_t p = 0; p < count; ++p) facts.add_limits(PieceId{p});
  settle_limits_among_streets(draft);
  mark_winding(draft);
  for (std::size_t p = 0; p < count; ++p) facts.add_quiet(PieceId{p});
  for (std::size_t p = 0; p < count; ++p) facts.add_lanes_and_hours(PieceId{p});
  report_unread_sizes(draft);
  count_facts(draft);
}

}  // namespace loopwright::mark
