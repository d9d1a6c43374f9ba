// Who may ask the page anything: the browser that was handed the key, and nobody on whose page it merely is.
//
//   Gate gate(key, 8123);   if (auto refused = gate.refuses(request)) return *refused;
//
// Rules: the address that is printed holds a key that is good once: it is traded for a cookie, which is good as long as
// the program runs. A request must name this computer as its host, for a name that leads here from elsewhere is how a
// foreign page would get in (DNS rebinding); one that says where it comes from must come from the page itself; and one
// that changes anything must say so. 401: no key; 403: not from here. Sources: RFC 6265 (cookies), the Fetch standard
// (Origin), Fetch Metadata (Sec-Fetch-Site).
#pragma once

#include <mutex>
#include <optional>
#include <string>

#include "page/request.hpp"

namespace loopwright::page {

/// Hexadecimal of 32 random bytes of the system. Throws InputError when there are none.
std::string random_key();

class Gate {
 public:
  /// key, ticket: of random_key, not the same; port: where we listen.
  Gate(std::string key, std::string ticket, int port);

  /// The reply to a request that may not pass; none for one that may. Any thread may ask.
  [[nodiscard]] std::optional<Reply> refuses(const Request& request);

  /// "http://127.0.0.1:8123/?key=…"
  [[nodiscard]] std::string first_address() const;

 private:
  [[nodiscard]] bool is_here(const std::string& host) const;
  [[nodiscard]] bool has_ticket(const std::string& cookie) const;
  [[nodiscard]] std::optional<Reply> trade(const Request& request);

  std::string key_, ticket_, cookie_name_;
  int port_;
  std::mutex trading_;
  bool traded_ = false;
};

}  // namespace loopwright::page
