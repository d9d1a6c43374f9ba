// What a shell completes while a command is typed: verbs, deeds, options, kinds of practice, and words of which one is
// taken; for any other value the names of files.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "loopwright/command/description.hpp"

namespace loopwright::manual {

/// Kinds and what may follow them: "roundabout", "roundabout:left" …
using Kinds = std::vector<std::string>;

std::string bash_completion(std::span<const command::Description> verbs, const Kinds& kinds);
std::string zsh_completion(std::span<const command::Description> verbs, const Kinds& kinds);
std::string fish_completion(std::span<const command::Description> verbs, const Kinds& kinds);

/// Whatever has options: verbs without deeds, and the deeds of those that have some.
std::vector<command::Description> with_options(std::span<const command::Description> verbs);

/// Words with a blank between them.
std::string joined(std::span<const std::string> words);

/// Its lines with blanks between them.
std::string in_one_line(std::string text);

}  // namespace loopwright::manual
