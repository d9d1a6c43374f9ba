// Method:
//   1. The head is read, and what is to become of the body is asked: held, written to a file, or not read.
//   2. A body for a file comes in pieces, each of which must come in time; what was written goes when it breaks off.
//   3. Another thread works out the answer, which is written here.
//   4. Who is refused while still sending is listened to for a moment: a connection that is closed with bytes unread
//      takes the reply with it (RFC 9112, 9.6).
#include "page/connection.hpp"

#include <chrono>
#include <exception>
#include <limits>

namespace loopwright::page {
namespace {

namespace net = boost::asio;
namespace beast = boost::beast;
namespace http = beast::http;
namespace fs = std::filesystem;
using Failure = boost::system::error_code;

constexpr std::uint32_t most_head_bytes = 16 * 1024;
constexpr std::uint64_t most_body_bytes = std::uint64_t{1024} * 1024;
constexpr std::chrono::seconds patience{15}, patience_with_refused{5};

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

Request head_of(const http::request<http::string_body>& message) {
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
          .length = {},
          .body = {},
          .file = {}};
}

bool is_disk_full(const Failure& failure) {
  namespace errc = boost::system::errc;
  return failure == errc::no_space_on_device || failure == errc::file_too_large ||
         failure.value() == EDQUOT;
}

void remove_file(fs::path& file) {
  std::error_code ignored;
  if (!file.empty()) fs::remove(file, ignored);
  file.clear();
}

/// "a megabyte", "256 megabytes"
std::string in_words(std::uint64_t bytes) {
  const std::uint64_t megabytes = bytes >> 20U;
  return megabytes == 1 ? "a megabyte" : std::to_string(megabytes) + " megabytes";
}

}  // namespace

Connection::Connection(net::ip::tcp::socket&& socket, Shared& shared)
    : stream_(std::move(socket)), shared_(shared), buffer_(most_head_bytes + most_body_bytes) {
  ++shared_.connections;
}

Connection::~Connection() {
  taken_.reset();  // closes the file
  remove_file(file_);
  --shared_.connections;
}

void Connection::read() {
  taken_.reset();
  head_only_ = false;
  held_.emplace();
  held_->header_limit(most_head_bytes);
  // Which limit holds is asked with the head. Beast 1.74 takes no limit at all for one of nothing.
  held_->body_limit(std::numeric_limits<std::uint64_t>::max());
  stream_.expires_after(patience);
  http::async_read_header(
      stream_, buffer_, *held_,
      [self = shared_from_this()](Failure failure, std::size_t) { self->has_head(failure); });
}

void Connection::has_head(Failure failure) {
  if (failure) return fail(failure);
  head_ = head_of(held_->get());
  if (const auto length = held_->content_length()) head_.length = *length;
  head_only_ = head_.method == Method::head;
  keep_ = held_->get().keep_alive();
  Taken taken;
  try {
    taken = shared_.deeds.intake(head_);
  } catch (const std::exception& error) {
    taken = trouble(500, error.what());
  }
  if (auto* reply = std::get_if<Reply>(&taken)) return refuse(std::move(*reply));
  if (const auto* intake = std::get_if<Intake>(&taken)) return take(*intake);
  hold();
}

void Connection::hold() {
  if (head_.length.value_or(0) > most_body_bytes)
    return refuse(trouble(413, "more than a megabyte at once"));
  held_->body_limit(most_body_bytes);
  stream_.expires_after(patience);
  http::async_read(stream_, buffer_, *held_,
                   [self = shared_from_this()](Failure failure, std::size_t) {
                     if (failure) return self->fail(failure);
                     self->head_.body = std::move(self->held_->get().body());
                     self->answer(std::move(self->head_));
                   });
}

void Connection::take(const Intake& intake) {
  if (head_.length.value_or(0) > intake.most_bytes)
    return refuse(trouble(413, "more than " + in_words(intake.most_bytes) + " at once"));
  taken_.emplace(std::move(*held_));
  taken_->body_limit(intake.most_bytes);
  Failure failure;
  taken_->get().body().open(intake.file.c_str(), beast::file_mode::write_new, failure);
  if (failure)
    return refuse(trouble(
        is_disk_full(failure) ? 507 : 500,
        intake.file.filename().string() + ": can't be written (" + failure.message() + ")"));
  file_ = intake.file;
  if (taken_->is_done()) return has_taken({});  // nothing comes
  take_more();
}

void Connection::take_more() {
  stream_.expires_after(patience);
  http::async_read_some(
      stream_, buffer_, *taken_,
      [self = shared_from_this()](Failure failure, std::size_t) { self->has_taken(failure); });
}

void Connection::has_taken(Failure failure) {
  if (!failure && !taken_->is_done()) return take_more();
  taken_->get().body().close();
  if (!failure) {
    head_.file = file_;
    return answer(std::move(head_));
  }
  remove_file(file_);
  if (is_disk_full(failure))
    return refuse(trouble(507, "the disk is full; make room, then try again"));
  fail(failure);
}

void Connection::fail(Failure failure) {
  if (failure == http::error::body_limit)
    return refuse(
        trouble(413, taken_ ? "more at once than is taken here" : "more than a megabyte at once"));
  if (failure == http::error::header_limit)
    return refuse(trouble(431, "the head of the request is too long"));
  const bool is_gone =
      failure.category() != http::make_error_code(http::error::bad_method).category();
  if (is_gone || failure == http::error::end_of_stream) return close();
  refuse(trouble(400, "no request that is understood here"));
}

void Connection::answer(Request request) {
  stream_.expires_never();
  bool takes_long = false;
  try {
    takes_long = shared_.deeds.takes_long(request);
  } catch (const std::exception&) {
    takes_long = false;  // `answer` will say what is wrong with it
  }
  net::post(takes_long ? shared_.long_ones : shared_.quick,
            [self = shared_from_this(), request = std::move(request)] {
              Reply reply = self->answered(request);
              net::post(self->stream_.get_executor(), [self, reply = std::move(reply)]() mutable {
                remove_file(self->file_);
                self->write(std::move(reply));
              });
            });
}

Reply Connection::answered(const Request& request) const {
  try {
    return shared_.deeds.answer(request);
  } catch (const std::exception& error) {
    return trouble(500, error.what());
  }
}

void Connection::refuse(Reply reply) {
  keep_ = false;
  unread_ = true;
  write(std::move(reply));
}

void Connection::write(Reply&& reply) {
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

void Connection::has_written(Failure failure) {
  if (failure) return close();
  if (keep_) return read();
  close();
  if (!unread_) return;
  stream_.expires_after(patience_with_refused);
  drain();
}

void Connection::close() {
  Failure ignored;
  stream_.socket().shutdown(net::ip::tcp::socket::shutdown_send, ignored);
}

void Connection::drain() {
  buffer_.clear();
  stream_.async_read_some(buffer_.prepare(most_head_bytes),
                          [self = shared_from_this()](Failure failure, std::size_t) {
                            if (!failure) self->drain();
                          });
}

}  // namespace loopwright::page
