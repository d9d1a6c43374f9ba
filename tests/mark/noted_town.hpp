// A drawn town with notes laid on it, and the words to ask about both.
#pragma once

#include <stdexcept>
#include <string>
#include <vector>

#include "loopwright/mark/noted.hpp"
#include "support/built_town.hpp"

namespace loopwright::test {

/// 28 November 2026, three till four in Britain.
inline const road::LessonTime saturday_afternoon{{1795878000, 0}, {1795881600, 0}, {}};

/// A note seen on 3 October 2026.
inline road::Note note_at(road::NoteKind says, Point at) {
  return {.says = says, .line = {at}, .seen = {2026, 10, 3}};
}

/// The middle of the road between two letters.
inline Point middle(const BuiltTown& town, std::string_view ends) {
  const road::Roads roads = town.roads();
  const StretchId s = town.stretch(ends);
  return point_along(roads.shape_of(s.piece()), roads.piece(s).length_m / 2);
}

inline Point corner(const BuiltTown& town, char letter) {
  return town.roads().nodes[town.node(letter).index()].at;
}

struct NotedTown {
  NotedTown(const BuiltTown& base_town, std::vector<road::Note> its_notes,
            const road::LessonTime& lesson = saturday_afternoon)
      : town(base_town),
        notes(std::move(its_notes)),
        base(town.roads()),
        noted(mark::with_notes(base, notes, lesson)) {}

  [[nodiscard]] const road::Roads& roads() const { return noted.roads(); }
  [[nodiscard]] bool is(std::string_view ends, road::Kind kind) const {
    return (roads().stretch(town.stretch(ends)).runs & road::bit(kind)) != 0;
  }
  /// The fact that makes a stretch one of a kind. Throws when none does.
  [[nodiscard]] road::RunFact fact(std::string_view ends, road::Kind kind) const {
    for (const road::RunFact& fact : roads().run_facts_of(town.stretch(ends))) {
      if (fact.kind == kind) return fact;
    }
    throw std::invalid_argument("no such fact");
  }
  [[nodiscard]] std::vector<road::Chance> chances(road::Kind kind) const {
    std::vector<road::Chance> found;
    for (const road::Chance& chance : roads().chances) {
      if (chance.kind == kind) found.push_back(chance);
    }
    return found;
  }
  /// What was found of the notes, a line each: "1: no road …".
  [[nodiscard]] std::string said() const {
    std::string text;
    for (const mark::NoteFinding& f : noted.findings()) {
      text += (text.empty() ? "" : "; ") + std::to_string(f.note + 1) + ": " + f.text;
    }
    return text;
  }

  BuiltTown town;
  std::vector<road::Note> notes;
  road::Roads base;
  mark::Noted noted;
};

}  // namespace loopwright::test
