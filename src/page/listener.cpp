// Method: one thread moves bytes and never waits; a few others work out answers. A connection belongs to itself: it
// lives while a read, an answer or a write of it is under way.
#include "page/listener.hpp"

#include <utility>  // before Boost.Asio 1.74, which needs it and doesn't say so

#include <atomic>
#include <boost/asio.hpp>
#include <boost/beast/core.hpp>
#include <boost/beast/http.hpp>
#include <chrono>
#include <exception>
#include <optional>

#include "loopwright/base/error.hpp"

namespace loopwright::page {
namespace {

namespace net = boost::asio;
namespace beast = boost::beast;
namespace http = beast::http;
using Failure = boost::system::error_code;
using Tcp = net::ip::tcp;

constexpr std::uint32_t most_head_bytes = 16 * 1024;
constexpr std::uint64_t most_body_bytes = std::uint64_t{1024} * 1024;
constexpr std::chrono::seconds patience{15};
constexpr int most_connections = 256;
constexpr std::size_t answering_threads = 4;

/// What the connections of a listener share. Rules: in this order, for what is torn down first may hold the last
/// hand on a connection, and a connection counts itself and closes its socket.
struct Shared {
  Listener::Answer answer;
  std::atomic<int> connections{0};
  net::io_context io{1};
  net::thread_pool workers{answering_threads};
};

Method method_of(http::verb verb) {
  switch (verb) {
    case http::verb::get:
      return Method::get;
    case http::verb::head:
      return Method::head;
    case http::verb::post:
      return Method::post;
    case http::verb::delete_:
      return Method::remove;
    default:
      return Method::other;
  }
}

Request request_of(http::request<http::string_body>&& message) {
  const auto text = [&](auto name) {
    const auto value = message[name];
    return std::string(value.data(), value.size());
  };
  return {.method = method_of(message.method()),
          .target = std::string(message.target().data(), message.target().size()),
          .host = text(http::field::host),
          .origin = text(http::field::origin),
          .cookie = text(http::field::cookie),
          .fetch_site = text("Sec-Fetch-Site"),
          .body = std::move(message.body())};
}

class Connection : public std::enable_shared_from_this<Connection> {
 public:
  Connection(Tcp::socket&& socket, Shared& shared) : stream_(std::move(socket)), shared_(shared) {
    ++shared_.connections;
  }
  ~Connection() { --shared_.connections; }
  Connection(const Connection&) = delete;
  Connection& operator=(const Connection&) = delete;

  void read() {
    parser_.emplace();
    parser_->header_limit(most_head_bytes);
    parser_->body_limit(most_body_bytes);
    stream_.expires_after(patience);
    http::async_read(
        stream_, buffer_, *parser_,
        [self = shared_from_this()](Failure failure, std::size_t) { self->has_read(failure); });
  }

 private:
  void has_read(Failure failure) {
    if (!failure) return answer();
    if (failure == http::error::body_limit) return refuse(413, "more than a megabyte at once");
    if (failure == http::error::header_limit)
      return refuse(431, "the head of the request is too long");
    const bool is_gone =
        failure.category() != http::make_error_code(http::error::bad_method).category();
    if (is_gone || failure == http::error::end_of_stream) return close();
    refuse(400, "no request that is understood here");
  }

  void answer() {
    head_only_ = parser_->get().method() == http::verb::head;
    keep_ = parser_->get().keep_alive();
    stream_.expires_never();
    net::post(
        shared_.workers, [self = shared_from_this(), request = request_of(parser_->release())] {
          Reply reply = self->answered(request);
          net::post(self->stream_.get_executor(),
                    [self, reply = std::move(reply)]() mutable { self->write(std::move(reply)); });
        });
  }

  Reply answered(const Request& request) const {
    try {
      return shared_.answer(request);
    } catch (const std::exception& error) {
      return trouble(500, error.what());
    }
  }

  void refuse(int status, std::string_view line) {
    keep_ = false;
    head_only_ = false;
    write(trouble(status, line));
  }

  void write(Reply&& reply) {
    message_ = {};
    message_.version(11);
    message_.result(static_cast<unsigned>(reply.status));
    message_.set(http::field::content_type, reply.type);
    for (const auto& [name, value] : reply.headers) message_.set(name, value);
    message_.keep_alive(keep_);
    message_.content_length(reply.body.size());
    if (!head_only_) message_.body() = std::move(reply.body);
    stream_.expires_after(patience);
    serializer_.emplace(message_);
    serializer_->split(head_only_);
    const auto written = [self = shared_from_this()](Failure failure, std::size_t) {
      self->has_written(failure);
    };
    if (head_only_) {
      http::async_write_header(stream_, *serializer_, written);
    } else {
      http::async_write(stream_, *serializer_, written);
    }
  }

  void has_written(Failure failure) {
    if (failure || !keep_) return close();
    read();
  }

  void close() {
    Failure ignored;
    stream_.socket().shutdown(Tcp::socket::shutdown_send, ignored);
  }

  beast::tcp_stream stream_;
  Shared& shared_;
  beast::flat_buffer buffer_{most_head_bytes + most_body_bytes};
  std::optional<http::request_parser<http::string_body>> parser_;
  http::response<http::string_body> message_;
  std::optional<http::response_serializer<http::string_body>> serializer_;
  bool keep_ = false, head_only_ = false;
};

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

Listener::Listener(int port, Answer answer) : inside_(std::make_unique<Inside>()) {
  inside_->shared.answer = std::move(answer);
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
  inside_->shared.workers.stop();
  inside_->shared.workers.join();
}

}  // namespace loopwright::page
