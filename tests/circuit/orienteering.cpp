#include "circuit/orienteering.hpp"

#include <cmath>
#include <fstream>
#include <map>
#include <numbers>
#include <sstream>
#include <stdexcept>

namespace loopwright::test {

namespace {

struct Instance {
  std::map<std::string, std::string> says;  ///< by keyword
  std::map<std::string, std::vector<double>> sections;
};

std::string trimmed(const std::string& text) {
  const std::size_t first = text.find_first_not_of(" \t\r");
  if (first == std::string::npos) return {};
  return text.substr(first, text.find_last_not_of(" \t\r:") - first + 1);
}

Instance read_lines(const std::filesystem::path& file) {
  std::ifstream in(file);
  if (!in) throw std::runtime_error(file.string() + ": can't be read");
  Instance instance;
  std::string line, section;
  while (std::getline(in, line)) {
    const std::string text = trimmed(line);
    if (text.ends_with("_SECTION")) {
      section = text;
    } else if (!text.empty() && std::isalpha(static_cast<unsigned char>(text[0])) != 0) {
      const std::size_t colon = text.find(':');
      if (colon != std::string::npos)
        instance.says[trimmed(text.substr(0, colon))] = trimmed(text.substr(colon + 1));
    } else {
      std::istringstream numbers(text);
      for (double number = 0; numbers >> number;) instance.sections[section].push_back(number);
    }
  }
  return instance;
}

struct Spot {
  double x = 0, y = 0;
};

std::int64_t euclid(Spot a, Spot b) {
  return std::lround(std::hypot(a.x - b.x, a.y - b.y));
}

std::int64_t pseudo_euclid(Spot a, Spot b) {
  const double r = std::hypot(a.x - b.x, a.y - b.y) / std::sqrt(10.0);
  const std::int64_t t = std::lround(r);
  return static_cast<double>(t) < r ? t + 1 : t;
}

/// Degrees and minutes, DDD.MM, to radians; TSPLIB's own value of pi.
double radians(double coordinate) {
  constexpr double pi = 3.141592;
  const double degrees = std::trunc(coordinate);
  return pi * (degrees + 5.0 * (coordinate - degrees) / 3.0) / 180.0;
}

std::int64_t on_the_globe(Spot a, Spot b) {
  constexpr double radius = 6378.388;
  const double q1 = std::cos(radians(a.y) - radians(b.y));
  const double q2 = std::cos(radians(a.x) - radians(b.x));
  const double q3 = std::cos(radians(a.x) + radians(b.x));
  return static_cast<std::int64_t>(radius * std::acos(0.5 * ((1.0 + q1) * q2 - (1.0 - q1) * q3)) +
                                   1.0);
}

std::vector<std::int64_t> from_coordinates(const Instance& instance, std::size_t nodes) {
  const std::vector<double>& numbers = instance.sections.at("NODE_COORD_SECTION");
  std::vector<Spot> spots(nodes);
  for (std::size_t i = 0; i < nodes; ++i) spots[i] = {numbers.at(3 * i + 1), numbers.at(3 * i + 2)};
  const std::string& type = instance.says.at("EDGE_WEIGHT_TYPE");
  const auto length = type == "ATT" ? pseudo_euclid : type == "GEO" ? on_the_globe : euclid;
  std::vector<std::int64_t> matrix(nodes * nodes, 0);
  for (std::size_t i = 0; i < nodes; ++i)
    for (std::size_t j = 0; j < nodes; ++j)
      if (i != j) matrix[i * nodes + j] = length(spots[i], spots[j]);
  return matrix;
}

std::vector<std::int64_t> from_table(const Instance& instance, std::size_t nodes) {
  const std::vector<double>& numbers = instance.sections.at("EDGE_WEIGHT_SECTION");
  const bool upper = instance.says.at("EDGE_WEIGHT_FORMAT") == "UPPER_ROW";
  std::vector<std::int64_t> matrix(nodes * nodes, 0);
  std::size_t next = 0;
  for (std::size_t i = 0; i < nodes; ++i)
    for (std::size_t j = upper ? i + 1 : 0; j < (upper ? nodes : i + 1); ++j)
      matrix[i * nodes + j] = matrix[j * nodes + i] = static_cast<std::int64_t>(numbers.at(next++));
  return matrix;
}

circuit::Problem as_problem(const Instance& instance) {
  const std::size_t nodes = std::stoul(instance.says.at("DIMENSION"));
  const std::vector<std::int64_t> matrix = instance.says.at("EDGE_WEIGHT_TYPE") == "EXPLICIT"
                                               ? from_table(instance, nodes)
                                               : from_coordinates(instance, nodes);
  const std::vector<double>& scores = instance.sections.at("NODE_SCORE_SECTION");
  if (instance.sections.at("DEPOT_SECTION").at(0) != 1) throw std::out_of_range("depot isn't 1");
  circuit::Problem p;
  p.entry_count = p.exit_count = static_cast<std::uint32_t>(nodes);
  // The last row and column, home and end, are the depot once more.
  for (std::size_t row = 0; row <= nodes; ++row)
    for (std::size_t column = 0; column <= nodes; ++column)
      p.legs.push_back(matrix[row % nodes * nodes + column % nodes]);
  p.goals.resize(1);
  for (std::uint32_t i = 0; i < nodes; ++i) {
    p.groups.push_back({0, {static_cast<std::int64_t>(scores.at(2 * i + 1))}});
    p.passes.push_back({i, i, 0, {i}});
  }
  p.most_ms = std::stoll(instance.says.at("COST_LIMIT"));
  return p;
}

}  // namespace

circuit::Problem read_orienteering(const std::filesystem::path& file) {
  const Instance instance = read_lines(file);
  try {
    return as_problem(instance);
  } catch (const std::logic_error& error) {
    throw std::runtime_error(file.string() + ": not an orienteering instance: " + error.what());
  }
}

std::vector<Known> read_known(const std::filesystem::path& table) {
  std::ifstream in(table);
  if (!in) throw std::runtime_error(table.string() + ": can't be read");
  std::vector<Known> rows;
  std::string line;
  std::getline(in, line);
  while (std::getline(in, line)) {
    std::istringstream fields(line);
    Known known;
    std::string nodes, limit;
    if (!(fields >> known.instance >> nodes >> limit >> known.heuristic))
      throw std::runtime_error(table.string() + ": odd line: " + line);
    fields >> known.optimum;
    rows.push_back(known);
  }
  return rows;
}

}  // namespace loopwright::test
