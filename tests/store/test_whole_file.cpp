#include <fcntl.h>
#include <sys/file.h>
#include <sys/resource.h>
#include <sys/stat.h>

#include <catch2/catch.hpp>
#include <csignal>

#include "loopwright/base/error.hpp"
#include "loopwright/store/area.hpp"
#include "support/in_child.hpp"
#include "support/scratch_folder.hpp"

namespace loopwright {
namespace {

using test::ScratchFolder;

TEST_CASE("a text is written whole, an empty one too", "[store]") {
  const ScratchFolder folder;
  store::write_whole(folder / "card.txt", "");
  CHECK(std::filesystem::file_size(folder / "card.txt") == 0);
  store::write_whole(folder / "card.txt", "turn left\n");
  CHECK(test::read_bytes(folder / "card.txt") == "turn left\n");
}

TEST_CASE("a symbolic link stays one; the file behind it is replaced", "[store]") {
  const ScratchFolder folder;
  test::write_bytes(folder / "behind.txt", "old");
  std::filesystem::create_symlink("behind.txt", folder / "link.txt");
  store::write_whole(folder / "link.txt", "new");
  CHECK(std::filesystem::is_symlink(folder / "link.txt"));
  CHECK(test::read_bytes(folder / "behind.txt") == "new");
}

TEST_CASE("writing to a device writes to it and doesn't replace it", "[store]") {
  store::write_whole("/dev/null", "gone");
  struct stat about = {};
  REQUIRE(::stat("/dev/null", &about) == 0);
  CHECK(S_ISCHR(about.st_mode));
}

TEST_CASE("a file can't be written into a folder that isn't there", "[store]") {
  const ScratchFolder folder;
  const std::string file = (folder / "none/card.txt").string();
  CHECK_THROWS_WITH(
      store::write_whole(file, "x"),
      file + ": there is no folder " + (folder / "none").string() + "; make it first");
}

TEST_CASE("a file's name is no folder to write into", "[store]") {
  const ScratchFolder folder;
  test::write_bytes(folder / "card.txt", "");
  const std::string file = (folder / "card.txt/x.txt").string();
  CHECK_THROWS_WITH(store::write_whole(file, "x"), file + ": can't be written (Not a directory)");
}

TEST_CASE("a folder's name is no place to write a file", "[store]") {
  const ScratchFolder folder;
  CHECK_THROWS_WITH(store::write_whole(folder.path(), "x"),
                    folder.path().string() + ": is a folder; name a file in it");
}

TEST_CASE("a full disk is told", "[store]") {
  CHECK_THROWS_WITH(store::write_whole("/dev/full", "x"),
                    "/dev/full: can't be written (No space left on device)");
}

TEST_CASE("a file that can't be written to its end leaves the old one and nothing beside it",
          "[store]") {
  const ScratchFolder folder;
  test::write_bytes(folder / "card.txt", "old");
  const test::Ended ended = test::in_child([&folder] {
    std::signal(SIGXFSZ, SIG_IGN);
    const rlimit ten_bytes = {10, 10};
    ::setrlimit(RLIMIT_FSIZE, &ten_bytes);
    try {
      store::write_whole(folder / "card.txt", "turn left, then turn right\n");
    } catch (const InputError& error) {
      ::_exit(static_cast<int>(error.exit_code()));
    }
  });
  CHECK(ended.exit_code == 1);
  CHECK(test::read_bytes(folder / "card.txt") == "old");
  const auto files = std::filesystem::directory_iterator(folder.path());
  CHECK(std::distance(begin(files), end(files)) == 1);
}

TEST_CASE("what a killed writer left is deleted by the next; what is being written stays",
          "[store]") {
  const ScratchFolder folder;
  test::write_bytes(folder / "card.txt.999999-0.part", "turn le");
  test::write_bytes(folder / "card.txt.1-3.part", "being written");
  test::write_bytes(folder / "card.txt.mine.part", "somebody's own");
  test::write_bytes(folder / "other.txt.999999-0.part", "of another file");
  const int other = ::open((folder / "card.txt.1-3.part").c_str(), O_RDWR | O_CLOEXEC);
  REQUIRE(::flock(other, LOCK_EX | LOCK_NB) == 0);
  store::write_whole(folder / "card.txt", "turn left\n");
  ::close(other);
  CHECK(test::read_bytes(folder / "card.txt") == "turn left\n");
  CHECK_FALSE(std::filesystem::exists(folder / "card.txt.999999-0.part"));
  CHECK(test::read_bytes(folder / "card.txt.1-3.part") == "being written");
  CHECK(test::read_bytes(folder / "card.txt.mine.part") == "somebody's own");
  CHECK(test::read_bytes(folder / "other.txt.999999-0.part") == "of another file");
}

}  // namespace
}  // namespace loopwright
