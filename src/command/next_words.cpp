#include "command/next_words.hpp"

#include <ostream>

#include "command/folded.hpp"
#include "loopwright/road/note.hpp"

namespace loopwright::command {

std::optional<WhatIsThere> there_on(const book::Pupil& pupil, const PupilRecord& record,
                                    const AreaTexts& area, Date day) {
  if (area.area.empty()) return std::nullopt;
  NextAsk ask{pupil, area, {}};
  ask.words.fill("start", road::day_text(day) + "T10:00", "--today");
  return practices_for(ask, record);
}

std::string wish_file_of(const book::Proposal& next, const book::Pupil& pupil,
                         const PupilRecord& record) {
  WishWords words;
  for (const book::WishWord& word : book::wish_words(next))
    words.fill(word.name, word.value, "the proposal");
  if (pupil.home.empty()) {
    for (const road::Kind kind : pupil.avoids)
      words.fill("avoid", std::string(road::name(kind)), "the book");
  } else {
    fill_from_book(words, pupil, record, "");
  }
  return words.file_text();
}

void print_proposal(std::ostream& out, const std::string& code, const book::Proposal& next,
                    bool first, const std::string& area) {
  if (next.topics.empty()) {
    print_folded(out, 2, "nothing that a map can serve is due: drive what the pupil asks for");
  } else {
    print_folded(out, 2, "goal: " + next.goal);
  }
  print_topics(out, next);
  if (first)
    for (const std::string& hint : next.hints) print_folded(out, 2, "think of: " + hint);
  const std::string of = code + " " + (area.empty() ? "AREA" : area);
  if (first && next.mock_due)
    print_folded(out, 2, "a mock test: loopwright lesson plan " + of + " --mock");
  if (next.topics.empty()) return;
  std::string command = "plan it: loopwright lesson plan " + of;
  for (const book::WishWord& word : book::wish_words(next))
    command += " --" + word.name + " " + word.value;
  print_folded(out, 2, command);
}

}  // namespace loopwright::command
