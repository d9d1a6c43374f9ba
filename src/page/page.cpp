#include "loopwright/page/page.hpp"

#include <mutex>
#include <optional>

#include "loopwright/base/error.hpp"
#include "page/assets.hpp"
#include "page/first_run.hpp"
#include "page/gate.hpp"
#include "page/listener.hpp"
#include "page/routes.hpp"
#include "page/takes_long.hpp"

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

/// What answers: the area's routes, or what comes before there is an area.
class Opened {
 public:
  explicit Opened(const Desk& desk) : desk_(desk) {
    std::error_code ignored;
    if (std::filesystem::exists(desk.area, ignored))
      open();
    else
      first_.emplace(desk);
  }

  Reply answer(const Request& request) {
    Routes* routes = ready();
    if (first_ && (routes == nullptr || is_first_runs(request))) return first_->answer(request);
    return routes->answer(request);
  }
  Taken intake(const Request& head) {
    Routes* routes = ready();
    if (first_ && (routes == nullptr || is_first_runs(head))) return first_->intake(head);
    return routes->intake(head);
  }

 private:
  void open() {
    area_ = desk_.open();
    routes_.emplace(*area_, desk_);
  }

  /// Once the first area is built it is opened; from then on it stays.
  Routes* ready() {
    const std::lock_guard lock(opening_);
    if (!routes_ && first_->is_built()) {
      try {
        open();
      } catch (const InputError& error) {
        first_->cannot_open(error.what());
      }
    }
    return routes_ ? &*routes_ : nullptr;
  }

  /// How far the building is may still be asked when it is done.
  static bool is_first_runs(const Request& request) {
    const auto address = address_of(request.target);
    return address && FirstRun::is_own(address->path);
  }

  const Desk& desk_;
  std::unique_ptr<OpenArea> area_;
  std::mutex opening_;
  std::optional<Routes> routes_;
  std::optional<FirstRun> first_;
};

}  // namespace

struct Page::Inside {
  explicit Inside(Desk on_desk)
      : desk(std::move(on_desk)),
        opened(desk),
        listener(desk.port, {.answer =
                                 [this](const Request& request) {
                                   if (auto refused = gate.refuses(request))
                                     return with_guards(std::move(*refused));
                                   return with_guards(opened.answer(request));
                                 },
                             .takes_long = takes_long,
                             .intake = [this](const Request& head) { return taken(head); }}),
        gate(random_key(), random_key(), listener.port()) {}

  /// Rules: nothing is written for who may not pass; all else is refused by `answer`.
  Taken taken(const Request& head) {
    if (head.method != Method::post) return {};
    if (auto refused = gate.refuses(head)) return with_guards(std::move(*refused));
    Taken taken = opened.intake(head);
    if (auto* refused = std::get_if<Reply>(&taken)) *refused = with_guards(std::move(*refused));
    return taken;
  }

  Desk desk;
  Opened opened;
  Listener listener;
  Gate gate;
};

Page::Page(const Desk& desk) {
  if (!asset("/"))
    throw InputError(
        "this program was built without the page: run tools/page-parts, then build it again");
  inside_ = std::make_unique<Inside>(desk);
}
Page::~Page() = default;

std::string Page::address() const {
  return inside_->gate.first_address();
}

void Page::run() {
  inside_->listener.run();
}

}  // namespace loopwright::page
