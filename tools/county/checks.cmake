# What looks at a finished county from outside: its figures beside a real map's, and the truth that a
# build of it must find. Included by tools/CMakeLists.txt.
add_library(county_figures STATIC
  ${CMAKE_CURRENT_LIST_DIR}/figures.cpp
  ${CMAKE_CURRENT_LIST_DIR}/figures_read.cpp
  ${CMAKE_CURRENT_LIST_DIR}/figures_table.cpp)
target_include_directories(county_figures PUBLIC ${CMAKE_CURRENT_LIST_DIR}/..)
target_include_directories(county_figures SYSTEM PRIVATE ${OSMIUM_INCLUDE_DIR} ${PROTOZERO_INCLUDE_DIR})
target_link_libraries(county_figures PUBLIC loopwright_lib PRIVATE loopwright_options
  ZLIB::ZLIB BZip2::BZip2 EXPAT::EXPAT Threads::Threads)

add_library(county_truth STATIC
  ${CMAKE_CURRENT_LIST_DIR}/check_places.cpp
  ${CMAKE_CURRENT_LIST_DIR}/check_runs.cpp
  ${CMAKE_CURRENT_LIST_DIR}/check_table.cpp
  ${CMAKE_CURRENT_LIST_DIR}/truth.cpp
  ${CMAKE_CURRENT_LIST_DIR}/truth_besides.cpp
  ${CMAKE_CURRENT_LIST_DIR}/truth_junctions.cpp
  ${CMAKE_CURRENT_LIST_DIR}/truth_lanes.cpp
  ${CMAKE_CURRENT_LIST_DIR}/truth_net.cpp
  ${CMAKE_CURRENT_LIST_DIR}/truth_rings.cpp
  ${CMAKE_CURRENT_LIST_DIR}/truth_shape.cpp
  ${CMAKE_CURRENT_LIST_DIR}/truth_signs.cpp
  ${CMAKE_CURRENT_LIST_DIR}/truth_spots.cpp
  ${CMAKE_CURRENT_LIST_DIR}/truth_streets.cpp
  ${CMAKE_CURRENT_LIST_DIR}/truth_tags.cpp
  ${CMAKE_CURRENT_LIST_DIR}/truth_text.cpp)
target_link_libraries(county_truth PUBLIC county PRIVATE loopwright_options)

function(county_program name library)
  string(REPLACE "-" "_" source ${name})
  add_executable(${name} ${CMAKE_CURRENT_SOURCE_DIR}/county/${source}.cpp)
  target_link_libraries(${name} PRIVATE ${library} loopwright_options CLI11::CLI11)
  set_target_properties(${name} PROPERTIES RUNTIME_OUTPUT_DIRECTORY ${PROJECT_BINARY_DIR})
endfunction()
county_program(compare-maps county_figures)
county_program(check-truth county_truth)
