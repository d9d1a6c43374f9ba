# Writes a C++ source that holds the rule tables, so that the program needs no files beside it.
#   cmake -DOUT=file.cpp -DTABLES="a.txt;b.txt" -P embed.cmake
set(code "#include \"loopwright/base/table.hpp\"\n#include <stdexcept>\n#include <string>\n"
  "namespace loopwright {\nstd::string_view rule_text(std::string_view name) {\n")
foreach(table IN LISTS TABLES)
  get_filename_component(name ${table} NAME_WE)
  file(READ ${table} text)
  list(APPEND code "  if (name == \"${name}\")\n    return R\"rules(${text})rules\";\n")
endforeach()
list(APPEND code "  throw std::logic_error(\"no rule table named \" + std::string(name));\n}\n}  // namespace loopwright\n")
string(JOIN "" code ${code})
file(WRITE ${OUT} "${code}")
