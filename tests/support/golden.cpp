// LOOPWRIGHT_GOLDEN is the folder of the approved files, LOOPWRIGHT_GOLDEN_NEW that for what differs;
// both by CMake.
#include "support/golden.hpp"

#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <iterator>

namespace loopwright::test {
namespace {

std::string text_of(const std::filesystem::path& file) {
  std::ifstream in(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

}  // namespace

void check_golden(std::string_view name, const std::string& text) {
  const std::filesystem::path news = LOOPWRIGHT_GOLDEN_NEW;
  const std::string approved = text_of(std::filesystem::path(LOOPWRIGHT_GOLDEN) / name);
  if (text == approved) {
    std::filesystem::remove(news / name);
  } else {
    std::filesystem::create_directories(news);
    std::ofstream(news / name, std::ios::binary) << text;
  }
  INFO("look at " << (news / name).string() << ", then tools/approve");
  CHECK(text == approved);
}

}  // namespace loopwright::test
