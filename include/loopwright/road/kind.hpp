// What there is to practise on a road, and the words this project uses for it everywhere: on the
// command line, in files and in the pupils' book.
//
//   parse_kind("mini-roundabout");  meets(Kind::single_track, Kind::narrow_road);  // true
//
// Rules: names are lower case and hyphenated, and never change once released. Forms of kinds:
//   junction   passed by entering and leaving a place (roundabout, zebra, pinch point …)
//   run        a run of road, passed by driving enough of it (narrow road, 20 zone …)
//   roadside   beside one stretch, passed by driving along it (bus stop)
//   manoeuvre  a spot beside one stretch to stop at and practise, with minutes (parallel park …)
// The chance of a roadside kind or a manoeuvre has that one stretch as its path, entry and exit.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace loopwright::road {

enum class Kind : std::uint8_t {
  roundabout, mini_roundabout, multi_lane_roundabout, signal_roundabout, double_mini,
  emerge, turn_off, narrow_mouth, crossroads, staggered_junction, acute_junction, stop_line,
  signals, filter_lane, advanced_stop_line, box_junction, zebra, signal_crossing, school,
  level_crossing, narrow_road, single_track, meeting_traffic, pinch_point, calming,
  twenty_zone, twenty_limit, limit_change, country_road, bends, brow, uphill_start, downhill,
  dual_carriageway, slip_road, motorway, one_way, bus_lane, cycle_lane, cycle_lane_mouth,
  lanes_merge, bus_stop, tram, tram_crossing, ford, move_off, bay_park, parallel_park,
  pull_up_right, turn_in_road, emergency_stop, independent_stretch
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

/// Every kind, in the order of the catalogue.
std::span<const Kind> all_kinds();

/// True when a pass of `driven` counts for a wish for `asked`: the same kind, or a special form.
bool meets(Kind driven, Kind asked);

/// The kind itself and every special form of it, as a set of bits.
std::uint64_t with_special_forms(Kind asked);

enum class KindForm : std::uint8_t { junction, run, roadside, manoeuvre };
KindForm form_of(Kind kind);

/// True for runs of road (narrow road, 20 zone, bus lane …).
bool is_stretch_like(Kind kind);

/// The movements a kind can be asked for by; empty when it has none.
std::span<const Movement> movements_of(Kind kind);

constexpr std::uint64_t bit(Kind kind) { return std::uint64_t{1} << static_cast<unsigned>(kind); }

/// Least length in metres of a stretch-like pass: 100; 0 for what is met in a moment (any length
/// mapped: bus lanes, schools, brows …); more for what takes a while (DEVELOPERS.md, kinds).
double least_run_m(Kind kind);

}  // namespace loopwright::road
