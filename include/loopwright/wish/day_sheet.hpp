// The lessons of one day on one sheet: plain data, so that the rooms that write it need no book.
//
// Rules: in order of their starts; times are those of the clock on the wall. Only codes name pupils, and no door is in it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "loopwright/base/instant.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::wish {

struct DaySheet {
  struct Lesson {
    std::string code;                        ///< the pupil's
    int number = 1;                          ///< of the pupil's lessons
    std::string state;                       ///< "planned", "driven"
    std::string start, end;                  ///< "09:00"; of the lesson, talk and all
    int minutes = 60;                        ///< of the lesson
    std::vector<std::string> practice = {};  ///< "roundabout right: 4, asked 3"
    std::optional<Range> away_minutes =
        {};                    ///< from the door and back, stops counted; none: not known
    std::string back_by = {};  ///< "09:42", likely; empty: not known
    std::vector<std::string> unsure = {};  ///< what to look at on the ground, what isn't met
    std::string trouble = {};  ///< why it may not be driven so, or can't be read; else empty
  };
  /// From one lesson to the next.
  struct Between {
    int free_minutes = 0;                   ///< negative: they overlap
    std::optional<int> drive_minutes = {};  ///< likely, the instructor's; none: not known
    std::string clash = {};                 ///< in words; empty: there is none
  };
  Date day;
  std::vector<Lesson> lessons;
  std::vector<Between> between;  ///< one fewer than lessons
};

}  // namespace loopwright::wish
