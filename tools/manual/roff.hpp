// Text as a manual's page wants it: man(7).
#pragma once

#include <string>
#include <string_view>

namespace loopwright::manual {

/// Plain text, every character as it is; no line begins with what would be a request.
std::string roff(std::string_view text);

/// A paragraph of Markdown: `code` and **strong** in bold, [text](address) as text (address).
std::string roff_of_markdown(std::string_view text);

std::string bold(std::string_view text);
std::string italic(std::string_view text);

}  // namespace loopwright::manual
