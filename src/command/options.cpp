#include "command/options.hpp"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <deque>
#include <iostream>
#include <sstream>
#include <string_view>
#include <utility>

#include "command/choices.hpp"
#include "command/described.hpp"
#include "command/folded.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/base/text.hpp"

namespace loopwright::command {

namespace {

/// A help text with its long lines folded at blanks, what goes on under the column of the texts.
std::string folded_help(const std::string& help) {
  constexpr std::size_t width = 80, column = 30;  // CLI11 sets the texts of options in by 30
  std::string folded;
  std::istringstream lines(help);
  for (std::string whole; std::getline(lines, whole);) {
    std::string_view line = whole;
    const std::size_t set_in = line.starts_with("  ") ? column : 0;
    std::string hang;
    while (bytes_of(line, width - hang.size()) < line.size()) {
      const std::size_t cut = line.rfind(' ', bytes_of(line, width - hang.size()));
      if (cut == line.npos || (hang.empty() && cut <= set_in)) break;
      folded.append(hang).append(line.substr(0, cut)).append("\n");
      line.remove_prefix(cut + 1);
      hang.assign(set_in, ' ');
    }
    folded.append(hang).append(line).append("\n");
  }
  return folded;
}

/// Whether its value names a kind of practice, as its help puts it.
bool is_of_a_kind(std::string_view help) {
  return help.find("a kind") != std::string_view::npos ||
         help.find("the kind,") != std::string_view::npos || help.starts_with("what to practise");
}

OptionDescription description_of(const CLI::Option& option) {
  OptionDescription of;
  of.in_place = option.get_positional();
  if (of.in_place) of.names.push_back(option.get_name(true));
  for (const std::string& name : option.get_snames()) of.names.push_back("-" + name);
  for (const std::string& name : option.get_lnames()) of.names.push_back("--" + name);
  of.help = option.get_description();
  for (const CLI::Option* other : option.get_excludes())
    of.excludes.push_back(other->get_name());  // with its dashes, if it has some
  of.required = option.get_required();
  of.repeated = option.get_expected_max() > 1;
  of.choices = choices_in(of.help);
  of.value = option.get_expected_max() == 0 ? ValueOf::nothing
             : !of.choices.empty()          ? ValueOf::choice
             : is_of_a_kind(of.help)        ? ValueOf::kind
                                            : ValueOf::text;
  return of;
}

Described described(const CLI::App& app) {
  Described told;
  told.description.does = app.get_description();
  told.description.footer = app.get_footer();
  for (const CLI::Option* option : app.get_options())
    told.description.options.push_back(description_of(*option));
  return told;
}

class OptionOfCli : public Option {
 public:
  explicit OptionOfCli(CLI::Option* of) : of_(of) {}
  Option* required() override {
    of_->required();
    return this;
  }
  Option* excludes(Option* other) override {
    of_->excludes(static_cast<OptionOfCli*>(other)->of_);  // all of them are made below
    return this;
  }
  Option* one_value_each() override {
    of_->allow_extra_args(false);
    return this;
  }

 private:
  CLI::Option* of_;
};

}  // namespace

struct Options::Inside {
  Inside(std::string does, std::string name) : app(std::move(does), std::move(name)) {}
  CLI::App app;
  std::deque<OptionOfCli> options;  // what add_… returned stays where it is

  Option* keep(CLI::Option* option) { return &options.emplace_back(option); }
};

Options::Options(std::string does, std::string name)
    : inside_(std::make_unique<Inside>(std::move(does), std::move(name))) {}
Options::~Options() = default;

Option* Options::add_option(const std::string& name, std::string& value, const std::string& help) {
  return inside_->keep(inside_->app.add_option(name, value, help));
}

Option* Options::add_option(const std::string& name, std::vector<std::string>& values,
                            const std::string& help) {
  return inside_->keep(inside_->app.add_option(name, values, help));
}

Option* Options::add_flag(const std::string& name, bool& value, const std::string& help) {
  return inside_->keep(inside_->app.add_flag(name, value, help));
}

void Options::footer(const std::string& text) {
  inside_->app.footer(text);
}

namespace {

/// An option that is said with nothing in it would be taken for one that isn't said.
void need_no_empty(const CLI::App& app) {
  for (const CLI::Option* option : app.get_options()) {
    if (option->get_positional() || option->get_expected_max() == 0) continue;
    for (const std::string& value : option->results())
      if (trim(value).empty())
        throw UsageError(option->get_name() +
                         " is empty: say behind it what it is, or leave it out");
  }
}

/// CLI11 names them from the last to the first.
std::string not_expected(const CLI::App& app) {
  const std::vector<std::string> words = app.remaining();
  std::string text = words.size() == 1 ? "The following argument was not expected:"
                                       : "The following arguments were not expected:";
  for (const std::string& word : words) text += " " + word;
  return text;
}

}  // namespace

bool parse(Options& options, const Arguments& words) {
  CLI::App& app = options.inside_->app;
  if (is_asked(words)) throw described(app);
  Arguments reversed(words.rbegin(), words.rend());  // the order CLI11 takes
  try {
    app.parse(reversed);
  } catch (const CLI::CallForHelp&) {
    std::cout << folded_help(app.help());
    return false;
  } catch (const CLI::ParseError& error) {
    const bool extra = dynamic_cast<const CLI::ExtrasError*>(&error) != nullptr;
    std::string text = extra ? not_expected(app) : error.what();
    std::ranges::replace(text, '\n', ' ');
    throw UsageError(text + "; see '" + app.get_name() + " --help'");
  }
  need_no_empty(app);
  return true;
}

}  // namespace loopwright::command
