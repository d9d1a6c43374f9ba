// Letters as people type them: small, without accents.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace loopwright::place {

/// "Tŷ-Gwyn, Cooper’s" as "ty gwyn  coopers": Latin letters small and without accents, apostrophes
/// gone, '&' as "and", other signs as spaces; letters of other scripts stay as they are.
std::string plain_letters(std::string_view text);

/// The characters of a UTF-8 text, each as its bytes; a byte that is no UTF-8 stands alone.
std::vector<std::string_view> characters(std::string_view text);

}  // namespace loopwright::place
