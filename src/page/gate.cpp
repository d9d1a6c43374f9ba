#include "page/gate.hpp"

#include <openssl/crypto.h>
#include <openssl/rand.h>

#include <algorithm>
#include <array>
#include <utility>

#include "loopwright/base/error.hpp"
#include "loopwright/base/hex.hpp"
#include "loopwright/base/text.hpp"

namespace loopwright::page {
namespace {

/// Takes as long whatever differs.
bool same_secret(std::string_view a, std::string_view b) {
  return a.size() == b.size() && CRYPTO_memcmp(a.data(), b.data(), a.size()) == 0;
}

bool changes_something(Method method) {
  return method != Method::get && method != Method::head;
}

}  // namespace

std::string random_key() {
  std::array<unsigned char, 32> bytes{};
  if (RAND_bytes(bytes.data(), static_cast<int>(bytes.size())) != 1)
    throw InputError("the system gives no random numbers for a key; try again");
  return hex(bytes);
}

Gate::Gate(std::string key, std::string ticket, int port)
    : key_(std::move(key)),
      ticket_(std::move(ticket)),
      // Cookies don't tell ports apart, so two programs' cookies need two names.
      cookie_name_("loopwright-" + std::to_string(port)),
      port_(port) {}

std::string Gate::first_address() const {
  return "http://127.0.0.1:" + std::to_string(port_) + "/?key=" + key_;
}

bool Gate::is_here(const std::string& host) const {
  const std::string port = ":" + std::to_string(port_);
  return host == "127.0.0.1" + port || host == "localhost" + port;
}

bool Gate::has_ticket(const std::string& cookie) const {
  return std::ranges::any_of(split(cookie, ';'), [&](std::string_view part) {
    const auto equals = part.find('=');
    return equals != std::string_view::npos && part.substr(0, equals) == cookie_name_ &&
           same_secret(part.substr(equals + 1), ticket_);
  });
}

std::optional<Reply> Gate::trade(const Request& request) {
  const std::optional<Address> address = address_of(request.target);
  if (request.method != Method::get || !address || address->path != "/") return std::nullopt;
  const auto key = address->words.find("key");
  if (key == address->words.end() || !same_secret(key->second, key_)) return std::nullopt;
  const std::lock_guard lock(trading_);
  if (std::exchange(traded_, true)) return std::nullopt;
  Reply reply{.status = 303, .type = "text/plain; charset=utf-8", .body = "", .headers = {}};
  reply.headers["Location"] = "/";
  reply.headers["Set-Cookie"] =
      cookie_name_ + "=" + ticket_ + "; Path=/; HttpOnly; SameSite=Strict";
  return reply;
}

std::optional<Reply> Gate::refuses(const Request& request) {
  if (!is_here(request.host))
    return trouble(403, "this page answers on this computer only, by the address it printed");
  const bool from_here = request.origin == "http://" + request.host;
  if (!request.origin.empty() && !from_here) return trouble(403, "asked by another page");
  if (has_ticket(request.cookie)) {
    // What was typed or kept by the person at this computer ("none") may be read, and changes nothing.
    if (!request.fetch_site.empty() && request.fetch_site != "same-origin" &&
        request.fetch_site != "none")
      return trouble(403, "asked by another page");
    if (changes_something(request.method) && !from_here)
      return trouble(403, "asked by another page");
    return std::nullopt;
  }
  if (auto traded = trade(request)) return traded;
  constexpr std::string_view how =
      "This page needs its key: open the address that 'loopwright page' printed. It is good once, "
      "and until the browser "
      "is closed; then start 'loopwright page' again.";
  return request.target == "/" ? line_to_read(401, how) : trouble(401, how);
}

}  // namespace loopwright::page
