// Mapped files that somebody may change under us.
#pragma once

#include <sys/stat.h>

namespace loopwright::store {

/// Watches a mapped file from here on, until the object goes: a read that fails because it was cut or written
/// over ends the program with one line and exit 1 instead of a crash. Of more than sixteen files at once
/// those beyond aren't watched.
class Watched {
 public:
  /// Takes the descriptor, and closes it at the end. `about` is what fstat said of it before it was mapped.
  Watched(int descriptor, const struct stat& about);
  ~Watched();
  Watched(const Watched&) = delete;
  Watched& operator=(const Watched&) = delete;

 private:
  int descriptor_;
};

}  // namespace loopwright::store
