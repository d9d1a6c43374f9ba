// Asks for room before a library is called that ends the program when it gets none.
//
//   need_memory(128 << 20);   // Pango may begin
//
// Reason: GLib, Fontconfig and GDAL stop with a message of their own, or crash, where ours should say
// one line and exit 1. Asking first leaves a gap (another thread may take the room), but a small one.
#pragma once

#include <cstddef>

namespace loopwright {

/// Takes so many bytes of address space and gives them back at once; none is touched, so it costs
/// next to nothing. Throws std::bad_alloc when they can't be had.
void need_memory(std::size_t bytes);

/// Begins a thread and waits for its end. Throws std::system_error when none can be begun.
void need_thread();

}  // namespace loopwright
