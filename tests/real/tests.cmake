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
  COMMAND ${CMAKE_CURRENT_LIST_DIR}/fetch_liechtenstein ${liechtenstein})
set_tests_properties(fetch_liechtenstein PROPERTIES LABELS real FIXTURES_SETUP liechtenstein)

# /usr/bin/python3 is the interpreter that has Debian's modules.
function(add_real_test name extract region)
  get_filename_component(town ${extract} NAME_WE)
  add_test(NAME ${name}_${town}
    COMMAND /usr/bin/python3 ${real_folder}/test_${name}.py ${PROJECT_BINARY_DIR} ${extract}
            ${region})
  set_tests_properties(${name}_${town} PROPERTIES
    LABELS real FIXTURES_REQUIRED liechtenstein ENVIRONMENT PYTHONDONTWRITEBYTECODE=1)
endfunction()

set(real_folder ${CMAKE_CURRENT_LIST_DIR})
add_real_test(forms ${liechtenstein} LI)
foreach(check IN ITEMS counts kinds places rings shortest wishes)
  add_real_test(${check} ${liechtenstein} LI)
  if(EXISTS ${newport})
    add_real_test(${check} ${newport} GB-WLS)
  endif()
endforeach()
if(EXISTS ${leeds})
  add_real_test(kinds ${leeds} GB-ENG)
  add_real_test(wishes ${leeds} GB-ENG)
endif()
