// What the next lesson could be, and why: a goal and a wish from the record and the scheme.
//
//   const Proposal next = proposed({pupil, scheme, lessons, today});   next.goal; next.topics[0].why;
//
// Rules: pure, the same record gives the same proposal; weights from src/rules/proposal.txt. Every topic has its reason
// in words. A topic's prerequisites (kinds.txt) are reached, were never asked for, or can't be had from the door, and then
// what comes before these is. It is a proposal: the instructor changes any of it.
#pragma once

#include <optional>
#include <set>
#include <span>
#include <string>
#include <vector>

#include "loopwright/book/lesson.hpp"
#include "loopwright/book/progress.hpp"
#include "loopwright/book/pupil.hpp"
#include "loopwright/book/scheme.hpp"

namespace loopwright::book {

struct Record {
  const Pupil& pupil;
  const Scheme& scheme;
  std::span<const Lesson> lessons;
  Date day;  ///< of the lesson that is proposed
  /// What a lesson from the pupil's door can have, where a map was asked: each kind by each movement it has there and, if
  /// there is any, without one. Null: nobody asked, and all is taken to be there.
  const std::set<Practice>* there = nullptr;
  /// The same of roads however hard, for what is asked for by name; null when `there` is.
  const std::set<Practice>* there_by_name = nullptr;
};

/// What is practised, how often, and why.
struct ProposedTopic {
  Practice what;
  int passes = 1;
  bool fresh = false;  ///< not begun yet: it wants a brief
  int level = 0;       ///< now; 0: none
  std::string why;
};

struct Proposal {
  std::string goal;  ///< "roundabout right: from helped (2) to prompted (3)"
  std::vector<ProposedTopic>
      topics;  ///< one or two, the first the lesson's own; empty: nothing a map can serve is left
  std::optional<int> level;     ///< of the learner; none before anything is seen
  int independent_minutes = 0;  ///< 0 below independent_level()
  bool mock_due = false;        ///< the test is near, and the last mock test isn't
  std::vector<std::string>
      hints;  ///< what else to think of: light, a mock test, skills no map can serve
};

Proposal proposed(const Record& record);

/// The lessons after it as well, each as if the one before had gone well. how_many: 1 to 3; further ahead it would
/// be guessing.
std::vector<Proposal> proposed_ahead(const Record& record, int how_many);

/// How the learner stands at a practice, 1 to 5; 0: not begun.
int level_of(const Record& record, const Practice& what);

/// The level that a wish is given for a learner of that level (level_now).
int wish_level(const std::optional<int>& level);

/// The words of its wish, "--want roundabout:right=4", each a name and a value.
struct WishWord {
  std::string name, value;
};
std::vector<WishWord> wish_words(const Proposal& proposal);

/// From this level of the learner on a part of the drive is found by the learner (src/rules/proposal.txt).
int independent_level();

}  // namespace loopwright::book
