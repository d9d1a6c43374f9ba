# What `cmake --install` puts where, in three parts: program, heights (the module of elevation grids, which brings
# GDAL) and development (headers and library for programs of others: find_package(loopwright), tools/examples).
include(GNUInstallDirs)
include(CMakePackageConfigHelpers)
set(manual ${PROJECT_BINARY_DIR}/manual)
# Debian's zsh looks for what packages bring in a folder of its own.
if(CMAKE_INSTALL_PREFIX STREQUAL "/usr")
  set(zsh_folder zsh/vendor-completions)
else()
  set(zsh_folder zsh/site-functions)
endif()
install(TARGETS loopwright RUNTIME COMPONENT program)
install(FILES ${manual}/loopwright DESTINATION ${CMAKE_INSTALL_DATADIR}/bash-completion/completions COMPONENT program)
install(FILES ${manual}/_loopwright DESTINATION ${CMAKE_INSTALL_DATADIR}/${zsh_folder} COMPONENT program)
install(FILES ${manual}/loopwright.fish DESTINATION ${CMAKE_INSTALL_DATADIR}/fish/vendor_completions.d COMPONENT program)
install(DIRECTORY ${manual}/ DESTINATION ${CMAKE_INSTALL_MANDIR}/man1 COMPONENT program FILES_MATCHING PATTERN "*.1.gz")
install(FILES ${PROJECT_SOURCE_DIR}/README.md DESTINATION ${CMAKE_INSTALL_DOCDIR} COMPONENT program)
# The invented county, to try all of it on.
install(FILES ${PROJECT_SOURCE_DIR}/maps/quillham.osm.pbf DESTINATION ${CMAKE_INSTALL_DOCDIR}/examples COMPONENT program)

# Where the program looks for it from its own folder (command/build.cpp).
if(TARGET loopwright_heights)
  install(TARGETS loopwright_heights LIBRARY DESTINATION lib/loopwright/modules COMPONENT heights)
endif()

install(DIRECTORY ${PROJECT_SOURCE_DIR}/include/loopwright DESTINATION ${CMAKE_INSTALL_INCLUDEDIR} COMPONENT development)
install(TARGETS loopwright_lib EXPORT loopwright ARCHIVE COMPONENT development
        INCLUDES DESTINATION ${CMAKE_INSTALL_INCLUDEDIR})
# Names and lines of a trace make it six times as large; whoever installs stripped (CPack, --strip) does without.
install(CODE "
  if(CMAKE_INSTALL_DO_STRIP)
    execute_process(COMMAND \"${CMAKE_STRIP}\" --strip-debug --enable-deterministic-archives
      \"\$ENV{DESTDIR}\${CMAKE_INSTALL_PREFIX}/${CMAKE_INSTALL_LIBDIR}/$<TARGET_FILE_NAME:loopwright_lib>\" COMMAND_ERROR_IS_FATAL ANY)
  endif()" COMPONENT development)
set(config_folder ${CMAKE_INSTALL_LIBDIR}/cmake/loopwright)
install(EXPORT loopwright FILE loopwright-targets.cmake NAMESPACE loopwright:: DESTINATION ${config_folder}
        COMPONENT development)
write_basic_package_version_file(${PROJECT_BINARY_DIR}/loopwright-config-version.cmake COMPATIBILITY ExactVersion)
install(FILES ${PROJECT_SOURCE_DIR}/src/loopwright-config.cmake
              ${PROJECT_BINARY_DIR}/loopwright-config-version.cmake
        DESTINATION ${config_folder} COMPONENT development)
# The sources of the examples, and not a second copy of them in the package of the program.
install(DIRECTORY ${PROJECT_SOURCE_DIR}/tools/examples/ DESTINATION ${CMAKE_INSTALL_DATADIR}/doc/libloopwright-dev/examples
        COMPONENT development)
