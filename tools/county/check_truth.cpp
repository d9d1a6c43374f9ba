// check-truth MAP.area TRUTH: what a build found beside what it must and may find (county/check.hpp).
// Exit 0 when nothing is missed and nothing false, else 3; 1 when a file can't be read.
#include <CLI/CLI.hpp>
#include <iostream>

#include "county/check.hpp"
#include "county/files.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/store/area.hpp"

namespace {

using namespace loopwright;
using namespace loopwright::county;

struct Asked {
  std::string area, truth;
  std::size_t examples = 3;
};

Truth truth_in(const std::string& file) {
  try {
    return read_truth(read_file(file));
  } catch (const InputError& trouble) {
    throw InputError(file + ": " + trouble.what());
  }
}

int run(const Asked& asked) {
  const Truth truth = truth_in(asked.truth);
  const store::Area area = store::open_area(asked.area);
  const Verdict verdict = check(truth, area.roads());
  print(std::cout, verdict, asked.examples);
  return verdict.clean() ? 0 : 3;
}

}  // namespace

int main(int argc, char** argv) {
  CLI::App app{"Compares what a build found with the truth of its county.", "check-truth"};
  Asked asked;
  app.add_option("AREA", asked.area, "What loopwright build made of the county's map")->required();
  app.add_option("TRUTH", asked.truth, "What draw-county --truth made of its plan")->required();
  app.add_option("--examples", asked.examples, "So many differences of each kind are printed");
  try {
    app.parse(argc, argv);
  } catch (const CLI::ParseError& trouble) {
    return app.exit(trouble) == 0 ? 0 : 2;
  }
  try {
    return run(asked);
  } catch (const std::exception& trouble) {
    std::cerr << "check-truth: " << trouble.what() << '\n';
    return 1;
  }
}
