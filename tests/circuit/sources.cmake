target_sources(loopwright_test PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/test_evaluate.cpp
  ${CMAKE_CURRENT_LIST_DIR}/made_problems.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_bound.cpp)

# A general solver to compare with.
find_path(CBC_INCLUDE_DIR coin/Cbc_C_Interface.h REQUIRED)
find_library(CBC_SOLVER_LIBRARY CbcSolver REQUIRED)
target_sources(loopwright_test PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/programme.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_small_exact.cpp)
target_include_directories(loopwright_test SYSTEM PRIVATE ${CBC_INCLUDE_DIR})
target_link_libraries(loopwright_test PRIVATE ${CBC_SOLVER_LIBRARY})

# Published orienteering instances, read from beside the checkout; their terms let nobody copy them here.
set(orienteering ${PROJECT_SOURCE_DIR}/../shared/bench/orienteering)
if(EXISTS ${orienteering}/best-known.tsv)
  target_sources(loopwright_test PRIVATE
    ${CMAKE_CURRENT_LIST_DIR}/orienteering.cpp
    ${CMAKE_CURRENT_LIST_DIR}/test_orienteering.cpp)
  set_source_files_properties(${CMAKE_CURRENT_LIST_DIR}/test_orienteering.cpp PROPERTIES
    COMPILE_DEFINITIONS LOOPWRIGHT_ORIENTEERING="${orienteering}")
  add_test(NAME orienteering COMMAND loopwright_test "the search reaches*")
  set_tests_properties(orienteering PROPERTIES LABELS real)
else()
  message(STATUS "Test orienteering is left out: no ${orienteering}/best-known.tsv")
endif()
