# Writes a C++ source that holds the page's files, so that the program needs none beside it.
#   cmake -DOUT=assets.cpp "-DFILES=/desk.js|text/javascript|/path/desk.js;…" -P embed.cmake
# The bytes are taken in by the assembler: a font as an array of numbers takes a compiler half a minute.
set(symbols "")
set(rows "")
set(number 0)
foreach(file IN LISTS FILES)
  string(REPLACE "|" ";" parts "${file}")
  list(GET parts 0 address)
  list(GET parts 1 type)
  list(GET parts 2 path)
  if(type MATCHES "^text/")
    string(APPEND type "; charset=utf-8")
  endif()
  string(APPEND symbols "asm(\".pushsection .rodata\\npage_file_${number}:\\n.incbin \\\"${path}\\\"\\npage_file_${number}_end:\\n.popsection\");\n"
    "extern \"C\" const char page_file_${number}[], page_file_${number}_end[];\n")
  string(APPEND rows "  if (path == \"${address}\")\n    return Asset{\"${type}\", {page_file_${number}, static_cast<std::size_t>(page_file_${number}_end - page_file_${number})}};\n")
  math(EXPR number "${number} + 1")
endforeach()
file(WRITE "${OUT}" "#include \"page/assets.hpp\"\n\n${symbols}\nnamespace loopwright::page {\n\nstd::optional<Asset> asset([[maybe_unused]] std::string_view path) {\n${rows}  return std::nullopt;\n}\n\n}  // namespace loopwright::page\n")
