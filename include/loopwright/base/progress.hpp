// How long work tells how far it is. Called from the working thread, at most some hundred times;
// an empty function is allowed and means nobody watches.
#pragma once

#include <functional>
#include <string_view>

namespace loopwright {

/// stage: a few words ("reading roads"); done: 0 to 1 within that stage.
using Progress = std::function<void(std::string_view stage, double done)>;

inline void tell(const Progress& progress, std::string_view stage, double done) {
  if (progress) progress(stage, done);
}

}  // namespace loopwright
