// The one line of what goes wrong, for comparing it whole.
#pragma once

#include <string>

#include "loopwright/base/error.hpp"

namespace loopwright::test {

/// What `act` throws of ours; empty when it throws nothing.
template <class Act>
std::string error_text(Act act) {
  try {
    act();
  } catch (const Error& error) {
    return error.what();
  }
  return {};
}

}  // namespace loopwright::test
