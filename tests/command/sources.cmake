# The commands are tested as they are used: as a program with words and files.
add_test(NAME golden COMMAND ${CMAKE_SOURCE_DIR}/tests/golden/compare $<TARGET_FILE:loopwright>)
set_tests_properties(golden PROPERTIES LABELS golden)

add_test(NAME bad-input
  COMMAND ${CMAKE_CURRENT_LIST_DIR}/test_bad_input.py $<TARGET_FILE:loopwright>)
add_test(NAME along
  COMMAND ${CMAKE_CURRENT_LIST_DIR}/test_along.py $<TARGET_FILE:loopwright>)
add_test(NAME other-terms
  COMMAND ${CMAKE_CURRENT_LIST_DIR}/test_other_terms.py $<TARGET_FILE:loopwright>)
add_test(NAME notes
  COMMAND ${CMAKE_CURRENT_LIST_DIR}/test_notes.py $<TARGET_FILE:loopwright>)
add_test(NAME random-notes
  COMMAND ${CMAKE_CURRENT_LIST_DIR}/test_random_notes.py $<TARGET_FILE:loopwright>)
add_test(NAME wish-files
  COMMAND ${CMAKE_CURRENT_LIST_DIR}/test_wish_files.py $<TARGET_FILE:loopwright>)
