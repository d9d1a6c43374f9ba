// Both threads take the next part that nobody has, so that they end together though rows differ in what they cost.
#include "loopwright/base/in_parts.hpp"

#include <algorithm>
#include <atomic>
#include <future>
#include <thread>

namespace loopwright {
namespace {

// Large enough that taking one costs nothing beside the work on it, small enough that the last one is soon done.
constexpr std::size_t part_rows = 256;

}  // namespace

void in_parts(std::size_t count, const std::function<void(std::size_t, std::size_t)>& work) {
  std::atomic<std::size_t> next = 0;
  const auto share = [&] {
    for (std::size_t first = 0; (first = next.fetch_add(part_rows)) < count;)
      work(first, std::min(first + part_rows, count));
  };
  const bool alone = count <= part_rows || std::thread::hardware_concurrency() < 2;
  // Deferred where no thread can be begun: then nothing is left for it. It is waited for even when this share throws.
  std::future<void> other;
  if (!alone) other = std::async(std::launch::async | std::launch::deferred, share);
  share();
  if (other.valid()) other.get();
}

}  // namespace loopwright
