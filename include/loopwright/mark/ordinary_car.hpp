// The car a learner drives, held against what conditions and signs say of vehicles.
//
//   binding_on_car("weight>7.5").when == Binding::When::never
//   Condition("Mo-Fr 07:00-10:00 AND weight<3.5").at(civil, setting, LearnersCar())
//
// Rules: figures of the car are in src/rules/car.txt, with their reasons. A lesson is nobody's
// delivery and no resident: kinds of users never hold. What is seen only on the day (wet, flashing)
// is unknown.
// Why a remainder: parts of a condition that never change for our car are settled when an area is
// built, so that later only hours are asked and read aloud.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "loopwright/hours/condition.hpp"
#include "loopwright/mark/raw_map.hpp"

namespace loopwright::mark {

/// What a condition may ask of the vehicle and its driver, answered for a lesson.
class LearnersCar : public hours::Circumstances {
 public:
  [[nodiscard]] hours::Tri holds(const hours::ConditionPart& part) const override;
};

/// When a condition ("Mo-Fr 08:00-09:00 AND weight>3.5") holds for our car.
struct Binding {
  enum class When : std::uint8_t { never, at_times, always };
  When when = When::at_times;
  std::string condition;  ///< of at_times: what of it is still to be asked: "Mo-Fr 08:00-09:00"
};
Binding binding_on_car(std::string_view condition);

/// "maxwidth=1.8" when a limit on size or weight keeps the car out; empty when none does.
std::string size_tag_against_car(const Tags& tags);

/// "maxheight=high" when a limit on size or weight is mapped that can't be read; else empty.
std::string unread_size_tag(const Tags& tags);

/// Whether the tags of a turn restriction free every car, by except=motorcar or a type of other vehicles
/// (restriction:hgv). Source: OSM wiki Relation:restriction.
bool restricts_others_only(const Tags& restriction);

}  // namespace loopwright::mark
