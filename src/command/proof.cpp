// Method: the file is read, and every claim in it recomputed from the area alone; the first that is
// false is told, with exit 3.
#include "loopwright/proof/proof.hpp"

#include <iostream>

#include "command/arguments.hpp"
#include "command/files.hpp"

namespace loopwright::command {

Exit proof(const Arguments& words) {
  Options app{"Checks every claim of a loop file against the area.", "loopwright proof"};
  AreaTexts area;
  std::string loop_file;
  add_area(app, area);
  app.add_option("LOOPS", loop_file, "loop file")->required();
  if (!parse(app, words)) return Exit::done;
  Ground ground(area);
  const wish::Answer answer = answer_in(ground, loop_file);
  const proof::Proof found = proof::prove(ground.noted(), answer, ground.setting_of(answer.wish));
  if (found.false_claim) throw Error(Exit::false_claim, loop_file + ": " + *found.false_claim);
  std::cout << loop_file << ": agrees with the map's rules; loops " << found.loops
            << ", claims checked " << found.claims << '\n';
  // The terms are the file's word, not the map's: whoever checks must see them.
  if (answer.wish.terms && !answer.wish.terms->empty()) {
    const auto& parts = answer.wish.terms->parts();
    std::cout << "by the school terms in it: " << road::day_text(parts.front().first) << " to "
              << road::day_text(parts.back().last) << ", parts " << parts.size() << '\n';
  }
  return Exit::done;
}

}  // namespace loopwright::command
