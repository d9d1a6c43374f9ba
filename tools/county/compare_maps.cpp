// compare-maps A B: the figures of map A beside those of map B (county/figures.hpp).
// Exit 0 when each figure is within a factor of two or has a reason, else 3; 1 when a file can't be
// read, 2 for wrong arguments.
#include <CLI/CLI.hpp>
#include <fstream>
#include <iostream>
#include <iterator>

#include "county/figures.hpp"
#include "loopwright/base/error.hpp"

namespace {

using namespace loopwright;
using namespace loopwright::county;

struct Asked {
  std::string file_a, file_b, box_a, box_b, reasons;
};

const CLI::Validator is_box(
    [](std::string& text) {
      return read_box(text) ? std::string() : text + ": write SOUTH,WEST,NORTH,EAST in degrees";
    },
    "S,W,N,E");

RoadMap map_of(const std::string& file, const std::string& box) {
  RoadMap map = read_road_map(file, read_box(box).value_or(Box{}));
  std::cout << file << ": " << map.ways.size() << " ways for cars";
  if (map.left_out > 0) std::cout << "; left out: " << map.left_out << " that leave the box";
  std::cout << '\n';
  return map;
}

Reasons reasons_of(const std::string& file) {
  if (file.empty()) return {};
  std::ifstream in(file);
  if (!in) throw InputError(file + ": can't be opened; name a file of reasons");
  const std::string text(std::istreambuf_iterator<char>{in}, {});
  try {
    return read_reasons(text);
  } catch (const InputError& trouble) {
    throw InputError(file + ": " + trouble.what());
  }
}

int run(const Asked& asked) {
  const Reasons reasons = reasons_of(asked.reasons);
  std::cout << "A: ";
  const RoadMap a = map_of(asked.file_a, asked.box_a);
  std::cout << "B: ";
  const RoadMap b = map_of(asked.file_b, asked.box_b);
  std::cout << '\n';
  const std::size_t left = print_comparison(std::cout, figures_of(a), figures_of(b), reasons);
  std::cout << "\n(n): so many were counted. 2*: one road that is mapped as two ways.\n"
            << "!: beyond a factor of two; without a reason: " << left << '\n';
  return left == 0 ? 0 : 3;
}

}  // namespace

int main(int argc, char** argv) {
  CLI::App app{"Puts the figures of two maps side by side.", "compare-maps"};
  Asked asked;
  app.add_option("A", asked.file_a, "An extract, .osm.pbf or .opl")->required();
  app.add_option("B", asked.file_b, "The one to hold it against")->required();
  app.add_option("--box-a", asked.box_a, "Only ways of A that lie in this box")->check(is_box);
  app.add_option("--box-b", asked.box_b, "The same for B")->check(is_box);
  app.add_option("--reasons", asked.reasons,
                 "A line for each figure that may differ: figure | reason");
  try {
    app.parse(argc, argv);
  } catch (const CLI::ParseError& trouble) {
    return app.exit(trouble) == 0 ? 0 : 2;
  }
  try {
    return run(asked);
  } catch (const std::exception& trouble) {
    std::cerr << "compare-maps: " << trouble.what() << '\n';
    return 1;
  }
}
