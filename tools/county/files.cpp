#include "county/files.hpp"

#include <fstream>
#include <iterator>

#include "loopwright/base/error.hpp"

namespace loopwright::county {

std::string read_file(const std::filesystem::path& file) {
  std::error_code ignored;
  std::ifstream in(file, std::ios::binary);
  if (!in || std::filesystem::is_directory(file, ignored))
    throw InputError(file.string() + ": there is no such file to read; check its name");
  std::string text{std::istreambuf_iterator<char>(in), {}};
  if (in.bad()) throw InputError(file.string() + ": it can't be read to its end");
  return text;
}

void write_file(const std::filesystem::path& file, std::string_view bytes) {
  const std::filesystem::path part = file.string() + ".part";
  std::ofstream out(part, std::ios::binary | std::ios::trunc);
  out.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
  out.close();
  std::error_code failed;
  if (out) std::filesystem::rename(part, file, failed);
  if (out && !failed) return;
  std::filesystem::remove(part, failed);
  throw InputError(file.string() + ": it can't be written; check the folder and the room on it");
}

}  // namespace loopwright::county
