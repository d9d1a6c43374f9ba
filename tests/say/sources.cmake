target_sources(loopwright_test PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/blind_driver.cpp
  ${CMAKE_CURRENT_LIST_DIR}/cards.cpp
  ${CMAKE_CURRENT_LIST_DIR}/eyes.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_any_drive.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_blind_driver.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_briefing.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_directions.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_distance.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_landmark.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_lane.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_manner.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_places.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_small_roads.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_words.cpp)
set_source_files_properties(${CMAKE_CURRENT_LIST_DIR}/test_blind_driver.cpp PROPERTIES
  COMPILE_DEFINITIONS LOOPWRIGHT_ROOT="${PROJECT_SOURCE_DIR}")

# The blind driver by himself: cards of random loops over whole maps.
add_executable(loopwright_cards
  ${CMAKE_CURRENT_LIST_DIR}/blind_driver.cpp
  ${CMAKE_CURRENT_LIST_DIR}/cards.cpp
  ${CMAKE_CURRENT_LIST_DIR}/drive_cards.cpp
  ${CMAKE_CURRENT_LIST_DIR}/eyes.cpp
  ${CMAKE_CURRENT_LIST_DIR}/../support/built_town.cpp
  ${CMAKE_CURRENT_LIST_DIR}/../support/drawn_town.cpp
  ${CMAKE_CURRENT_LIST_DIR}/../support/honest_loop.cpp)
target_link_libraries(loopwright_cards PRIVATE loopwright_lib test_options)
function(add_cards_test extract region)
  get_filename_component(town ${extract} NAME_WE)
  add_test(NAME cards_${town} COMMAND loopwright_cards ${extract} ${region} 50)
  set_tests_properties(cards_${town} PROPERTIES LABELS real COST 20 FIXTURES_REQUIRED "${ARGN}")
endfunction()
add_cards_test(${PROJECT_SOURCE_DIR}/maps/quillham.osm.pbf GB-ENG)
add_cards_test(${PROJECT_BINARY_DIR}/extracts/liechtenstein-2013-08-03.osm.pbf LI liechtenstein)
foreach(shared "newport-2023;GB-WLS" "leeds-york-street-2024;GB-ENG")
  list(GET shared 0 town)
  list(GET shared 1 region)
  set(extract ${PROJECT_SOURCE_DIR}/../shared/maps/${town}.osm.pbf)
  if(EXISTS ${extract})
    add_cards_test(${extract} ${region})
  endif()
endforeach()
