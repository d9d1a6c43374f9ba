# What looks at a finished county from outside: its figures beside a real map's, and the truth that a
# build of it must find. Included by tools/CMakeLists.txt.
add_library(county_figures STATIC
  ${CMAKE_CURRENT_LIST_DIR}/figures.cpp
  ${CMAKE_CURRENT_LIST_DIR}/figures_read.cpp
  ${CMAKE_CURRENT_LIST_DIR}/figures_table.cpp)
target_include_directories(county_figures PUBLIC ${CMAKE_CURRENT_LIST_DIR}/..)
target_include_directories(county_figures SYSTEM PRIVATE ${OSMIUM_INCLUDE_DIR} ${PROTOZERO_INCLUDE_DIR})
target_link_libraries(county_figures PUBLIC loopwright_lib PRIVATE loopwright_options
  ZLIB::ZLIB BZip2::BZip2 EXPAT::EXPAT Threads::Threads ${LZ4_LIBRARY})
target_compile_definitions(county_figures PRIVATE OSMIUM_WITH_LZ4)

add_executable(compare-maps ${CMAKE_CURRENT_LIST_DIR}/compare_maps.cpp)
target_link_libraries(compare-maps PRIVATE county_figures loopwright_options CLI11::CLI11)
