# Writes which commit is being built as a C++ source, only when it differs from what is there.
#   cmake -DSOURCE=folder -DOUT=commit.cpp -P commit.cmake
# In a source archive commit.txt holds it (git put it in, by .gitattributes); in a repository git is asked; else it is
# unknown, and empty.
file(STRINGS "${SOURCE}/src/commit.txt" commit LIMIT_COUNT 1)
if(commit MATCHES "^.Format")
  set(commit "")
  find_program(git git)
  if(git AND EXISTS "${SOURCE}/.git")
    execute_process(COMMAND ${git} -C ${SOURCE} rev-parse HEAD OUTPUT_VARIABLE commit
      OUTPUT_STRIP_TRAILING_WHITESPACE ERROR_QUIET)
    execute_process(COMMAND ${git} -C ${SOURCE} diff-index --quiet HEAD RESULT_VARIABLE differs
      OUTPUT_QUIET ERROR_QUIET)
  endif()
endif()
string(SUBSTRING "${commit}" 0 12 commit)
if(differs EQUAL 1)
  string(APPEND commit " with changes")
endif()
set(code "#include \"commit.hpp\"\n\nstd::string_view loopwright::built_from() { return \"${commit}\"; }\n")
set(old "")
if(EXISTS "${OUT}")
  file(READ "${OUT}" old)
endif()
if(NOT code STREQUAL old)
  file(WRITE "${OUT}" "${code}")
endif()
