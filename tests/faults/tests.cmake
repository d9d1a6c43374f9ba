# Faults from outside: killed, out of disk or memory, files cut under the program, odd clocks. Their long
# forms: tools/long faults.
if(NOT "command" IN_LIST rooms)
  return()
endif()

add_library(fault_shim MODULE ${CMAKE_CURRENT_LIST_DIR}/shim.cpp)
set_target_properties(fault_shim PROPERTIES PREFIX "" LIBRARY_OUTPUT_DIRECTORY ${PROJECT_BINARY_DIR}/tests)
target_link_libraries(fault_shim PRIVATE ${CMAKE_DL_LIBS})

foreach(fault IN ITEMS kills memory disk cut clock)
  add_test(NAME faults_${fault} COMMAND /usr/bin/python3 ${CMAKE_CURRENT_LIST_DIR}/test_${fault}.py
    ${PROJECT_BINARY_DIR} ${PROJECT_SOURCE_DIR}/maps/quillham.osm.pbf GB-ENG)
  set_tests_properties(faults_${fault} PROPERTIES LABELS faults COST 25 ENVIRONMENT PYTHONDONTWRITEBYTECODE=1)
endforeach()
