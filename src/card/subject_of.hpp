// Everything the parts of a sheet speak of, worked out once for a loop.
#pragma once

#include "card/seats.hpp"
#include "card/sections.hpp"
#include "loopwright/card/pack.hpp"
#include "loopwright/wish/learners_drive.hpp"

namespace loopwright::card {

/// Rules: the lesson outlives it; it is neither copied nor moved, for its Subject refers into it.
class SubjectOf {
 public:
  explicit SubjectOf(const Lesson& lesson)
      : words_(lesson.manner.words == nullptr ? say::Words() : *lesson.manner.words),
        own_(wish::learners_drive(lesson.roads, lesson.answer.wish, lesson.loop)),
        rows_(say::say_loop(lesson.roads, own_.loop, {&words_, lesson.manner.sides})),
        timed_(timed_on({lesson.roads, lesson.loop, lesson.setting})),
        kerbs_(kerbs_of({lesson.roads, own_.loop, lesson.setting})),
        subject_{lesson.roads,  lesson.answer,  own_.loop,   rows_,
                 words_,        lesson.setting, timed_,      kerbs_,
                 lesson.ground, lesson.loop,    own_.before, lesson.help} {}
  SubjectOf(const SubjectOf&) = delete;
  SubjectOf& operator=(const SubjectOf&) = delete;
  SubjectOf(SubjectOf&&) = delete;
  SubjectOf& operator=(SubjectOf&&) = delete;
  ~SubjectOf() = default;

  [[nodiscard]] const Subject& get() const { return subject_; }

 private:
  say::Words words_;
  wish::LearnersDrive own_;
  std::vector<say::Row> rows_;
  std::vector<Timed> timed_;
  std::vector<lanes::DoorKerb> kerbs_;
  Subject subject_;
};

}  // namespace loopwright::card
