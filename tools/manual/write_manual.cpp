// Writes the manual's pages and the shells' completions from what the verbs say of themselves:
//
//   write-manual README.md FOLDER 0.1.0 2026-11-29 "Plans lesson loops …"
#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <stdexcept>

#include "loopwright/road/kind.hpp"
#include "loopwright/wish/wish.hpp"
#include "manual/completions.hpp"
#include "manual/man_pages.hpp"

namespace {

namespace fs = std::filesystem;
namespace manual = loopwright::manual;
namespace road = loopwright::road;
namespace wish = loopwright::wish;

std::string text_of(const fs::path& file) {
  std::ifstream in(file, std::ios::binary);
  if (!in) throw std::runtime_error(file.string() + " can't be read");
  return {std::istreambuf_iterator<char>(in), {}};
}

void write(const fs::path& file, const std::string& text) {
  std::ofstream out(file, std::ios::binary);
  if (!(out << text << std::flush)) throw std::runtime_error(file.string() + " can't be written");
}

manual::Kinds kinds_and_movements() {
  manual::Kinds all;
  for (std::size_t k = 0; k < road::kind_count; ++k) {
    const auto kind = static_cast<road::Kind>(k);
    const std::string name(road::name(kind));
    all.push_back(name);
    for (const road::Movement movement : road::movements_of(kind))
      all.push_back(name + ":" + std::string(road::name(movement)));
    for (const wish::Verdict verdict : wish::verdicts_of(kind))
      all.push_back(name + ":" + std::string(wish::want_word(verdict)));
  }
  return all;
}

void write_all(char** words) {
  const fs::path readme = words[1], folder = words[2];
  std::string brief = words[5];
  brief.front() = static_cast<char>(brief.front() - 'A' + 'a');  // within a line of a page
  const auto verbs = loopwright::command::describe_all();
  const manual::Kinds kinds = kinds_and_movements();
  fs::create_directories(folder);
  for (const auto& [name, text] :
       manual::man_pages(verbs, manual::Readme(text_of(readme)), {words[3], words[4]}, brief))
    write(folder / name, text);
  write(folder / "loopwright", manual::bash_completion(verbs, kinds));
  write(folder / "_loopwright", manual::zsh_completion(verbs, kinds));
  write(folder / "loopwright.fish", manual::fish_completion(verbs, kinds));
}

}  // namespace

int main(int count, char** words) {
  if (count != 6 || words[5][0] < 'A' || words[5][0] > 'Z') {
    std::cerr << "usage: write-manual README FOLDER VERSION DAY \"What the program does\"\n";
    return 2;
  }
  try {
    write_all(words);
  } catch (const std::exception& error) {
    std::cerr << "write-manual: " << error.what() << '\n';
    return 1;
  }
}
