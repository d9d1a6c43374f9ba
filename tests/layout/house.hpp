// The rules of the house as a test can read them: walls between rooms, and how long files and
// functions may get.
//
//   for (const std::string& complaint : complaints_about(house, file)) FAIL(complaint);
//
// Rules: a file's room is the folder it lies in, src/<room>/ or include/loopwright/<room>/; files
// elsewhere are only measured. A block is what a line holding nothing but '}' closes, from the last
// line indented as it: every function ends so in code laid out by clang-format, and classes,
// lambdas and namespaces don't.
#pragma once

#include <cstddef>
#include <map>
#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace loopwright::test {

using Rooms = std::set<std::string, std::less<>>;

struct House {
  std::map<std::string, Rooms, std::less<>> may_include;  ///< by room
  std::map<std::string, Rooms, std::less<>> strangers;    ///< by room
  std::map<std::string, Rooms, std::less<>> headers;      ///< rooms by start of header
  std::map<std::string, std::size_t, std::less<>> lines;  ///< most lines, by file
  std::size_t most_file_lines = 0;
  std::size_t most_block_lines = 0;
};

/// Reads rooms.txt. Throws std::logic_error for a row it doesn't know.
House read_house(std::string_view text);

struct SourceFile {
  std::string path;  ///< from the repository's root, with '/'
  std::string text;
};

/// What the house's rules have against a file, a line each: "src/proof/x.cpp:7: …".
std::vector<std::string> complaints_about(const House& house, const SourceFile& file);

/// Rooms that a room reaches through those it may include.
Rooms reached_from(const House& house, std::string_view room);

}  // namespace loopwright::test
