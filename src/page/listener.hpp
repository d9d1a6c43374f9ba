// Answers HTTP on this computer's own address (127.0.0.1), and nowhere else.
//
//   Listener listener(0, {answer, takes_long, intake});   listener.port();   listener.run();
//
// Rules: the deeds are called from several threads at once. A request's head may have 16 KiB, its body 1 MiB, or what
// an intake says; who sends nothing, or too slowly, is cut off after 15 seconds, and beyond 256 connections new ones are
// closed at once. An exception of `answer` becomes a reply of 500 with its line.
// Why Boost.Beast: a slow or silent client costs a timer there, and no thread.
#pragma once

#include <cstdint>
#include <filesystem>
#include <functional>
#include <memory>
#include <variant>

#include "page/request.hpp"

namespace loopwright::page {

/// Where a body goes that is too large to be held.
struct Intake {
  std::filesystem::path file;  ///< a new one; deleted after the answer, unless that took it away
  std::uint64_t most_bytes = 0;
};
/// What is done with a body before any of it is read: held, written to a file, or not read at all.
using Taken = std::variant<std::monostate, Intake, Reply>;

class Listener {
 public:
  struct Deeds {
    std::function<Reply(const Request&)> answer;
    /// True for a request that waits for another program: it is answered beside those that don't, so that however many
    /// wait the map goes on being drawn.
    std::function<bool(const Request&)> takes_long;
    /// Asked with the head of each request; quick, for all connections wait meanwhile.
    std::function<Taken(const Request& head)> intake;
  };
  /// port: 0 takes a free one. Throws InputError when it can't be had.
  Listener(int port, Deeds deeds);
  ~Listener();
  Listener(const Listener&) = delete;
  Listener& operator=(const Listener&) = delete;

  [[nodiscard]] int port() const;
  /// Answers until the program is asked to end (SIGINT, SIGTERM, SIGHUP); once.
  void run();

 private:
  struct Inside;
  std::unique_ptr<Inside> inside_;
};

}  // namespace loopwright::page
