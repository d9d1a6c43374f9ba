#include "mark/shape_town.hpp"

namespace loopwright::test {
namespace {

constexpr double left_edge_lon = 2.6;  // drawn_town.hpp

}  // namespace

mark::HeightSource heights_of(Hill hill) {
  return [hill = std::move(hill)](Point at) -> std::optional<double> {
    const Point edge = point_from_degrees(at.lat(), left_edge_lon);
    return hill(edge == at ? 0 : distance_m(edge, at));
  };
}

BuiltTown hilly_town(std::string_view drawing, Hill hill, std::string_view region) {
  read::BuildOptions options;
  options.heights = heights_of(std::move(hill));
  return built_town(draw_town(drawing), region, options);
}

bool is_run(const BuiltTown& town, std::string_view ends, road::Kind kind) {
  return !why_run(town, ends, kind).empty();
}

std::string why_run(const BuiltTown& town, std::string_view ends, road::Kind kind) {
  const road::Roads roads = town.roads();
  for (const road::RunFact& fact : roads.run_facts_of(town.stretch(ends))) {
    if (fact.kind != kind) continue;
    return std::string(roads.text(fact.tag)) + " " + std::string(road::name(fact.confidence));
  }
  return {};
}

std::vector<std::string> details_of(const road::Report& report, std::string_view what) {
  std::vector<std::string> details;
  for (const road::Oddity& oddity : report.oddities()) {
    if (oddity.what == what) details.push_back(oddity.detail);
  }
  return details;
}

}  // namespace loopwright::test
