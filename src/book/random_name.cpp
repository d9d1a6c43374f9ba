#include "book/random_name.hpp"

#include <random>

namespace loopwright::book {

std::string random_name() {
  static constexpr char digits[] = "0123456789abcdef";
  std::random_device random;
  std::uniform_int_distribution<std::size_t> digit(0, 15);
  std::string name;
  for (const int length : {8, 4, 4, 4, 12}) {
    if (!name.empty()) name += '-';
    for (int k = 0; k < length; ++k) name += digits[digit(random)];
  }
  name[14] = '4';  // version and variant of a random UUID
  name[19] = 'a';
  return name;
}

}  // namespace loopwright::book
