/** The constructed example of test/reference/waterBoilingExamples.json as a trial file: invented numbers. */
export const waterBoilingTrial = () => ({
  format: 'tinwright/trial@1',
  name: 'worked example',
  day: '2031-05-17',
  place: 1,
  stove: { name: 'none', variant: 'A' },
  fuel: {
    kind: 'wood-chips',
    moisture: { meter: '10 %' },
    heatingValue: { value: '18.5 MJ/kg', within: '0.3 MJ/kg' },
    charHeatingValue: { value: '29.5 MJ/kg', within: '1.5 MJ/kg' },
  },
  weather: { temperature: '25 °C', boilingPoint: '100 °C' },
  pot: { weight: '1000 g', lid: false },
  start: 'cold',
  instruments: {
    scale: { resolution: '1 g', accuracy: '0.5 %' },
    thermometer: { resolution: '0.1 K', accuracy: '0.5 K' },
    clock: { resolution: '1 s' },
    moistureMeter: { accuracy: '2 %' },
  },
  phases: [
    {
      phase: 'high power',
      from: { at: '0 min', fuel: '1000 g', pot: '3500 g', water: '25 °C' },
      to: { at: '20 min', fuel: '500 g', pot: '3400 g', water: '100 °C' },
      char: '100 g',
      boil: '20 min',
    },
    {
      phase: 'simmer',
      from: { at: '20 min', fuel: '500 g', pot: '3400 g', water: '100 °C' },
      to: { at: '65 min', fuel: '100 g', pot: '2600 g', water: '97 °C' },
      char: '20 g',
    },
  ],
  events: [
    { id: 'a-0001', at: '2031-05-17T09:00:00Z', event: 'lit' },
    { id: 'a-0002', at: '2031-05-17T09:20:00Z', event: 'boil' },
  ],
})
