// Method: the words are tables indexed by the enums; reading a word searches its table. Hints use
// the edit distance (insert, delete, replace one letter), row by row.
#include "loopwright/road/kind.hpp"

#include <algorithm>
#include <array>
#include <vector>

namespace loopwright::road {
namespace {

constexpr std::array<std::string_view, kind_count> kind_names{"roundabout",
                                                              "mini-roundabout",
                                                              "multi-lane-roundabout",
                                                              "signal-roundabout",
                                                              "emerge",
                                                              "turn-off",
                                                              "crossroads",
                                                              "staggered-junction",
                                                              "stop-line",
                                                              "signals",
                                                              "box-junction",
                                                              "zebra",
                                                              "signal-crossing",
                                                              "school",
                                                              "level-crossing",
                                                              "narrow-road",
                                                              "single-track",
                                                              "meeting-traffic",
                                                              "pinch-point",
                                                              "calming",
                                                              "twenty-zone",
                                                              "twenty-limit",
                                                              "limit-change",
                                                              "country-road",
                                                              "bends",
                                                              "uphill-start",
                                                              "downhill",
                                                              "dual-carriageway",
                                                              "slip-road",
                                                              "motorway",
                                                              "one-way",
                                                              "bus-lane",
                                                              "cycle-lane",
                                                              "lanes-merge",
                                                              "bus-stop",
                                                              "tram",
                                                              "ford",
                                                              "move-off",
                                                              "bay-park",
                                                              "parallel-park",
                                                              "pull-up-right",
                                                              "turn-in-road",
                                                              "emergency-stop",
                                                              "independent-stretch"};

constexpr std::array<std::string_view, 5> movement_names{"", "left", "ahead", "right", "round"};

constexpr std::array<std::string_view, 3> confidence_names{"certain", "inferred", "noted"};

/// In the order of the catalogue. Motorways are found in areas built with them.
constexpr std::array found_kinds{
    Kind::roundabout,        Kind::mini_roundabout,  Kind::multi_lane_roundabout,
    Kind::signal_roundabout, Kind::emerge,           Kind::turn_off,
    Kind::crossroads,        Kind::signals,          Kind::zebra,
    Kind::signal_crossing,   Kind::level_crossing,   Kind::narrow_road,
    Kind::single_track,      Kind::twenty_zone,      Kind::twenty_limit,
    Kind::limit_change,      Kind::dual_carriageway, Kind::motorway,
    Kind::one_way,           Kind::bus_lane};

constexpr std::uint64_t stretch_like_kinds =
    bit(Kind::narrow_road) | bit(Kind::single_track) | bit(Kind::meeting_traffic) |
    bit(Kind::twenty_zone) | bit(Kind::twenty_limit) | bit(Kind::country_road) | bit(Kind::bends) |
    bit(Kind::downhill) | bit(Kind::dual_carriageway) | bit(Kind::motorway) | bit(Kind::one_way) |
    bit(Kind::bus_lane) | bit(Kind::cycle_lane) | bit(Kind::tram) | bit(Kind::independent_stretch);

/// left, ahead, right, round: kinds that have fewer take the first of them, or leave out ahead.
constexpr std::array ring_movements{Movement::left, Movement::ahead, Movement::right,
                                    Movement::round};
constexpr std::array side_movements{Movement::left, Movement::right};

template <class Enum, std::size_t size>
std::optional<Enum> parse(const std::array<std::string_view, size>& names, std::string_view text) {
  const auto found = std::find(names.begin(), names.end(), text);
  if (found == names.end()) return std::nullopt;
  return static_cast<Enum>(found - names.begin());
}

template <class Enum, std::size_t size>
std::string_view name_in(const std::array<std::string_view, size>& names, Enum value) {
  return names.at(static_cast<std::size_t>(value));
}

std::size_t edit_distance(std::string_view a, std::string_view b) {
  std::vector<std::size_t> row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) row[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    std::size_t diagonal = row[0];
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t replaced = diagonal + (a[i - 1] == b[j - 1] ? 0 : 1);
      diagonal = row[j];
      row[j] = std::min({row[j] + 1, row[j - 1] + 1, replaced});
    }
  }
  return row[b.size()];
}

}  // namespace

std::string_view name(Kind kind) {
  return name_in(kind_names, kind);
}
std::string_view name(Movement movement) {
  return name_in(movement_names, movement);
}
std::string_view name(Confidence confidence) {
  return name_in(confidence_names, confidence);
}

std::optional<Kind> parse_kind(std::string_view text) {
  return parse<Kind>(kind_names, text);
}

std::optional<Movement> parse_movement(std::string_view text) {
  return text.empty() ? std::nullopt : parse<Movement>(movement_names, text);
}

std::optional<Confidence> parse_confidence(std::string_view text) {
  return parse<Confidence>(confidence_names, text);
}

Kind nearest_kind(std::string_view typed) {
  // "20-zone" is nearer to "one-way" by letters, but not for whoever typed it.
  const std::string words =
      typed.starts_with("20") ? "twenty" + std::string(typed.substr(2)) : std::string(typed);
  const auto nearer = [&](std::string_view a, std::string_view b) {
    return edit_distance(a, words) < edit_distance(b, words);
  };
  const auto found = std::min_element(kind_names.begin(), kind_names.end(), nearer);
  return static_cast<Kind>(found - kind_names.begin());
}

std::span<const Kind> mapped_kinds() {
  return found_kinds;
}

bool is_mapped(Kind kind) {
  return std::find(found_kinds.begin(), found_kinds.end(), kind) != found_kinds.end();
}

bool meets(Kind driven, Kind asked) {
  return (with_special_forms(asked) & bit(driven)) != 0;
}

std::uint64_t with_special_forms(Kind asked) {
  if (asked == Kind::roundabout) {
    return bit(asked) | bit(Kind::multi_lane_roundabout) | bit(Kind::signal_roundabout);
  }
  if (asked == Kind::narrow_road) return bit(asked) | bit(Kind::single_track);
  return bit(asked);
}

bool is_stretch_like(Kind kind) {
  return (stretch_like_kinds & bit(kind)) != 0;
}

std::span<const Movement> movements_of(Kind kind) {
  switch (kind) {
    case Kind::roundabout:
    case Kind::mini_roundabout:
    case Kind::multi_lane_roundabout:
    case Kind::signal_roundabout:
      return ring_movements;
    case Kind::signals:
    case Kind::crossroads:
      return std::span(ring_movements).first<3>();
    case Kind::emerge:
    case Kind::turn_off:
      return side_movements;
    default:
      return {};
  }
}

double least_run_m(Kind kind) {
  return kind == Kind::bus_lane ? 0 : 100;
}

}  // namespace loopwright::road
