# Every public header compiles alone and twice: one source each, built as target `headers`.
# Here a glob is right: a header nobody listed is just the one to check.
file(GLOB_RECURSE public_headers CONFIGURE_DEPENDS RELATIVE ${PROJECT_SOURCE_DIR}/include
  ${PROJECT_SOURCE_DIR}/include/loopwright/*.hpp)
set(header_sources)
foreach(header IN LISTS public_headers)
  string(REPLACE ".hpp" ".cpp" source ${CMAKE_CURRENT_BINARY_DIR}/headers/${header})
  file(CONFIGURE OUTPUT ${source} CONTENT "#include \"${header}\"\n#include \"${header}\"\n")
  list(APPEND header_sources ${source})
endforeach()

add_library(headers OBJECT EXCLUDE_FROM_ALL ${header_sources})
target_include_directories(headers PRIVATE ${PROJECT_SOURCE_DIR}/include)
target_compile_options(headers PRIVATE -Werror -O0)  # nothing of them is ever run
target_link_libraries(headers PRIVATE loopwright_options)

add_test(NAME headers COMMAND ${CMAKE_COMMAND} --build ${PROJECT_BINARY_DIR} --target headers)
set_tests_properties(headers PROPERTIES LABELS headers COST 60 RESOURCE_LOCK build_folder)
