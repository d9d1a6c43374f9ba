// Reads the sources as they lie in the repository. LOOPWRIGHT_SOURCES is its root, by CMake.
#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <regex>
#include <sstream>
#include <stdexcept>

#include "layout/house.hpp"

namespace loopwright::test {
namespace {

using Complaints = std::vector<std::string>;

const std::filesystem::path root = LOOPWRIGHT_SOURCES;

std::string text_of(const std::filesystem::path& file) {
  std::ifstream in(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

House our_house() {
  return read_house(text_of(root / "tests/layout/rooms.txt"));
}

/// Every C++ source and header below a folder of the repository, by path.
std::vector<SourceFile> sources_below(std::string_view folder) {
  std::vector<SourceFile> files;
  for (const auto& entry : std::filesystem::recursive_directory_iterator(root / folder)) {
    const auto extension = entry.path().extension();
    if (extension != ".cpp" && extension != ".hpp") continue;
    files.push_back(
        {entry.path().lexically_relative(root).generic_string(), text_of(entry.path())});
  }
  std::sort(files.begin(), files.end(),
            [](const SourceFile& a, const SourceFile& b) { return a.path < b.path; });
  return files;
}

/// Complaints about one made-up file.
Complaints about(std::string path, std::string text) {
  return complaints_about(our_house(), {std::move(path), std::move(text)});
}

std::string repeated(std::size_t count, std::string_view line) {
  std::string text;
  for (std::size_t i = 0; i < count; ++i) text.append(line).append("\n");
  return text;
}

TEST_CASE("an empty file breaks no rule", "[layout]") {
  CHECK(about("src/proof/empty.cpp", "").empty());
}

TEST_CASE("a room may include itself, the library and the rooms it is allowed", "[layout]") {
  CHECK(about("src/proof/good.cpp",
              "#include \"loopwright/proof/proof.hpp\"\n#include \"proof/inner.hpp\"\n"
              "#include \"inner.hpp\"\n#include \"loopwright/wish/wish.hpp\"\n#include <vector>\n")
            .empty());
  CHECK(about("src/read/good.cpp", "#include <osmium/osm/way.hpp>\n").empty());
}

TEST_CASE("a proof that includes the search is reported", "[layout]") {
  CHECK(about("src/proof/bad.cpp", "\n#include \"loopwright/find/find.hpp\"\n") ==
        Complaints{"src/proof/bad.cpp:2: room proof may not include room find "
                   "(loopwright/find/find.hpp)"});
  CHECK(about("src/proof/bad.cpp", "#include \"loopwright/reach/reach.hpp\"\n").size() == 1);
  CHECK(about("src/proof/bad.cpp", " # include  \"loopwright/mark/draft.hpp\" // x\n").size() == 1);
}

TEST_CASE("another room's private header is reported", "[layout]") {
  CHECK(about("src/proof/bad.cpp", "#include \"find/plan.hpp\"\n") ==
        Complaints{"src/proof/bad.cpp:1: room proof may not include a private header of find "
                   "(find/plan.hpp)"});
}

TEST_CASE("a library in the wrong room is reported", "[layout]") {
  CHECK(about("src/mark/bad.cpp", "#include <osmium/osm/way.hpp>\n") ==
        Complaints{"src/mark/bad.cpp:1: room mark may not include this library "
                   "(osmium/osm/way.hpp)"});
  for (const char* header : {"protozero/pbf_reader.hpp", "boost/graph/adjacency_list.hpp",
                             "nlohmann/json.hpp", "CLI/CLI.hpp", "sys/mman.h", "unheard/of.hpp"}) {
    const std::string line = "#include <" + std::string(header) + ">\n";
    INFO(header);
    CHECK(about("src/road/bad.cpp", line).size() == 1);
    CHECK(about("src/wish/bad.cpp", line).size() == 1);
  }
}

TEST_CASE("a library in a public header is reported, even of the room that uses it", "[layout]") {
  CHECK(about("include/loopwright/read/bad.hpp", "#include <osmium/osm/way.hpp>\n") ==
        Complaints{"include/loopwright/read/bad.hpp:1: a public header may not include another "
                   "library (osmium/osm/way.hpp)"});
}

TEST_CASE("a folder that is no room is reported", "[layout]") {
  CHECK(about("src/attic/box.cpp", "int x;\n") ==
        Complaints{"src/attic/box.cpp: there is no room attic"});
}

TEST_CASE("a file, a main and a function that grew too long are reported", "[layout]") {
  CHECK(about("src/road/long.cpp", repeated(500, "// line")).empty());
  CHECK(about("src/road/long.cpp", repeated(501, "// line")) ==
        Complaints{"src/road/long.cpp: 501 lines, at most 500"});
  CHECK(about("src/main.cpp", repeated(61, "// line")) ==
        Complaints{"src/main.cpp: 61 lines, at most 60"});
  const std::string good = "int f() {\n" + repeated(58, "  g();") + "}\n";
  CHECK(about("src/road/f.cpp", good).empty());
  const std::string bad = "\nint f() {\n" + repeated(59, "  g();") + "}\n";
  CHECK(about("src/road/f.cpp", bad) ==
        Complaints{"src/road/f.cpp:2: a block of 61 lines, at most 60"});
}

TEST_CASE("a long function is reported whatever stands in or around it", "[layout]") {
  const std::string in_class =
      "class C {\n public:\n  void f(int a,\n         int b) {\n    if (a) {\n      g();\n"
      "    } else {\n      h();\n    }\n" +
      repeated(55, "    g();") + "  }\n};\n";
  CHECK(about("src/road/c.cpp", in_class) ==
        Complaints{"src/road/c.cpp:3: a block of 63 lines, at most 60"});
  const std::string space = "namespace a {\n" + repeated(90, "int x;") + "}  // namespace a\n";
  CHECK(about("src/road/n.cpp", space).empty());
  CHECK(about("src/road/s.cpp", "struct S {\n" + repeated(90, "  int x;") + "};\n").empty());
}

TEST_CASE("a row that rooms.txt doesn't know is an error", "[layout]") {
  CHECK_THROWS_AS(read_house("door | base | open"), std::logic_error);
}

TEST_CASE("no room reaches a room it must not see, not even through another", "[layout]") {
  const House house = our_house();
  REQUIRE(house.strangers.contains("proof"));
  for (const auto& [room, strangers] : house.strangers) {
    const Rooms reached = reached_from(house, room);
    for (const std::string& stranger : strangers) {
      INFO(room << " and " << stranger);
      CHECK_FALSE(reached.contains(stranger));
    }
  }
  const House leaky = read_house("room|a|b\nroom|b|c\nroom|c|");
  CHECK(reached_from(leaky, "a") == Rooms{"b", "c"});
}

TEST_CASE("data walks through the rooms in one direction", "[layout]") {
  const House house = our_house();
  for (const auto& [room, allowed] : house.may_include) {
    INFO(room);
    for (const std::string& other : allowed) CHECK(house.may_include.contains(other));
    CHECK_FALSE(reached_from(house, room).contains(room));
  }
}

TEST_CASE("every file of ours keeps the walls and the lengths of the house", "[layout]") {
  const House house = our_house();
  Complaints all;
  std::size_t count = 0;
  for (const char* folder : {"src", "include", "tests", "tools"}) {
    for (const SourceFile& file : sources_below(folder)) {
      const Complaints some = complaints_about(house, file);
      all.insert(all.end(), some.begin(), some.end());
      ++count;
    }
  }
  CHECK(count > 50);  // the sources were there to be read
  for (const std::string& complaint : all) FAIL_CHECK(complaint);
}

TEST_CASE("what a tool runs by its own name may be run", "[layout]") {
  const std::regex run(R"((?:^|exec )\s*(tests/[\w/.-]+)(?: |$))");
  int scripts = 0;
  for (const auto& tool : std::filesystem::directory_iterator(root / "tools")) {
    if (!tool.is_regular_file()) continue;
    std::istringstream text(text_of(tool.path()));
    std::smatch found;
    for (std::string line; std::getline(text, line);) {
      if (!std::regex_search(line, found, run)) continue;
      const auto script = std::filesystem::status(root / found[1].str());
      INFO(tool.path().filename().string() << ": " << line);
      CHECK((script.permissions() & std::filesystem::perms::owner_exec) !=
            std::filesystem::perms::none);
      ++scripts;
    }
  }
  CHECK(scripts > 10);
}

}  // namespace
}  // namespace loopwright::test
