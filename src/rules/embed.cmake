# Writes a C++ source that holds the rule tables, so that the program needs no files beside it.
#   cmake -DOUT=file.cpp -DTABLES="a.txt;b.txt" -P embed.cmake
# The code is built by string(APPEND), never as a list: a list would eat the semicolons.
set(code "#include \"loopwright/base/table.hpp\"\n\n#include <stdexcept>\n#include <string>\n\n"
  "namespace loopwright {\n\nstd::string_view rule_text(std::string_view name) {\n")
string(JOIN "" code ${code})
foreach(table IN LISTS TABLES)
  get_filename_component(name "${table}" NAME_WE)
  file(READ "${table}" text)
  string(APPEND code "  if (name == \"${name}\") return R\"rules(${text})rules\";\n")
endforeach()
string(APPEND code "  throw std::logic_error(\"no rule table named \" + std::string(name));\n}\n\n"
  "}  // namespace loopwright\n")
file(WRITE "${OUT}" "${code}")
