// The whole file into memory, up to a size no loop file has; then it is read as a text.
#include <fstream>
#include <string>

#include "loopwright/base/error.hpp"
#include "loopwright/file/loop_file.hpp"

namespace loopwright::file {
namespace {

constexpr std::size_t greatest_size = std::size_t{256} << 20U;
constexpr std::size_t chunk_bytes = std::size_t{1} << 16U;

std::string read_file(const std::filesystem::path& path) {
  std::ifstream in(path, std::ios::binary);
  std::string text;
  std::string chunk(chunk_bytes, '\0');
  while (in.good() && text.size() <= greatest_size) {
    in.read(chunk.data(), static_cast<std::streamsize>(chunk.size()));
    text.append(chunk, 0, static_cast<std::size_t>(in.gcount()));
  }
  if (!in.eof() && !in.good()) throw InputError(path.string() + ": can't be read");
  return text;
}

}  // namespace

wish::Answer load_answer(const std::filesystem::path& path) {
  std::error_code unreadable;  // read_file says so
  if (std::filesystem::status(path, unreadable).type() == std::filesystem::file_type::not_found) {
    throw InputError(path.string() + ": no such file; make it with 'loopwright loops'");
  }
  if (std::filesystem::is_directory(path, unreadable)) {
    throw InputError(path.string() + ": is a folder, not a loop file");
  }
  const std::string text = read_file(path);
  if (text.size() > greatest_size) {
    throw InputError(path.string() + ": is larger than 256 MB, which no loop file is");
  }
  return read_answer(text, path.string());
}

}  // namespace loopwright::file
