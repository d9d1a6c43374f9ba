# A school's book on a PostgreSQL server that each test starts for itself. Their long form: tools/long school.
if(NOT "command" IN_LIST rooms)
  return()
endif()

add_executable(school_clients ${CMAKE_CURRENT_LIST_DIR}/clients.cpp)
target_link_libraries(school_clients PRIVATE loopwright_lib test_options)
set_target_properties(school_clients PROPERTIES RUNTIME_OUTPUT_DIRECTORY ${PROJECT_BINARY_DIR}/tests)

add_test(NAME school_both_stores COMMAND /usr/bin/python3 ${CMAKE_CURRENT_LIST_DIR}/test_both_stores.py ${PROJECT_BINARY_DIR})
add_test(NAME school_who_sees COMMAND /usr/bin/python3 ${CMAKE_CURRENT_LIST_DIR}/test_who_sees.py ${PROJECT_BINARY_DIR}
  ${PROJECT_SOURCE_DIR}/maps/quillham.osm.pbf)
add_test(NAME school_faults COMMAND /usr/bin/python3 ${CMAKE_CURRENT_LIST_DIR}/test_faults.py ${PROJECT_BINARY_DIR})
add_test(NAME school_members COMMAND /usr/bin/python3 ${CMAKE_CURRENT_LIST_DIR}/test_members.py ${PROJECT_BINARY_DIR})
# How often handing in is killed.
add_test(NAME school_day_copy COMMAND /usr/bin/python3 ${CMAKE_CURRENT_LIST_DIR}/test_day_copy.py ${PROJECT_BINARY_DIR} 8)
# Where the page is in the build, also what it shows.
if(EXISTS ${PROJECT_BINARY_DIR}/web/node_modules/ol/package.json)
  set(browser_parts ${PROJECT_BINARY_DIR}/page-tests)
endif()
add_test(NAME school_night COMMAND /usr/bin/python3 ${CMAKE_CURRENT_LIST_DIR}/test_night.py ${PROJECT_BINARY_DIR}
  ${PROJECT_SOURCE_DIR}/maps/quillham.osm.pbf ${browser_parts})
# Clients, lessons, failovers.
add_test(NAME school_failover COMMAND /usr/bin/python3 ${CMAKE_CURRENT_LIST_DIR}/test_failover.py ${PROJECT_BINARY_DIR} 4 200 1
  ${PROJECT_BINARY_DIR}/school)
set_tests_properties(school_both_stores school_who_sees school_faults school_members school_day_copy school_night school_failover PROPERTIES LABELS school COST 20
  ENVIRONMENT PYTHONDONTWRITEBYTECODE=1)
if(browser_parts)
  set_tests_properties(school_night PROPERTIES FIXTURES_REQUIRED page_parts)
endif()
