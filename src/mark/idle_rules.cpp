// Tags with conditions that give a learner's car nothing to ask by the hour, kept so that everything
// mapped can be listed.
//
// 1. Each key that ends in ":conditional" of each road, of the points that roads run over, and of
//    turn restrictions. What stands in the area as a rule by the hour or a bus lane is no such tag:
//    it is known by its text, which rules name as their source.
// 2. A key that names a mode no car is, or whose clauses all hang on others (weights, deliveries'
//    own kind, residents): for others.
// 3. Access, one-way and limit keys of cars with hours, but without a rule: the same at all hours.
//    The road isn't for a lesson, or only deliveries have hours, or the clause says what is so
//    anyway. A point that is a wall is shut at all hours (barriers.cpp).
// 4. Keys of the kerb that are no ban and where no place to stop is kept are the same too: none is ever
//    offered there.
// 5. All else is a tag that no rule reads: say so, and let the driver look for the sign.
// Source of the grammar of keys: OSM wiki, page Conditional restrictions.
#include <algorithm>
#include <array>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "loopwright/base/equal_rows.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/hours/condition.hpp"
#include "loopwright/mark/ordinary_car.hpp"
#include "loopwright/mark/rules.hpp"
#include "tag_words.hpp"

namespace loopwright::mark {
namespace {

using road::Idle;

constexpr std::string_view ending = ":conditional";

struct ConditionalTag {
  std::string_view key, value;  ///< of the tag; the key without its ending
  [[nodiscard]] std::string text() const {
    return tag_text(std::string(key).append(ending), value);
  }
};

std::vector<ConditionalTag> conditional_tags(const Tags& tags) {
  std::vector<ConditionalTag> found;
  if (!tags.has_conditions()) return found;
  tags.each([&](std::string_view key, std::string_view value) {
    if (key.ends_with(ending)) found.push_back({key.substr(0, key.size() - ending.size()), value});
  });
  return found;
}

/// A word of a key that makes it one of others than cars.
bool names_others(std::string_view word) {
  constexpr std::array<std::string_view, 14> more{
      "foot", "horse",   "carriage",   "mofa", "ski",        "tourist_bus", "hgv_articulated",
      "lhv",  "minibus", "share_taxi", "atv",  "snowmobile", "dog",         "wheelchair"};
  return one_of(word, more) || hours::is_user_word(word);
}

bool is_of_others(std::string_view key) {
  const auto words = split(key, ':');
  return std::ranges::any_of(words, names_others);
}

/// No clause ever holds for a learner's car, or only with a size that keeps none out.
bool never_binds(const ConditionalTag& tag) {
  const auto clauses = hours::split_conditional(tag.value);
  const bool size = tag.key.starts_with("max") && !tag.key.starts_with("maxspeed");
  return !clauses.empty() && std::ranges::all_of(clauses, [&](const hours::Clause& clause) {
    if (binding_on_car(clause.condition).when == Binding::When::never) return true;
    const Tags alone{{tag.key, clause.value}};
    return size && size_tag_against_car(alone).empty() && unread_size_tag(alone).empty();
  });
}

/// A key whose hours the rules of whole roads read.
bool is_read_of_cars(std::string_view key) {
  constexpr std::array<std::string_view, 6> first_words{"motorcar", "motor_vehicle", "vehicle",
                                                        "access",   "oneway",        "maxspeed"};
  constexpr std::array<std::string_view, 8> known{"motorcar", "motor_vehicle", "vehicle",
                                                  "access",   "oneway",        "maxspeed",
                                                  "forward",  "backward"};
  const auto words = split(key, ':');
  return one_of(words.front(), first_words) &&
         std::ranges::all_of(words, [&](std::string_view word) { return one_of(word, known); });
}

class IdleRules {
 public:
  explicit IdleRules(Draft& draft);
  void take_piece(PieceId piece);
  void take_points();
  void take_restrictions();
  void lay_down();

 private:
  [[nodiscard]] bool is_kept(PieceId piece, const ConditionalTag& tag) const;
  [[nodiscard]] bool has_rule(PieceId piece, const std::string& tag) const;
  [[nodiscard]] bool has_bus_lane(PieceId piece) const;
  [[nodiscard]] bool has_kerb_hours(PieceId piece) const;
  [[nodiscard]] bool has_kerb_ban(PieceId piece, const std::string& tag) const;
  [[nodiscard]] Idle why(const ConditionalTag& tag) const;
  void add(OsmObject source, StretchId stretch, const std::string& tag, Idle why);
  void take_points_of(PieceId piece, std::span<const std::int64_t> points);

  using Source = std::pair<PieceId, TextId>;

