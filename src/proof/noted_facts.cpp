// Method: the area as the notes make it is compared with the bare map, along the drive.
// 1. No row is shut by a note at any minute of the lesson, and the map lets a learner drive it.
// 2. A limit, a bus lane's hours, a run, humps that slow and that the map doesn't have are borne out by
//    a note of that kind within reach; one that the map has and that is gone, by a note that says so.
// 3. So are the passes: what is noted has its note, the others are the map's own, none is kept quiet.
// Why: the notes were laid on the map by room mark; nothing it did to the drive goes unquestioned.
#include <algorithm>
#include <cmath>

#include "loopwright/wish/lesson.hpp"
#include "proof/checks.hpp"
#include "proof/notes.hpp"

namespace loopwright::proof {
namespace {

using road::Confidence;
using road::Kind;
using road::Note;
using road::NoteKind;

class NotedFacts {
 public:
  NotedFacts(const Drive& drive, const NotedArea& area, Claims& claims)
      : drive_(drive), area_(area), claims_(claims) {}
  bool row_holds(std::size_t i);
  bool passes_hold(const Drive& on_map);

 private:
  bool is_open(std::size_t i);
  bool limit_holds(std::size_t i);
  bool lanes_hold(std::size_t i);
  bool runs_hold(std::size_t i);
  bool humps_hold(std::size_t i);
  bool pass_holds(const FoundPass& found, const Drive& on_map);
  [[nodiscard]] bool taken(const road::RunFact& fact) const;

  /// Some note within reach of a stretch is as wanted.
  template <class Wanted>
  [[nodiscard]] bool noted(StretchId stretch, Wanted wanted) const {
    return std::any_of(area_.notes.begin(), area_.notes.end(), [&](const Note& note) {
      return wanted(note) && in_reach(area_.map, note, stretch);
    });
  }
  template <class Wanted>
  [[nodiscard]] bool noted_on(const wish::Pass& pass, Wanted wanted) const {
    for (std::size_t i = pass.first; i <= pass.last; ++i)
      if (noted(drive_.stretches[i], wanted)) return true;
    return false;
  }

