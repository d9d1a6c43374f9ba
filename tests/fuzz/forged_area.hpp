// An area file whose checksums are right and whose content isn't: as another program might write it.
//
// Rules: for the bytes of an area file in the format of src/store/layout.hpp; changes are of rows,
// columns by the number of their section.
#pragma once

#include <string>

#include "bytes.hpp"

namespace loopwright::fuzz {

/// Changes numbers in rows as the bytes say, then signs all again.
std::string forged_area(std::string area, Bytes& bytes);

}  // namespace loopwright::fuzz