  Draft& draft_;
  std::vector<Source> sources_;  ///< of all rules by the hour, ordered
  std::vector<road::IdleRule> found_;
};

IdleRules::IdleRules(Draft& draft) : draft_(draft) {
  for (const road::TimedRule& rule : draft.tables.timed_rules)
    sources_.emplace_back(rule.stretch.piece(), rule.source);
  std::ranges::sort(sources_);
}

bool IdleRules::has_rule(PieceId piece, const std::string& tag) const {
  const auto rules = equal_rows(sources_, piece, &Source::first);
  return std::ranges::any_of(rules, [&](const Source& rule) {
    return draft_.text(rule.second).find(tag) != std::string_view::npos;
  });
}

bool IdleRules::has_bus_lane(PieceId piece) const {
  return std::ranges::binary_search(draft_.tables.bus_lanes, piece, {}, &road::BusLane::piece);
}

bool IdleRules::has_kerb_hours(PieceId piece) const {
  const auto places = equal_rows(draft_.tables.pull_ups, piece,
                                 [](const road::PullUp& place) { return place.stretch.piece(); });
  return std::ranges::any_of(
      places, [&](const road::PullUp& place) { return !draft_.text(place.hours).empty(); });
}

bool IdleRules::has_kerb_ban(PieceId piece, const std::string& tag) const {
  const auto bans = equal_rows(draft_.tables.kerb_bans, piece,
                               [](const road::KerbBan& ban) { return ban.stretch.piece(); });
  return std::ranges::any_of(
      bans, [&](const road::KerbBan& ban) { return draft_.text(ban.source) == tag; });
}

/// Step 1. Lists and counts of lanes are joined into bus lanes; one stands for all of its keys.
bool IdleRules::is_kept(PieceId piece, const ConditionalTag& tag) const {
  if (tag.key.starts_with("parking"))
    return has_kerb_hours(piece) || has_kerb_ban(piece, tag.text());
  const bool lanes =
      tag.key.find("lanes") != std::string_view::npos || tag.key.starts_with("busway");
  if (lanes && !tag.key.starts_with("turn") && has_bus_lane(piece)) return true;
  return has_rule(piece, tag.text());
}

Idle IdleRules::why(const ConditionalTag& tag) const {
  if (is_of_others(tag.key) || never_binds(tag)) return Idle::others;
  const bool kerb = tag.key.starts_with("parking");
  return kerb || is_read_of_cars(tag.key) ? Idle::same : Idle::unread;
}

void IdleRules::add(OsmObject source, StretchId stretch, const std::string& tag, Idle why) {
  found_.push_back({source, stretch, draft_.text(tag), why, {}});
}

void IdleRules::take_piece(PieceId piece) {
  const OsmObject way{draft_.tables.pieces[piece.index()].way, ObjectType::way, {}};
  for (const ConditionalTag& tag : conditional_tags(draft_.way_tags(piece))) {
    const bool against = (":" + std::string(tag.key) + ":").find(":backward:") != std::string::npos;
    if (!is_kept(piece, tag)) add(way, StretchId(piece, against), tag.text(), why(tag));
  }
}

void IdleRules::take_points_of(PieceId piece, std::span<const std::int64_t> points) {
  const road::Piece& row = draft_.tables.pieces[piece.index()];
  const std::vector<std::int64_t>& nodes = draft_.way(piece).nodes;
  for (std::size_t at = row.from_index; at <= row.to_index; ++at) {
    if (!std::ranges::binary_search(points, nodes[at])) continue;
    const OsmObject point{nodes[at], ObjectType::node, {}};
    for (const ConditionalTag& tag : conditional_tags(draft_.raw.tags_of_node(point.id)))
      add(point, StretchId(piece, false), tag.text(), why(tag));
  }
}

void IdleRules::take_points() {
  std::vector<std::int64_t> points;
  for (const auto& [node, tags] : draft_.raw.node_tags)
    if (!conditional_tags(tags).empty()) points.push_back(node);
  if (points.empty()) return;
  for (std::size_t row = 0; row < draft_.tables.pieces.size(); ++row)
    take_points_of(PieceId{row}, points);
}

void IdleRules::take_restrictions() {
  const auto is_rule = [&](std::int64_t relation) {
    return std::ranges::find(draft_.tables.turn_rules, relation, &road::TurnRule::relation) !=
           draft_.tables.turn_rules.end();
  };
  const road::Roads roads = draft_.roads();
  for (const RawRelation& relation : draft_.raw.restrictions) {
    const auto tags = conditional_tags(relation.tags);
    const auto from = std::ranges::find(relation.members, "from", &RawMember::role);
    if (tags.empty() || from == relation.members.end() || is_rule(relation.id)) continue;
    const auto pieces = roads.pieces_of_way(from->ref);
    if (pieces.empty()) continue;
    const PieceId piece = roads.id_of(pieces.front());
    const bool others = restricts_others_only(relation.tags);
    for (const ConditionalTag& tag : tags)
      add({relation.id, ObjectType::relation, {}}, StretchId(piece, false), tag.text(),
          others ? Idle::others : why(tag));
  }
}

void IdleRules::lay_down() {
  const auto tell = [&](std::string_view what, Idle why) {
    const auto count = std::ranges::count(found_, why, &road::IdleRule::why);
    if (count > 0) draft_.report.count(what, count);
  };
  tell("conditions for others than cars", Idle::others);
  tell("conditions that change nothing for a learner's car", Idle::same);
  tell("conditions that no rule reads", Idle::unread);
  draft_.tables.idle_rules = std::move(found_);
}

}  // namespace

void mark_idle_rules(Draft& draft) {
  IdleRules rules(draft);
  for (std::size_t piece = 0; piece < draft.tables.pieces.size(); ++piece)
    rules.take_piece(PieceId{piece});
  rules.take_points();
  rules.take_restrictions();
  rules.lay_down();
}

}  // namespace loopwright::mark
