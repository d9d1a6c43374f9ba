// libFuzzer: any bytes as a loop file.
//
// 1. Reading refuses it, or writing what was read gives a file that is read and written alike.
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

#include "loopwright/file/loop_file.hpp"
#include "trial.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace loopwright;
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  wish::Answer answer;
  if (fuzz::refused([&] { answer = file::read_answer(text, "loops.json"); })) return 0;
  const std::string written = file::write_answer(answer);
  fuzz::require(file::write_answer(file::read_answer(written, "loops.json")) == written);
  return 0;
}
