// libFuzzer: any bytes as a file of questions about hours ("hours --batch").
#include <cstddef>
#include <cstdint>
#include <string_view>

#include "trial.hpp"
#include "verbs.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace loopwright;
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  fuzz::run_verb({"hours", "--batch", fuzz::scratch_file("asked.tsv", text).string()});
  return 0;
}
