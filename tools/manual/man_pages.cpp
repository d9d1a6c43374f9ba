// 1. The program's page: its verbs from their descriptions, all else from README.md.
// 2. A verb's page: its options, or those of each of its deeds.
#include "manual/man_pages.hpp"

#include <algorithm>

#include "manual/roff.hpp"

namespace loopwright::manual {
namespace {

using command::Description;
using command::OptionDescription;
using command::ValueOf;

std::string head(const std::string& name, const std::string& brief, const Edition& edition) {
  std::string upper = name;
  std::ranges::transform(upper, upper.begin(),
                         [](char c) { return c >= 'a' && c <= 'z' ? char(c - 'a' + 'A') : c; });
  return ".TH " + roff(upper) + " 1 " + edition.day + " \"loopwright " + edition.version +
         "\" \"Loopwright\"\n.SH NAME\n" + roff(name) + " \\- " + roff(brief) + "\n";
}

std::string paragraph(const std::string& text) {
  return ".PP\n" + text + "\n";
}

/// Paragraphs and items of README.md; a heading comes before them, which stands for the first ".PP".
std::string section(const std::string& title, const std::vector<std::string>& paragraphs) {
  std::string text = ".SH " + title + "\n";
  for (std::size_t k = 0; k < paragraphs.size(); ++k) {
    const std::string& each = paragraphs[k];
    if (each.starts_with("- ")) {
      text += ".IP \\(bu 2\n" + roff_of_markdown(each.substr(2)) + "\n";
    } else {
      text += (k == 0 ? "" : ".PP\n") + roff_of_markdown(each) + "\n";
    }
  }
  return text;
}

/// "0 done · 1 could not: …" as a list.
std::string exit_codes(const std::string& told) {
  constexpr std::string_view between = " · ";
  std::string text = ".SH EXIT STATUS\n";
  std::string_view rest = told;
  // The last sentence speaks of all codes.
  const auto last = rest.rfind(". ", rest.size() - 2);
  const std::string_view of_all = rest.substr(last + 2);
  for (rest = rest.substr(0, last); !rest.empty();) {
    const auto end = std::min(rest.find(between), rest.size());
    const std::string_view code = rest.substr(0, end);
    const auto blank = code.find(' ');
    text += ".TP\n" + bold(code.substr(0, blank)) + "\n" +
            roff_of_markdown(code.substr(blank + 1)) + "\n";
    rest.remove_prefix(std::min(end + between.size(), rest.size()));
  }
  return text + paragraph(roff_of_markdown(of_all));
}

std::string value_word(const OptionDescription& option) {
  if (option.value == ValueOf::kind) return "KIND";
  if (option.value == ValueOf::nothing) return "";
  return "VALUE";
}

std::string option_item(const OptionDescription& option) {
  std::string names;
  for (const std::string& name : option.names)
    names.append(names.empty() ? "" : ", ").append(option.in_place ? italic(name) : bold(name));
  if (const std::string value = value_word(option); !option.in_place && !value.empty())
    names += " " + italic(value);
  if (option.repeated) names += " …";
  std::string text = ".TP\n" + names + "\n" + roff(option.help);
  if (option.required && !option.in_place) text += "; must be given";
  for (const std::string& other : option.excludes) text += "; not together with " + bold(other);
  return text + "\n";
}

std::string synopsis(const Description& of) {
  std::string text = bold("loopwright " + of.name);
  std::string options, words;
  for (const OptionDescription& option : of.options) {
    if (option.in_place) {
      const std::string word = italic(option.names.front());
      words += option.required ? " " + word : " [" + word + (option.repeated ? " …]" : "]");
    } else if (option.required) {
      options += " " + bold(option.names.front()) + " " + italic(value_word(option));
    }
  }
  return text + words + options + " [" + italic("OPTION") + " …]";
}

std::string options_of(const Description& of) {
  std::string text;
  for (const OptionDescription& option : of.options) text += option_item(option);
  return text;
}

std::string footer_of(const Description& of) {
  if (of.footer.empty()) return "";
  return ".SH NOTES\n.nf\n" + roff(of.footer) + "\n.fi\n";
}

std::string deeds_of(const Description& verb) {
  std::string text = ".SH DEEDS\n";
  for (const Description& deed : verb.deeds) {
    text += ".SS " + roff(deed.name) + "\n" + roff(deed.does) + "\n" + paragraph(synopsis(deed)) +
            options_of(deed);
    if (!deed.footer.empty()) text += ".PP\n.nf\n" + roff(deed.footer) + "\n.fi\n";
  }
  return text;
}

std::string verb_page(const Description& verb, const Edition& edition) {
  std::string text = head("loopwright-" + verb.name, verb.brief, edition) + ".SH SYNOPSIS\n";
  if (verb.deeds.empty()) {
    text += synopsis(verb) + "\n";
  } else {
    for (std::size_t k = 0; k < verb.deeds.size(); ++k)
      text += (k == 0 ? "" : ".br\n") + synopsis(verb.deeds[k]) + "\n";
  }
  text += ".SH DESCRIPTION\n" + roff(verb.does) + "\n";
  text +=
      verb.deeds.empty() ? ".SH OPTIONS\n" + options_of(verb) + footer_of(verb) : deeds_of(verb);
  text += ".SH EXIT STATUS\nThat of " + bold("loopwright") + "(1).\n";
  text += ".SH CAUTIONS\nThose of " + bold("loopwright") +
          "(1): plan when parked; signs, markings, signals and police overrule the map; the "
          "instructor decides.\n";
  return text + ".SH SEE ALSO\n" + bold("loopwright") + "(1)\n";
}

std::string program_page(std::span<const Description> verbs, const Readme& readme,
                         const Edition& edition, const std::string& brief) {
  std::string text = head("loopwright", brief, edition);
  text += ".SH SYNOPSIS\n" + bold("loopwright") + " " + italic("COMMAND") + " …\n.br\n" +
          bold("loopwright") + " " + italic("COMMAND") + " " + bold("--help") + "\n.br\n" +
          bold("loopwright --version") + "\n";
  text += section("DESCRIPTION", {readme.opening()});
  text += ".SH COMMANDS\nEach has a page of its own.\n";
  std::string see_also;
  for (const Description& verb : verbs) {
    text += ".TP\n" + bold(verb.name) + "\n" + roff(verb.brief) + "\n";
    see_also += (see_also.empty() ? "" : ",\n") + bold("loopwright-" + verb.name) + "(1)";
  }
  text += exit_codes(readme.paragraph("Exit codes"));
  text += section("FILES", {readme.paragraph("Files")});
  text += section("CAUTIONS", readme.section("Cautions"));
  text += section("LIMITS", readme.section("What it can't know"));
  text += section("COPYRIGHT", readme.section("Map data and licence"));
  return text + ".SH SEE ALSO\n" + see_also + "\n";
}

}  // namespace

std::vector<std::pair<std::string, std::string>> man_pages(std::span<const Description> verbs,
                                                           const Readme& readme,
                                                           const Edition& edition,
                                                           const std::string& brief) {
  std::vector<std::pair<std::string, std::string>> pages;
  pages.emplace_back("loopwright.1", program_page(verbs, readme, edition, brief));
  for (const Description& verb : verbs)
    pages.emplace_back("loopwright-" + verb.name + ".1", verb_page(verb, edition));
  return pages;
}

}  // namespace loopwright::manual
