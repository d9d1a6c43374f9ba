// What an area says of itself, as the lines "key=value" of its info section, and the name of its extract, which has
// a section of its own.
//
// Rules: the id is not among them (it is a hash over them). Unknown keys are ignored, missing ones
// are an InputError.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>

#include "loopwright/road/roads.hpp"

namespace loopwright::store {

std::string write_info(const road::AreaInfo& info);
std::string write_source(const road::AreaInfo& info);
/// Without the name of the extract. file: only used in messages.
road::AreaInfo read_info(std::string_view text, const std::filesystem::path& file);

}  // namespace loopwright::store
