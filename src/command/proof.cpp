// Method: the file is read, and every claim in it recomputed from the area alone; the first that is
// false is told, with exit 3.
#include "loopwright/proof/proof.hpp"

#include <iostream>

#include "command/arguments.hpp"
#include "command/files.hpp"
#include "loopwright/store/area.hpp"

namespace loopwright::command {

Exit proof(const Arguments& words) {
  CLI::App app{"Checks every claim of a loop file against the area.", "loopwright proof"};
  std::string area_file, loop_file;
  app.add_option("AREA", area_file, "area file")->required();
  app.add_option("LOOPS", loop_file, "loop file")->required();
  if (!parse(app, words)) return Exit::done;
  const store::Area area = store::open_area(area_file);
  const proof::Proof found = proof::prove(area.roads(), answer_in(area.roads(), loop_file));
  if (found.false_claim) throw Error(Exit::false_claim, loop_file + ": " + *found.false_claim);
  std::cout << loop_file << ": agrees with the map's rules; loops " << found.loops
            << ", claims checked " << found.claims << '\n';
  return Exit::done;
}

}  // namespace loopwright::command
