// One connection of the listener: reads a request, has it answered, writes the reply, and again.
//
//   std::make_shared<Connection>(std::move(socket), shared)->read();
//
// Rules: it belongs to itself: it lives while a read, an answer or a write of it is under way.
#pragma once

#include <utility>  // before Boost.Asio 1.74, which needs it and doesn't say so

#include <atomic>
#include <boost/asio.hpp>
#include <boost/beast/core.hpp>
#include <boost/beast/http.hpp>
#include <filesystem>
#include <memory>
#include <optional>

#include "page/listener.hpp"

namespace loopwright::page {

/// What the connections of a listener share. Rules: in this order, for what is torn down first may hold the last
/// hand on a connection, and a connection counts itself and closes its socket.
struct Shared {
  Listener::Deeds deeds;
  std::atomic<int> connections{0};
  boost::asio::io_context io{1};
  boost::asio::thread_pool quick{4}, long_ones{4};
};

class Connection : public std::enable_shared_from_this<Connection> {
 public:
  Connection(boost::asio::ip::tcp::socket&& socket, Shared& shared);
  ~Connection();
  Connection(const Connection&) = delete;
  Connection& operator=(const Connection&) = delete;

  void read();

 private:
  using Failure = boost::system::error_code;
  template <class Body>
  using Parser = boost::beast::http::request_parser<Body>;

  void has_head(Failure failure);
  void hold();
  void take(const Intake& intake);
  void take_more();
  void has_taken(Failure failure);
  void fail(Failure failure);
  void answer(Request request);
  [[nodiscard]] Reply answered(const Request& request) const;
  void refuse(Reply reply);
  void write(Reply&& reply);
  void has_written(Failure failure);
  void close();
  void drain();

  boost::beast::tcp_stream stream_;
  Shared& shared_;
  boost::beast::flat_buffer buffer_;
  std::optional<Parser<boost::beast::http::string_body>> held_;
  std::optional<Parser<boost::beast::http::file_body>> taken_;
  std::filesystem::path file_;  ///< of `taken_`; empty: none
  Request head_;
  boost::beast::http::response<boost::beast::http::string_body> message_;
  std::optional<boost::beast::http::response_serializer<boost::beast::http::string_body>>
      serializer_;
  bool keep_ = false, head_only_ = false;
  bool unread_ = false;  ///< the client still sends a body that nobody wants
};

}  // namespace loopwright::page
