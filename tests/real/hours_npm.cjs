// What the npm package opening_hours (3.15.0, LGPL-3.0-only), the reference implementation of the
// grammar, says. Reads lines of region, expression and local time; writes O, C, U or ERR for each.
// Run with TZ=Europe/London: it works on the system's clock. Latitude and longitude must be strings,
// or sunrise silently becomes 06:00.
const OpeningHours = require('opening_hours');
const nations = {'GB-ENG': 'England', 'GB-SCT': 'Scotland', 'GB-WLS': 'Wales',
                 'GB-NIR': 'Northern Ireland'};
const read = new Map();

function hoursOf(region, expression) {
  const key = region + '\t' + expression;
  if (!read.has(key)) {
    let hours = null;
    try {
      const address = {country_code: 'gb', state: nations[region]};
      hours = new OpeningHours(expression, {lat: '51.5', lon: '-0.12', address}, {locale: 'en'});
    } catch {
      hours = null;
    }
    read.set(key, hours);
  }
  return read.get(key);
}

function verdict(region, expression, time) {
  const hours = hoursOf(region, expression);
  if (hours === null) return 'ERR';
  try {
    if (hours.getUnknown(new Date(time))) return 'U';
    return hours.getState(new Date(time)) ? 'O' : 'C';
  } catch {
    return 'ERR';
  }
}

const lines = require('fs').readFileSync(0, 'utf8').split('\n').filter(Boolean);
console.log(lines.map((line) => verdict(...line.split('\t'))).join('\n'));
