// What may be driven in each section of a lesson, and how far its points are from what comes after it.
//
//   LessonNets nets(lesson, free);   nets.of(plan).links_from(…);   nets.transfers(…)
//
// Rules: `free` is the same lesson without anything being too hard; both outlive the nets.
#pragma once

#include <deque>
#include <memory>
#include <vector>

#include "find/hunt.hpp"
#include "find/part_links.hpp"
#include "find/sections.hpp"

namespace loopwright::find {

/// One section with its roads and its wish.
struct SectionNetOf {
  SectionPlan plan;
  wish::Wish wish;  ///< the lesson's, with what the section wants and how hard it may be
  SectionNet net;
};

class LessonNets {
 public:
  /// free: with nothing too hard, for what the instructor drives. Rules: it outlives this.
  LessonNets(const Ground& free, const wish::Wish& lesson, std::vector<SectionPlan> plans);

  [[nodiscard]] std::size_t size() const { return sections_.size(); }
  [[nodiscard]] const SectionNetOf& section(std::size_t k) const { return sections_[k]; }

  /// Where a section may end and the next begin, the likeliest first: on its own roads, within its time from
  /// the seeds; near what the next one wants, and home can still be reached; best where one may pull up.
  struct From {
    std::vector<reach::Seed> seeds;
    StateId opened = {};         ///< a seed that may lie off the section's roads; none
    std::int64_t within_ms = 0;  ///< the section's time
    std::int64_t left_ms = 0;    ///< of the practice, behind the section
  };
  [[nodiscard]] std::vector<StateId> transfers(std::size_t k, const From& from,
                                               std::span<const reach::Seed> goals) const;

 private:
  void measure_onward(std::size_t k);
  const Ground& free_;
  reach::Backwards backwards_;
  std::deque<SectionNetOf> sections_;
  std::vector<std::unique_ptr<reach::Sweep>>
      onward_;  ///< by section: to what it wants, or its roads; or null
};

}  // namespace loopwright::find
