// A name that nobody else takes: a random UUID (RFC 9562, 5.4), in small letters.
#pragma once

#include <string>

namespace loopwright::book {

std::string random_name();

}  // namespace loopwright::book
