# The invented county's own tests: a binary of their own, for rooms don't know the tools.
add_executable(county_test
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
target_link_libraries(county_test PRIVATE county county_figures county_truth test_options test_main)
precompile_headers(county_test <catch2/catch.hpp>)
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
# One test a door of test_lessons.py, the longest of all: they begin first. Four doors by first answers only, which
# take a tenth; all by usual ones: tools/long lessons.
function(add_lessons door)
  string(REGEX REPLACE "^[0-9]+ ([A-Z][a-z]+).*" "lessons-\\1" test ${door})
  string(TOLOWER ${test} test)
  add_test(NAME ${test}
    COMMAND ${CMAKE_CURRENT_LIST_DIR}/test_met_lessons $<TARGET_FILE:loopwright> ${door} ${ARGN})
  set_tests_properties(${test} PROPERTIES LABELS slow TIMEOUT 1500 COST 100)
endfunction()
add_lessons("4 Lantern Row" --quick)
add_lessons("19 Cooper's Reach")
add_lessons("2 Mill Orchard" --quick)
add_lessons("61 Ostler Street" --quick)
add_lessons("8 Signal Terrace" --quick)
set(newport ${PROJECT_SOURCE_DIR}/../shared/maps/newport-2023.osm.pbf)
if(EXISTS ${newport})
  add_test(NAME county-figures COMMAND compare-maps ${PROJECT_SOURCE_DIR}/maps/quillham.osm.pbf
    ${newport} --box-b 51.51,-3.09,51.61,-2.91
    --reasons ${PROJECT_SOURCE_DIR}/maps/quillham-figures.txt)
  set_tests_properties(county-figures PROPERTIES LABELS real)
endif()
