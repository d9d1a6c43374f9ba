// What KDE's KOpeningHours (Debian libkopeninghours-dev 22.12, LGPL-2.0-or-later) says. Reads lines
// of region, expression and local time; writes O, C, U for each, I when it gives no interval at all,
// or ERR. A test tool, never linked into the program.
#include <KOpeningHours/Interval>
#include <KOpeningHours/OpeningHours>
#include <QCoreApplication>
#include <QDateTime>
#include <QTimeZone>

#include <iostream>
#include <string>

namespace {

std::string verdict(const QStringList& cells) {
  using namespace KOpeningHours;
  if (cells.size() < 3) return "ERR";
  OpeningHours hours(cells[1].toUtf8());
  hours.setLocation(51.5F, -0.12F);
  hours.setRegion(cells[0]);
  hours.setTimeZone(QTimeZone("Europe/London"));
  if (hours.error() != OpeningHours::NoError) return "ERR";
  switch (hours.interval(QDateTime::fromString(cells[2], Qt::ISODate)).state()) {
    case Interval::Open:
      return "O";
    case Interval::Closed:
      return "C";
    case Interval::Unknown:
      return "U";
    default:
      return "I";
  }
}

}  // namespace

int main(int argc, char** argv) {
  const QCoreApplication app(argc, argv);
  for (std::string line; std::getline(std::cin, line);) {
    std::cout << verdict(QString::fromStdString(line).split('\t')) << '\n';
  }
}
