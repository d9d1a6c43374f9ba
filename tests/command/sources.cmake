# The commands are tested as they are used: as a program with words and files.
# One test a verb, so that they run side by side; a glob, so that no verb's folder is forgotten.
file(GLOB golden_cases CONFIGURE_DEPENDS RELATIVE ${CMAKE_SOURCE_DIR}/tests/golden
  ${CMAKE_SOURCE_DIR}/tests/golden/*/*.txt)
set(golden_verbs)
foreach(case IN LISTS golden_cases)
  get_filename_component(verb ${case} DIRECTORY)
  list(APPEND golden_verbs ${verb})
endforeach()
list(REMOVE_DUPLICATES golden_verbs)
foreach(verb IN LISTS golden_verbs)
  add_test(NAME golden-${verb}
    COMMAND ${CMAKE_SOURCE_DIR}/tests/golden/compare $<TARGET_FILE:loopwright> ${verb}/)
  set_tests_properties(golden-${verb} PROPERTIES LABELS golden)
endforeach()
set_tests_properties(golden-loops PROPERTIES COST 70)
add_test(NAME told-in-readme
  COMMAND ${CMAKE_SOURCE_DIR}/tests/golden/told_in_readme $<TARGET_FILE:loopwright>)
set_tests_properties(told-in-readme PROPERTIES LABELS golden COST 20)

add_test(NAME bad-input
  COMMAND ${CMAKE_CURRENT_LIST_DIR}/test_bad_input.py $<TARGET_FILE:loopwright>)
add_test(NAME cut
  COMMAND ${CMAKE_CURRENT_LIST_DIR}/test_cut.py $<TARGET_FILE:loopwright>)
add_test(NAME along
  COMMAND ${CMAKE_CURRENT_LIST_DIR}/test_along.py $<TARGET_FILE:loopwright>)
add_test(NAME circling
  COMMAND ${CMAKE_CURRENT_LIST_DIR}/test_circling.py $<TARGET_FILE:loopwright>)
add_test(NAME other-terms
  COMMAND ${CMAKE_CURRENT_LIST_DIR}/test_other_terms.py $<TARGET_FILE:loopwright>)
add_test(NAME notes
  COMMAND ${CMAKE_CURRENT_LIST_DIR}/test_notes.py $<TARGET_FILE:loopwright>)
add_test(NAME random-notes
  COMMAND ${CMAKE_CURRENT_LIST_DIR}/test_random_notes.py $<TARGET_FILE:loopwright>)
set_tests_properties(random-notes PROPERTIES COST 60)
add_test(NAME wish-files
  COMMAND ${CMAKE_CURRENT_LIST_DIR}/test_wish_files.py $<TARGET_FILE:loopwright>)
add_test(NAME book
  COMMAND ${CMAKE_CURRENT_LIST_DIR}/test_book.py $<TARGET_FILE:loopwright>)
set_tests_properties(book PROPERTIES COST 40)
add_test(NAME at-home
  COMMAND ${CMAKE_CURRENT_LIST_DIR}/test_at_home.py $<TARGET_FILE:loopwright>)
add_test(NAME trace
  COMMAND /usr/bin/python3 ${CMAKE_CURRENT_LIST_DIR}/test_trace.py $<TARGET_FILE:loopwright>)
set_tests_properties(trace PROPERTIES ENVIRONMENT PYTHONDONTWRITEBYTECODE=1)
