// Which keys make an object worth a look by is_feature, so that a reader of millions of objects can
// pass over the plain ones without copying their tags.
#pragma once

#include <string_view>

namespace loopwright::mark {

/// False for a key that is_feature (rules.hpp) never decides by: an object all of whose keys are
/// such is no feature.
bool is_feature_key(std::string_view key);

}  // namespace loopwright::mark
