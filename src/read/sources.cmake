target_sources(loopwright_lib PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/adjacency.cpp
  ${CMAKE_CURRENT_LIST_DIR}/assemble.cpp
  ${CMAKE_CURRENT_LIST_DIR}/build_area.cpp
  ${CMAKE_CURRENT_LIST_DIR}/components.cpp
  ${CMAKE_CURRENT_LIST_DIR}/cut_off.cpp
  ${CMAKE_CURRENT_LIST_DIR}/gathering.cpp
  ${CMAKE_CURRENT_LIST_DIR}/height_grids.cpp
  ${CMAKE_CURRENT_LIST_DIR}/old_hours.cpp
  ${CMAKE_CURRENT_LIST_DIR}/open_heights.cpp
  ${CMAKE_CURRENT_LIST_DIR}/reservation_gaps.cpp
  ${CMAKE_CURRENT_LIST_DIR}/restriction_tags.cpp
  ${CMAKE_CURRENT_LIST_DIR}/scan_map.cpp
  ${CMAKE_CURRENT_LIST_DIR}/select_roads.cpp
  ${CMAKE_CURRENT_LIST_DIR}/split_roads.cpp
  ${CMAKE_CURRENT_LIST_DIR}/turn_rules.cpp
  ${CMAKE_CURRENT_LIST_DIR}/turn_table.cpp
  ${CMAKE_CURRENT_LIST_DIR}/via_memory.cpp
  ${CMAKE_CURRENT_LIST_DIR}/via_walks.cpp
  # Last, so that the batches before stay what they are (LOOPWRIGHT_BATCHES).
  ${CMAKE_CURRENT_LIST_DIR}/outline.cpp
  ${CMAKE_CURRENT_LIST_DIR}/along_curve.cpp)

# Loaded only when elevation grids are given (read/heights.hpp says why); without GDAL it is not built.
find_package(GDAL 3.4 QUIET)
if(GDAL_FOUND)
  add_library(loopwright_heights MODULE ${CMAKE_CURRENT_LIST_DIR}/heights_gdal.cpp)
  target_link_libraries(loopwright_heights PRIVATE loopwright_options GDAL::GDAL)
  set_target_properties(loopwright_heights PROPERTIES PREFIX "" LIBRARY_OUTPUT_DIRECTORY ${PROJECT_BINARY_DIR})
endif()
