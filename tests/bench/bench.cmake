# The small programs tools/bench times beside loopwright itself.
find_package(ZLIB REQUIRED)
find_package(BZip2 REQUIRED)
find_package(EXPAT REQUIRED)
find_package(Threads REQUIRED)
find_library(LZ4_LIBRARY lz4 REQUIRED)

add_executable(bare_read ${CMAKE_CURRENT_LIST_DIR}/bare_read.cpp)
target_compile_definitions(bare_read PRIVATE OSMIUM_WITH_LZ4)
target_link_libraries(bare_read PRIVATE loopwright_options
  ZLIB::ZLIB BZip2::BZip2 EXPAT::EXPAT Threads::Threads ${LZ4_LIBRARY})

add_executable(open_area ${CMAKE_CURRENT_LIST_DIR}/open_area.cpp)
target_link_libraries(open_area PRIVATE loopwright_lib loopwright_options)

add_executable(hours_rate ${CMAKE_CURRENT_LIST_DIR}/hours_rate.cpp)
target_link_libraries(hours_rate PRIVATE loopwright_lib loopwright_options)

add_executable(search_times
  ${CMAKE_CURRENT_LIST_DIR}/plain_sweep.cpp
  ${CMAKE_CURRENT_LIST_DIR}/search_times.cpp
  ${CMAKE_CURRENT_LIST_DIR}/wish_lines.cpp)
target_include_directories(search_times PRIVATE ${CMAKE_CURRENT_SOURCE_DIR})
target_include_directories(search_times SYSTEM PRIVATE ${Boost_INCLUDE_DIRS})
target_link_libraries(search_times PRIVATE loopwright_lib loopwright_options)

add_executable(query_times
  ${CMAKE_CURRENT_LIST_DIR}/query_times.cpp
  ${CMAKE_CURRENT_SOURCE_DIR}/trace/simulated.cpp)
target_include_directories(query_times PRIVATE ${CMAKE_CURRENT_SOURCE_DIR})
target_include_directories(query_times SYSTEM PRIVATE ${Boost_INCLUDE_DIRS})
target_link_libraries(query_times PRIVATE loopwright_lib loopwright_options)
