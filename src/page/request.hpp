// What a browser asks of the page, and what it is told: plain data, without the network.
#pragma once

#include <cstdint>
#include <filesystem>
#include <map>
#include <optional>
#include <string>
#include <string_view>

namespace loopwright::page {

enum class Method : std::uint8_t { get, head, post, remove, other };

struct Request {
  Method method = Method::get;
  std::string target;  ///< as sent: "/tiles/15/16620/10404?at=2026-11-28T15:00"
  std::string host, origin, cookie;
  std::string fetch_site;  ///< Sec-Fetch-Site: "same-origin", "cross-site" …; empty when not sent
  std::optional<std::uint64_t> length = {};  ///< bytes of the body, when the head says
  std::string body;
  std::filesystem::path file = {};  ///< where the body is instead, when it was too large to be held
};

/// A target in parts.
struct Address {
  std::string path;  ///< "/tiles/15/16620/10404"
  std::map<std::string, std::string>
      words;  ///< after the '?', decoded; of one said twice the first counts
};
/// Empty for what is no target of a page here: not from '/', with control characters, "..", "//" or a backslash, escapes
/// in the path, broken escapes behind it, or more than 2,000 characters.
std::optional<Address> address_of(std::string_view target);

struct Reply {
  int status = 200;
  std::string type = "application/json";
  std::string body;
  std::map<std::string, std::string> headers;  ///< besides those that every reply has
};

/// A refusal or a failure in one line, as {"trouble": "…"}.
Reply trouble(int status, std::string_view line);
/// The same where a person reads the reply, and no script.
Reply line_to_read(int status, std::string_view line);
/// A refusal of the method, with those there are: "GET, HEAD" (RFC 9110, 15.5.6).
Reply not_so(std::string_view methods);
/// A body that is JSON.
Reply json(std::string body);

}  // namespace loopwright::page
