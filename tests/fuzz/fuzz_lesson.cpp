// libFuzzer: a loop file of the fuzzers' town with some of its letters changed, given to what reads
// loop files: proof, cards of each form, lanes.
//
// 1. The input is a list of changes: where (two bytes), what (one byte: a digit, a letter, a cut),
//    so that most files can still be read and come to where roads are followed.
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

#include "bytes.hpp"
#include "support/scratch_folder.hpp"
#include "town.hpp"
#include "town_loop.hpp"
#include "trial.hpp"
#include "verbs.hpp"

namespace {

using namespace loopwright;

void change(std::string& text, fuzz::Bytes& bytes) {
  constexpr std::string_view pieces[] = {"0",   "1",    "2",  "9",          "-1", "1e9",
                                         "0.5", "null", "",   "12",         "}",  "true",
                                         "[]",  "\"\"", "{}", "99999999999"};
  const std::size_t at = bytes.number() * 5U % text.size();
  const std::size_t from = text.find_first_of("0123456789tfn", at);
  if (from == std::string::npos) return;
  const std::size_t end = text.find_first_of(",}] \n", from);
  text.replace(from, end == std::string::npos ? end : end - from, pieces[bytes.one() % 16]);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const std::string whole = test::read_bytes(fuzz::town_loop());
  fuzz::Bytes bytes(data, size);
  const unsigned form = bytes.one();
  std::string text = whole;
  for (int changes = 0; changes < 8 && !bytes.empty(); ++changes) change(text, bytes);
  const std::string area = fuzz::town_area().string();
  const std::string loops = fuzz::scratch_file("changed.json", text).string();
  const auto out = [](std::string_view name) { return fuzz::scratch_path(name).string(); };
  fuzz::run_verb({"proof", area, loops});
  fuzz::run_verb({"lanes", area, loops});
  constexpr std::string_view names[] = {"card.txt", "card.gpx", "card.geojson", "card.ics",
                                        "card.html"};
  fuzz::run_verb({"card", area, loops, "-o", out(names[form % 5])});
  return 0;
}
