#include <sys/resource.h>

#include <catch2/catch.hpp>
#include <chrono>
#include <csignal>
#include <cstdlib>
#include <iostream>

#include "loopwright/base/error.hpp"
#include "loopwright/store/area.hpp"
#include "store/tiny_area.hpp"
#include "support/in_child.hpp"
#include "support/scratch_folder.hpp"

namespace loopwright {
namespace {

using namespace std::chrono_literals;

TEST_CASE("an area file cut short while in use ends with one line and exit 1", "[store]") {
  const test::ScratchFolder folder;
  const auto file = folder / "n.area";
  store::write_area(file, test::tiny_tables(), test::tiny_info());
  const test::Ended ended = test::in_child([&file] {
    const store::Area area = store::open_area(file);
    std::filesystem::resize_file(file, 0);
    const volatile std::int64_t read_back = area.roads().nodes[1].osm_id;
    static_cast<void>(read_back);
  });
  CHECK(ended.exit_code == 1);
  CHECK(ended.said ==
        "loopwright: the area file was cut short while in use; "
        "build it again with 'loopwright build'\n");
}

TEST_CASE("what is read of an area that is written over meanwhile doesn't count", "[store]") {
  const test::ScratchFolder folder;
  const auto file = folder / "n.area";
  store::write_area(file, test::tiny_tables(), test::tiny_info());
  const test::Ended ended = test::in_child([&file, &folder] {
    const store::Area area = store::open_area(file);
    store::need_unchanged();
    store::write_whole(folder / "before.txt", "before");
    std::filesystem::last_write_time(file, std::filesystem::file_time_type::clock::now() + 1h);
    try {
      store::write_whole(folder / "after.txt", "after");
    } catch (const InputError& error) {
      std::cerr << error.what();
      ::_exit(static_cast<int>(error.exit_code()));
    }
  });
  CHECK(ended.exit_code == 1);
  CHECK(ended.said == "the area file was changed while in use; give the command again");
  CHECK(std::filesystem::exists(folder / "before.txt"));
  CHECK_FALSE(std::filesystem::exists(folder / "after.txt"));
}

TEST_CASE("a fault of ours isn't put down to an area that is as it was", "[store]") {
  const test::ScratchFolder folder;
  const auto file = folder / "n.area";
  store::write_area(file, test::tiny_tables(), test::tiny_info());
  const test::Ended ended = test::in_child([&file] {
    const rlimit no_core = {0, 0};
    ::setrlimit(RLIMIT_CORE, &no_core);
    // As in the program: what catches signals for Catch2, or for a sanitizer, isn't there.
    for (const int fault : {SIGFPE, SIGABRT}) std::signal(fault, SIG_DFL);
    const store::Area area = store::open_area(file);
    ::raise(SIGFPE);
    std::abort();
  });
  CHECK(ended.exit_code == -1);
}

}  // namespace
}  // namespace loopwright
