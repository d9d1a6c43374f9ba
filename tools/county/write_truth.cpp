// write-truth PLAN --truth FILE: what a build of the plan's county must and may find
// (county/truth.hpp). Exit 1 when the plan can't be read or drawn.
#include <CLI/CLI.hpp>
#include <iostream>

#include "county/draw.hpp"
#include "county/files.hpp"
#include "county/truth.hpp"

namespace {

using namespace loopwright;
using namespace loopwright::county;

struct Asked {
  std::string plan, truth;
  std::uint64_t seed = 7;
};

int run(const Asked& asked) {
  const Plan plan = read_plan(read_file(asked.plan), asked.plan);
  const Drawing county = draw(plan, asked.seed);
  for (const std::string& trouble : county.troubles)
    std::cerr << "write-truth: " << asked.plan << ' ' << trouble << '\n';
  if (!county.troubles.empty()) return 1;
  Truth truth = truth_of(county);
  truth.traps = traps_of(plan);
  write_file(asked.truth, written(truth));
  std::cout << asked.truth << ": " << truth.places.size() << " places, " << truth.runs.size()
            << " runs, " << truth.traps.size() << " traps\n";
  return 0;
}

}  // namespace

int main(int argc, char** argv) {
  CLI::App app{"Writes what a build of an invented county must find.", "write-truth"};
  Asked asked;
  app.add_option("PLAN", asked.plan, "The county's plan")->required();
  app.add_option("--truth", asked.truth, "The file to write")->required();
  app.add_option("--seed", asked.seed, "As the county was drawn with");
  try {
    app.parse(argc, argv);
  } catch (const CLI::ParseError& trouble) {
    return app.exit(trouble) == 0 ? 0 : 2;
  }
  try {
    return run(asked);
  } catch (const std::exception& trouble) {
    std::cerr << "write-truth: " << trouble.what() << '\n';
    return 1;
  }
}
