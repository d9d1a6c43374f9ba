target_sources(loopwright_test PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/test_any_area.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_build_area.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_heights.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_memory.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_outline.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_pieces.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_restrictions.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_scan_map.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_turns.cpp)
set_source_files_properties(${CMAKE_CURRENT_LIST_DIR}/test_outline.cpp PROPERTIES
  COMPILE_DEFINITIONS LOOPWRIGHT_COUNTY="${PROJECT_SOURCE_DIR}/maps/quillham.osm.pbf")

# The module that reads elevation grids is built only where GDAL is.
if(TARGET loopwright_heights)
  target_sources(loopwright_test PRIVATE ${CMAKE_CURRENT_LIST_DIR}/test_height_grids.cpp)
  set_source_files_properties(${CMAKE_CURRENT_LIST_DIR}/test_height_grids.cpp PROPERTIES
    COMPILE_DEFINITIONS LOOPWRIGHT_HEIGHTS_MODULE="$<TARGET_FILE:loopwright_heights>")
  add_dependencies(loopwright_test loopwright_heights)
endif()
