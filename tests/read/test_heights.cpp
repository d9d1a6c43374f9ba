#include <array>
#include <catch2/catch.hpp>

#include "loopwright/base/error.hpp"
#include "loopwright/read/heights.hpp"

namespace loopwright::read {
namespace {

TEST_CASE("without grids there is no source of heights", "[read]") {
  CHECK_FALSE(open_heights({}, "/no/such/loopwright_heights.so"));
}

TEST_CASE("a build without the reader of grids says what to install", "[read]") {
  std::string said;
  try {
    open_heights(std::array<std::filesystem::path, 1>{"dem"}, "/no/such/loopwright_heights.so");
  } catch (const InputError& error) {
    said = error.what();
  }
  CHECK(said ==
        "there is no reader of elevation grids beside this Loopwright; install the package "
        "loopwright-heights (or, built by yourself: libgdal-dev, and build it again), or leave "
        "--heights out");
}

}  // namespace
}  // namespace loopwright::read
