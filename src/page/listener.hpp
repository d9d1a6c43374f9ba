// Answers HTTP on this computer's own address (127.0.0.1), and nowhere else.
//
//   Listener listener(0, answer);   listener.port();   listener.run();
//
// Rules: `answer` is called from several threads at once. A request's head may have 16 KiB, its body 1 MiB; who sends
// nothing, or too slowly, is cut off after 15 seconds, and beyond 256 connections new ones are closed at once. An
// exception of `answer` becomes a reply of 500 with its line.
// Why Boost.Beast: a slow or silent client costs a timer there, and no thread.
#pragma once

#include <functional>
#include <memory>

#include "page/request.hpp"

namespace loopwright::page {

class Listener {
 public:
  using Answer = std::function<Reply(const Request&)>;
  /// port: 0 takes a free one. Throws InputError when it can't be had.
  Listener(int port, Answer answer);
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
