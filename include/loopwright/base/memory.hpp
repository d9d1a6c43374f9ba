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

/// Where the address space is limited (setrlimit), lets all threads take from one store: the C library would reserve 64 MB
/// for each, at moments nobody foresees. Call it before a library begins threads of its own.
void share_scarce_memory();

/// Begins a thread and waits for its end. Throws std::system_error when none can be begun.
void need_thread();

}  // namespace loopwright
