# What is installed, the manual, the shells' completions and the examples; tools/package tries the packages themselves.
foreach(test manual installed)
  add_test(NAME ${test} COMMAND ${CMAKE_CURRENT_LIST_DIR}/test_${test}.py ${PROJECT_BINARY_DIR} ${PROJECT_SOURCE_DIR})
  set_tests_properties(${test} PROPERTIES COST 15 ENVIRONMENT PYTHONDONTWRITEBYTECODE=1)
endforeach()