  const Drive& drive_;
  const NotedArea& area_;
  Claims& claims_;
};

bool tells_limit(const Note& note, Kind kind) {
  return note.says == NoteKind::limit &&
         (kind == Kind::twenty_zone || kind == Kind::twenty_limit || kind == Kind::limit_change);
}

bool adds(const Note& note, Kind kind) {
  const auto practice = road::practice_of(note);
  return tells_limit(note, kind) ||
         (note.says != NoteKind::not_so && practice && road::meets(kind, *practice));
}

/// A road whose limit was lowered is no country road any more.
bool takes(const Note& note, Kind kind) {
  return tells_limit(note, kind) || (note.says == NoteKind::limit && kind == Kind::country_road) ||
         (note.says == NoteKind::not_so && note.kind && road::meets(kind, *note.kind));
}

bool NotedFacts::is_open(std::size_t i) {
  const StretchId stretch = drive_.stretches[i];
  road::LessonTime lesson = wish::lesson_time(drive_.wish, drive_.setting);
  // One drive in ten is slower than the lesson's time allows for.
  const Instant left = wish::clock_after(drive_.loop, std::ceil(left_s(drive_, i)), drive_.setting);
  if (lesson.to.unix_s < left.unix_s) lesson.to = left;
  for (std::size_t n = 0; n < area_.notes.size(); ++n) {
    const Note& note = area_.notes[n];
    const bool shut = road::may_shut(note, lesson) && speaks_of(area_.map, note, stretch);
    if (!claims_.hold(!shut, [&] {
          return at_stretch(drive_, i) + ": note " + std::to_string(n + 1) + " (" +
                 std::string(road::name(note.says)) + ") shuts it, or may, during the lesson";
        }))
      return false;
  }
  return claims_.hold(area_.map.drivable(stretch), [&] {
    return at_stretch(drive_, i) + ": the map doesn't let a learner drive it, and no note can";
  });
}

bool NotedFacts::limit_holds(std::size_t i) {
  const StretchId stretch = drive_.stretches[i];
  const road::LimitFact& now = drive_.roads.stretch(stretch).limit;
  const road::LimitFact& before = area_.map.stretch(stretch).limit;
  const bool same = now.rule == before.rule && now.value == before.value &&
                    now.unit == before.unit && now.confidence == before.confidence;
  const auto says_so = [&](const Note& note) {
    return note.says == NoteKind::limit && note.limit == now.value && note.unit == now.unit;
  };
  if (!claims_.hold(
          same || (now.confidence == road::LimitConfidence::noted && noted(stretch, says_so)),
          [&] { return at_stretch(drive_, i) + ": its limit has no tag and no note"; }))
    return false;
  const bool speaks = std::any_of(area_.notes.begin(), area_.notes.end(), [&](const Note& note) {
    return note.says == NoteKind::limit && speaks_of(area_.map, note, stretch);
  });
  const auto& said = drive_.loop.stretches[i].limit;
  const bool used = !speaks || noted(stretch, [&](const Note& note) {
    return note.says == NoteKind::limit && note.limit == said.value && note.unit == said.unit;
  });
  return claims_.hold(used, [&] { return at_stretch(drive_, i) + ": its noted limit isn't used"; });
}

bool NotedFacts::lanes_hold(std::size_t i) {
  const StretchId stretch = drive_.stretches[i];
  const auto now = drive_.roads.bus_lanes_of(stretch.piece());
  const auto before = area_.map.bus_lanes_of(stretch.piece());
  bool holds = now.size() == before.size();
  for (std::size_t lane = 0; holds && lane < now.size(); ++lane) {
    const std::string_view hours = drive_.roads.text(now[lane].hours);
    holds = hours == area_.map.text(before[lane].hours) || noted(stretch, [&](const Note& note) {
              return note.says == NoteKind::plate && note.hours == hours;
            });
  }
  return claims_.hold(holds, [&] {
    return at_stretch(drive_, i) + ": its bus lane has hours of no tag and no note";
  });
}

/// A note takes the kind from the run here or elsewhere, which may leave too little of it.
bool NotedFacts::taken(const road::RunFact& fact) const {
  const auto run = area_.map.pieces_of(fact.place);
  return std::any_of(run.begin(), run.end(), [&](PieceId piece) {
    return noted({piece, false}, [&](const Note& n) { return takes(n, fact.kind); });
  });
}

bool NotedFacts::runs_hold(std::size_t i) {
  const StretchId stretch = drive_.stretches[i];
  const auto now = drive_.roads.run_facts_of(stretch), before = area_.map.run_facts_of(stretch);
  const auto has = [](const auto& facts, auto same) {
    return std::any_of(facts.begin(), facts.end(), same);
  };
  for (const road::RunFact& fact : now) {
    const bool mapped = has(before, [&](const road::RunFact& f) {
      return f.kind == fact.kind && f.confidence == fact.confidence &&
             area_.map.text(f.tag) == drive_.roads.text(fact.tag);
    });
    const bool by_note = fact.confidence == Confidence::noted &&
                         noted(stretch, [&](const Note& n) { return adds(n, fact.kind); });
    if (!claims_.hold(mapped || by_note, [&] {
          return at_stretch(drive_, i) + ": no tag and no note makes it " +
                 std::string(road::name(fact.kind));
        }))
      return false;
  }
  for (const road::RunFact& fact : before) {
    // A note takes the place of a guess of the same family.
    const bool stays = has(now, [&](const road::RunFact& f) {
      return road::meets(f.kind, fact.kind) || road::meets(fact.kind, f.kind);
    });
    if (!claims_.hold(stays || taken(fact), [&] {
          return at_stretch(drive_, i) + ": the map has it as " +
                 std::string(road::name(fact.kind)) + ", and no note says otherwise";
        }))
      return false;
  }
  return true;
}

/// The times slow down where a road has humps; nothing else of a piece hangs on notes.
bool NotedFacts::humps_hold(std::size_t i) {
  const StretchId stretch = drive_.stretches[i];
  const std::uint32_t now = drive_.roads.piece(stretch).flags,
                      before = area_.map.piece(stretch).flags;
  const bool slowed = now == (before | road::piece_flag::humps) &&
                      noted(stretch, [&](const Note& n) { return adds(n, Kind::calming); });
  return claims_.hold(now == before || slowed, [&] {
    return at_stretch(drive_, i) + ": no tag and no note gives it the humps it is slowed by";
  });
}

bool NotedFacts::row_holds(std::size_t i) {
  return is_open(i) && limit_holds(i) && lanes_hold(i) && runs_hold(i) && humps_hold(i);
}

bool same_way(const wish::Pass& a, const wish::Pass& b) {
  return a.first == b.first && a.last == b.last && a.kind == b.kind;
}

std::string pass_text(const wish::Pass& pass) {
  return std::string(road::name(pass.kind)) + " on stretches " + std::to_string(pass.first) +
         " to " + std::to_string(pass.last);
}

bool NotedFacts::pass_holds(const FoundPass& found, const Drive& on_map) {
  const wish::Pass& pass = found.pass;
  const bool is_noted = pass.confidence == Confidence::noted;
  if (!is_noted && road::is_stretch_like(pass.kind)) return true;  // its rows were looked at
  const bool mapped = std::any_of(on_map.passes.begin(), on_map.passes.end(),
                                  [&](const FoundPass& f) { return f.pass == pass; });
  // A change from an inferred limit to a noted one is inferred, and still the note's.
  const bool by_note = pass.confidence != Confidence::certain &&
                       noted_on(pass, [&](const Note& n) { return adds(n, pass.kind); });
  return claims_.hold(mapped || by_note, [&] {
    return at_loop(drive_) + ": no tag and no note bears out the pass of " + pass_text(pass);
  });
}

bool NotedFacts::passes_hold(const Drive& on_map) {
  for (const FoundPass& found : drive_.passes)
    if (!pass_holds(found, on_map)) return false;
  for (const FoundPass& mapped : on_map.passes) {
    if (road::is_stretch_like(mapped.pass.kind)) continue;
    const bool stays =
        std::any_of(drive_.passes.begin(), drive_.passes.end(),
                    [&](const FoundPass& f) { return same_way(f.pass, mapped.pass); });
    const bool gone =
        stays || noted_on(mapped.pass, [&](const Note& n) { return takes(n, mapped.pass.kind); });
    if (!claims_.hold(gone, [&] {
          return at_loop(drive_) + ": the map has a pass of " + pass_text(mapped.pass) +
                 ", and no note says otherwise";
        }))
      return false;
  }
  return true;
}

}  // namespace

bool notes_hold(const Drive& drive, const NotedArea& area, Claims& claims) {
  if (area.notes.empty()) return true;
  NotedFacts facts(drive, area, claims);
  for (std::size_t i = 0; i < drive.stretches.size(); ++i)
    if (!facts.row_holds(i)) return false;
  Drive on_map{area.map, drive.wish, drive.loop, drive.setting, drive.stretches, drive.parts, {}};
  find_passes(on_map);
  return facts.passes_hold(on_map);
}

}  // namespace loopwright::proof
