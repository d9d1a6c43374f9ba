// 1. Roads that are or may be shut in the lesson first: what comes after must not lead over them.
// 2. Then note by note: limits, plates, places to stop, places of practice. What they change of runs
//    is gathered, and each family of runs found anew once.
// 3. A noted limit settles whether the road is a 20 limit, ends a 20 zone that the map has there, and
//    moves the places where the limit changes.
// 4. Noted humps slow their road (noted_humps.cpp).
// 5. Of each note is told when it changes nothing, when the map says the same for sure, and when the
//    map is sure of something else; then the note still has its way.
#include "loopwright/mark/noted.hpp"

#include <algorithm>
#include <cmath>

#include "note_spots.hpp"
#include "noted_humps.hpp"
#include "noted_limits.hpp"
#include "noted_places.hpp"
#include "noted_runs.hpp"

namespace loopwright::mark {
namespace {

using road::Confidence;
using road::Kind;
using road::Note;
using road::NoteKind;

constexpr double least_room_m = 15;  // ours: a car, and room to drive in and out forwards

class NoteLayer {
 public:
  NoteLayer(const road::Roads& base, const road::LessonTime& lesson)
      : over_(base), law_(road::law_of(base.info())), lesson_(lesson) {}
  Noted lay(std::span<const Note> notes);

 private:
  void lay_shut(std::span<const Note> notes);
  void lay_one(const Note& note);
  [[nodiscard]] bool is_below_national(const road::LimitOnDay& limit) const;
  void lay_limit(const Note& note, const std::vector<NotedPart>& parts);
  void lay_plate(const Note& note);
  void lay_pull_up(const Note& note, const std::vector<NotedPart>& parts);
  void lay_practice(const Note& note);
  void lay_run(const Note& note, Kind kind, const std::vector<NotedPart>& parts);
  void lay_not_so(const Note& note);
  void tell_short_runs(std::span<const Note> notes);
  void find(NoteVerdict verdict, std::string text) {
    findings_.push_back({row_, verdict, std::move(text)});
  }
  /// The parts of a note; tells when there are none.
  [[nodiscard]] std::vector<NotedPart> parts_or_tell(const Note& note);

