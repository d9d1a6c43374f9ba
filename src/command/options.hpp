// The options of one verb, as its file names them: what it takes of CLI11, and no more.
//
//   Options app{"Finds …", "loopwright near"};   app.add_option("--home", home, "the door")->required();
//   if (!parse(app, words)) return Exit::done;
//
// Rules: only options.cpp includes CLI11, a header that costs a compiler longer than most of a
// verb's own file. Every value is read as text; arguments.hpp turns texts into values.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "loopwright/command/command.hpp"

namespace loopwright::command {

/// One option of the command line. Each call returns the option itself.
class Option {
 public:
  virtual ~Option() = default;
  /// A command line without it is refused.
  virtual Option* required() = 0;
  /// A command line with both is refused.
  virtual Option* excludes(Option* other) = 0;
  /// Only the next word is its value, and it may be said again.
  virtual Option* one_value_each() = 0;
};

/// The options of one verb.
/// Rules: the values named in it must outlive it.
class Options {
 public:
  /// What the verb does and its name, as its help tells them.
  Options(std::string does, std::string name);
  ~Options();
  Options(const Options&) = delete;
  Options& operator=(const Options&) = delete;

  /// An option (or, without dashes, a word in its place) with one value; the value is left as it is
  /// when the option isn't given. The option lives as long as this does.
  Option* add_option(const std::string& name, std::string& value, const std::string& help);
  /// The same with several values.
  Option* add_option(const std::string& name, std::vector<std::string>& values,
                     const std::string& help);
  /// An option without a value: true when it is given.
  Option* add_flag(const std::string& name, bool& value, const std::string& help);
  /// What the help ends with.
  void footer(const std::string& text);

 private:
  friend bool parse(Options& app, const Arguments& words);
  struct Inside;
  std::unique_ptr<Inside> inside_;
};

/// Reads the words into the values. False when help was asked for; it is printed then. Throws
/// UsageError; or what it knows of the options, when the verb is asked to describe itself (described.hpp).
bool parse(Options& app, const Arguments& words);

}  // namespace loopwright::command
