// What could be practised next: every kind and movement that serves a skill, with how it stands in the record.
#pragma once

#include <string>
#include <vector>

#include "loopwright/book/proposal.hpp"

namespace loopwright::book {

struct Candidate {
  Practice what;
  const Skill* skill = nullptr;
  int level = 0;                     ///< 0: not begun
  int skill_level = 0;               ///< of its skill; 0: not begun
  bool skill_stale = false;          ///< nothing of its skill was met for longer than it keeps
  int passes = 0;                    ///< so far
  int last_passes = 0;               ///< on the last day
  int days_since = 0;                ///< since then; 0 when never
  int stepped_in = 0;                ///< on the last day
  bool just_now = false;             ///< the last lesson had enough of it
  std::vector<std::string> reached;  ///< prerequisites, in words: "emerge at 4"
  double weight = 0;
};

/// Those whose time has come, by weight; of equal weight in the order of the scheme.
std::vector<Candidate> candidates(const Record& record, std::optional<int> level);

/// A weight or number of src/rules/proposal.txt.
double proposal_number(std::string_view name);

}  // namespace loopwright::book
