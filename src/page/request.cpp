#include "page/request.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>

namespace loopwright::page {
namespace {

constexpr std::size_t longest_target = 2000;

int digit_of(char c) {
  if (c >= '0' && c <= '9') return c - '0';
  if (c >= 'a' && c <= 'f') return c - 'a' + 10;
  if (c >= 'A' && c <= 'F') return c - 'A' + 10;
  return -1;
}

/// Of "4+Lantern%20Row"; empty for a broken escape.
std::optional<std::string> decoded(std::string_view text) {
  std::string plain;
  for (std::size_t k = 0; k < text.size(); ++k) {
    if (text[k] == '+') {
      plain += ' ';
    } else if (text[k] != '%') {
      plain += text[k];
    } else {
      if (k + 2 >= text.size()) return std::nullopt;
      const int high = digit_of(text[k + 1]), low = digit_of(text[k + 2]);
      if (high < 0 || low < 0) return std::nullopt;
      plain += static_cast<char>(high * 16 + low);
      k += 2;
    }
  }
  return plain;
}

bool is_plain_path(std::string_view path) {
  if (path.empty() || path.front() != '/') return false;
  if (path.find("..") != std::string_view::npos || path.find("//") != std::string_view::npos)
    return false;
  return std::ranges::all_of(path,
                             [](char c) { return c > ' ' && c < 127 && c != '%' && c != '\\'; });
}

}  // namespace

std::optional<Address> address_of(std::string_view target) {
  if (target.size() > longest_target) return std::nullopt;
  const std::size_t mark = std::min(target.find('?'), target.size());
  Address address{.path = std::string(target.substr(0, mark)), .words = {}};
  if (!is_plain_path(address.path)) return std::nullopt;
  std::string_view rest = target.substr(std::min(mark + 1, target.size()));
  while (!rest.empty()) {
    const std::string_view part = rest.substr(0, rest.find('&'));
    rest.remove_prefix(std::min(part.size() + 1, rest.size()));
    const std::size_t equals = std::min(part.find('='), part.size());
    const auto name = decoded(part.substr(0, equals));
    const auto value = decoded(part.substr(std::min(equals + 1, part.size())));
    if (!name || !value) return std::nullopt;
    address.words.try_emplace(*name, *value);
  }
  return address;
}

Reply json(std::string body) {
  return {.status = 200, .type = "application/json", .body = std::move(body), .headers = {}};
}

Reply line_to_read(int status, std::string_view line) {
  return {.status = status,
          .type = "text/plain; charset=utf-8",
          .body = std::string(line) + "\n",
          .headers = {}};
}

Reply not_so(std::string_view methods) {
  Reply reply = trouble(405, "not asked in this way");
  reply.headers["Allow"] = methods;
  return reply;
}

Reply trouble(int status, std::string_view line) {
  const nlohmann::json body{{"trouble", std::string(line)}};
  Reply reply = json(body.dump(-1, ' ', false, nlohmann::json::error_handler_t::replace) + "\n");
  reply.status = status;
  return reply;
}

}  // namespace loopwright::page
