// Where this person's own files lie when no other place is named.
#pragma once

#include <cstdint>
#include <filesystem>

namespace loopwright::command {

enum class Folder : std::uint8_t { as_it_is, made };

/// The folder "loopwright" in the person's data folder ($XDG_DATA_HOME, else ~/.local/share); empty when neither it nor
/// HOME says where. made: for its owner alone, when it isn't there. Source: XDG Base Directory Specification 0.8.
std::filesystem::path data_folder(Folder folder);

}  // namespace loopwright::command
