# Faults from outside: killed, out of disk or memory, files cut under the program, odd clocks. Their long
# forms: tools/long faults.
if(NOT "command" IN_LIST rooms)
  return()
endif()

add_library(fault_shim MODULE ${CMAKE_CURRENT_LIST_DIR}/shim.cpp)
set_target_properties(fault_shim PROPERTIES PREFIX "" LIBRARY_OUTPUT_DIRECTORY ${PROJECT_BINARY_DIR}/tests)
target_link_libraries(fault_shim PRIVATE ${CMAKE_DL_LIBS})

set(county ${PROJECT_SOURCE_DIR}/maps/quillham.osm.pbf GB-ENG)
foreach(fault IN ITEMS kills memory disk cut clock)
  add_test(NAME faults_${fault} COMMAND /usr/bin/python3 ${CMAKE_CURRENT_LIST_DIR}/test_${fault}.py
    ${PROJECT_BINARY_DIR} ${county})
  set_tests_properties(faults_${fault} PROPERTIES LABELS faults COST 25 ENVIRONMENT PYTHONDONTWRITEBYTECODE=1)
endforeach()

# The same bytes whatever the threads; by another compiler's program: tools/long determinism.
add_test(NAME same_bytes
  COMMAND ${CMAKE_CURRENT_LIST_DIR}/test_same.py ${PROJECT_BINARY_DIR} ${county} county)
set_tests_properties(same_bytes PROPERTIES LABELS faults COST 25 ENVIRONMENT PYTHONDONTWRITEBYTECODE=1)
