#include "command/to_mind.hpp"

#include <algorithm>
#include <ostream>

#include "command/folded.hpp"
#include "command/lesson_words.hpp"
#include "loopwright/wish/parts.hpp"

namespace loopwright::command {
namespace {

/// What ends the keeping off of one kind: the option takes all away, and the others are said again.
std::string ends_keeping_off(const book::Pupil& pupil, road::Kind kind) {
  std::string command = "loopwright pupil change " + pupil.code + " --avoid none";
  for (const road::Kind other : pupil.avoids)
    if (other != kind) command += " --avoid " + std::string(road::name(other));
  return command;
}

}  // namespace

std::vector<wish::Want> wants_said(const WishWords& words) {
  wish::Wish wish;
  for (const Said& said : words.all("want")) wish.wants.push_back(said.read(wish::read_want));
  read_parts(wish, words);
  return wish::all_wants(wish);
}

const wish::Want* beats(const std::vector<wish::Want>& wants, road::Kind kept_off) {
  const auto found = std::ranges::find_if(wants, [&](const wish::Want& want) {
    return road::meets(want.kind, kept_off) || road::meets(kept_off, want.kind);
  });
  return found == wants.end() ? nullptr : &*found;
}

void tell_given_way(std::ostream& out, const book::Pupil& pupil,
                    const std::vector<wish::Want>& wants) {
  for (const road::Kind kind : pupil.avoids)
    if (const wish::Want* want = beats(wants, kind))
      print_folded(out, 0,
                   "note: the book keeps " + pupil.code + " off " + std::string(road::name(kind)) +
                       "; " + wish::write_want(*want) +
                       " is asked for by name, so this lesson doesn't keep it off. Leave it out "
                       "of what is asked for, or, when " +
                       pupil.code + " is ready for it: '" + ends_keeping_off(pupil, kind) + "'");
}

}  // namespace loopwright::command
