// A lesson on paper: plan page, card, what to do when late, sketches for the briefings, map, after-sheet.
//
//   store::write_whole("lesson.pdf", card::write_pack({roads, answer, loop, setting}, {}));
//
// Rules: the loop is resolved. Every page carries the cautions in short and the map credit; no page names the
// house of the door, nor a pupil but by the code given.
#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <vector>

#include "loopwright/card/card.hpp"

namespace loopwright::card {

enum class Paper : std::uint8_t { a4, a5 };
enum class Print : std::uint8_t { normal, large };

/// Parts of a pack, in the order in which they are printed.
enum class Sheets : std::uint8_t { plan, rows, late, sketches, overview, strip, after };
inline constexpr std::size_t sheets_count = static_cast<std::size_t>(Sheets::after) + 1;
std::string_view name(
    Sheets sheets);  // "plan", "rows", "late", "sketches", "overview", "strip", "after"

/// For whom the rows are: an instructor has boxes to tick and reads how hard they are.
enum class Reader : std::uint8_t { instructor, family };

struct PackOptions {
  Paper paper = Paper::a4;
  Print print = Print::normal;
  /// Which parts; the strip is an alternative to the overview.
  std::vector<Sheets> sheets{Sheets::plan,     Sheets::rows,     Sheets::late,
                             Sheets::sketches, Sheets::overview, Sheets::after};
  std::size_t most_sketches = 12;  ///< of the hardest places
  std::string pupil;               ///< a code; empty: the number of the loop stands for it
  Reader reader = Reader::instructor;
};

/// A PDF file. Throws InputError when it can't be drawn.
std::string write_pack(const Lesson& lesson, const PackOptions& options);

/// A lesson of a day, and how it is printed.
struct DayLesson {
  Lesson lesson;
  PackOptions options;
};
/// One PDF of several lessons, one behind the other. Rules: at least one. Throws as write_pack does.
std::string write_day(std::span<const DayLesson> lessons);

}  // namespace loopwright::card
