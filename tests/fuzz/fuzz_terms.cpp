// libFuzzer: any bytes as a file of school terms.
//
// 1. Reading refuses it, or its parts are in order, and no school day is a holiday.
#include <cstddef>
#include <cstdint>
#include <string_view>

#include "loopwright/hours/terms.hpp"
#include "trial.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace loopwright;
  using fuzz::require;
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  hours::SchoolTerms terms;
  if (fuzz::refused([&] { terms = hours::read_terms(text, "terms.txt"); })) return 0;
  Date before{0, 1, 1};
  for (const hours::TermPart& part : terms.parts()) {
    require(before < part.first && part.first <= part.last);
    require(terms.holiday(part.first) == hours::Tri::no);
    require(terms.holiday(part.last) == hours::Tri::no);
    before = part.last;
  }
  return 0;
}
