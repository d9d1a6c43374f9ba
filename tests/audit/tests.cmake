# Every claim of loops of random wishes, held against the raw map by a reader of its own (tools/audit);
# and the reader held against planted falsehoods. Maps, fixtures and npm's packages: real/tests.cmake.
if(NOT "command" IN_LIST rooms)
  return()
endif()

set(audit_folder ${CMAKE_CURRENT_LIST_DIR})
set(audit_environment PYTHONDONTWRITEBYTECODE=1 PYTHONPATH=${audit_folder}:${real_folder})

function(add_audit extract region loops)
  get_filename_component(town ${extract} NAME_WE)
  if(EXISTS ${extract} OR extract STREQUAL "${liechtenstein}")
    add_test(NAME audit_${town} COMMAND /usr/bin/python3 ${audit_folder}/test_random.py
      ${PROJECT_BINARY_DIR} ${extract} ${region} ${loops})
    set_tests_properties(audit_${town} PROPERTIES LABELS real COST 40
      FIXTURES_REQUIRED "liechtenstein;npm" ENVIRONMENT "${audit_environment}")
  endif()
endfunction()

add_audit(${liechtenstein} LI 60)
add_audit(${PROJECT_SOURCE_DIR}/maps/quillham.osm.pbf GB-ENG 40)
add_audit(${newport} GB-WLS 50)
add_audit(${leeds} GB-ENG 50)

add_test(NAME audit_falsehoods COMMAND /usr/bin/python3 ${audit_folder}/test_falsehoods.py
  ${PROJECT_BINARY_DIR} ${PROJECT_SOURCE_DIR}/maps/quillham.osm.pbf)
set_tests_properties(audit_falsehoods PROPERTIES LABELS real COST 30
  FIXTURES_REQUIRED npm ENVIRONMENT "${audit_environment}")
