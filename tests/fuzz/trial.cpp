#include "trial.hpp"

#include <cstdlib>

#include "support/scratch_folder.hpp"

namespace loopwright::fuzz {

void require(bool holds) {
  if (!holds) std::abort();
}

void check_refusal(std::string_view text) {
  constexpr std::size_t longest_line = 1500;  // ours: a list of all words of a wish is half of it
  require(!text.empty() && text.size() <= longest_line);
}

std::filesystem::path scratch_path(std::string_view name) {
  static const test::ScratchFolder folder;
  return folder / name;
}

std::filesystem::path scratch_file(std::string_view name, std::string_view bytes) {
  const std::filesystem::path file = scratch_path(name);
  test::write_bytes(file, bytes);
  return file;
}

}  // namespace loopwright::fuzz
