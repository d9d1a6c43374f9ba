// What stands on a card between its head and its sections, in driving order, as plain text: rows, planned
// stops, and bands over the whole width (parts of a lesson, independent driving).
//
//   for (const Entry& entry : entries_of(subject)) print(entry.number, entry.say);
//
// Why: text, PDF and page print the same words; each decides only where they stand.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "card/sections.hpp"

namespace loopwright::card {

enum class EntryKind : std::uint8_t { row, stop, band };

struct Entry {
  EntryKind kind = EntryKind::row;
  std::size_t row = 0;   ///< index into rows; of a stop the row before it
  std::string number;    ///< "12"; of a stop "P"; of a band empty
  std::string say;       ///< what is spoken, or a band's words
  std::string where;     ///< street; "say it 200 yd before"; where to look; empty: none
  std::string lane;      ///< to be in; empty: not mapped, or only one
  std::string landmark;  ///< what one sees there
  std::string kerb;      ///< what the kerb of the door forbids
  std::string next;      ///< "next in 150 yd, 1 min"
  std::string brief;     ///< "brief: …", of a stop what it is for
  std::string then;      ///< "then: …"; of a stop what to check; of a band its further lines
  std::string after;     ///< the next place to pull up after something hard
  std::string limit;     ///< "30" or "no limit", when it changes here
  bool limit_sure = true;
  int hardness = 0;             ///< 0: nothing is practised
  bool joins_previous = false;  ///< said in one breath with the entry before it
  bool independent = false;     ///< the learner finds the way: for the instructor's eyes
};

/// One row by itself; not whether the learner finds the way there.
Entry row_entry(const Subject& subject, std::size_t row);

std::vector<Entry> entries_of(const Subject& subject);

}  // namespace loopwright::card
