// Member by member in the order of the loop file's description.
#include "file/write_lesson.hpp"

#include "loopwright/road/kind.hpp"
#include "loopwright/wish/parts.hpp"

namespace loopwright::file::values {
namespace {

Json part(const wish::Part& part) {
  Json result = {{"minutes", part.minutes}, {"roads", wish::name(part.roads)}};
  if (part.hardest) result["hardest"] = *part.hardest;
  result["wants"] = list(part.wants, [](const wish::Want& w) { return want(w, "count"); });
  return result;
}

Json loop_part(const wish::LoopPart& part) {
  return {
      {"first", part.first}, {"last", part.last}, {"met", list(part.met, [](const wish::Met& met) {
                                                     Json row = want(met.want, "asked");
                                                     row["got"] = met.got;
                                                     if (met.practised)
                                                       row["practised"] = *met.practised;
                                                     return row;
                                                   })}};
}

}  // namespace

void write_lesson(const wish::Wish& wish, Json& result) {
  if (!wish.parts.empty()) result["parts"] = list(wish.parts, part);
  if (wish.easy_first) result["easy_first"] = true;
  if (wish.drive_out) result["drive_out"] = point(*wish.drive_out);
  if (wish.drive_back) result["drive_back"] = point(*wish.drive_back);
}

void write_lesson(const wish::Loop& loop, Json& result) {
  if (!loop.parts.empty()) result["parts"] = list(loop.parts, loop_part);
  if (loop.practice)
    result["practice"] = {{"first", (*loop.practice)[0]}, {"last", (*loop.practice)[1]}};
}

}  // namespace loopwright::file::values
