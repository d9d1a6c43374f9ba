// What there is to practise on a road, and the words this project uses for it everywhere: on the
// command line, in files and in the pupils' book.
//
//   parse_kind("mini-roundabout");  meets(Kind::single_track, Kind::narrow_road);  // true
//
// Rules: names are lower case and hyphenated, and never change once released. A kind is either
// junction-like (passed by entering and leaving a place) or stretch-like (a run of road).
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace loopwright::road {

enum class Kind : std::uint8_t {
  roundabout, mini_roundabout, multi_lane_roundabout, signal_roundabout,
  emerge, turn_off, crossroads, staggered_junction, stop_line,
  signals, box_junction, zebra, signal_crossing, school, level_crossing,
  narrow_road, single_track, meeting_traffic, pinch_point, calming,
  twenty_zone, twenty_limit, limit_change, country_road, bends, uphill_start, downhill,
  dual_carriageway, slip_road, motorway, one_way, bus_lane, cycle_lane, lanes_merge,
  bus_stop, tram, ford, move_off, bay_park, parallel_park, pull_up_right, turn_in_road,
  emergency_stop, independent_stretch
};
inline constexpr std::size_t kind_count = static_cast<std::size_t>(Kind::independent_stretch) + 1;
static_assert(kind_count <= 64, "a set of kinds is one 64-bit word");

enum class Movement : std::uint8_t { none, left, ahead, right, round };

/// How sure the map is of a fact: a tag says it, a rule of ours infers it, the instructor noted it.
enum class Confidence : std::uint8_t { certain, inferred, noted };

std::string_view name(Kind kind);
std::string_view name(Movement movement);  // "" for none
std::string_view name(Confidence confidence);
std::optional<Kind> parse_kind(std::string_view text);
std::optional<Movement> parse_movement(std::string_view text);  // never none
std::optional<Confidence> parse_confidence(std::string_view text);

/// The kind whose name is least changed from what was typed (edit distance), for a hint.
Kind nearest_kind(std::string_view typed);

/// The kinds this version finds in a map, in the order of the catalogue.
std::span<const Kind> mapped_kinds();
bool is_mapped(Kind kind);

/// True when a pass of `driven` counts for a wish for `asked`: the same kind, or a special form.
bool meets(Kind driven, Kind asked);

/// The kind itself and every special form of it, as a set of bits.
std::uint64_t with_special_forms(Kind asked);

/// True for runs of road (narrow road, 20 zone, bus lane …), false for junction-like kinds.
bool is_stretch_like(Kind kind);

/// The movements a kind can be asked for by; empty when it has none.
std::span<const Movement> movements_of(Kind kind);

constexpr std::uint64_t bit(Kind kind) { return std::uint64_t{1} << static_cast<unsigned>(kind); }

/// Least length in metres of a stretch-like pass: 100, or 0 for bus lanes (any length mapped).
double least_run_m(Kind kind);

}  // namespace loopwright::road
