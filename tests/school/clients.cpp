// Instructors who log lessons at once: what stands behind the test of failovers.
//
//   school_clients ADDRESS CLIENTS LESSONS
//
// Client k logs LESSONS lessons of the pupil "C<k>", which is there. A line is written for each that the book has taken,
// only then, by the text that the lesson says of itself; a second column is the milliseconds it took. Exit code 1: a
// client had to give up.
#include <atomic>
#include <chrono>
#include <cstdlib>
#include <exception>
#include <iostream>
#include <mutex>
#include <string>
#include <thread>
#include <vector>

#include "book/sample.hpp"
#include "loopwright/book/book.hpp"
#include "loopwright/book/lessons.hpp"

namespace {

using namespace loopwright;
using Clock = std::chrono::steady_clock;

std::mutex output;
std::atomic<bool> all_well = true;

void tell(const std::string& line, std::ostream& to) {
  const std::lock_guard lock(output);
  to << line << std::endl;
}

void log_lessons(const std::string& address, int client, int lessons) {
  try {
    book::Book book = book::Book::open(address, book::Opening::must_be_there);
    const std::string code = "C" + std::to_string(client);
    const book::Plan plan = test::plan_of_two_passes();
    book::Log log = test::log_of_two_passes();
    for (int n = 1; n <= lessons; ++n) {
      log.said = code + "-" + std::to_string(n);
      const auto start = Clock::now();
      book::add_driven_lesson(book, code, plan, log);
      const std::chrono::duration<double, std::milli> took = Clock::now() - start;
      tell(log.said + " " + std::to_string(took.count()), std::cout);
    }
  } catch (const std::exception& error) {
    tell(error.what(), std::cerr);
    all_well = false;
  }
}

}  // namespace

int main(int count, char** words) {
  if (count != 4) return 2;
  std::vector<std::thread> clients;
  for (int client = 0; client < std::atoi(words[2]); ++client)
    clients.emplace_back(log_lessons, words[1], client, std::atoi(words[3]));
  for (std::thread& one : clients) one.join();
  return all_well ? 0 : 1;
}
