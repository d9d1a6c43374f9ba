// Where one may stop beside a stretch, and where the map forbids it: rows of the road graph.
//
// Rules: as those of roads.hpp, which holds them in columns. No third-party header may be included here.
#pragma once

#include <cstdint>

#include "loopwright/base/ids.hpp"
#include "loopwright/road/kind.hpp"

namespace loopwright::road {

/// Why a pull-up place needs a look before it is used; several may be set.
namespace pull_up_flag {
inline constexpr std::uint16_t hours = 1U << 0;       ///< waiting is banned at the hours of `hours`
inline constexpr std::uint16_t residents = 1U << 1;   ///< bays that are for permit holders
inline constexpr std::uint16_t fee = 1U << 2;         ///< a ticket or disc is asked for
inline constexpr std::uint16_t drives = 1U << 3;      ///< drives that the map shows meet the kerb here
inline constexpr std::uint16_t parked = 1U << 4;      ///< the map says cars are parked along it
inline constexpr std::uint16_t lane = 1U << 5;        ///< a bus or cycle lane runs along the kerb, by `hours`
inline constexpr std::uint16_t hill = 1U << 6;        ///< on a gradient of 5 % or more
inline constexpr std::uint16_t lay_by = 1U << 7;      ///< a lay-by or street-side bays
}  // namespace pull_up_flag

/// A part of a stretch beside whose near side (left in Britain) one may stop, as far as the map
/// tells. Ordered by stretch, then from_m.
struct PullUp {
  StretchId stretch;
  float from_m = 0, to_m = 0;  ///< metres from where the stretch is entered
  TextId why;    ///< why nothing mapped forbids it: "no ban mapped; 60 m clear of junctions"
  TextId hours;  ///< when it is forbidden (hours::Timetable); empty: none is mapped
  std::uint16_t flags = 0;
  Confidence confidence = Confidence::inferred;  ///< never certain: at best a lay-by, or noted
  std::uint8_t reserved = 0;
};

/// What parking tags forbid at the near kerb (left in Britain) of a stretch one may drive, wherever on
/// it: who only sets down is gone at once, who waits is not. Ordered by stretch, one row for each.
/// Nothing mapped is no row, and says nothing of the lines on the road.
struct KerbBan {
  StretchId stretch;
  TextId hours;   ///< when it holds (hours::Timetable), "24/7" at all times; may be unreadable
  TextId source;  ///< "parking:right:restriction:conditional=no_parking @ (Mo-Sa 08:00-18:30)"
  std::uint8_t no_stopping = 0;  ///< nobody may even stop; 0: waiting and parking are forbidden
  std::uint8_t reserved[3] = {};
};

}  // namespace loopwright::road
