// Rounding is to the nearest multiple of a power of ten, made by one division: then the shortest
// text that reads back as the same double has no more digits than that.
#include "file/words.hpp"

#include <cmath>

#include "loopwright/file/format.hpp"

namespace loopwright::file {

std::string_view name(ObjectType type) {
  switch (type) {
    case ObjectType::node:
      return "node";
    case ObjectType::way:
      return "way";
    case ObjectType::relation:
      return "relation";
  }
  return {};
}

std::optional<ObjectType> parse_object_type(std::string_view text) {
  for (const ObjectType type : {ObjectType::node, ObjectType::way, ObjectType::relation}) {
    if (name(type) == text) return type;
  }
  return std::nullopt;
}

std::optional<double> gap_of(const wish::Certificate& certificate) {
  if (!certificate.bound) return std::nullopt;
  if (*certificate.bound == certificate.value) return 0;
  if (certificate.value <= 0) return std::nullopt;
  const double ratio =
      static_cast<double>(*certificate.bound) / static_cast<double>(certificate.value);
  return rounded(ratio - 1, 1e6);
}

double rounded(double value, double parts) {
  const double result = std::round(value * parts) / parts;
  return result == 0 ? 0 : result;  // never -0
}

int loop_file_format() {
  return loop_version;
}

}  // namespace loopwright::file
