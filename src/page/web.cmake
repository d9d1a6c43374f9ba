# The page's files, bundled and built in. What they are made of comes from npm and is fetched by tools/page-parts, so
# that a build without the network is one without the page: the command says so.
set(web ${CMAKE_CURRENT_LIST_DIR}/web)
set(web_parts ${PROJECT_BINARY_DIR}/web/node_modules)
file(GLOB web_scripts CONFIGURE_DEPENDS ${web}/*.ts)
set(page_assets ${CMAKE_CURRENT_BINARY_DIR}/page_assets.cpp)
set(page_files "")
if(EXISTS ${web_parts}/ol/package.json)
  foreach(script desk first)
    set(bundled ${PROJECT_BINARY_DIR}/web/${script}.js)
    add_custom_command(OUTPUT ${bundled}
      COMMAND ${CMAKE_COMMAND} -E env NODE_PATH=${web_parts} ${web_parts}/.bin/esbuild ${web}/${script}.ts
              --bundle --minify --target=es2022 --charset=utf8 --log-level=warning --outfile=${bundled}
      DEPENDS ${web_scripts} VERBATIM)
    list(APPEND page_scripts ${bundled})
    list(APPEND page_files "/${script}.js|text/javascript|${bundled}")
  endforeach()
  find_file(PAGE_FONT Lato-Regular.ttf PATHS /usr/share/fonts/truetype/lato NO_DEFAULT_PATH REQUIRED)
  find_file(PAGE_FONT_BOLD Lato-Bold.ttf PATHS /usr/share/fonts/truetype/lato NO_DEFAULT_PATH REQUIRED)
  list(APPEND page_files "/|text/html|${web}/index.html" "/first.html|text/html|${web}/first.html" "/desk.css|text/css|${web}/desk.css"
    "/book.css|text/css|${web}/book.css"
    "/fonts/regular.ttf|font/ttf|${PAGE_FONT}" "/fonts/bold.ttf|font/ttf|${PAGE_FONT_BOLD}")
endif()
add_custom_command(OUTPUT ${page_assets}
  COMMAND ${CMAKE_COMMAND} -DOUT=${page_assets} "-DFILES=${page_files}" -P ${web}/embed.cmake
  DEPENDS ${web}/embed.cmake ${web}/index.html ${web}/first.html ${web}/desk.css ${web}/book.css ${page_scripts} VERBATIM)
set_source_files_properties(${page_assets} PROPERTIES SKIP_UNITY_BUILD_INCLUSION ON
  OBJECT_DEPENDS "${web}/index.html;${web}/first.html;${web}/desk.css;${web}/book.css;${page_scripts}")
target_sources(loopwright_lib PRIVATE ${page_assets})
