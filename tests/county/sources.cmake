# The invented county's own tests: a binary of their own, for rooms don't know the tools.
add_executable(county_test main.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_check.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_draw.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_figures.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_ground.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_grow.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_plan.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_rounds.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_spot.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_truth.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_turns.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_write_map.cpp)
target_include_directories(county_test PRIVATE ${CMAKE_CURRENT_SOURCE_DIR})
target_link_libraries(county_test PRIVATE county county_figures county_truth loopwright_options Catch2::Catch2)
add_test(NAME county COMMAND county_test)
set_tests_properties(county PROPERTIES LABELS unit)

add_test(NAME draw-county
  COMMAND ${CMAKE_CURRENT_LIST_DIR}/test_draw_county.py $<TARGET_FILE:draw-county>)
set_tests_properties(draw-county PROPERTIES LABELS unit)
add_test(NAME drawn-county
  COMMAND ${CMAKE_CURRENT_LIST_DIR}/test_drawn_county $<TARGET_FILE:draw-county>)
set_tests_properties(drawn-county PROPERTIES LABELS golden)
# What follows needs the whole program.
if(NOT "command" IN_LIST rooms)
  return()
endif()
add_test(NAME planted-county COMMAND ${CMAKE_CURRENT_LIST_DIR}/test_planted
  $<TARGET_FILE:loopwright> $<TARGET_FILE:draw-county> $<TARGET_FILE:check-truth>)
set_tests_properties(planted-county PROPERTIES LABELS golden)
add_test(NAME lessons COMMAND ${CMAKE_CURRENT_LIST_DIR}/test_met_lessons $<TARGET_FILE:loopwright>)
set_tests_properties(lessons PROPERTIES LABELS slow TIMEOUT 1500)
set(newport ${PROJECT_SOURCE_DIR}/../shared/maps/newport-2023.osm.pbf)
if(EXISTS ${newport})
  add_test(NAME county-figures COMMAND compare-maps ${PROJECT_SOURCE_DIR}/maps/quillham.osm.pbf
    ${newport} --box-b 51.51,-3.09,51.61,-2.91
    --reasons ${PROJECT_SOURCE_DIR}/maps/quillham-figures.txt)
  set_tests_properties(county-figures PROPERTIES LABELS real)
endif()
