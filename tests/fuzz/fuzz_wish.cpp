// libFuzzer: any bytes as a wish file.
//
// 1. What can't be meant is refused before the area is opened.
// 2. The rest is looked for in a small town, in at most an hour; what is found proves true.
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

#include "town.hpp"
#include "trial.hpp"
#include "verbs.hpp"

namespace {

using namespace loopwright;

std::string path_of(std::string_view name) {
  return fuzz::scratch_path(name).string();
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const std::string wish = fuzz::scratch_file("lesson.wish", text).string();
  fuzz::run_verb({"loops", fuzz::town_area().string(), "--wish", wish, "--keep-wish",
                  path_of("kept.wish"), "-o", path_of("loops.json")});
  return 0;
}
