// Outputs that a person looked at once, kept in tests/golden and compared to the byte.
//
//   check_golden("town-card.txt", card::write_text(roads, answer, loop));
//
// Rules: on a difference the new text is left in golden/ of the build folder; after looking at it,
// tools/approve takes it over.
#pragma once

#include <string>
#include <string_view>

namespace loopwright::test {

void check_golden(std::string_view name, const std::string& text);

}  // namespace loopwright::test
