# The page as a stranger attacks it, as another reader decodes it, and as a person uses it. Without the page in the
# build (tools/page-parts) they are skipped.
if(NOT "command" IN_LIST rooms OR NOT EXISTS ${PROJECT_BINARY_DIR}/web/node_modules/ol/package.json)
  return()
endif()

set(page_parts ${PROJECT_BINARY_DIR}/page-tests)
# A test in a browser; what it told is left in build/browser, for tools/test to count.
function(add_browser_test name file)
  add_test(NAME ${name} COMMAND node --test --test-reporter tap --test-reporter-destination stdout --test-reporter tap
    --test-reporter-destination ${PROJECT_BINARY_DIR}/browser/${name}.tap ${CMAKE_CURRENT_LIST_DIR}/${file})
endfunction()
file(MAKE_DIRECTORY ${PROJECT_BINARY_DIR}/browser)

add_test(NAME fetch_page_parts COMMAND ${CMAKE_CURRENT_LIST_DIR}/fetch_parts ${page_parts})
set_tests_properties(fetch_page_parts PROPERTIES LABELS page FIXTURES_SETUP page_parts)
add_test(NAME page_gate COMMAND /usr/bin/python3 ${CMAKE_CURRENT_LIST_DIR}/test_gate.py $<TARGET_FILE:loopwright>)
add_test(NAME page_book COMMAND /usr/bin/python3 ${CMAKE_CURRENT_LIST_DIR}/test_book_routes.py $<TARGET_FILE:loopwright>)
add_test(NAME page_tiles COMMAND /usr/bin/python3 ${CMAKE_CURRENT_LIST_DIR}/test_tiles.py $<TARGET_FILE:loopwright> ${page_parts})
add_browser_test(page_browser test_browser.mjs)
add_browser_test(page_browser_book test_browser_book.mjs)
add_test(NAME page_first_run COMMAND /usr/bin/python3 ${CMAKE_CURRENT_LIST_DIR}/test_first_run.py $<TARGET_FILE:loopwright>)
add_browser_test(page_first_browser test_first_run.mjs)
add_test(NAME page_recorded COMMAND /usr/bin/python3 ${CMAKE_CURRENT_LIST_DIR}/test_recorded.py $<TARGET_FILE:loopwright>)
add_test(NAME page_noted_tiles COMMAND /usr/bin/python3 ${CMAKE_CURRENT_LIST_DIR}/test_noted_tiles.py $<TARGET_FILE:loopwright> ${page_parts})
add_test(NAME page_types
  COMMAND ${CMAKE_CURRENT_LIST_DIR}/check_types ${PROJECT_SOURCE_DIR}/src/page/web ${PROJECT_BINARY_DIR}/web)
set_tests_properties(page_gate page_tiles page_browser page_first_run page_first_browser page_recorded page_noted_tiles page_types PROPERTIES LABELS page COST 30 FIXTURES_REQUIRED page_parts
  ENVIRONMENT "PYTHONDONTWRITEBYTECODE=1;PROGRAM=$<TARGET_FILE:loopwright>;PARTS=${page_parts}")
set_tests_properties(page_book page_browser_book PROPERTIES LABELS page COST 30 FIXTURES_REQUIRED page_parts
  ENVIRONMENT "PYTHONDONTWRITEBYTECODE=1;PROGRAM=$<TARGET_FILE:loopwright>;PARTS=${page_parts}")
