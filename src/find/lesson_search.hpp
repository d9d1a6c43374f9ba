// Lessons in parts, put together from drives of their own between points at which one section ends and the next
// begins.
//
//   LessonSearch search(lesson, free);   for (const LessonDrive& drive : search.run(ends, ramp)) …
//
// Rules: deterministic; stops on counted work. Both grounds outlive the search. Whether a drive keeps all the rules
// of the lesson is for lesson_loop to say: the sections know of one another only the quiet streets they drive.
#pragma once

#include <map>
#include <optional>
#include <vector>

#include "find/lesson_ends.hpp"
#include "find/lesson_loop.hpp"
#include "find/lesson_nets.hpp"
#include "find/more_worth.hpp"
#include "loopwright/find/find.hpp"

namespace loopwright::find {

struct FoundLesson {
  LessonDrive drive;
  std::int64_t candidates = 0;  ///< chances that were looked at, of all its sections
};

/// How much work a lesson may take. All counts.
struct LessonWork {
  std::size_t beam_width = 0;         ///< beginnings that are gone on from
  std::uint64_t tries_when_good = 0;  ///< of a section, once its walk has led to a good drive
  std::uint64_t tries = 0;            ///< when it hasn't
  std::uint64_t tries_when_none = 0;  ///< of quiet streets, when nothing else has led to a drive
  int improvements = 0;               ///< of each try (builder.hpp)
  MoreWorth::Widths more_worth = {};  ///< of what as many as fit are wanted of
};
LessonWork lesson_work_of(Effort effort);

class LessonSearch {
 public:
  /// lesson: with its limits; free: without anything being too hard.
  LessonSearch(const Ground& lesson, const Ground& free) : lesson_(lesson), free_(free) {}

  std::vector<FoundLesson> run(const LessonEnds& ends, const std::optional<wish::Ramp>& ramp,
                               const LessonWork& work);
  /// How many sections of the best beginning were found, and what the next one had to be; of the runs since
  /// forget().
  [[nodiscard]] std::size_t furthest() const { return furthest_; }
  [[nodiscard]] const std::optional<SectionPlan>& stuck_at() const { return stuck_at_; }
  void forget() { furthest_ = 0, stuck_at_.reset(); }

 private:
  struct Lead;
  struct Target;
  struct Driven;
  struct Own;
  [[nodiscard]] bool can_end_gently(const LessonNets& nets, const LessonEnds& ends) const;
  [[nodiscard]] std::vector<Lead> begin(const LessonEnds& ends) const;
  [[nodiscard]] std::vector<Lead> with_links(const LessonNets& nets, std::size_t k,
                                             const Lead& lead) const;
  [[nodiscard]] std::vector<Target> targets(const LessonNets& nets, std::size_t k, const Lead& lead,
                                            const LessonEnds& ends) const;
  [[nodiscard]] std::vector<Lead> extended(const LessonNets& nets, std::size_t k,
                                           const std::vector<Lead>& beam,
                                           const LessonEnds& ends) const;
  [[nodiscard]] std::optional<Lead> extend(const LessonNets& nets, std::size_t k, const Lead& lead,
                                           const Target& target, const Own& own) const;
  [[nodiscard]] Section section_of(const SectionNetOf& section, const Lead& lead,
                                   const Target& target, TimeWindow window, const Own& own) const;
  [[nodiscard]] std::map<PieceId, int> drives_of(const Lead& lead) const;
  [[nodiscard]] SectionNet unworn(const SectionNet& net, const Lead& lead) const;
  [[nodiscard]] std::optional<Driven> drive(const Ground& ground, const Lead& lead,
                                            bool is_tight) const;
  [[nodiscard]] FoundLesson finished(const Lead& lead, const LessonEnds& ends) const;

  const Ground& lesson_;
  const Ground& free_;
  LessonWork work_;
  wish::Ramp ramp_;
  TimeWindow practice_;
  std::size_t furthest_ = 0;
  std::optional<SectionPlan> stuck_at_;
};

}  // namespace loopwright::find
