// How names are compared: by a key that is the same for all ways of writing a name, and by how many
// slips of the finger lie between two keys.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace loopwright::place {

/// "St. Julian's Av" and "Saint Julians Avenue" as "saint julians avenue"; a leading "the" goes.
std::string key_of(std::string_view text);

/// Without spaces: what decides whether two names are the same ("ZQ14AA", "Pen-y-Lan").
std::string squeezed(std::string_view key);

/// Letters changed, added, left out, or two neighbours swapped, between two squeezed keys.
int edits_between(std::string_view a, std::string_view b);

/// How many edits a name of this key may be away and still be meant: one in every four letters of
/// the words that tell it from others, at most three.
int allowed_edits(std::string_view key);

/// True when `part` is some of the words of `key`, in their order and together.
bool is_part_of(std::string_view part, std::string_view key);

/// Every three characters in a row of the key between two spaces, each once, in order.
std::vector<std::string> trigrams(std::string_view key);

}  // namespace loopwright::place
