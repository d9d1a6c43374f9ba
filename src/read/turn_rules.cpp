// 1. Sort the members by role; a restriction without exactly the members its kind needs is
// unusable.
// 2. Over a node: `from` is the stretch of its way that runs into the node, `to` the one that
//    leaves it. A way that passes through the node has two; only the one that may be driven that
//    way counts, and when both may, the map should have split the way there: unusable. A closed way
//    that begins and ends at the node can't be split: what is forbidden there is so at both ends.
// 3. Over ways: every walk that leaves `from`, runs along the via ways in their order, without
//    turning back on any, and ends on `to` is looked for. An order must have one; what is forbidden
//    is so on each.
// 4. `from` and `to` the same way with a U-turn: each stretch of it into the node, and back.
// 5. Orders at all hours that contradict each other are all kept (each is checked by itself) and told.
// Source: OSM wiki Relation:restriction (members; ways to be split at the via node).
#include "turn_rules.hpp"

#include <algorithm>
#include <iterator>
#include <span>
#include <string>

#include "restriction_tags.hpp"
#include "via_walks.hpp"

namespace loopwright::read {
namespace {

struct Members {
  std::vector<std::int64_t> from, to, via_ways, via_nodes;
};

Members members_of(const mark::RawRelation& relation) {
  Members members;
  for (const mark::RawMember& member : relation.members) {
    if (member.type == 'w' && member.role == "from") members.from.push_back(member.ref);
    if (member.type == 'w' && member.role == "to") members.to.push_back(member.ref);
    if (member.type == 'w' && member.role == "via") members.via_ways.push_back(member.ref);
    if (member.type == 'n' && member.role == "via") members.via_nodes.push_back(member.ref);
  }
  return members;
}

/// Why these members are of no use; empty when they may be.
std::string_view trouble_with(const Members& members, const Demand& demand) {
  if (members.from.empty() || members.to.empty()) return "a from or to way is missing";
  if (members.from.size() > 1 && demand.value != "no_entry") return "it has several from ways";
  if (members.to.size() > 1 && demand.value != "no_exit") return "it has several to ways";
  if (!members.via_nodes.empty() && !members.via_ways.empty()) return "via is both node and way";
  if (members.via_nodes.size() > 1) return "it has several via nodes";
  if (members.via_nodes.empty() && members.via_ways.empty()) return "it has no via";
  return {};
}

class Resolver {
 public:
  explicit Resolver(mark::Draft& draft) : draft_(draft), roads_(draft.roads()) {}
  void take(const mark::RawRelation& relation);

 private:
  /// Adds the paths of one pair of ways; returns why there is none.
  std::string_view resolve(const Members& members, const Demand& demand);
  std::string_view resolve_pair(std::int64_t from, std::int64_t to, const Members& members,
                                const Demand& demand);
  std::string_view over_node(std::int64_t from, std::int64_t to, NodeId via, const Demand& demand);
  void turn_round(std::int64_t way, NodeId via);
  [[nodiscard]] bool is_road(std::int64_t way) const { return !roads_.pieces_of_way(way).empty(); }
  /// True when the way of a stretch is closed, and begins and ends at the node.
  [[nodiscard]] bool is_closed_at(StretchId stretch, NodeId node) const;
  /// Those of a way's stretches at its via node, one at least, that a demand is about; none when the
  /// map doesn't tell.
  [[nodiscard]] std::vector<StretchId> meant(std::vector<StretchId> candidates, NodeId via,
                                             const Demand& demand) const;
  void store(const mark::RawRelation& relation, const Demand& demand);

