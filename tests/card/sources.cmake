target_sources(loopwright_test PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/test_area_report.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_certainty.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_exchange.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_ground.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_progress.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_text.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_timed.cpp)

# The approved exchange files, which test_exchange.cpp compares with ours, as other programs read
# them. Debian's python3, whose modules python3-gpxpy brings.
add_test(NAME card-outside-readers COMMAND /usr/bin/python3
  ${CMAKE_CURRENT_LIST_DIR}/outside_readers.py ${CMAKE_CURRENT_LIST_DIR}/gpx-1.1.xsd
  ${PROJECT_SOURCE_DIR}/tests/golden/town-drive.gpx
  ${PROJECT_SOURCE_DIR}/tests/golden/town-drive.geojson
  ${PROJECT_SOURCE_DIR}/tests/golden/town-lesson.ics)
set_tests_properties(card-outside-readers PROPERTIES LABELS golden)

add_test(NAME barred-card
  COMMAND ${CMAKE_CURRENT_LIST_DIR}/barred_card.py $<TARGET_FILE:loopwright>)
set_tests_properties(barred-card PROPERTIES LABELS unit)

add_test(NAME printed-pages
  COMMAND /usr/bin/python3 ${CMAKE_CURRENT_LIST_DIR}/printed_pages.py $<TARGET_FILE:loopwright>)
set_tests_properties(printed-pages PROPERTIES LABELS golden COST 15)
