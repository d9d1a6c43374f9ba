// What every page of a lesson carries round its content: which lesson, which page; cautions and map credit.
#pragma once

#include <string>
#include <vector>

#include "card/flow.hpp"
#include "card/head.hpp"

namespace loopwright::card {

struct Frame {
  std::string title;  ///< the pupil's code, or "LOOP 1"
  std::string when, back_by;
  std::string caution;            ///< the one to be read first
  std::vector<std::string> foot;  ///< other cautions and credit
};

Frame frame_of(const Subject& subject, const Head& head, const std::string& pupil);

/// `sheet` names the page at the right edge: "card 2 of 5".
Flow::Room framed(const PageStyle& style, const Frame& frame, const std::string& sheet);

}  // namespace loopwright::card
