// Method: minutes are those driven, beside those asked; wants as they were asked, with what came of them.
#include "command/lesson_summary.hpp"

#include <cmath>
#include <ostream>

#include "command/folded.hpp"
#include "command/print.hpp"
#include "loopwright/wish/parts.hpp"

namespace loopwright::command {
namespace {

std::string minutes(double seconds) {
  return std::to_string(std::lround(seconds / 60));
}

std::string where(const wish::Loop& loop, std::size_t row) {
  const std::string& street = loop.stretches[row].street;
  return street.empty() ? "an unnamed road" : street;
}

void print_part(std::ostream& out, const wish::Part& part, const wish::Loop& loop, std::size_t p) {
  const wish::LoopPart& driven = loop.parts[p];
  std::string line = "part " + std::to_string(p + 1) + ": " +
                     minutes(wish::driven_s(loop, wish::rows_of(driven))) + " min, " +
                     std::to_string(part.minutes) + " asked";
  if (part.roads != wish::RoadsAllowed::any)
    line += ", " + std::string(wish::name(part.roads)) + " roads";
  if (part.hardest) line += ", nothing harder than " + std::to_string(*part.hardest);
  if (p > 0) line += "; from " + where(loop, driven.first);
  print_folded(out, 2, line);
  for (const wish::Met& met : driven.met)
    out << "    asked " << wish::write_want(met.want) << ": " << met.got << '\n';
}

}  // namespace

std::string drive_out_words(const wish::Loop& loop) {
  const wish::RowSpan practice = wish::practice_of(loop);
  if (practice.first == 0) return {};
  return "you drive to " + where(loop, practice.first - 1) + ": " +
         minutes(wish::driven_s(loop, {0, practice.first - 1})) + " min";
}

std::string drive_back_words(const wish::Loop& loop) {
  const std::size_t behind = wish::practice_of(loop).last + 1;
  if (behind >= loop.stretches.size()) return {};
  return "you drive back from " + where(loop, behind) + ": " +
         minutes(wish::driven_s(loop, {behind, loop.stretches.size() - 1})) + " min";
}

void print_lesson(std::ostream& out, const wish::Answer& answer, const wish::Loop& loop) {
  if (const std::string text = drive_out_words(loop); !text.empty()) print_folded(out, 2, text);
  for (std::size_t p = 0; p < loop.parts.size(); ++p)
    print_part(out, answer.wish.parts[p], loop, p);
  if (const std::string text = drive_back_words(loop); !text.empty()) print_folded(out, 2, text);
}

}  // namespace loopwright::command
