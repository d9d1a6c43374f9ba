// Everything one wish needs while its loops are looked for: made once, then only read.
//
// Rules: the graph holds just the states that can be reached from home and left for the end within
// the minutes; times are likely milliseconds. Vertex numbers are those of `graph`.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "find/caps.hpp"
#include "find/clock_walls.hpp"
#include "find/takes.hpp"
#include "loopwright/find/passes.hpp"
#include "loopwright/lanes/lane_verdicts.hpp"
#include "loopwright/pace/pace.hpp"
#include "loopwright/reach/local_graph.hpp"
#include "loopwright/reach/reach.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::find {

using Vertex = reach::LocalGraph::Vertex;

/// Minutes after the start, both included.
struct Minutes {
  std::int64_t first = 0, last = 0;
};
/// At which minutes of a lesson a bus lane is settled usable, and in force; in order, apart.
struct LaneMinutes {
  std::vector<Minutes> usable, in_force;
  /// Some minute with this verdict lies in these times.
  [[nodiscard]] bool has(wish::Verdict verdict, std::int64_t from_ms, std::int64_t to_ms) const;
};

/// A chance that counts for some want and fits between home and end.
struct Candidate {
  ChanceId chance;
  PlaceId place;
  road::Kind kind = road::Kind::roundabout;
  road::Movement movement = road::Movement::none;
  std::vector<Vertex> path;
  std::int64_t inner_ms = 0;            ///< from the end of the entry to the end of the exit
  std::int64_t stop_ms = 0;             ///< how long one stops there
  std::int64_t least_ms = 0;            ///< home, through it and to the end, the stop counted
  std::int64_t there_ms = 0;            ///< home to where its first stretch begins
  LaneMinutes lanes = {};               ///< of all lanes on it; only of lane_candidates
  std::optional<road::Kind> into = {};  ///< what its way leads into: for joined wants alone
};

/// A drive of its own within a lesson (parts.hpp): where it begins and ends, and its time.
struct Section {
  reach::Costs costs;                      ///< what may be driven in it
  std::vector<reach::Seed> starts, goals;  ///< at their stretches' ends, unless at the doors
  bool from_door = false, to_door = false;
  std::int64_t low_ms = 0, high_ms = 0;
  std::map<PieceId, int> driven;  ///< how often pieces are driven by the rest of the lesson
};

/// Home and end on the roads, and what the wish allows. Throws UsageError when off the roads.
struct Ground {
  Ground(const road::Roads& roads, const wish::Wish& wish, const hours::Setting& setting,
         const ClockWalls& walls);
  /// A section of a lesson. Rules: part is the lesson's wish with the section's own wants and minutes; setting is the
  /// lesson's, or a thread's copy of it.
  Ground(const Ground& lesson, const wish::Wish& part, Section section,
         const hours::Setting& setting);

  const road::Roads& roads;
  const wish::Wish& wish;
  const hours::Setting& setting;
  const ClockWalls& walls;
  Caps caps;
  pace::Pace pace;
  reach::Snap home, end;
  reach::Costs costs;                      ///< bans of the wish applied
  std::vector<reach::Seed> starts, goals;  ///< only those the wish allows
  lanes::LaneVerdicts lane_verdicts;
  std::optional<Section> section;  ///< its costs, starts and goals are those above

  /// Metres from where a stretch of home's (end's) piece is entered to home (end).
  [[nodiscard]] double home_m(StretchId s) const;
  [[nodiscard]] double end_m(StretchId s) const;
};

/// Likely time of all road that fits between home and end within limit_ms, each direction once.
std::int64_t road_within(const Ground& ground, std::int64_t limit_ms);

class Hunt {
 public:
  /// Of more candidates than this for one want, tries pick among as many.
  static constexpr std::size_t usually_picked = 240;

  explicit Hunt(const Ground& ground, std::size_t picked = usually_picked);

  const Ground& ground;
  std::int64_t low_ms = 0, high_ms = 0;  ///< the time window, less what planned stops take
  bool with_stops = false;               ///< the wish asks for manoeuvres or planned stops
  bool with_verdicts = false;            ///< the wish asks for bus lanes as usable or in force
  reach::LocalGraph graph;
  std::vector<reach::LocalSeed> starts, goals;
  std::vector<Take> takes;  ///< each must be taken
  std::vector<Candidate> candidates;
  /// Chances that can be come to, but not driven through and left for home in the minutes; ascending.
  std::vector<ChanceId> too_far;
  /// Rows of candidates for each want; of very many, the nearest and a choice of the rest.
  std::vector<std::vector<std::uint32_t>> of_want;
  std::vector<std::uint32_t> piece_of;  ///< dense piece number of each vertex
  std::vector<float> piece_m;           ///< by dense piece number
  std::vector<std::uint8_t> piece_quiet;
  std::vector<int> piece_most;  ///< how often it may be driven, by dense piece; of quiet ones
  std::vector<std::uint8_t> welcome_at;  ///< by vertex: welcome chances that begin there; or empty

  /// With its stops planned.
  [[nodiscard]] Drive drive_of(std::span<const Vertex> vertices) const;
  /// Likely time of a whole drive without its stops. Rules: begins at a start, ends at a goal, arcs exist.
  [[nodiscard]] std::int64_t drive_ms(std::span<const Vertex> vertices) const;
  /// True when the candidate may count for the want.
  [[nodiscard]] bool serves(const Candidate& candidate, const wish::Want& want) const;

 private:
  void number_pieces();
  void gather_candidates(std::span<const std::int64_t> home_ms,
                         std::span<const std::int64_t> end_ms);
  void pick_for_wants(std::size_t picked);
  void find_welcome();
  void settle_too_far();
  void gather_at(Vertex v, std::int64_t home_ms, std::span<const std::int64_t> end_ms);
  void gather_joined(Vertex v, const road::Chance& chance, std::int64_t home_ms,
                     std::span<const std::int64_t> end_ms);
  std::optional<Candidate> candidate_at(Vertex entry, const road::Chance& chance) const;
  /// The same along a way that begins as the chance does.
  std::optional<Candidate> candidate_on(Vertex entry, const road::Chance& chance,
                                        std::span<const StretchId> way) const;
  void add_candidate(Candidate candidate, std::int64_t home_ms,
                     std::span<const std::int64_t> end_ms);
  // lane_candidates.cpp
  [[nodiscard]] std::vector<Candidate> lane_candidates(Vertex entry,
                                                       const road::Chance& chance) const;
  [[nodiscard]] LaneMinutes lane_minutes(std::span<const Vertex> beside) const;
};

}  // namespace loopwright::find
