// Method:
// 1. The plain keys say what holds when no condition does (one_way.cpp).
// 2. oneway:conditional, then that of vehicle, motor_vehicle and motorcar: the most special mode
//    comes last, since of clauses that hold together the last one wins.
// 3. A clause of a less special mode than the plain key counts only where it shuts a direction: the
//    rule of the access keys (access_tree.cpp). The wiki lets the special mode win and leaves open
//    how that weighs against a condition; a lesson must not be wrong on the wrong side.
// 4. A text without any '@' doesn't say what holds: it may shut both directions whenever asked.
// Sources: OSM wiki, pages Conditional restrictions, Key:oneway, Key:access (order of the modes).
#include "one_way_hours.hpp"

#include <algorithm>
#include <array>
#include <vector>

#include "loopwright/hours/condition.hpp"
#include "loopwright/mark/ordinary_car.hpp"
#include "tag_words.hpp"

namespace loopwright::mark {
namespace {

using road::RoadClass;

/// From the most special mode to the least.
constexpr std::array<std::string_view, 4> keys{"oneway:motorcar", "oneway:motor_vehicle",
                                               "oneway:vehicle", "oneway"};

class ByTheHour {
 public:
  ByTheHour(const Tags& tags, RoadClass road_class)
      : tags_(tags), road_class_(road_class), plain_(one_way_of(tags, road_class)) {
    const auto said = std::ranges::find_if(keys, [&](auto key) { return tags.has(key); });
    plain_level_ = static_cast<std::size_t>(said - keys.begin());
  }
  OneWayHours read();

 private:
  void lay(std::size_t level);
  void add(std::size_t level, const OneWay& then, const std::string& condition);

  const Tags& tags_;
  RoadClass road_class_;
  OneWay plain_;
  std::size_t plain_level_ = keys.size();
  std::vector<OnClause> along_, against_;
  std::string source_;
};

void ByTheHour::add(std::size_t level, const OneWay& then, const std::string& condition) {
  const bool special = level <= plain_level_;
  if (special || !then.along) along_.push_back({then.along, condition});
  if (special || !then.against) against_.push_back({then.against, condition});
}

void ByTheHour::lay(std::size_t level) {
  const std::string key = std::string(keys[level]) + ":conditional";
  const std::string_view text = tags_.get(key);
  if (text.empty()) return;
  const std::size_t before = along_.size() + against_.size();
  const auto clauses = hours::split_conditional(text);
  for (const hours::Clause& clause : clauses) {
    if (binding_on_car(clause.condition).when == Binding::When::never) continue;
    add(level, one_way_of(Tags{{"oneway", clause.value}}, road_class_), clause.condition);
  }
  if (clauses.empty()) add(level, {false, false, true, {}}, "? " + std::string(text));
  if (along_.size() + against_.size() == before) return;
  source_.append(source_.empty() ? "" : "; ").append(tag_text(key, text));
}

OneWayHours ByTheHour::read() {
  for (std::size_t level = keys.size(); tags_.has_conditions() && level-- > 0;) lay(level);
  return {switched(plain_.along, along_), switched(plain_.against, against_), source_};
}

}  // namespace

OneWayHours one_way_hours(const Tags& tags, RoadClass road_class) {
  return ByTheHour(tags, road_class).read();
}

}  // namespace loopwright::mark
