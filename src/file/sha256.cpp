// OpenSSL's digest in one call; 32 bytes as lower-case hex.
#include <openssl/evp.h>

#include <array>
#include <stdexcept>

#include "loopwright/base/hex.hpp"
#include "loopwright/file/notes_file.hpp"

namespace loopwright::file {

std::string sha256_of(std::string_view bytes) {
  std::array<unsigned char, EVP_MAX_MD_SIZE> digest{};
  unsigned int size = 0;
  if (EVP_Digest(bytes.data(), bytes.size(), digest.data(), &size, EVP_sha256(), nullptr) != 1) {
    throw std::runtime_error("this system's OpenSSL has no SHA-256");
  }
  return hex({digest.data(), size});
}

}  // namespace loopwright::file
