// Pictures of every way through the junctions of whole maps: no wrong exit, no words on words.
#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <filesystem>

#include "draw/driven.hpp"
#include "loopwright/read/build.hpp"
#include "support/tables_of_words.hpp"

namespace loopwright::test {
namespace {

using road::Kind;

constexpr draw::Size row_size{26, 22}, sketch_size{92, 125};

read::Built built_map(const char* file, std::string_view region) {
  road::Report report;
  read::BuildOptions options;
  options.region = find_region(region).value();
  return read::build_area(file, options, report, {});
}

bool is_round(Kind kind) {
  return road::meets(kind, Kind::roundabout) || road::meets(kind, Kind::mini_roundabout);
}

/// Where a road lies round the place, so far out; by the points of the map alone.
double bearing_out(const road::Roads& roads, const road::Chance& chance, StretchId away) {
  const Point middle = roads.places[chance.place.index()].at;
  const double out_m = is_round(chance.kind) ? 25 : 12;
  const auto shape = roads.shape_of(away.piece());
  const double from = away.against() ? roads.piece(away).length_m - out_m : out_m;
  return bearing_deg(middle, point_along(shape, from));
}

/// How many arms lie between the entry and the exit as the ring is driven: by the rows of the area, and
/// in the picture; they must be the same.
bool passes_its_arms(const road::Roads& roads, const road::Chance& chance,
                     const draw::Picture& picture) {
  const road::Place& place = roads.places[chance.place.index()];
  const auto rows = roads.arms.subspan(place.arm_first, place.arms);
  std::size_t in = rows.size(), out = rows.size();
  for (std::size_t i = 0; i < rows.size(); ++i) {
    if (rows[i].in == chance.entry) in = i;
    if (rows[i].out == chance.exit) out = i;
  }
  if (in == rows.size() || out == rows.size() || in == out) return true;
  const auto round = [&](draw::Spot spot) {
    const double degrees = std::fmod(seen_deg(picture, spot) + 180, 360);
    return roads.info().region.side == Side::left ? degrees : 360 - degrees;
  };
  const double leaves = round(way_in(picture).back());
  const auto arms = pale_in(picture);
  // The ring itself is a line of many spots.
  const auto passed = std::count_if(arms.begin(), arms.end(), [&](const draw::Stroke& arm) {
    const double lies = round(arm.way.back());
    return arm.way.size() == 2 && lies > 5 && lies < leaves - 5;
  });
  return static_cast<std::size_t>(passed) == (out + rows.size() - in) % rows.size() - 1;
}

/// What is wrong with the small shape of a way through; empty when nothing is.
std::string row_fault(const road::Roads& roads, const road::Chance& chance) {
  const wish::Loop loop = driven(roads, chance);
  const auto picture = draw::row_shape(roads, loop, {0, loop.stretches.size() - 1}, row_size);
  const auto way = way_in(picture);
  if (way.size() < 2) return "no way";
  if (std::abs(way.front().x - row_size.width / 2) > 4 || way.front().y < row_size.height * 0.8)
    return "doesn't come from the bottom";
  for (const draw::Spot spot : way)
    if (spot.x < 0 || spot.y < 0 || spot.x > row_size.width || spot.y > row_size.height)
      return "leaves the picture";
  const double turned = heading_change_deg(bearing_out(roads, chance, chance.entry.back()),
                                           bearing_out(roads, chance, chance.exit));
  const double drawn =
      heading_change_deg(seen_deg(picture, way.front()), seen_deg(picture, way.back()));
  // What spreading close roads and straightening bends may change. Where a road leaves a big ring and
  // where it lies 30 m on may be far apart.
  const double spread_deg = is_round(chance.kind) ? 75 : 45;
  if (is_round(chance.kind) && !passes_its_arms(roads, chance, picture))
    return "passes another number of arms";
  const bool single = roads.nodes_of(chance.place).size() == 1 || is_round(chance.kind);
  if (single && std::abs(heading_change_deg(turned, drawn)) > spread_deg)
    return "leaves at " + std::to_string(std::lround(drawn)) + " degrees, not " +
           std::to_string(std::lround(turned));
  return {};
}

/// The number in the black disc, on the exit taken; 0 when there is none.
int number_taken(const draw::Picture& picture) {
  for (const draw::Label& label : labels_in(picture))
    if (label.type.ink == draw::Ink::paper) return std::stoi(label.text);
  return 0;
}

std::string sketch_fault(const road::Roads& roads, const road::Chance& chance) {
  const wish::Loop loop = driven(roads, chance);
  const auto picture = draw::briefing_sketch(roads, loop, {0, loop.stretches.size() - 1},
                                             {"Title", sketch_size, our_words()});
  const auto faults = label_faults(picture);
  if (!faults.empty()) return faults.front();
  if (is_round(chance.kind) && number_taken(picture) != chance.exit_number)
    return "number " + std::to_string(number_taken(picture)) + ", not " +
           std::to_string(chance.exit_number);
  return {};
}

/// Draws each nth way through places of a kind; how many, and what is wrong with which.
struct Seen {
  std::size_t drawn = 0;
  std::vector<std::string> faults;
};

Seen look_at(const road::Roads& roads, Kind kind, std::size_t each) {
  Seen seen;
  std::size_t number = 0;
  for (const road::Chance& chance : roads.chances) {
    if (!road::meets(chance.kind, kind) || number++ % each != 0) continue;
    ++seen.drawn;
    std::string fault = row_fault(roads, chance);
    if (fault.empty()) fault = sketch_fault(roads, chance);
    if (fault.empty()) continue;
    const NodeId node = roads.to_node(chance.entry);
    seen.faults.push_back("entered at node " + std::to_string(roads.nodes[node.index()].osm_id) +
                          ": " + fault);
  }
  return seen;
}

}  // namespace

TEST_CASE("every roundabout of Quillham is drawn with its exits, and other junctions too",
          "[draw]") {
  const read::Built town = built_map(LOOPWRIGHT_ROOT "/maps/quillham.osm.pbf", "GB-ENG");
  const road::Roads roads = road::view_of(town.tables, town.info);
  for (const auto& [kind, each] :
       {std::pair{Kind::roundabout, 1U}, std::pair{Kind::mini_roundabout, 1U},
        std::pair{Kind::signals, 5U}, std::pair{Kind::crossroads, 15U},
        std::pair{Kind::staggered_junction, 15U}, std::pair{Kind::level_crossing, 1U}}) {
    const Seen seen = look_at(roads, kind, each);
    INFO(road::name(kind));
    CHECK(seen.drawn > 0);
    CHECK(seen.faults == std::vector<std::string>{});
  }
}

TEST_CASE("every junction of note in a real town is drawn right", "[draw][real]") {
  const std::string map = LOOPWRIGHT_ROOT "/../shared/maps/newport-2023.osm.pbf";
  if (!std::filesystem::exists(map)) return;
  const read::Built town = built_map(map.c_str(), "GB-WLS");
  const road::Roads roads = road::view_of(town.tables, town.info);
  for (const Kind kind : {Kind::roundabout, Kind::mini_roundabout, Kind::signals, Kind::crossroads,
                          Kind::staggered_junction, Kind::level_crossing}) {
    const Seen seen = look_at(roads, kind, 1);
    INFO(road::name(kind));
    CHECK(seen.drawn > 0);
    CHECK(seen.faults == std::vector<std::string>{});
  }
}

}  // namespace loopwright::test
