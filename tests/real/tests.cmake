# Checks on real open maps, by independent programs. Liechtenstein is fetched once into the build
# folder; Newport and Leeds are used where the project's shared folder
# stands beside the checkout.
if(NOT "command" IN_LIST rooms)
  return()
endif()

add_executable(loopwright_dump ${CMAKE_CURRENT_LIST_DIR}/../support/dump.cpp)
target_link_libraries(loopwright_dump PRIVATE loopwright_lib loopwright_options)
add_executable(loopwright_places ${CMAKE_CURRENT_LIST_DIR}/../support/find_places.cpp)
target_link_libraries(loopwright_places PRIVATE loopwright_lib loopwright_options)

set(liechtenstein ${PROJECT_BINARY_DIR}/extracts/liechtenstein-2013-08-03.osm.pbf)
set(newport ${PROJECT_SOURCE_DIR}/../shared/maps/newport-2023.osm.pbf)
set(leeds ${PROJECT_SOURCE_DIR}/../shared/maps/leeds-york-street-2024.osm.pbf)
add_test(NAME fetch_liechtenstein
  COMMAND ${CMAKE_CURRENT_LIST_DIR}/fetch_extract liechtenstein ${liechtenstein})
set_tests_properties(fetch_liechtenstein PROPERTIES LABELS real FIXTURES_SETUP liechtenstein)

# /usr/bin/python3 is the interpreter that has Debian's modules.
function(add_real_test name extract region)
  get_filename_component(town ${extract} NAME_WE)
  add_test(NAME ${name}_${town}
    COMMAND /usr/bin/python3 ${real_folder}/test_${name}.py ${PROJECT_BINARY_DIR} ${extract}
            ${region})
  set_tests_properties(${name}_${town} PROPERTIES
    LABELS real COST 20 FIXTURES_REQUIRED liechtenstein ENVIRONMENT PYTHONDONTWRITEBYTECODE=1)
endfunction()

set(real_folder ${CMAKE_CURRENT_LIST_DIR})
add_real_test(forms ${liechtenstein} LI)
foreach(check IN ITEMS beginners counts kinds places rings shortest)
  add_real_test(${check} ${liechtenstein} LI)
  if(EXISTS ${newport})
    add_real_test(${check} ${newport} GB-WLS)
  endif()
endforeach()
if(EXISTS ${newport})
  add_real_test(listed_hours ${newport} GB-WLS)
endif()
if(EXISTS ${leeds})
  add_real_test(listed_hours ${leeds} GB-ENG)
  add_real_test(kinds ${leeds} GB-ENG)
endif()

# Wishes beside related ones, on each map and in its mirror.
function(add_related_test extract region side)
  get_filename_component(town ${extract} NAME_WE)
  add_test(NAME related_wishes_${town} COMMAND /usr/bin/python3
    ${real_folder}/test_related_wishes.py ${PROJECT_BINARY_DIR} ${extract} ${region} ${side})
  set_tests_properties(related_wishes_${town} PROPERTIES
    LABELS real COST 30 ENVIRONMENT PYTHONDONTWRITEBYTECODE=1)
endfunction()
add_related_test(${PROJECT_SOURCE_DIR}/maps/quillham.osm.pbf GB-ENG left)
if(EXISTS ${newport})
  add_related_test(${newport} GB-WLS left)
endif()
if(EXISTS ${leeds})
  add_related_test(${leeds} GB-ENG left)
endif()

# Wishes on the county with random tags.
add_test(NAME sprinkled COMMAND /usr/bin/python3 ${real_folder}/test_sprinkled.py
  ${PROJECT_BINARY_DIR} ${PROJECT_SOURCE_DIR}/maps/quillham.osm.pbf GB-ENG 12)
set_tests_properties(sprinkled PROPERTIES LABELS real COST 15 ENVIRONMENT PYTHONDONTWRITEBYTECODE=1)

# Hours and bank holidays against outside packages: two of npm's, fetched once, and KDE's reader.
set(npm_packages ${PROJECT_BINARY_DIR}/npm)
add_test(NAME fetch_npm COMMAND ${real_folder}/fetch_npm ${npm_packages})
set_tests_properties(fetch_npm PROPERTIES LABELS real FIXTURES_SETUP npm)
add_test(NAME holidays COMMAND /usr/bin/python3 ${real_folder}/test_holidays.py ${PROJECT_BINARY_DIR})
add_test(NAME hours_words
  COMMAND /usr/bin/python3 ${real_folder}/test_hours_words.py ${PROJECT_BINARY_DIR})
set_tests_properties(hours_words PROPERTIES LABELS real ENVIRONMENT PYTHONDONTWRITEBYTECODE=1)
find_package(KOpeningHours QUIET)
find_package(Qt5 QUIET COMPONENTS Core)
if(KOpeningHours_FOUND AND Qt5_FOUND)
  add_executable(hours_kde ${real_folder}/hours_kde.cpp)
  target_link_libraries(hours_kde PRIVATE KOpeningHours Qt5::Core)
  set_target_properties(hours_kde PROPERTIES POSITION_INDEPENDENT_CODE ON)
  add_test(NAME hours COMMAND /usr/bin/python3 ${real_folder}/test_hours.py ${PROJECT_BINARY_DIR})
  set_tests_properties(hours holidays PROPERTIES
    LABELS real FIXTURES_REQUIRED npm ENVIRONMENT PYTHONDONTWRITEBYTECODE=1)
else()
  message(STATUS "KOpeningHours isn't installed: hours aren't held against it (tools/install-packages test)")
endif()
