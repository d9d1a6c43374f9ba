// What a pupil practises at home, on paper for who sits beside the learner there.
//
//   store::write_whole("wren-home.pdf", card::write_at_home(sheet, drives));
//
// Rules: the loops are resolved, at least one; all of them begin at the place that the sheet names, which is not the
// door. Text and PDF say the same. Cautions and map credit are on every page.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "loopwright/card/card.hpp"
#include "loopwright/card/pack.hpp"
#include "loopwright/road/kind.hpp"

namespace loopwright::card {

struct HomeSheet {
  /// What the pupil does without help, and the day on which that was seen last, in words.
  struct Alone {
    road::Kind kind = road::Kind::roundabout;
    road::Movement movement = road::Movement::none;
    std::string last;
  };
  /// A sentence of the law: its key in the table of words, and what it fills in.
  struct Law {
    std::string words;
    int age = 0, years = 0;
  };
  std::string code;          ///< the pupil's
  std::string street;        ///< where one begins
  std::string corner;        ///< the street it is near; empty: none is
  std::string check;         ///< what to look for at its kerb
  std::string quiet;         ///< hours, in words
  std::vector<Alone> alone;  ///< those of one day together
  std::vector<Law> laws;
};

/// At most 80 columns wide.
std::string write_at_home_text(const HomeSheet& sheet, std::span<const Lesson> drives);

/// A PDF file: first what to know, then the card and the map of each drive. Throws InputError when it can't be drawn.
std::string write_at_home(const HomeSheet& sheet, std::span<const Lesson> drives, Paper paper,
                          Print print);

}  // namespace loopwright::card
