// Proposals of the next lesson that are made in the night, for all pupils of a school, by several programs on any number of
// machines.
//
//   work_off("postgresql:///?service=office", {day, area_id}, [&](const std::string& code) { return proposal_for(code); });
//   const auto kept = kept_proposal(book, "WREN");   kept && kept->mark == mark_of(pupil, lessons)   // still fresh
//
// Rules: a pupil is proposed for once for a day and an area, whoever does it: a worker holds the pupil's row of `proposal`
// locked while it thinks, and others pass over it. A worker that dies lets go of it, and another takes it: nothing is left that
// somebody must clear up. Whoever runs it proposes for the pupils they see: the office for all. Throws InputError.
// Source: PostgreSQL 15 documentation, SELECT, "FOR UPDATE … SKIP LOCKED", which is meant for queues of this sort.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>

#include "loopwright/base/instant.hpp"
#include "loopwright/book/book.hpp"

namespace loopwright::book {

/// What is worked off.
struct Night {
  Date day;          ///< of the lessons
  std::string area;  ///< the map's id (road::AreaInfo)
};

/// What was proposed for one pupil.
struct NightProposal {
  std::string mark;  ///< of the record it was made from (record_mark.hpp)
  std::string says;  ///< as it is printed
  std::string wish;  ///< words of its wish, as a wish file
};

struct KeptProposal {
  Night night;
  std::string made;  ///< by the server's clock, "2026-11-30 02:10 UTC"
  NightProposal is;
};

/// Works off pupils until none is left; waits for those that others have at hand, and takes them when these die. Returns how
/// many it did. propose: may take minutes; what it throws ends the work, and leaves its pupil to others.
int work_off(const std::string& address, const Night& night,
             const std::function<NightProposal(const std::string& code)>& propose);

/// The last one of a pupil; none: nothing was proposed in a night.
std::optional<KeptProposal> kept_proposal(const Book& book, std::string_view code);

}  // namespace loopwright::book
