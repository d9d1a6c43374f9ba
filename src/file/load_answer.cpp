// The whole file into memory; then it is read as a text.
#include "loopwright/file/load_text.hpp"
#include "loopwright/file/loop_file.hpp"

namespace loopwright::file {

wish::Answer load_answer(const std::filesystem::path& path) {
  return read_answer(load_text(path, {"loop file", "loopwright loops"}), path.string());
}

}  // namespace loopwright::file
