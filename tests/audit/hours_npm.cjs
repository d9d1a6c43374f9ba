// What the npm package opening_hours, the reference implementation of the grammar, says of a text all
// through an interval. A line in: JSON {text, from, to, state, country, lat, lon}, instants in ms.
// A line out: the states it has there, letters of O (in force), C (not), U (unknown), or ERR.
// Runs on the clock of TZ. Latitude and longitude must be strings, or sunrise silently becomes 06:00.
const OpeningHours = require('opening_hours');
const read = new Map();

function hoursOf(query) {
  const key = JSON.stringify([query.text, query.state]);
  if (!read.has(key)) {
    let hours = null;
    try {
      const address = {country_code: query.country, state: query.state};
      hours = new OpeningHours(query.text, {lat: query.lat, lon: query.lon, address}, {locale: 'en'});
    } catch {
      hours = null;
    }
    read.set(key, hours);
  }
  return read.get(key);
}

function stateAt(hours, time) {
  if (hours.getUnknown(time)) return 'U';
  return hours.getState(time) ? 'O' : 'C';
}

// Minute by minute: hours are mapped to the minute, and a lesson's intervals are short.
function states(query) {
  const hours = hoursOf(query);
  if (hours === null) return 'ERR';
  const seen = new Set();
  try {
    for (let time = query.from; time < query.to; time += 60000) seen.add(stateAt(hours, new Date(time)));
    seen.add(stateAt(hours, new Date(query.to)));
  } catch {
    return 'ERR';
  }
  return [...seen].sort().join('');
}

const lines = require('readline').createInterface({input: process.stdin});
lines.on('line', (line) => process.stdout.write(states(JSON.parse(line)) + '\n'));
