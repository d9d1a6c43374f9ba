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
                                                              "double-mini",
                                                              "emerge",
                                                              "turn-off",
                                                              "narrow-mouth",
                                                              "crossroads",
                                                              "staggered-junction",
                                                              "acute-junction",
                                                              "stop-line",
                                                              "signals",
                                                              "filter-lane",
                                                              "advanced-stop-line",
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
                                                              "brow",
                                                              "uphill-start",
                                                              "downhill",
                                                              "dual-carriageway",
                                                              "slip-road",
                                                              "motorway",
                                                              "one-way",
                                                              "bus-lane",
                                                              "cycle-lane",
                                                              "cycle-lane-mouth",
                                                              "lanes-merge",
                                                              "bus-stop",
                                                              "tram",
                                                              "tram-crossing",
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

constexpr std::array every_kind = [] {
  std::array<Kind, kind_count> all{};
  for (std::size_t k = 0; k < kind_count; ++k) all[k] = static_cast<Kind>(k);
  return all;
}();

constexpr std::uint64_t run_kinds =
    bit(Kind::narrow_road) | bit(Kind::single_track) | bit(Kind::meeting_traffic) |
    bit(Kind::twenty_zone) | bit(Kind::twenty_limit) | bit(Kind::country_road) | bit(Kind::bends) |
    bit(Kind::brow) | bit(Kind::downhill) | bit(Kind::dual_carriageway) | bit(Kind::slip_road) |
    bit(Kind::motorway) | bit(Kind::one_way) | bit(Kind::bus_lane) | bit(Kind::cycle_lane) |
    bit(Kind::tram) | bit(Kind::school) | bit(Kind::independent_stretch);

constexpr std::uint64_t manoeuvres =
    bit(Kind::uphill_start) | bit(Kind::move_off) | bit(Kind::bay_park) | bit(Kind::parallel_park) |
    bit(Kind::pull_up_right) | bit(Kind::turn_in_road) | bit(Kind::emergency_stop);

// Met in a moment, however short the road that carries it.
constexpr std::uint64_t runs_of_any_length = bit(Kind::bus_lane) | bit(Kind::brow) |
                                             bit(Kind::school) | bit(Kind::slip_road) |
                                             bit(Kind::tram);
constexpr double usual_least_m = 100;
constexpr double least_independent_m = 1000;  // ours: a minute or two of following the signs

/// left, ahead, right, round: kinds that have fewer take a part of them, or leave out ahead.
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

std::span<const Kind> all_kinds() {
  return every_kind;
}

bool meets(Kind driven, Kind asked) {
  return (with_special_forms(asked) & bit(driven)) != 0;
}

std::uint64_t with_special_forms(Kind asked) {
  switch (asked) {
    case Kind::roundabout:
      return bit(asked) | bit(Kind::multi_lane_roundabout) | bit(Kind::signal_roundabout);
    case Kind::mini_roundabout:
      return bit(asked) | bit(Kind::double_mini);
    case Kind::turn_off:
      return bit(asked) | bit(Kind::narrow_mouth);
    case Kind::narrow_road:
      return bit(asked) | bit(Kind::single_track);
    default:
      return bit(asked);
  }
}

KindForm form_of(Kind kind) {
  if ((run_kinds & bit(kind)) != 0) return KindForm::run;
  if ((manoeuvres & bit(kind)) != 0) return KindForm::manoeuvre;
  return kind == Kind::bus_stop ? KindForm::roadside : KindForm::junction;
}

bool is_stretch_like(Kind kind) {
  return form_of(kind) == KindForm::run;
}

std::span<const Movement> movements_of(Kind kind) {
  switch (kind) {
    case Kind::roundabout:
    case Kind::mini_roundabout:
    case Kind::multi_lane_roundabout:
    case Kind::signal_roundabout:
    case Kind::double_mini:
      return ring_movements;
    case Kind::signals:
    case Kind::crossroads:
    case Kind::stop_line:
    case Kind::box_junction:
      return std::span(ring_movements).first<3>();
    case Kind::staggered_junction:
      return std::span(ring_movements).subspan<1, 1>();
    case Kind::emerge:
    case Kind::turn_off:
    case Kind::narrow_mouth:
    case Kind::acute_junction:
    case Kind::filter_lane:
    case Kind::cycle_lane_mouth:
      return side_movements;
    default:
      return {};
  }
}

double least_run_m(Kind kind) {
  if (kind == Kind::independent_stretch) return least_independent_m;
  return (runs_of_any_length & bit(kind)) != 0 ? 0 : usual_least_m;
}

}  // namespace loopwright::road
