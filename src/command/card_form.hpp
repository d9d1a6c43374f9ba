// In which form a loop is written: the options that `card` and `lesson print` share.
//
//   CardTexts texts;   add_card_options(app, texts);   …   const CardForm form = card_form_of(texts, output);
//   text = write_card(form, lesson);
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "command/options.hpp"
#include "loopwright/card/pack.hpp"
#include "loopwright/say/say.hpp"

namespace loopwright::command {

/// As typed.
struct CardTexts {
  std::string format, paper = "a4", sides = "left-right", sketches = "12", words;
  std::vector<std::string> sheets;
  bool large = false;
};
void add_card_options(Options& app, CardTexts& texts);

struct CardForm {
  std::string format;
  card::PackOptions pack;  ///< its pupil is filled in by the command
  say::Sides sides = say::Sides::left_right;
  std::optional<int> lesson_minutes = {};  ///< of a lesson of the book, for the calendar
};
/// output: the file, whose ending says the form when no other was said; empty: the screen. Throws UsageError, also for an
/// ending that says another form than was said: what is written would open as what it isn't.
CardForm card_form_of(const CardTexts& texts, const std::string& output);

std::string write_card(const CardForm& form, const card::Lesson& lesson);

/// Tells on standard error of a card that may not be driven at its hour, since a file is written without being looked
/// at. name: of the loop file, or of what stands for it.
void tell_barred(const card::Lesson& lesson, const std::string& name);

}  // namespace loopwright::command
