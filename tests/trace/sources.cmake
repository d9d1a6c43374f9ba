target_sources(loopwright_test PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/test_match.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_progress.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_read_gpx.cpp)
set_source_files_properties(${CMAKE_CURRENT_LIST_DIR}/test_progress.cpp PROPERTIES
  INCLUDE_DIRECTORIES ${PROJECT_SOURCE_DIR}/src)

# Made-up drives over whole maps, held to where the car really was: a sample here, 500 by tools/long.
add_executable(loopwright_traces
  ${CMAKE_CURRENT_LIST_DIR}/drive_traces.cpp
  ${CMAKE_CURRENT_LIST_DIR}/simulated.cpp)
target_link_libraries(loopwright_traces PRIVATE loopwright_lib test_options)
function(add_traces_test extract region)
  get_filename_component(town ${extract} NAME_WE)
  add_test(NAME traces_${town} COMMAND loopwright_traces ${extract} ${region} 15)
  set_tests_properties(traces_${town} PROPERTIES LABELS real)
endfunction()
add_traces_test(${PROJECT_SOURCE_DIR}/maps/quillham.osm.pbf GB-ENG)
if(EXISTS ${PROJECT_SOURCE_DIR}/../shared/maps/newport-2023.osm.pbf)
  add_traces_test(${PROJECT_SOURCE_DIR}/../shared/maps/newport-2023.osm.pbf GB-WLS)
endif()
