// Method: one thread moves bytes and never waits; a few others work out answers, and a few more wait for programs.
#include "page/listener.hpp"

#include "page/connection.hpp"

#include <chrono>

#include "loopwright/base/error.hpp"

namespace loopwright::page {
namespace {

namespace net = boost::asio;
using Failure = boost::system::error_code;
using Tcp = net::ip::tcp;

constexpr int most_connections = 256;

}  // namespace

struct Listener::Inside {
  Shared shared;
  Tcp::acceptor acceptor{shared.io};
  net::signal_set signals{shared.io, SIGINT, SIGTERM, SIGHUP};
  net::steady_timer breath{shared.io};

  void accept() {
    acceptor.async_accept([this](Failure failure, Tcp::socket socket) {
      if (failure == net::error::operation_aborted) return;
      if (failure) {
        // Out of descriptors: one may be free a little later.
        breath.expires_after(std::chrono::milliseconds(100));
        return breath.async_wait([this](Failure) { accept(); });
      }
      if (shared.connections < most_connections)
        std::make_shared<Connection>(std::move(socket), shared)->read();
      accept();
    });
  }
};

Listener::Listener(int port, Deeds deeds) : inside_(std::make_unique<Inside>()) {
  inside_->shared.deeds = std::move(deeds);
  const Tcp::endpoint here(net::ip::address_v4::loopback(), static_cast<std::uint16_t>(port));
  try {
    inside_->acceptor.open(here.protocol());
    inside_->acceptor.set_option(net::socket_base::reuse_address(true));
    inside_->acceptor.bind(here);
    inside_->acceptor.listen();
  } catch (const boost::system::system_error& error) {
    throw InputError("127.0.0.1:" + std::to_string(port) + ": can't answer there (" +
                     error.code().message() + "); give another --port, or none for a free one");
  }
}

Listener::~Listener() = default;

int Listener::port() const {
  return inside_->acceptor.local_endpoint().port();
}

void Listener::run() {
  inside_->signals.async_wait([this](Failure failure, int) {
    if (!failure) inside_->shared.io.stop();
  });
  inside_->accept();
  inside_->shared.io.run();
  // Whoever answers uses what the caller owns, and is done before this returns.
  for (net::thread_pool* pool : {&inside_->shared.quick, &inside_->shared.long_ones}) pool->stop();
  for (net::thread_pool* pool : {&inside_->shared.quick, &inside_->shared.long_ones}) pool->join();
}

}  // namespace loopwright::page
