const METRIC = 'mm²|mm|cm³|cm|m²|m/s|m|g/min|g/s|km/h|kg/h|kg/m³|kg|g|mL|L|kWh|kW|W|°C|K|hPa|Pa|MJ/kg|MJ|kJ'
const INCH = 'in²|in³|inHg|in|ft/s|ft|oz|lb/h|lb/ft³|lb|(?:US )?(?:fl oz|pt|qt|gal)|Btu/h|Btu/lb|Btu|°F|mph'
/** A number as it is written: `16`, `−0.25`, `5/8`, `6 3/16`; the source of an expression. */
export const VALUE = '[−-]?\\d[\\d.,]*(?:/\\d+)?(?:\\s\\d+/\\d+)?'

const some = (units: string): string => `${VALUE}(?:\\s(?:to|×)\\s${VALUE})*\\s?(?:${units})`

/** A value in both systems; a bit by its name in inches comes first as its maker calls it. */
export const DUAL_VALUE = new RegExp(
  `(${some(METRIC)})\\s\\((${some(INCH)})\\)|(${some(INCH)})\\s\\((${some(METRIC)})\\)`,
  'g',
)
