#include "loopwright/page/page.hpp"

#include "loopwright/base/error.hpp"
#include "page/assets.hpp"
#include "page/gate.hpp"
#include "page/listener.hpp"
#include "page/routes.hpp"

namespace loopwright::page {
namespace {

/// What every reply carries: nothing from elsewhere may be shown on the page, nothing of it may be framed, kept or
/// guessed at. Source: Content Security Policy Level 3; the OWASP list of secure headers.
Reply with_guards(Reply reply) {
  reply.headers["Content-Security-Policy"] =
      "default-src 'none'; script-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' "
      "data: blob:; font-src 'self'; "
      "connect-src 'self'; worker-src 'self' blob:; base-uri 'none'; form-action "
      "'none'; frame-ancestors 'self'";
  reply.headers["X-Content-Type-Options"] = "nosniff";
  reply.headers["Referrer-Policy"] = "no-referrer";
  reply.headers["Cross-Origin-Resource-Policy"] = "same-origin";
  reply.headers["Cache-Control"] = "no-store";
  return reply;
}

}  // namespace

struct Page::Inside {
  Inside(const road::Roads& roads, Desk on_desk)
      : desk(std::move(on_desk)),
        routes(roads, desk),
        listener(desk.port,
                 [this](const Request& request) {
                   if (auto refused = gate.refuses(request))
                     return with_guards(std::move(*refused));
                   return with_guards(routes.answer(request));
                 }),
        gate(random_key(), random_key(), listener.port()) {}

  Desk desk;
  Routes routes;
  Listener listener;
  Gate gate;
};

Page::Page(const road::Roads& roads, const Desk& desk) {
  if (!asset("/"))
    throw InputError(
        "this program was built without the page: run tools/page-parts, then build it again");
  inside_ = std::make_unique<Inside>(roads, desk);
}
Page::~Page() = default;

std::string Page::address() const {
  return inside_->gate.first_address();
}

void Page::run() {
  inside_->listener.run();
}

}  // namespace loopwright::page