  mark::Draft& draft_;
  road::Roads roads_;
  std::vector<StretchPath> paths_;  // of the demand at hand
};

bool Resolver::is_closed_at(StretchId stretch, NodeId node) const {
  const std::vector<std::int64_t>& nodes = draft_.way(stretch.piece()).nodes;
  return nodes.front() == nodes.back() && nodes.front() == roads_.nodes[node.index()].osm_id;
}

std::vector<StretchId> Resolver::meant(std::vector<StretchId> candidates, NodeId via,
                                       const Demand& demand) const {
  if (candidates.size() == 1) return candidates;
  const bool both_ends = !demand.only() && is_closed_at(candidates.front(), via);
  std::erase_if(candidates, [&](StretchId stretch) { return !roads_.drivable(stretch); });
  if (candidates.size() > 1 && !both_ends) candidates.clear();
  return candidates;
}

void Resolver::turn_round(std::int64_t way, NodeId via) {
  for (const StretchId leaving : stretches_leaving(roads_, way, via)) {
    paths_.push_back({leaving.back(), leaving});
  }
}

std::string_view Resolver::over_node(std::int64_t from, std::int64_t to, NodeId via,
                                     const Demand& demand) {
  std::vector<StretchId> arriving = stretches_leaving(roads_, from, via);
  for (StretchId& stretch : arriving) stretch = stretch.back();
  const std::vector<StretchId> leaving = stretches_leaving(roads_, to, via);
  if (arriving.empty() || leaving.empty()) return "its via node isn't on both ways";
  const auto ins = meant(arriving, via, demand);
  const auto outs = meant(leaving, via, demand);
  if (ins.empty() || outs.empty()) return "a way isn't split at its via node";
  for (const StretchId in : ins)
    for (const StretchId out : outs) paths_.push_back({in, out});
  return {};
}

std::string_view Resolver::resolve_pair(std::int64_t from, std::int64_t to, const Members& members,
                                        const Demand& demand) {
  if (!members.via_ways.empty()) {
    auto walks = via_walks(roads_, from, members.via_ways, to);
    if (!walks) return "its ways join in too many ways";
    if (walks->empty()) return "its ways don't join";
    if (walks->size() > 1 && demand.only()) return "its ways join in more than one way";
    std::ranges::move(*walks, std::back_inserter(paths_));
    return {};
  }
  const NodeId via = roads_.find_node(members.via_nodes[0]);
  if (!via.known()) return "its via node isn't on both ways";
  if (from != to) return over_node(from, to, via, demand);
  if (!demand.u_turn()) return "from and to are the same way";
  const std::size_t before = paths_.size();
  turn_round(from, via);
  return paths_.size() == before ? "its via node isn't on both ways" : "";
}

std::string_view Resolver::resolve(const Members& members, const Demand& demand) {
  paths_.clear();
  if (const auto trouble = trouble_with(members, demand); !trouble.empty()) return trouble;
  for (const auto* ways : {&members.from, &members.via_ways, &members.to}) {
    if (!std::ranges::all_of(*ways, [&](std::int64_t way) { return is_road(way); })) {
      return "a way isn't a road of this extract";
    }
  }
  for (const std::int64_t from : members.from) {
    for (const std::int64_t to : members.to) {
      const std::string_view trouble = resolve_pair(from, to, members, demand);
      if (!trouble.empty()) return trouble;
    }
  }
  return {};
}

void Resolver::store(const mark::RawRelation& relation, const Demand& demand) {
  road::Tables& tables = draft_.tables;
  for (const StretchPath& path : paths_) {
    road::TurnRule rule;
    rule.relation = relation.id;
    rule.path_first = static_cast<std::uint32_t>(tables.rule_path.size());
    rule.path_count = static_cast<std::uint32_t>(path.size());
    rule.text = draft_.text(demand.text);
    rule.condition = draft_.text(demand.condition);
    rule.only = demand.only() ? 1 : 0;
    tables.turn_rules.push_back(rule);
    tables.rule_path.insert(tables.rule_path.end(), path.begin(), path.end());
  }
}

void Resolver::take(const mark::RawRelation& relation) {
  road::Report& report = draft_.report;
  const OsmObject object{relation.id, ObjectType::relation};
  const Demands demands = demands_of(relation.tags);
  report.count("turn restrictions");
  if (demands.of_the_car.empty()) {
    if (demands.of_others) return report.count("turn restrictions for other vehicles");
    report.count("turn restrictions that can't be used");
    return report.odd(object, "turn restriction can't be used", "its kind isn't known");
  }
  const Members members = members_of(relation);
  std::string_view trouble;
  for (const Demand& demand : demands.of_the_car) {
    const std::string_view found = resolve(members, demand);
    if (found.empty()) {
      store(relation, demand);
    } else {
      trouble = found;
    }
  }
  if (!trouble.empty()) {
    report.count("turn restrictions that can't be used");
    return report.odd(object, "turn restriction can't be used", trouble);
  }
  report.count("turn restrictions used");
  const bool timed =
      std::ranges::any_of(demands.of_the_car, [](const Demand& d) { return !d.condition.empty(); });
  if (timed) report.count("turn restrictions by the hour");
}

/// Two orders to go on differently from the same stretches leave no way on at all.
void report_contradictions(mark::Draft& draft) {
  const road::Roads roads = draft.roads();
  std::vector<road::TurnRule> orders;
  std::ranges::copy_if(roads.turn_rules, std::back_inserter(orders),
                       [&](const road::TurnRule& rule) {
                         return rule.only != 0 && roads.text(rule.condition).empty();
                       });
  const auto before = [&](const road::TurnRule& a, const road::TurnRule& b) {
    if (a.path_count != b.path_count) return a.path_count < b.path_count;
    return std::ranges::lexicographical_compare(roads.path_of(a), roads.path_of(b));
  };
  std::ranges::stable_sort(orders, before);
  for (std::size_t i = 1; i < orders.size(); ++i) {
    const auto first = roads.path_of(orders[i - 1]);
    const auto second = roads.path_of(orders[i]);
    if (first.size() != second.size() || first.back() == second.back()) continue;
    if (!std::equal(first.begin(), first.end() - 1, second.begin())) continue;
    draft.report.odd({orders[i].relation, ObjectType::relation},
                     "turn restrictions contradict each other",
                     "relation " + std::to_string(orders[i - 1].relation) +
                         " orders another way on; none is driven");
  }
}

}  // namespace

void resolve_turn_rules(mark::Draft& draft) {
  Resolver resolver(draft);
  for (const mark::RawRelation& relation : draft.raw.restrictions) resolver.take(relation);
  report_contradictions(draft);
}

}  // namespace loopwright::read
