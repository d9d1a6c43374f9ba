// Method: the rows of src/rules/kinds.txt as a table; a movement's row under its kind's.
#include <iostream>

#include "command/arguments.hpp"
#include "command/print.hpp"
#include "loopwright/road/kind_table.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::command {
namespace {

std::string names_of(std::span<const road::Kind> kinds) {
  std::string text;
  for (const road::Kind kind : kinds)
    text.append(text.empty() ? "" : ", ").append(road::name(kind));
  return text;
}

/// "left, right", "usable, in-force", or nothing.
std::string movements_in(road::Kind kind) {
  std::string text;
  for (const road::Movement movement : road::movements_of(kind))
    text.append(text.empty() ? "" : ", ").append(road::name(movement));
  for (const wish::Verdict verdict : wish::verdicts_of(kind))
    text.append(text.empty() ? "" : ", ").append(wish::want_word(verdict));
  return text;
}

std::vector<std::string> cells_of(const road::KindRow& row) {
  if (row.movement != road::Movement::none) {
    return {"  :" + std::string(road::name(row.movement)),
            "",
            std::to_string(row.hardness),
            "",
            "",
            "",
            std::string(row.told_by)};
  }
  return {std::string(road::name(row.kind)),
          movements_in(row.kind),
          std::to_string(row.hardness),
          names_of(row.before),
          std::string(row.sure),
          row.minutes > 0 ? std::to_string(row.minutes) + " min" : "",
          std::string(row.told_by)};
}

}  // namespace

Exit kinds(const Arguments& words) {
  Options app{
      "Lists the kinds of practice: hardness 1 to 5, what to have met before, how sure a map\n"
      "can be of them, minutes to stop for a manoeuvre, and how the map tells them. A movement is\n"
      "asked for as roundabout:right, a bus lane by what holds when you are there: "
      "bus-lane:usable\n"
      "(the map says cars may use it then) or bus-lane:in-force (keep out).",
      "loopwright kinds"};
  if (!parse(app, words)) return Exit::done;
  Table table({"kind", "movements", "hard", "before it", "sure", "stop", "the map tells it by"});
  for (const road::KindRow& row : road::kind_rows()) table.add(cells_of(row));
  table.print(std::cout);
  return Exit::done;
}

}  // namespace loopwright::command
