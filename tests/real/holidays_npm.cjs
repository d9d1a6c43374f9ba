// Bank holidays by the npm package date-holidays (3.37.0, ISC and CC-BY-3.0), as lines of region and
// day, 2024 to 2030.
const Holidays = require('date-holidays');
const regions = {'GB-ENG': ['GB', 'ENG'], 'GB-WLS': ['GB', 'WLS'], 'GB-SCT': ['GB', 'SCT'],
                 'GB-NIR': ['GB', 'NIR'], 'IE': ['IE']};
for (const [region, names] of Object.entries(regions)) {
  const holidays = new Holidays(...names);
  for (let year = 2024; year <= 2030; ++year) {
    const days = holidays.getHolidays(year).filter((day) => day.type === 'public');
    for (const day of days) console.log(region + '\t' + day.date.slice(0, 10) + '\t' + day.name);
  }
}
