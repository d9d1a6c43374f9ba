#include "verbs.hpp"

#include <algorithm>
#include <iostream>
#include <streambuf>

#include "trial.hpp"

namespace loopwright::fuzz {
namespace {

/// Takes every letter and keeps none.
class Nowhere : public std::streambuf {
 protected:
  int_type overflow(int_type letter) override { return traits_type::not_eof(letter); }
  std::streamsize xsputn(const char*, std::streamsize count) override { return count; }
};

/// A stream is silent while this lives.
class Silent {
 public:
  explicit Silent(std::ostream& stream) : stream_(stream), before_(stream.rdbuf(&nowhere_)) {}
  ~Silent() { stream_.rdbuf(before_); }
  Silent(const Silent&) = delete;
  Silent& operator=(const Silent&) = delete;

 private:
  Nowhere nowhere_;
  std::ostream& stream_;
  std::streambuf* before_;
};

}  // namespace

void run_verb(const command::Arguments& words) {
  const auto verbs = command::verbs();
  const auto verb = std::find_if(verbs.begin(), verbs.end(), [&](const command::Verb& one) {
    return one.name == words.front();
  });
  require(verb != verbs.end());
  const Silent out(std::cout), err(std::cerr);
  refused([&] {
    try {
      verb->run({words.begin() + 1, words.end()});
    } catch (const Error& error) {
      require(error.exit_code() != Exit::false_claim || words.front() != "loops");
      throw;
    }
  });
}

}  // namespace loopwright::fuzz
