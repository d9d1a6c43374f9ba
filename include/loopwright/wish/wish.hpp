// What the instructor asks for, and what the search answers: plain data, no behaviour.
//
// Rules: times in seconds from the start of the drive, lengths in metres, instants with offset.
// The meaning of every field is that of the loop file (LOOP FILE in DEVELOPERS.md).
// No third-party header may be included here.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "loopwright/base/ids.hpp"
#include "loopwright/base/instant.hpp"
#include "loopwright/base/point.hpp"
#include "loopwright/hours/terms.hpp"
#include "loopwright/road/kind.hpp"
#include "loopwright/road/limit.hpp"

namespace loopwright::wish {

/// What the map says of a bus lane at the time one is there (lanes.hpp).
enum class Verdict : std::uint8_t { usable, in_force, check_the_plate };

/// "roundabout:right=3", "bus-lane:usable"; count empty = as many as fit ("max").
struct Want {
  road::Kind kind = road::Kind::roundabout;
  road::Movement movement = road::Movement::none;  ///< none: any but `round`
  std::optional<int> count = 1;
  std::optional<Verdict> verdict = {};  ///< of bus lanes: only with this one; one of verdicts_of
  /// "turn-off:left+narrow-road": only when it leads into a pass of this kind too.
  std::optional<road::Kind> into = {};
  friend bool operator==(const Want&, const Want&) = default;
};

/// "signals", "signals:right"
struct Avoid {
  road::Kind kind = road::Kind::roundabout;
  road::Movement movement = road::Movement::none;  ///< none: by any, `round` too
  friend bool operator==(const Avoid&, const Avoid&) = default;
};

/// A place or an area to keep off, maybe at some hours only.
struct KeepOff {
  std::string name;  ///< as it was asked for, for people
  /// One point: the junction or the road there (DEVELOPERS.md, Keeping off); three or more: what lies
  /// inside this outline, or crosses it.
  std::vector<Point> outline;
  std::string hours = {};  ///< an opening-hours text; empty: always
  friend bool operator==(const KeepOff&, const KeepOff&) = default;
};

/// A street or junction that every loop must take: the junction or the road at a point, as for one to keep off.
struct Take {
  std::string name;  ///< as it was asked for, for people
  Point at;
  friend bool operator==(const Take&, const Take&) = default;
};

/// Least time between the beginnings of two passes of a kind.
struct Spacing {
  road::Kind kind = road::Kind::roundabout;
  int seconds = 0;
  friend bool operator==(const Spacing&, const Spacing&) = default;
};

/// How often a street was driven before, over all pupils: a row of a ledger, for the lesson's date.
struct StreetUse {
  std::int64_t way = 0;  ///< OSM way
  int today = 0;
  int month = 0;  ///< in the 30 days that end with the lesson's, today's included
  friend bool operator==(const StreetUse&, const StreetUse&) = default;
};

/// Which roads a part of a lesson may use: `quiet` ones (road::piece_flag::quiet), or all but these.
enum class RoadsAllowed : std::uint8_t { any, quiet, busier };

/// A part of a lesson, in order: "20 minutes of quiet side roads, then …"
struct Part {
  int minutes = 0;
  RoadsAllowed roads = RoadsAllowed::any;
  std::optional<int> hardest;  ///< no pass in it is harder; 1 to 5
  std::vector<Want> wants;     ///< to be met within it
  friend bool operator==(const Part&, const Part&) = default;
};

/// Planned stops at places to pull up. Minutes each; 0: none.
struct PlannedStops {
  int brief_minutes = 0;              ///< before the first pass of each kind that is new
  int talk_minutes = 0;               ///< near the end
  std::vector<road::Kind> new_kinds;  ///< to this learner
  friend bool operator==(const PlannedStops&, const PlannedStops&) = default;
};

/// How much slower than usual a learner may be taken to be (room pace's learner factor), and what is usual.
inline constexpr double least_pace = 0.8, usual_pace = 1, most_pace = 1.6;

struct Wish {
  Point home;
  std::optional<Point> end;    ///< when it isn't home
  std::vector<Point> through;  ///< the instructor's own drive: these points in order
  Instant start;
  std::optional<int> minutes;  ///< away from the door; empty only with `through`
  int reserve_minutes = 0;
  int level = 3;             ///< of the learner, 1 to 5
  bool level_given = false;  ///< a level asked for limits hardness to level + 1
  /// Driving takes so many times as long as the usual learner's of that level; in hundredths.
  double pace = usual_pace;
  int alternatives = 1;
  std::vector<Want> wants;
  std::vector<Avoid> avoids;
  std::vector<KeepOff> keep_offs;
  std::vector<Take> takes;            ///< none in a lesson of parts, nor with `through`
  std::vector<road::Kind> welcome;    ///< worth a little without being asked for by number
  std::vector<Spacing> spacings;      ///< besides that of caps.txt; a kind once
  std::optional<int> place_passes;    ///< of one place a lesson; empty: caps.txt
  std::optional<int> street_passes;   ///< of one quiet street a lesson; empty: caps.txt
  std::vector<StreetUse> street_use;  ///< quiet streets with a use so far; by way, each once
  std::optional<int> hardest;         ///< no pass harder than this, whatever is asked for; 1 to 5
  bool easy_first = false;            ///< hard after easy, and a gentle last stretch home
  std::vector<Part> parts;            ///< in order; empty: the lesson is one
  std::optional<Point> drive_out;     ///< the instructor drives there first; the learner from there
  std::optional<Point> drive_back;    ///< the learner drives to there; the instructor on
  int independent_minutes = 0;        ///< of finding the way by signs or a few directions; 0: none
  PlannedStops stops;
  /// The school terms that hours are read by, at most `most_term_parts`; none in it: none were given.
  /// No value: a loop file of an older version, which doesn't say.
  std::optional<hours::SchoolTerms> terms;
};

/// More parts of terms than this are refused: a hundred years of them.
inline constexpr std::size_t most_term_parts = 1000;

struct Range {
  double low = 0, likely = 0, high = 0;  ///< 10th, 50th and 90th percentile
};

struct LoopStretch {
  std::int64_t way = 0;
  std::int64_t from = 0, to = 0;  ///< OSM nodes
  std::uint32_t from_index = 0, to_index = 0;
  bool against = false;
  double metres = 0;                               ///< the part driven
  std::optional<std::array<double, 2>> partial_m;  ///< from `from`, when not all of it is driven
  road::LimitOnDay limit;
  Range arrive_s;  ///< at the first point driven
  std::string street;
  StretchId stretch;  ///< in the area at hand; not in the file (resolve)
};

struct Pass {
  road::Kind kind = road::Kind::roundabout;
  road::Movement movement = road::Movement::none;
  int exit = 0;                     ///< 0: none
  std::size_t first = 0, last = 0;  ///< indices into stretches
  int hardness = 1;
  road::Confidence confidence = road::Confidence::certain;
  OsmObject source;
  std::string tag;
  double stop_s = 0;  ///< how long the drive stops there; manoeuvres only
  /// Of bus lanes: what holds on every lane along it, all through the time of passing; "check the
  /// plate" when they differ. No value: no bus lane, or a loop file of an older version.
  std::optional<Verdict> verdict = {};
  friend bool operator==(const Pass&, const Pass&) = default;
};

struct BusLanePass {
  std::size_t first = 0, last = 0;     ///< indices into stretches
  std::string side;                    ///< "left", "right", "unknown"
  std::optional<std::string> hours;    ///< as mapped
  std::string arrive_from, arrive_to;  ///< "15:41", "15:47": the interval of passing
  Verdict verdict = Verdict::check_the_plate;
  std::string why;
  OsmObject source;
  std::string tag;
  // Not in the file:
  std::string what = "bus lane";  ///< or "contraflow bus lane", "bus gate", "bus-only street"
  std::string who = {};           ///< may use it in force, as mapped: "bus;taxi"
  std::string doubt = {};         ///< in words: what of it the map contradicts or doesn't say
  std::string doubt_tags = {};    ///< the tags that contradict each other; else empty
  int lane = 0, lanes = 0;        ///< from the left as its buses drive, of so many; 0: not known
  /// The next moment after the interval begins at which it may change.
  std::optional<Instant> next_change = {};
};

/// A place to pull up that the lesson plans for, or may use.
struct PullUp {
  std::size_t stretch = 0;  ///< index into stretches
  double at_m = 0;          ///< of the stretch, from where it is entered
  bool left = true;         ///< the kerb, as driven
  std::string purpose;      ///< "brief", "talk"; empty: not planned, only there
  double seconds = 0;       ///< how long one stays; 0 when not planned
  std::string why;          ///< in words, why the map lets one stop there
  std::string check;        ///< what to look for on the day
  /// The latest moment to drive on from it and still do the rest in the minutes, likely; seconds since
  /// the start.
  double leave_by_s = 0;
};

/// The next place to pull up after a hard pass.
struct StopAfter {
  std::size_t pass = 0;  ///< index into passes
  /// Index into pull_ups, and the likely seconds from the end of the pass; none: there is none within
  /// `stop_after_most_s`.
  std::optional<std::size_t> pull_up = {};
  double seconds = 0;
};
inline constexpr double stop_after_most_s = 240;

/// The short easy way back from a stretch of the loop.
struct WayHome {
  std::size_t from_stretch = 0;  ///< index into stretches; left at its end
  double seconds = 0;            ///< likely, to the end
  int hardest = 0;               ///< of what it passes; 0: nothing listed
  std::vector<LoopStretch> stretches;
};

/// A stretch on which the learner finds the way.
struct IndependentStretch {
  std::size_t first = 0, last = 0;  ///< indices into stretches
  std::string follow;  ///< the place or road number signed all along; empty: directions
  std::vector<std::string> directions;  ///< at most three, in words; only without `follow`
  friend bool operator==(const IndependentStretch&, const IndependentStretch&) = default;
};

/// Candidates that the search didn't look at, and why.
struct LeftOut {
  std::string why;
  std::int64_t count = 0;
};

struct Met {
  Want want;
  int got = 0;
  /// Of a "max" want: the passes that have worth, indices into passes, ascending, spaced. No value: a
  /// want with a number, or a loop file of an older version.
  std::optional<std::vector<std::size_t>> practised = {};
};

/// A part of the lesson as it is driven.
struct LoopPart {
  std::size_t first = 0, last = 0;  ///< indices into stretches
  std::vector<Met> met;             ///< of the part's wants, in their order
};

/// What is known of how good a loop is. Values in milli-units of DEVELOPERS.md (value of a loop).
struct Certificate {
  std::string state = "searched";  ///< "best possible", "within", "searched"
  std::int64_t value = 0;
  std::optional<std::int64_t> bound;
  std::int64_t candidates = 0;   ///< chances that can be reached, passed and left for home
  std::int64_t left_out = 0;     ///< of these, not looked at
  std::vector<LeftOut> reasons;  ///< for them, and for those beyond the candidates
};

struct Loop {
  int id = 1;
  Instant start;
  /// When it is likely to be over, stops counted, on the clock of the area, to a second; no value: a
  /// loop file of an older version.
  std::optional<Instant> end;
  Range seconds;  ///< driving
  double stop_seconds = 0;
  double metres = 0;
  double metres_twice = 0;  ///< road driven a second time, either way
  std::vector<LoopStretch> stretches;
  std::vector<Pass> passes;
  std::vector<BusLanePass> bus_lanes;
  std::vector<Met> met;
  Certificate certificate;
  std::vector<PullUp> pull_ups;
  std::vector<StopAfter> stops_after;
  std::vector<WayHome> ways_home;
  std::vector<LoopPart> parts;  ///< as many as the wish's
  std::vector<IndependentStretch> independent;
  /// The stretches that count as practice, first and last; no value: all.
  std::optional<std::array<std::size_t, 2>> practice = {};
  std::string variant;  ///< "easier", "harder": than the first loop; else empty
};

/// A want that can't be met, and the nearest there is.
struct Missing {
  Want want;
  int got = 0;
  std::string why;
  std::optional<OsmObject> nearest;       ///< the nearest chance of it, however far
  std::optional<double> nearest_minutes;  ///< likely driving time there
  std::optional<double> needs_minutes;    ///< there, through and home: the least a loop needs
};

/// What one want costs a wish: how many minutes fewer it would need without it.
struct WantCost {
  Want want;
  double minutes = 0;
};

struct Shortfall {
  std::string why;  ///< one sentence
  std::vector<Missing> missing;
  std::vector<std::string>
      not_taken;  ///< names of what was to be taken and isn't, in the wish's order
  /// No loop that meets the wish is shorter than this.
  std::optional<double> at_least_minutes;
  std::vector<WantCost> costs;          ///< of the wants with a number, in their order
  std::optional<double> least_minutes;  ///< the shortest loop that was found to meet the rest
  /// Starts near the one asked at which what the clock shuts is not in the way; in order of time.
  std::vector<Instant> better_starts;
  std::vector<std::string> stops;  ///< planned stops without a place, a sentence each
};

/// Which area a loop file speaks of.
struct AreaName {
  std::string file, id, region, side, map_timestamp, credit;
};

/// Which notes it was made with.
struct NotesName {
  std::string file, sha256;
  friend bool operator==(const NotesName&, const NotesName&) = default;
};

/// A whole loop file.
struct Answer {
  AreaName area;
  std::optional<NotesName> notes;
  Wish wish;
  std::vector<Loop> loops;
  std::optional<Shortfall> shortfall;
  std::string fewer_because;  ///< why there are fewer loops than asked; empty otherwise
};

/// "roundabout:right=3", "emerge=max", "bus-lane:in-force=1"
std::string write_want(const Want& want);
/// Reads the same. Throws UsageError naming the nearest kind, or what may follow it.
Want read_want(std::string_view text);
/// Reads a kind to avoid, or one movement of it. Throws UsageError as read_want does.
Avoid read_avoid(std::string_view text);
/// "signals:right"
std::string write_avoid(const Avoid& avoid);
/// True of what is avoided: the kind or a special form of it, by that movement when one is named.
bool is_avoided(const Avoid& avoid, road::Kind kind, road::Movement movement);

std::string_view name(Verdict verdict);  // "usable", "in force", "check the plate"
std::optional<Verdict> parse_verdict(std::string_view text);
/// The verdicts a want may ask for: of bus lanes `usable` and `in_force`, of all else none.
std::span<const Verdict> verdicts_of(road::Kind kind);
/// One of these as a want spells it: "usable", "in-force"
std::string_view want_word(Verdict verdict);
/// True when some want of it asks for a verdict.
bool asks_for_verdicts(const Wish& wish);

/// True when this pass counts for the want: its kind, or a special form of it; its movement, or any
/// but `round` when none is named; its verdict, when the want names one.
bool counts_for(const Pass& pass, const Want& want);
/// The same of a chance, whose verdict nobody knows before it is driven: true when it may count.
bool counts_for(road::Kind kind, road::Movement movement, const Want& want);

}  // namespace loopwright::wish
