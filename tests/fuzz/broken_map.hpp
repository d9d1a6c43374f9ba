// A map that nobody should have drawn, made of bytes: what is in it is like a real map's, how it hangs
// together is left to chance.
//
//   const std::string opl = broken_map(bytes);
//
// The bytes are instructions. Each adds something: nodes in a small grid (some twice, some nowhere on
// earth), ways over nodes that may be missing, restrictions over ways that may be, rings of 10,000
// nodes, ways without length, relations that hold themselves, restriction after restriction through
// the same ways, hundreds of tags, values of any letters.
// Rules: the same bytes give the same text; at most one great ring, so that a run stays short.
// Format: OPL, osmcode.org/opl-file-format.
#pragma once

#include <string>

#include "bytes.hpp"

namespace loopwright::fuzz {

std::string broken_map(Bytes& bytes);

}  // namespace loopwright::fuzz
