// In chunks, up to a size that no file of ours has, so that a wrong file can't fill the memory.
#include "loopwright/file/load_text.hpp"

#include <fstream>
#include <string_view>

#include "loopwright/base/error.hpp"

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

/// "a notes file", "an outline"
std::string with_article(const std::string& name) {
  const bool vowel = !name.empty() && std::string_view("aeio").find(name[0]) != std::string::npos;
  return (vowel ? "an " : "a ") + name;
}

}  // namespace

std::string load_text(const std::filesystem::path& path, const FileSort& sort) {
  const std::string name(sort.name);
  std::error_code unreadable;  // read_file says so
  if (std::filesystem::status(path, unreadable).type() == std::filesystem::file_type::not_found) {
    const std::string how = "; make it with '" + std::string(sort.made_by) + "'";
    throw InputError(path.string() + ": no such file" + (sort.made_by.empty() ? "" : how));
  }
  if (std::filesystem::is_directory(path, unreadable)) {
    throw InputError(path.string() + ": is a folder, not " + with_article(name));
  }
  std::string text = read_file(path);
  if (text.size() > greatest_size) {
    throw InputError(path.string() + ": is larger than 256 MB, which no " + name + " is");
  }
  return text;
}

}  // namespace loopwright::file
