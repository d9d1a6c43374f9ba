// 1. The junctions that bans name are found while every road still is as it was drawn.
// 2. Each road that runs on through one is cut there: a restriction names whole ways.
// 3. Then from, via and to are the roads nearest to the plan's points among those that end there.
#include <algorithm>
#include <limits>

#include "county/draft.hpp"
#include "county/joining.hpp"

namespace loopwright::county {
namespace {

/// Puts a line after another, and tells those who know lines by their index.
void insert_after(Draft& draft, std::size_t line, Line next) {
  Drawing& county = draft.county;
  county.lines.insert(county.lines.begin() + static_cast<long>(line) + 1, std::move(next));
  if (line < draft.numbers.size())
    draft.numbers.insert(draft.numbers.begin() + static_cast<long>(line) + 1, draft.numbers[line]);
  for (Ring& ring : county.rings)
    if (ring.line > line) ++ring.line;
  for (Relation& relation : county.relations)
    for (Member& member : relation.members)
      if (auto* way = std::get_if<std::size_t>(&member.what); way != nullptr && *way > line) ++*way;
}

/// Cuts every road that runs on through a place.
void split_at(Draft& draft, Spot place) {
  for (std::size_t i = 0; i < draft.county.lines.size(); ++i) {
    Line& line = draft.county.lines[i];
    if (line.kind != LineKind::road) continue;
    const auto at = std::find(line.points.begin() + 1, line.points.end() - 1, place);
    if (at == line.points.end() - 1) continue;
    Line rest = line;
    rest.points.assign(at, line.points.end());
    rest.ends[0] = End::meets;
    line.points.erase(at + 1, line.points.end());
    line.ends[1] = End::meets;
    insert_after(draft, i++, std::move(rest));
  }
}

bool ends_at(const Line& line, Spot place) {
  return line.points.front() == place || line.points.back() == place;
}

/// The road nearest to a place among those that end at all these.
std::optional<std::size_t> road_at(const Drawing& county, Spot near, std::span<const Spot> ends) {
  std::vector<std::size_t> roads;
  for (std::size_t i = 0; i < county.lines.size(); ++i)
    if (county.lines[i].kind == LineKind::road &&
        std::ranges::all_of(ends, [&](Spot end) { return ends_at(county.lines[i], end); }))
      roads.push_back(i);
  const auto found = nearest_of(county, roads, near);
  return found ? std::optional(found->line) : std::nullopt;
}

class Turns {
 public:
  Turns(Draft& draft, const Plan& plan) : draft_(draft), county_(draft.county), plan_(plan) {}
  void run();

 private:
  void cut(const PlanBan& ban, Spot via);
  void add(const PlanBan& ban, Spot via);
  void add_bus(const PlanBus& bus);

  Draft& draft_;
  Drawing& county_;
  const Plan& plan_;
};

void Turns::run() {
  const LineGrid grid = grid_of_roads(county_);
  std::vector<std::optional<Spot>> vias;
  for (const PlanBan& ban : plan_.bans) {
    vias.push_back(ban.over_road ? ban.via : junction_near(county_, grid, ban.via));
    if (!vias.back())
      trouble(draft_, ban.number, "there is no junction within 30 m of " + written(ban.via));
  }
  for (std::size_t i = 0; i < vias.size(); ++i)
    if (vias[i]) cut(plan_.bans[i], *vias[i]);
  for (std::size_t i = 0; i < vias.size(); ++i)
    if (vias[i]) add(plan_.bans[i], *vias[i]);
  for (const PlanBus& bus : plan_.buses) add_bus(bus);
}

void Turns::cut(const PlanBan& ban, Spot via) {
  if (!ban.over_road) return split_at(draft_, via);
  const auto road = road_at(county_, via, {});
  if (!road) return;
  const std::vector<Spot> points = county_.lines[*road].points;
  split_at(draft_, points.front());
  split_at(draft_, points.back());
}

void Turns::add(const PlanBan& ban, Spot via) {
  Spot first = via;
  Spot second = via;
  std::optional<std::size_t> over;
  if (ban.over_road) {
    over = road_at(county_, via, {});
    if (!over) return trouble(draft_, ban.number, "there is no road for this ban");
    first = county_.lines[*over].points.front();
    second = county_.lines[*over].points.back();
    const auto off = [&](Spot end) {
      const auto road = road_at(county_, ban.from, std::span(&end, 1));
      return road ? nearest(county_.lines[*road].points, ban.from).off_m
                  : std::numeric_limits<double>::max();
    };
    if (off(second) < off(first)) std::swap(first, second);
  }
  const auto from = road_at(county_, ban.from, std::span(&first, 1));
  const auto to = road_at(county_, ban.to, std::span(&second, 1));
  if (!from || !to)
    return trouble(draft_, ban.number, "no road meets the junction of this ban at " + written(via));
  Relation relation{.tags = ban.tags};
  relation.members = {{*from, "from"}, {via, "via"}, {*to, "to"}};
  if (over) relation.members[1].what = *over;
  if (ban.with_junction) relation.members.insert(relation.members.begin() + 2, {first, "via"});
  relation.tags.insert({"type", "restriction"});
  if (const auto hours = relation.tags.find("hours"); hours != relation.tags.end()) {
    relation.tags["restriction:conditional"] = ban.kind + " @ (" + hours->second + ")";
    relation.tags.erase(hours);
  } else {
    relation.tags["restriction"] = ban.kind;
  }
  county_.relations.push_back(std::move(relation));
}

void Turns::add_bus(const PlanBus& bus) {
  Relation route{.tags = {{"type", "route"}, {"route", "bus"}, {"ref", bus.ref}}};
  for (const std::string& street : bus.streets) {
    const std::size_t before = route.members.size();
    for (std::size_t i = 0; i < county_.lines.size(); ++i) {
      const auto name = county_.lines[i].tags.find("name");
      if (for_cars(county_.lines[i].kind) && name != county_.lines[i].tags.end() &&
          name->second == street)
        route.members.push_back({i, ""});
    }
    if (route.members.size() == before)
      trouble(draft_, bus.number, "there is no road '" + street + "' for the bus");
  }
  county_.relations.push_back(std::move(route));
}

}  // namespace

void resolve_turns(Draft& draft, const Plan& plan) {
  Turns(draft, plan).run();
}

}  // namespace loopwright::county