  Overlay over_;
  road::LimitLaw law_;
  road::LessonTime lesson_;
  std::size_t row_ = 0;  // of the note at hand
  ChangesByFamily runs_;
  std::vector<StretchId> limits_;  // stretches whose limit is noted
  NotedHumps humps_;
  std::vector<std::pair<std::size_t, RunMember>> run_notes_;  // row of the note, what it adds
  std::vector<NoteFinding> findings_;
};

bool shuts(const Note& note) {
  return note.says == NoteKind::closed || note.says == NoteKind::never;
}

/// The nearest road of any sort is one that the map doesn't let a learner drive.
bool shut_by_map(const road::Roads& base, const Note& note) {
  const Point at = note.line.front();
  PieceId nearest;
  double nearest_m = road::note_reach_m;
  for (const PieceId piece : road::pieces_near(base, at, road::note_reach_m)) {
    const double off_m = nearest_on_line(base.shape_of(piece), at).off_m;
    if (off_m < nearest_m) nearest = piece, nearest_m = off_m;
  }
  return nearest.known() && !base.drivable({nearest, false}) && !base.drivable({nearest, true});
}

std::vector<NotedPart> NoteLayer::parts_or_tell(const Note& note) {
  std::vector<NotedPart> parts = parts_of(over_.base(), note);
  if (!parts.empty()) return parts;
  if (shuts(note) && shut_by_map(over_.base(), note)) {
    find(NoteVerdict::agrees, "the map has that road shut to a learner too");
  } else {
    find(NoteVerdict::left_out,
         "no road that it fits within " + std::to_string(std::lround(road::note_reach_m)) + " m");
  }
  return parts;
}

/// Step 1.
void NoteLayer::lay_shut(std::span<const Note> notes) {
  std::vector<StretchId> shut;
  for (row_ = 0; row_ < notes.size(); ++row_) {
    const Note& note = notes[row_];
    if (!shuts(note)) continue;
    const std::vector<NotedPart> parts = parts_or_tell(note);
    if (!road::may_shut(note, lesson_)) continue;
    for (const NotedPart& part : parts) shut.push_back(part.stretch);
  }
  std::ranges::sort(shut);
  shut.erase(std::unique(shut.begin(), shut.end()), shut.end());
  over_.drop_shut(shut);
}

/// Lower than where no town lowers it.
bool NoteLayer::is_below_national(const road::LimitOnDay& limit) const {
  const bool british = over_.base().info().region.code.starts_with("GB-");
  road::LimitFact national;
  national.rule = british ? road::LimitRule::national_single : road::LimitRule::rural;
  return limit.metres_per_second() <
         law_.on(national, lesson_.from.civil().date).metres_per_second();
}

/// Step 3.
void NoteLayer::lay_limit(const Note& note, const std::vector<NotedPart>& parts) {
  const road::LimitOnDay noted{note.limit, note.unit, road::LimitConfidence::noted};
  const TextId tag = over_.text(road::tag_of(note));
  const bool twenty = note.limit == 20 && note.unit == SpeedUnit::mph;
  bool same = true, sure = true;
  for (const NotedPart& part : parts) {
    const auto on_map =
        law_.on(over_.base().stretch(part.stretch).limit, lesson_.from.civil().date);
    sure = sure && on_map.confidence == road::LimitConfidence::certain;
    same = same && on_map == noted;
    if (on_map == noted && on_map.confidence == road::LimitConfidence::certain) continue;
    over_.stretch(part.stretch).limit = {.rule = road::LimitRule::signed_value,
                                         .confidence = road::LimitConfidence::noted,
                                         .unit = note.unit,
                                         .value = static_cast<std::uint16_t>(note.limit),
                                         .source = tag};
    limits_.push_back(part.stretch);
    runs_[Kind::twenty_zone].taken.push_back(part.stretch);
    RunChanges& limits = runs_[Kind::twenty_limit];
    if (!twenty) limits.taken.push_back(part.stretch);
    if (twenty) limits.added.push_back({part.stretch, Kind::twenty_limit, Confidence::noted, tag});
    // It is one by the limit of both directions (country_roads.cpp).
    if (is_below_national(noted))
      for (const StretchId s : {part.stretch, part.stretch.back()})
        runs_[Kind::country_road].taken.push_back(s);
  }
  if (same && sure) find(NoteVerdict::agrees, "the map has the same limit");
  if (!same && sure) find(NoteVerdict::contradicts, "the map has another limit, by a sign");
}

void NoteLayer::lay_plate(const Note& note) {
  const std::vector<NotedPart> parts = parts_of(over_.base(), note);
  const auto is_meant = [&](const road::BusLane& lane) {
    return std::ranges::any_of(parts, [&](const NotedPart& part) {
      const auto other =
          part.stretch.against() ? road::LaneDirection::along : road::LaneDirection::against;
      return part.stretch.piece() == lane.piece && lane.direction != other;
    });
  };
  bool any = false, same = true;
  for (const road::BusLane& lane : over_.base().bus_lanes) {
    if (!is_meant(lane)) continue;
    any = true;
    same = same && lane.doubtful == 0 && over_.base().text(lane.hours) == note.hours;
  }
  if (!any) return find(NoteVerdict::left_out, "no mapped bus lane on the nearest road");
  if (same) return find(NoteVerdict::agrees, "the map has the same hours");
  const TextId hours = over_.text(note.hours), tag = over_.text(road::tag_of(note));
  for (road::BusLane& lane : over_.bus_lanes()) {
    if (!is_meant(lane)) continue;
    lane.hours = hours, lane.source = tag;
    lane.doubtful = 0, lane.doubt = TextId{};  // who has read the plate knows
  }
  for (const NotedPart& part : parts) runs_[Kind::bus_lane].other_lanes.push_back(part.stretch);
}

void NoteLayer::lay_pull_up(const Note& note, const std::vector<NotedPart>& parts) {
  const TextId why = over_.text(road::tag_of(note));
  for (const NotedPart& part : parts) {
    const double length_m = over_.base().piece(part.stretch).length_m;
    const double least_m = note.length_m.value_or(std::max(least_room_m, part.to_m - part.from_m));
    const double middle_m = (part.from_m + part.to_m) / 2;
    road::PullUp row;
    row.stretch = part.stretch;
    row.from_m = static_cast<float>(std::max(0.0, middle_m - least_m / 2));
    row.to_m = static_cast<float>(std::min(length_m, middle_m + least_m / 2));
    row.why = why;
    row.confidence = Confidence::noted;
    over_.add_pull_up(row);
  }
}

/// A tag gives the road a width in which two cars pass; least: src/mark/widths.cpp.
bool is_wide_by_tag(const road::Roads& base, const std::vector<NotedPart>& parts) {
  constexpr double two_cars_m = 4.8;
  return std::ranges::any_of(parts, [&](const NotedPart& part) {
    const road::Piece& piece = base.piece(part.stretch);
    return base.text(piece.width_source).starts_with("width") && piece.usable_width_m >= two_cars_m;
  });
}

void NoteLayer::lay_run(const Note& note, Kind kind, const std::vector<NotedPart>& parts) {
  const TextId tag = over_.text(road::tag_of(note));
  bool sure = true;
  for (const NotedPart& part : parts) {
    const auto facts = over_.base().run_facts_of(part.stretch);
    sure = sure && std::ranges::any_of(facts, [&](const road::RunFact& fact) {
             return road::meets(fact.kind, kind) && fact.confidence == Confidence::certain;
           });
    const RunMember member{part.stretch, kind, Confidence::noted, tag};
    runs_[family_of(kind)].added.push_back(member);
    run_notes_.emplace_back(row_, member);
  }
  if (sure) find(NoteVerdict::agrees, "the map is sure of it too");
  if (family_of(kind) == Kind::narrow_road && is_wide_by_tag(over_.base(), parts)) {
    find(NoteVerdict::contradicts, "the map has a width in which two cars pass");
  }
}

void NoteLayer::lay_practice(const Note& note) {
  const Kind kind = *road::practice_of(note);
  if (road::is_stretch_like(kind)) {
    const std::vector<NotedPart> parts = parts_or_tell(note);
    if (!parts.empty()) lay_run(note, kind, parts);
    return;
  }
  if (map_is_sure(over_.base(), note, kind)) {
    return find(NoteVerdict::agrees, "the map is sure of it too");
  }
  if (kind == Kind::calming) humps_.count(over_.roads(), note);
  std::string why_not = add_noted_place(over_, note);
  if (!why_not.empty()) find(NoteVerdict::left_out, std::move(why_not));
}

void NoteLayer::lay_not_so(const Note& note) {
  const Kind kind = *note.kind;
  bool any = false;
  if (road::is_stretch_like(kind)) {
    for (const NotedPart& part : parts_of(over_.base(), note)) {
      const std::uint64_t mask = road::with_special_forms(kind);
      if ((over_.base().stretch(part.stretch).runs & mask) == 0) continue;
      any = true;
      runs_[family_of(kind)].taken.push_back(part.stretch);
    }
  } else {
    any = take_noted_place(over_, note);
  }
  if (!any) find(NoteVerdict::agrees, "the map has no " + std::string(road::name(kind)) + " here");
}

/// Step 2.
void NoteLayer::lay_one(const Note& note) {
  switch (note.says) {
    case NoteKind::never:
    case NoteKind::closed:
      return;  // laid already
    case NoteKind::plate:
      return lay_plate(note);
    case NoteKind::not_so:
      return lay_not_so(note);
    case NoteKind::limit:
    case NoteKind::pull_up: {
      const std::vector<NotedPart> parts = parts_or_tell(note);
      if (parts.empty()) return;
      return note.says == NoteKind::limit ? lay_limit(note, parts) : lay_pull_up(note, parts);
    }
    case NoteKind::narrow:
    case NoteKind::hump:
    case NoteKind::practice:
      return lay_practice(note);
  }
}

/// A run that is too short for a pass keeps nothing, whoever says it.
void NoteLayer::tell_short_runs(std::span<const Note> notes) {
  for (row_ = 0; row_ < notes.size(); ++row_) {
    bool adds = false, kept = false;
    Kind kind{};
    for (const auto& [row, member] : run_notes_) {
      if (row != row_) continue;
      adds = true, kind = member.kind;
      const std::uint64_t mask = road::with_special_forms(family_of(member.kind));
      kept = kept || (over_.roads().stretch(member.stretch).runs & mask) != 0;
    }
    if (!adds || kept) continue;
    find(NoteVerdict::left_out, "too short: a pass of " + std::string(road::name(kind)) +
                                    " takes " +
                                    std::to_string(std::lround(road::least_run_m(kind))) + " m");
  }
}

Noted NoteLayer::lay(std::span<const Note> notes) {
  lay_shut(notes);
  for (row_ = 0; row_ < notes.size(); ++row_) lay_one(notes[row_]);
  std::ranges::sort(limits_);
  limits_.erase(std::unique(limits_.begin(), limits_.end()), limits_.end());
  change_limit_changes(over_, law_, limits_);
  change_runs(over_, runs_);
  humps_.lay(over_);
  tell_short_runs(notes);
  std::ranges::stable_sort(findings_, {}, &NoteFinding::note);
  return over_.finish(std::move(findings_));
}

}  // namespace

Noted with_notes(const road::Roads& base, std::span<const Note> notes,
                 const road::LessonTime& lesson) {
  return NoteLayer(base, lesson).lay(notes);
}

}  // namespace loopwright::mark
