target_sources(loopwright_test PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/test_geojson.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_independent.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_ledger.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_lesson.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_notes_file.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_outline_file.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_read_answer.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_report.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_stops.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_write_answer.cpp)

# The approved notes file, which test_notes_file.cpp compares with ours, by our schema and another
# reader of schemas. Debian's python3, whose module python3-jsonschema brings.
if("command" IN_LIST rooms)
  add_test(NAME outside-notes COMMAND /usr/bin/python3
    ${CMAKE_CURRENT_LIST_DIR}/outside_notes.py ${PROJECT_SOURCE_DIR}/src/rules/notes.schema.json
    ${PROJECT_SOURCE_DIR}/tests/golden/sample-notes.geojson $<TARGET_FILE:loopwright>)
  set_tests_properties(outside-notes PROPERTIES LABELS golden)
endif()
