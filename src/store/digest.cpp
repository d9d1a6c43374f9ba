// XXH3 through libxxhash's streaming interface. Source of the byte order of an id: the "canonical
// representation" of xxhash.h, most significant byte first.
#include "store/digest.hpp"

#include <xxhash.h>

#include <algorithm>
#include <cassert>
#include <new>

namespace loopwright::store {

void Digest::Free::operator()(XXH3_state_s* state) const {
  XXH3_freeState(state);
}

Digest::Digest(Width width) : width_(width), state_(XXH3_createState()) {
  if (!state_) throw std::bad_alloc();
  width == Width::bits_64 ? XXH3_64bits_reset(state_.get()) : XXH3_128bits_reset(state_.get());
}

void Digest::add(const void* bytes, std::size_t count) {
  if (count == 0) return;  // an empty column has no address
  width_ == Width::bits_64 ? XXH3_64bits_update(state_.get(), bytes, count)
                           : XXH3_128bits_update(state_.get(), bytes, count);
}

std::uint64_t Digest::number() const {
  assert(width_ == Width::bits_64);
  return XXH3_64bits_digest(state_.get());
}

AreaId Digest::id() const {
  assert(width_ == Width::bits_128);
  XXH128_canonical_t canonical;
  XXH128_canonicalFromHash(&canonical, XXH3_128bits_digest(state_.get()));
  AreaId id;
  std::copy(std::begin(canonical.digest), std::end(canonical.digest), id.begin());
  return id;
}

std::uint64_t checksum_of(const void* bytes, std::size_t count) {
  return XXH3_64bits(bytes, count);
}

}  // namespace loopwright::store
