// Gives every file of the folders named to a fuzzer, without libFuzzer: what was found once is tried
// by every build, whatever its compiler.
//   replay_hours tests/fuzz/corpus/hours
#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <iostream>
#include <string>

#include "support/scratch_folder.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

int main(int count, char** folders) {
  int inputs = 0;
  for (int k = 1; k < count; ++k) {
    for (const auto& entry : std::filesystem::directory_iterator(folders[k])) {
      const std::string bytes = loopwright::test::read_bytes(entry.path());
      std::cout << entry.path().filename().string()
                << std::endl;  // the last one told is the culprit
      LLVMFuzzerTestOneInput(reinterpret_cast<const std::uint8_t*>(bytes.data()), bytes.size());
      ++inputs;
    }
  }
  std::cout << inputs << " inputs\n";
  return inputs > 0 ? 0 : 1;
}
